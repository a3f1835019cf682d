"""A cell of kind order: `less than ostler; about like tamsin`, each name the id of a contender."""

from __future__ import annotations

import re
from dataclasses import replace

from reportgen.campaign.order_words import Saying, one_cell, sayings
from reportgen.campaign.shape import NotThat
from reportgen.intake.names import EVERYONE, find_contender
from reportgen.intake.notations.cell import Expected, UnreadableError, Written
from reportgen.intake.table import did_you_mean, spelt

_SEVERAL = re.compile(r"\s(?:(?:a little|much) )?(?:less than|more than|about like)\s.*", re.IGNORECASE)


def read_order(text: str, expected: Expected) -> Written:
    """What it says in the normal form, with ids for names. Raises `UnreadableError`."""
    try:
        said = sayings(text)
    except NotThat as wrong:
        why = "An order is told by the words for it alone; other words could mean anything."
        raise UnreadableError("not-an-order", f"{wrong.says}.", why, wrong.do) from None
    return Written(word=one_cell(_named(saying, expected) for saying in said))


def refuse_itself(word: str, contender: str) -> None:
    """Raises `UnreadableError` where a contender is set against itself."""
    if contender == EVERYONE:
        raise UnreadableError(
            "order-of-itself",
            "An order of all contenders to one of them sets that one against itself.",
            "That says nothing about any other.",
            "Write one row for each contender that was compared.",
        )
    if word and any(saying.other == contender for saying in sayings(word)):
        raise UnreadableError(
            "order-of-itself",
            f"{contender} is compared with itself here.",
            "That says nothing about any other.",
            "Write the contender it was compared with.",
        )


def _named(saying: Saying, expected: Expected) -> Saying:
    contender = find_contender(saying.other, expected.names)
    if contender is not None:
        return replace(saying, other=contender)
    if (whole := _SEVERAL.search(saying.other)) is not None:
        raise UnreadableError(
            "not-an-order",
            f"“{saying.text}” tells more than how one contender stood.",
            "A cell is about its own contender; a whole order is of several.",
            f"Write a whole order under `seen:` of its measure, or “{saying.text[: -len(whole[0])].strip()}; …” here, "
            "and the rest in the rows of the others.",
        )
    near = did_you_mean(saying.other, expected.names)
    raise UnreadableError(
        "unknown-contender",
        f"“{saying.text}”: no contender is called “{saying.other}”.",
        f"There are {spelt(list(expected.names))}.",
        f"Did you mean “{near}”?" if near else "Write the contender's id or title.",
    )
