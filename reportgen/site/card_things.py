"""What a card holds of products and of what was measured: as much as it takes to find a comparison by them."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from reportgen.addresses import contender_page, quantity_anchor, test_page
from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation
from reportgen.wording.sentence import capital


@dataclass(frozen=True)
class CardPrice:
    """A price in words, and from what to what it is, in `currency` (ISO 4217)."""

    text: str
    low: Decimal
    high: Decimal
    currency: str


@dataclass(frozen=True)
class CardProduct:
    """A contender, the address of its sheet, what it cost, and the ids it had before."""

    id: str
    title: str
    maker: str
    sheet: str
    prices: tuple[CardPrice, ...] = ()
    formerly: tuple[str, ...] = ()


@dataclass(frozen=True)
class CardMeasured:
    """A quantity, where its results stand, and the ids it had before; `read`: there are results of it."""

    id: str
    title: str
    address: str
    test: str
    read: bool = True
    formerly: tuple[str, ...] = ()


def products_of(campaign: Campaign) -> tuple[CardProduct, ...]:
    """Its contenders in their order."""
    return tuple(
        CardProduct(
            c.id,
            c.title,
            c.maker,
            contender_page(campaign.id, c.id),
            tuple(CardPrice(p.text, p.low, p.high, p.currency) for p in c.prices),
            c.formerly,
        )
        for c in campaign.contenders
    )


def measured_in(campaign: Campaign, evaluation: Evaluation) -> tuple[CardMeasured, ...]:
    """Its quantities in their order; of one whose parts stand apart the address is that of the first."""
    read = {r.quantity for r in evaluation.results if not r.missing}
    first = {r.quantity: r.part for r in reversed(evaluation.results)}
    return tuple(
        CardMeasured(
            q.id,
            capital(q.title),
            f"{test_page(campaign.id, t.id)}#{quantity_anchor(q.id, first.get(q.id, ''))}",
            t.id,
            q.id in read,
            q.formerly,
        )
        for t in campaign.tests
        for q in t.quantities
    )
