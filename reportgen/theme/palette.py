"""The colour, the shape and the letter that a contender keeps through a campaign.

Colours are the style sheet's variables ``--c1`` to ``--c8``, reached by the classes `c1` to `c8`. Charts use the
same order of shapes.
"""

from __future__ import annotations

from dataclasses import dataclass

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
COLOURS = 8


@dataclass(frozen=True)
class ContenderMark:
    """How one contender is told from the others: in print by letter and shape, on a screen by colour too."""

    letter: str
    shape: str
    css_class: str


def mark_of(index: int) -> ContenderMark:
    """The mark of the contender that stands at `index` (from 0) in the campaign's order.

    Colours come round after eight; the shapes then begin one further on, so that the first 64 contenders differ
    in the pair of both. Letters go A … Z, AA, AB …
    """
    shape = SHAPES[(index + index // COLOURS) % len(SHAPES)]
    return ContenderMark(_letters(index), shape, f"c{index % COLOURS + 1}")


def _letters(index: int) -> str:
    letters = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
