"""Photographs and films of the work."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from reportgen.campaign.declared.amounts import Day


@dataclass(frozen=True)
class Photo:
    """A photograph: `file` from the campaign's folder; `shows` is its alternative text, in the author's words.

    Width and height in pixels, held upright. `exact`: pages keep it without loss, as drawings and screens need.
    """

    id: str
    file: str
    shows: str
    caption: str = ""
    by: str = ""
    taken: Day | None = None
    width: int = 0
    height: int = 0
    exact: bool = False


@dataclass(frozen=True)
class Film:
    """A film of the work. `moment` is its address with `{seconds}` where its host wants one; else a media fragment."""

    id: str
    title: str
    address: str
    moment: str = ""
    seconds: Decimal | None = None  # its length
    stills: Mapping[Decimal, str] = field(default_factory=dict)  # seconds from its beginning → id of a photo
