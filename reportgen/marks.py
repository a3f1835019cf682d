"""What tells contenders apart everywhere: a letter, a shape and a colour, by place in the campaign's order.

The colour is a name (`--c1` … `--c8`) that the theme's style sheet gives a value, once for light and once for dark.
Pages reach it by the classes `c1` to `c8`; a drawing names it, with the light value behind it for where no style
sheet is.
"""

from __future__ import annotations

from dataclasses import dataclass

COLOURS = ("#4c85e5", "#831c02", "#8b6f19", "#471937", "#185d3d", "#341d7b", "#c45b6b", "#62527e")
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
class ContenderMark:
    """How one contender is told from the others. `shape` is a symbol of the Vega grammar, `ink` a CSS colour."""

    letter: str
    shape: str
    css_class: str
    ink: str


def mark_of(index: int) -> ContenderMark:
    """The mark of the contender that stands at `index` (from 0) in the campaign's order.

    Colours come round after eight; the shapes then begin one further on, so that the first 64 contenders differ
    in the pair of both. Letters go A … Z, AA, AB …
    """
    turn, place = divmod(index, len(COLOURS))
    shape = SHAPES[(place + turn) % len(SHAPES)]
    return ContenderMark(letter_of(index), shape, f"c{place + 1}", f"var(--c{place + 1}, {COLOURS[place]})")


def letter_of(index: int) -> str:
    """A … Z, then AA, AB … for index 0, 1, 2 …"""
    letters = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
