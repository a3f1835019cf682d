"""A value as the author gave it: with its text and its place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

from reportgen.finding import Place

T_co = TypeVar("T_co", covariant=True)


@dataclass(frozen=True)
class Given(Generic[T_co]):
    """One scalar: what it means, the text that was written, where."""

    value: T_co
    text: str
    at: Place


@dataclass(frozen=True)
class Entry(Generic[T_co]):
    """One line of a mapping whose keys are the author's own names."""

    name: Given[str]
    value: T_co
    at: Place
