"""One chart as the rest of the program sees it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Drawing:
    """What came of one specification: an SVG element, and `explored`, the same marks as JSON for who explores them."""

    svg: str
    explored: str


@dataclass(frozen=True)
class Figure:
    """A chart, drawn, with everything that says the same without seeing it.

    `address` is its short name in the campaign (`gas-burned`, `overview`). `svg` is one inline element with a
    `viewBox` and no size of its own, for light and dark alike. `title` says what was measured, `found` what came
    of it, `key` how the marks read, `alt` all of it for who can't see the picture. `rows` are the values drawn as
    printed text, under `headings`, one tuple a row. `explored` is what a script needs to lead a reader from value to
    value (`charts/explored.py` says how it reads), "" where a chart isn't, or is in a way of its own. `wide` is the
    width in CSS pixels past which it should not grow.
    """

    address: str
    svg: str
    alt: str
    title: str
    found: str
    rows: tuple[tuple[str, ...], ...]
    headings: tuple[str, ...] = ()
    key: str = ""
    wide: int = 480
    explored: str = ""


@dataclass(frozen=True)
class Drawn:
    """All charts of a campaign by address, and for those that could not be drawn the reason in words."""

    figures: dict[str, Figure]
    absent: dict[str, str]
