"""All charts of a campaign."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from reportgen.addresses import quantity_anchor
from reportgen.campaign.declared import Campaign, Declared, Quantity, Test
from reportgen.charts import (
    cost_told,
    counts,
    grades,
    intervals,
    money_told,
    orders,
    overview,
    shares,
    traces,
    weights_told,
)
from reportgen.charts.brackets import tie_groups
from reportgen.charts.figure import Drawing, Drawn, Figure
from reportgen.charts.order import in_order
from reportgen.charts.shared_axes import Beside, Reach, shared
from reportgen.charts.telling import alternative, headings, printed, row_of, title_of
from reportgen.charts.words import words
from reportgen.evaluation.evaluated import Comparison, Evaluation, Result
from reportgen.prose.finding_line import finding_line
from reportgen.wording.listing import labelled, semicolons


def figures(declared: Declared, evaluation: Evaluation) -> Mapping[str, Figure]:
    """Every chart drawn: by quantity id (`quantity-part` for parts that stand apart), `overview`, `money`, weights."""
    return drawn(declared, evaluation).figures


def drawn(declared: Declared, evaluation: Evaluation) -> Drawn:
    """Every chart, and the reason for each that could not be drawn.

    A chart's address is free of a quantity's: a quantity called `overview` or `money` keeps the name.
    """
    campaign = declared.campaign
    made: dict[str, Figure] = {}
    absent: dict[str, str] = {}
    whole = (("overview", _overview(campaign, evaluation)), ("money", money_told.figure(campaign, evaluation)))
    for address, told in whole:
        if isinstance(told, Figure):
            made[address] = told
        else:
            absent[address] = told
    for more in (weights_told.figure(campaign, evaluation), cost_told.figure(campaign, evaluation)):
        if more:
            made[more.address] = more
    for test in campaign.tests:
        charts = tuple(_charts(evaluation, test))
        beside = shared(dict(_reaches(charts)))
        for chart in charts:
            made.pop(chart.address, None)
            absent.pop(chart.address, None)
            if why := _why_not(chart.quantity, chart.results):
                absent[chart.address] = why
            else:
                made[chart.address] = _quantity(campaign, evaluation, chart, beside.get(chart.address))
        for column in test.columns:
            traces_of = traces.figure(campaign, evaluation, test, column)
            if traces_of:
                made[traces_of.address] = traces_of
    return Drawn(made, absent)


@dataclass(frozen=True)
class _Chart:
    """The results of one quantity, or of one part of it, and all comparisons of them."""

    address: str
    quantity: Quantity
    part: str
    results: tuple[Result, ...]
    pairs: tuple[Comparison, ...]

    @property
    def title(self) -> str:
        return title_of(self.quantity, self.part)


def _charts(evaluation: Evaluation, test: Test) -> Iterator[_Chart]:
    for quantity in test.quantities:
        of = [r for r in evaluation.results if r.quantity == quantity.id]
        for part in dict.fromkeys(r.part for r in of):
            pairs = tuple(c for c in evaluation.comparisons if (c.quantity, c.part) == (quantity.id, part))
            yield _Chart(
                quantity_anchor(quantity.id, part), quantity, part, tuple(r for r in of if r.part == part), pairs
            )


def _reaches(charts: Sequence[_Chart]) -> Iterator[tuple[str, Reach]]:
    """Those drawn along an axis of values, with what each needs of it."""
    for chart in charts:
        if chart.results[0].kind == "measured" and not _why_not(chart.quantity, chart.results):
            needs = intervals.reach(chart.quantity, chart.title, chart.results, chart.pairs)
            if needs:
                yield chart.address, needs


def _why_not(quantity: Quantity, results: Sequence[Result]) -> str:
    """Why there is nothing to draw, or "" where there is."""
    read = any(p.value is not None or p.limit or p.word for r in results for p in r.by_pass)
    read = read or any(r.estimate and (r.estimate.value is not None or r.estimate.limit) for r in results)
    if not read:
        return words("absent.nothing")
    graded = any(r.kind == "grade" for r in results)
    return words("absent.grades") if graded and not quantity.grades else ""


def _quantity(campaign: Campaign, evaluation: Evaluation, chart: _Chart, beside: Beside | None) -> Figure:
    found = finding_line(campaign, evaluation, chart.quantity.id, chart.part)
    ordered = in_order(chart.quantity, chart.results)
    told = [(campaign.contender(r.contender).title, printed(r)) for r in ordered]
    alt = alternative(chart.title, found, told)
    picture, key = _picture(campaign, chart, beside, alt)
    rows = tuple(row_of(campaign, r) for r in ordered)
    return Figure(chart.address, picture.svg, alt, chart.title, found, rows, headings(), key, explored=picture.explored)


def _picture(campaign: Campaign, chart: _Chart, beside: Beside | None, alt: str) -> tuple[Drawing, str]:
    """The drawing, by the kind of result, and how its marks read."""
    quantity, results, pairs = chart.quantity, chart.results, chart.pairs
    kind = results[0].kind
    groups = tie_groups(quantity, in_order(quantity, results), pairs)
    if kind == "yes/no":
        return shares.drawing(campaign, quantity, results, groups, alt), shares.key(results, groups)
    if kind == "grade":
        return grades.drawing(campaign, quantity, results, groups, alt), grades.key(results, groups)
    if kind == "order":
        return orders.drawing(campaign, results, pairs, alt), orders.key(results, pairs)
    if kind == "count":
        return counts.drawing(campaign, quantity, results, groups, alt), counts.key(results, groups)
    picture = intervals.drawing(campaign, quantity, results, pairs, alt, beside)
    return picture, intervals.key(quantity, results, groups, beside)


def _overview(campaign: Campaign, evaluation: Evaluation) -> Figure | str:
    rows = overview.ranked(campaign, evaluation)
    if len(rows) < 2:
        return words("absent.one-rank" if rows else "absent.no-ranks")
    if len(campaign.contenders) > overview.MOST:
        return words("absent.many", n=str(overview.MOST))
    title = words("overview.title")
    found = overview.found(campaign, rows)
    places = [(row.title, semicolons([labelled(*one) for one in overview.told(campaign, row)])) for row in rows]
    alt = alternative(title, found, places)
    table = tuple((row.title, place, names) for row in rows for place, names in overview.told(campaign, row))
    heads = (words("quantity"), words("place"), words("contender"))
    picture, key = overview.drawing(campaign, rows, alt), overview.key(rows)
    return Figure("overview", picture.svg, alt, title, found, table, heads, key, explored=picture.explored)
