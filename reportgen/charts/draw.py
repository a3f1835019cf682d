"""All charts of a campaign."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.campaign.declared import Campaign, Declared, Quantity
from reportgen.charts import intervals
from reportgen.charts.figure import Drawn, Figure
from reportgen.charts.words import words
from reportgen.evaluation.evaluated import Evaluation, Result
from reportgen.wording import interval

NAMED_IN_ALT = 8  # contenders whose values the text alternative says; the table holds all


def figures(declared: Declared, evaluation: Evaluation) -> Mapping[str, Figure]:
    """Every chart that could be drawn, by quantity id (`quantity-part` where parts stand apart) and chart name."""
    return drawn(declared, evaluation).figures


def drawn(declared: Declared, evaluation: Evaluation) -> Drawn:
    """Every chart, and the reason for each that could not be drawn."""
    made: dict[str, Figure] = {}
    absent: dict[str, str] = {}
    for test in declared.campaign.tests:
        for quantity in test.quantities:
            of = [r for r in evaluation.results if r.quantity == quantity.id]
            for part in dict.fromkeys(r.part for r in of):
                address = f"{quantity.id}-{part}" if part else quantity.id
                made[address] = _quantity(declared.campaign, evaluation, quantity, part, address)
    return Drawn(made, absent)


def _quantity(campaign: Campaign, evaluation: Evaluation, quantity: Quantity, part: str, address: str) -> Figure:
    results = [r for r in evaluation.results if (r.quantity, r.part) == (quantity.id, part)]
    pairs = [c for c in evaluation.comparisons if (c.quantity, c.part) == (quantity.id, part)]
    found = ""
    told = {r.contender: printed(r) for r in results}
    alt = _alternative(campaign, quantity.title, found, told)
    ordered = intervals.in_order(quantity, results)
    return Figure(
        address,
        intervals.svg(campaign, quantity, results, pairs, alt),
        alt,
        quantity.title,
        found,
        tuple((campaign.contender(r.contender).title, told[r.contender], str(r.passes), str(r.excluded)) for r in ordered),
        (words("contender"), words("result"), words("passes"), words("left out")),
        intervals.key(quantity, results, intervals.tied_groups(quantity, ordered, pairs)),
    )


def printed(result: Result) -> str:
    """A measured result with its unit and interval, or why there is none."""
    e = result.estimate
    if e is None:
        return result.missing or words("not read")
    return interval.printed(e.value, result.u, result.low, result.high, e.unit, e.limit, result.why_no_u)


def _alternative(campaign: Campaign, title: str, found: str, told: Mapping[str, str]) -> str:
    rows = [words("alt.row", contender=campaign.contender(c).title, result=said) for c, said in told.items()]
    if len(rows) > NAMED_IN_ALT:
        rows = [*rows[:NAMED_IN_ALT], words("alt.more", n=str(len(rows) - NAMED_IN_ALT))]
    return " ".join(filter(None, (f"{title}.", found, "; ".join(rows) + ".")))
