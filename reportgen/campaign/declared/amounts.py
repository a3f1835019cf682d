"""Amounts and days as an author types them."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True)
class Amount:
    """A number with its unit, digits kept: `text` as typed, `value` exact, `unit` as typed ("" for none)."""

    value: Decimal
    unit: str
    text: str
    guess: bool = False  # "0.5 g, a guess"


@dataclass(frozen=True)
class Day:
    """A date as typed: `text` is shown; `first` and `last` (ISO) sort it; both empty when `not noted`."""

    text: str
    first: str = ""
    last: str = ""
