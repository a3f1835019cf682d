"""What tells contenders apart in every picture: a letter, a shape and a colour, by place in the campaign's order.

The colour is a name (`--c1` … `--c8`) that the theme gives a value, once for light and once for dark; the number
behind it serves where no style sheet is, and is the light one.
"""

from __future__ import annotations

from dataclasses import dataclass

COLOURS = ("#3480a3", "#5e2804", "#a48d26", "#8e347d", "#20633f", "#3f0e6f", "#a8636c", "#3961bc")
SHAPES = (
    "circle",
    "square",
    "triangle-up",
    "diamond",
    "cross",
    "triangle-down",
    "triangle-right",
    "triangle-left",
)


@dataclass(frozen=True)
class Mark:
    """`letter` never repeats; `ink` is a CSS colour; `shape` is a symbol of the Vega grammar."""

    letter: str
    ink: str
    shape: str


def letter_of(index: int) -> str:
    """A … Z, then AA, AB … for index 0, 1, 2 …"""
    letters = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def mark_of(index: int) -> Mark:
    """The mark of the contender at `index` (from 0); colour and shape together repeat after 64 only."""
    turn, place = divmod(index, len(COLOURS))
    ink = f"var(--c{place + 1}, {COLOURS[place]})"
    return Mark(letter_of(index), ink, SHAPES[(place + turn) % len(SHAPES)])
