"""What a card holds of each result: as much as it takes to put it beside results of other campaigns."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import contender_page, product_id, result_anchor, test_page
from reportgen.campaign.declared import Better, Campaign, Contender, Quantity, Test
from reportgen.charts.intervals import value_text
from reportgen.charts.order import in_order
from reportgen.evaluation.evaluated import Evaluation, Result, ResultKind
from reportgen.judgement.measured import Limit
from reportgen.pages.figures_shown import printed, why_unranked
from reportgen.pages.titles import heading


@dataclass(frozen=True)
class CardContender:
    """A contender by its names and the address of its sheet; `product` is its id across campaigns."""

    id: str
    title: str
    maker: str
    sheet: str
    product: str


@dataclass(frozen=True)
class CardResult:
    """One result. `value`, `low` and `high` are in `unit`, None where there is none; `limit`: `value` is but a bound.

    `step`: the unit counts steps on a scale, as of a rise in temperature. `of_scatter`: the range holds how passes
    scatter, not what the instrument leaves open alone. `bare` is the value as printed without its unit, `whole` with it
    or in words, `range` what holds the true value 95 times in 100. `caution` says why it isn't ranked. `working` is the
    address of its working.
    """

    test: str
    method: str
    version: int
    quantity: str
    title: str
    part: str
    unit: str
    better: Better
    kind: ResultKind
    contender: CardContender
    value: float | None
    low: float | None
    high: float | None
    limit: Limit | None
    step: bool
    of_scatter: bool
    bare: str
    whole: str
    range: str
    caution: str
    working: str


def results_of(campaign: Campaign, evaluation: Evaluation) -> tuple[CardResult, ...]:
    """Every result there is, test by test, a quantity's in the order of its places. What wasn't read is left out."""
    who = {c.id: _contender(campaign, c) for c in campaign.contenders}
    made: list[CardResult] = []
    for test in campaign.tests:
        for quantity in sorted(test.quantities, key=lambda q: q.id != test.headline):
            of = [r for r in evaluation.results if r.quantity == quantity.id]
            for part in dict.fromkeys(r.part for r in of):
                results = [r for r in in_order(quantity, of) if r.part == part and not r.missing]
                made += [_result(campaign, test, quantity, r, who[r.contender]) for r in results]
    return tuple(made)


def _contender(campaign: Campaign, c: Contender) -> CardContender:
    return CardContender(c.id, c.title, c.maker, contender_page(campaign.id, c.id), product_id(c.maker, c.title, c.id))


def _result(campaign: Campaign, test: Test, quantity: Quantity, r: Result, who: CardContender) -> CardResult:
    e, figure = r.estimate, printed([r])[0]
    return CardResult(
        test=test.id,
        method=test.method,
        version=test.method_version,
        quantity=quantity.id,
        title=heading(quantity, r.part),
        part=r.part,
        unit=e.unit if e else "",
        better=quantity.better,
        kind=r.kind,
        contender=who,
        value=e.value if e else None,
        low=r.low,
        high=r.high,
        limit=e.limit if e else None,
        step=e.step if e else False,
        of_scatter=r.covers == "instrument and scatter",
        bare=value_text(r),
        whole=figure.whole,
        range=figure.interval,
        caution=why_unranked(r),
        working=f"{test_page(campaign.id, test.id)}#{result_anchor(r.quantity, r.contender, r.part)}",
    )
