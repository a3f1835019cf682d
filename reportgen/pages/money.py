"""Money on the campaign's page: what was paid, who is beaten at no higher price and on what, what using costs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.charts.figure import Figure
from reportgen.evaluation.evaluated import ValueForMoney
from reportgen.evaluation.money import price_of
from reportgen.pages.cost import CostShown, cost_of
from reportgen.pages.led import led_on
from reportgen.pages.named import Named, named
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.money import (
    all_round_line,
    beaten_on,
    beaten_over_all,
    currencies,
    money_notes,
    other_prices,
    price_dated,
    price_noted,
)
from reportgen.prose.out import out_by
from reportgen.prose.prices_otherwise import other_price_lines
from reportgen.prose.sentences import money_line_led
from reportgen.theme import Link


@dataclass(frozen=True)
class MoneyRow:
    """`beaten` says whether someone costs no more and is resolved better; `says` tells it as a sentence with its ways.

    `out`: by what it is out, "" where it isn't. `dated`: whether the price was paid or listed, and when; `others`:
    further prices, each with the same.
    """

    contender: Named
    out: str
    price: str
    dated: str
    others: tuple[str, ...]
    beaten: bool
    says: tuple[Link, ...]


@dataclass(frozen=True)
class OnEach:
    """On each thing compared, in the order of `on`: by whom one is beaten at no higher price."""

    contender: Named
    out: str
    met: tuple[str, ...]


@dataclass(frozen=True)
class MoneyShown:
    """The table of prices, what it leaves out, and its picture; `each` is empty where one thing alone was compared."""

    rows: tuple[MoneyRow, ...]
    all_round: str
    notes: tuple[str, ...]
    on: tuple[str, ...]
    each: tuple[OnEach, ...]
    figure: Figure | None
    cost: CostShown | None


def money_of(told: Told, page: str) -> MoneyShown | None:
    """What `page` shows of prices and of what using costs, None where neither is noted."""
    verdict = told.evaluation.verdict
    if verdict is None or not (verdict.value or verdict.cost):
        return None
    order = currencies(verdict.value)
    ranked = sorted(verdict.value, key=lambda v: (order.index(v.currency), v.low is None, v.low or 0.0))
    on, each = _on_each(told, ranked, page)
    notes = money_notes(told.campaign, verdict.value) if verdict.value else ()
    return MoneyShown(
        rows=tuple(_row(told, v, page) for v in ranked),
        notes=(
            *notes,
            *beaten_over_all(told.campaign, verdict.value, told.evaluation),
            *(other_price_lines(told.campaign, told.evaluation) if verdict.value else ()),
        ),
        all_round=all_round_line(told.campaign, verdict.value_quantities, verdict.value),
        on=on,
        each=each,
        figure=told.figures.get("money"),
        cost=cost_of(told, verdict.cost, page) if verdict.cost else None,
    )


def _row(told: Told, v: ValueForMoney, page: str) -> MoneyRow:
    verdict = told.evaluation.verdict
    quantities = verdict.value_quantities if verdict else ()
    contender = told.campaign.contender(v.contender)
    price = price_of(contender)
    return MoneyRow(
        contender=named(told.campaign, v.contender, page),
        out=out_by(told.campaign, told.evaluation, v.contender),
        price=price_noted(price) if price else words("price.none"),
        dated=price_dated(price) if price else "",
        others=other_prices(contender),
        beaten=bool(v.dominated_by),
        says=led_on(page, money_line_led(told.campaign, quantities, v, told.evaluation)),
    )


def _on_each(told: Told, ranked: Sequence[ValueForMoney], page: str) -> tuple[tuple[str, ...], tuple[OnEach, ...]]:
    verdict = told.evaluation.verdict
    quantities = verdict.value_quantities if verdict else ()
    if len(quantities) < 2 or len(ranked) < 2:
        return (), ()
    on = tuple(heading(told.campaign.quantity(q)) for q in quantities)
    rows = tuple(
        OnEach(
            named(told.campaign, v.contender, page),
            out_by(told.campaign, told.evaluation, v.contender),
            tuple(beaten_on(told.campaign, v, q, told.evaluation) for q in quantities),
        )
        for v in ranked
    )
    return on, rows
