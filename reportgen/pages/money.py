"""Money on the campaign's page: what was paid, and who is beaten at no higher price."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.charts.figure import Figure
from reportgen.pages.named import Named, named
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.money import currencies, money_notes
from reportgen.prose.sentences import money_line


@dataclass(frozen=True)
class MoneyRow:
    """`beaten` says whether someone costs no more and is resolved better; `says` tells it as a sentence."""

    contender: Named
    price: str
    beaten: bool
    says: str


@dataclass(frozen=True)
class MoneyShown:
    """The table of prices, what it leaves out, and its picture."""

    rows: tuple[MoneyRow, ...]
    notes: tuple[str, ...]
    figure: Figure | None


def money_of(told: Told, page: str) -> MoneyShown | None:
    """What `page` shows of prices, None where none is noted."""
    verdict = told.evaluation.verdict
    if verdict is None or not verdict.value:
        return None
    order = currencies(verdict.value)
    rows = tuple(
        MoneyRow(
            contender=named(told.campaign, v.contender, page),
            price=v.price or words("price.none"),
            beaten=bool(v.dominated_by),
            says=money_line(told.campaign, verdict.value_quantities, v, told.evaluation),
        )
        for v in sorted(verdict.value, key=lambda v: (order.index(v.currency), v.low is None, v.low or 0.0))
    )
    return MoneyShown(rows, money_notes(told.campaign, verdict.value), told.figures.get("money"))
