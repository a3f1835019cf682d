"""What a chart shows, in words: its text alternative and its table."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign, Quantity
from reportgen.charts.words import words
from reportgen.evaluation.evaluated import Result
from reportgen.prose.amounts import full
from reportgen.wording.apart import POP
from reportgen.wording.interval import rank_range
from reportgen.wording.language import say
from reportgen.wording.listing import commas, semicolons
from reportgen.wording.reason import why_missing
from reportgen.wording.sentence import ENDS, capital, in_a_row

NAMED_IN_ALT = 8  # lines that the text alternative says; the table holds all


def title_of(quantity: Quantity, part: str) -> str:
    """What a chart is of: "Fuel used", "Fuel used, second evening" where parts stand apart."""
    return capital(commas((quantity.title, part)) if part else quantity.title)


def headings() -> tuple[str, ...]:
    """Over the columns of the table."""
    return words("contender"), words("result"), words("passes"), words("left out"), words("place")


def printed(result: Result) -> str:
    """A result with its unit and interval, or why there is none."""
    if result.missing and (result.estimate is None or result.estimate.value is None) and not result.of:
        return why_missing(result.missing)
    return full(result)


def row_of(campaign: Campaign, result: Result) -> tuple[str, ...]:
    """A result's line of the table, under `headings`."""
    place = rank_range(result.rank) if result.rank else words("not ranked") if result.blocked else ""
    counted = bool(campaign.quantity(result.quantity).count_of)  # over all passes, however many these were
    passes, left_out = ("", "") if counted else (str(result.passes), str(result.excluded))
    return campaign.contender(result.contender).title, printed(result), passes, left_out, place


def alternative(title: str, found: str, told: Sequence[tuple[str, str]]) -> str:
    """For those who don't see the picture: what was measured, what was found, and the values with their units."""
    rows = [words("alt.row", name=name, said=said) for name, said in told]
    if len(rows) > NAMED_IN_ALT:
        rows = [*rows[:NAMED_IN_ALT], words("alt.more", n=str(len(rows) - NAMED_IN_ALT))]
    return in_a_row((ended(title), ended(found), ended(semicolons(rows))))


def ended(text: str) -> str:
    """A text with a full stop, where it has no end of its own."""
    return text if not text or text.rstrip(POP).endswith(ENDS) else text + say("sentence.stop")
