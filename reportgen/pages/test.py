"""A test's page: what was found, the chart, the table, the caveats, what it can't tell, the workings."""

from __future__ import annotations

from dataclasses import dataclass, replace

from reportgen.addresses import (
    across_anchor,
    campaign_page,
    from_to,
    method_page,
    pairs_anchor,
    quantity_anchor,
    test_page,
)
from reportgen.campaign.channels import channels_of
from reportgen.campaign.declared import Quantity, Test
from reportgen.charts.figure import Figure
from reportgen.charts.order import in_order
from reportgen.charts.traces import address_of
from reportgen.evaluation.evaluated import Caveat, FirstPlace, ScatterUsed
from reportgen.finding import Place
from reportgen.pages.conditions import ConditionsShown, conditions_shown
from reportgen.pages.constants import ConstantShown, causes_led, constants_of, scatter_anchor
from reportgen.pages.equations import formula_set, leads, said_beside
from reportgen.pages.framing import frame_of
from reportgen.pages.laboratory import LaboratoryShown, laboratory_shown
from reportgen.pages.led import led_on
from reportgen.pages.limits import CaveatMark, CaveatShown, marks, shown
from reportgen.pages.math_pieces import Math
from reportgen.pages.pairs import PairShown, pairs_of, stricter
from reportgen.pages.photos import FilmShown, PhotoShown, film_shown, photos_shown
from reportgen.pages.result_table import ResultTable, result_table
from reportgen.pages.seen_on_bench import PassSeen, seen_on_bench
from reportgen.pages.titles import formula_of, heading, told_in_words
from reportgen.pages.told import Page, Told
from reportgen.pages.traces import LineLink, in_campaign, line_link
from reportgen.pages.words import words
from reportgen.pages.workings import Working, working_of
from reportgen.prose.amounts import size
from reportgen.prose.hanging import hangs
from reportgen.prose.overlapping import overlapping_line
from reportgen.prose.scatter_seen import past_led, scatter_seen
from reportgen.prose.sentences import exclusion_line, finding_line, first_place_led
from reportgen.prose.together import pooled_line, scatter_line
from reportgen.theme import Frame, Link, render
from reportgen.wording.count import degrees
from reportgen.wording.listing import and_list, commas
from reportgen.wording.sentence import in_a_row


@dataclass(frozen=True)
class QuantityShown:
    """One quantity (or one part of it). `limits` are caveats about all of it; one contender's stand in the table.
    `overlap` is why ranges may overlap and a gap still count, said before any range is seen; "" where none does.

    `traces` are those of the channels it is the first on its page to look along.
    """

    id: str
    anchor: str
    title: str
    finding: tuple[Link, ...]
    overlap: str
    hangs: str
    marks: tuple[CaveatMark, ...]
    limits: tuple[CaveatShown, ...]
    figure: Figure | None
    table: ResultTable
    traces: tuple[Figure, ...]
    left_out: tuple[str, ...]
    pairs: tuple[PairShown, ...]
    pairs_note: str
    pairs_anchor: str
    formula: str
    in_words: bool
    set: tuple[Math, ...]
    beside: str
    leads: tuple[Link, ...]
    constants: tuple[ConstantShown, ...]
    scatter: str
    scatter_anchor: str
    says: str
    past: tuple[Link, ...]
    scatter_seen: str
    workings: tuple[Working, ...]


@dataclass(frozen=True)
class TestView:
    """What the template `test.html` is told."""

    __test__ = False

    frame: Frame
    title: str
    why: str
    quantities: tuple[QuantityShown, ...]
    has_budgets: bool
    several: bool
    cautions: tuple[str, ...]
    cannot_tell: tuple[str, ...]
    conditions: ConditionsShown | None
    held_the_same: str
    method: Link | None
    across: Link | None
    how: Link
    laboratory: LaboratoryShown | None
    sources: tuple[LineLink, ...]
    photos: tuple[PhotoShown, ...]
    film: FilmShown | None
    seen: tuple[PassSeen, ...]
    others: tuple[Link, ...]


def test_pages(told: Told) -> tuple[Page, ...]:
    """One page a test."""
    made = []
    for test in told.campaign.tests:
        page = test_page(told.campaign.id, test.id)
        made.append(Page(page, render(told.theme, "test.html", test_view(told, test), page)))
    return tuple(made)


def test_view(told: Told, test: Test) -> TestView:
    """The view of one test."""
    campaign = told.campaign
    page = test_page(campaign.id, test.id)
    method = campaign.methods.get(f"{test.method}.{test.method_version}")
    quantities = _quantities(told, test, page)
    files = dict.fromkeys(r.at.file for r in told.readings.of_test(test.id))
    return TestView(
        frame=frame_of(told, page, heading(test), finding_line(campaign, told.evaluation, test.headline)),
        title=heading(test),
        why=test.why,
        quantities=quantities,
        has_budgets=any(w.budget for q in quantities for w in q.workings),
        several=len(quantities) > 1,
        cautions=tuple(dict.fromkeys((*campaign.cautions, *(method.cautions if method else ()), *test.cautions))),
        cannot_tell=tuple(dict.fromkeys((*(method.cannot_tell if method else ()), *test.cannot_tell))),
        conditions=conditions_shown(told, page, test),
        held_the_same=and_list(tuple(dict.fromkeys((*campaign.held_the_same, *test.held_the_same)))),
        method=Link(method.title, from_to(page, method_page(method.id, method.version))) if method else None,
        across=_across(told, test, page),
        how=Link(heading(test), from_to(page, f"{campaign_page(campaign.id, 'method')}#{test.id}")),
        laboratory=laboratory_shown(told, test, page),
        sources=tuple(LineLink(in_campaign(campaign, f), line_link(told, page, _top(f)).href) for f in files),
        photos=photos_shown(campaign, page, test.photos),
        film=film_shown(campaign, page, test.film, test.photos),
        seen=seen_on_bench(told, test, page),
        others=tuple(
            Link(heading(t), from_to(page, test_page(campaign.id, t.id)), t.id == test.id) for t in campaign.tests
        ),
    )


def _across(told: Told, test: Test, page: str) -> Link | None:
    """The way to what any campaign measured by the same version of its method; None where this one measured nothing."""
    of = [r for r in told.evaluation.results if r.quantity == test.headline and not r.missing]
    if not test.method or not of:
        return None
    there = f"{method_page(test.method, test.method_version)}#{across_anchor(test.headline, of[0].part)}"
    return Link(words("across"), from_to(page, there))


def _top(file: str) -> Place:
    return Place(file)


def _quantities(told: Told, test: Test, page: str) -> tuple[QuantityShown, ...]:
    """Headline first, the others in their order; a caveat stands in full with the first quantity it bears on."""
    ordered = sorted(test.quantities, key=lambda q: q.id != test.headline)
    told_before: set[int] = set()
    drawn = {c.name: f for c in test.columns if (f := told.figures.get(address_of(test.id, c.name))) is not None}
    made = []
    for quantity in ordered:
        of = [r for r in told.evaluation.results if r.quantity == quantity.id]
        for part in dict.fromkeys(r.part for r in of):
            bearing = _bearing(told, quantity, part)
            fresh = [c for c in bearing if c.number not in told_before]
            told_before |= {c.number for c in fresh}
            along = [name for name in channels_of(quantity.formula) if name in drawn]
            traces = tuple(drawn.pop(name) for name in along)
            made.append(replace(_quantity(told, page, quantity, part, bearing, fresh), traces=traces))
    return tuple(made)


def _bearing(told: Told, quantity: Quantity, part: str) -> list[Caveat]:
    rests = [r.rests_on for r in told.evaluation.results if (r.quantity, r.part) == (quantity.id, part)]
    found = {c.number: c for keys in rests for c in told.evaluation.caveats_on(quantity.id, keys)}
    return [found[n] for n in sorted(found)]


def _quantity(
    told: Told, page: str, quantity: Quantity, part: str, bearing: list[Caveat], fresh: list[Caveat]
) -> QuantityShown:
    address = quantity_anchor(quantity.id, part)
    results = [r for r in told.evaluation.results if (r.quantity, r.part) == (quantity.id, part)]
    table = result_table(told, page, quantity, part, fresh)
    in_rows = {limit.number for limit in table.limits}
    led = causes_led(told, page, quantity, part)
    return QuantityShown(
        id=quantity.id,
        anchor=address,
        title=table.title,
        finding=led_on(page, first_place_led(told.campaign, told.evaluation, quantity.id, part)),
        overlap=overlapping_line(told.campaign, told.evaluation, quantity.id, part),
        hangs=hangs(told.campaign, _first(told, quantity.id, part)),
        marks=marks(bearing),
        limits=tuple(shown(told.campaign, c, page) for c in fresh if str(c.number) not in in_rows),
        figure=told.figures.get(address),
        table=table,
        traces=(),
        left_out=_left_out(told, quantity.id, part, bearing),
        pairs=pairs_of(told, page, quantity, part),
        pairs_note=stricter(told, quantity, part),
        pairs_anchor=pairs_anchor(quantity.id, part),
        formula=formula_of(quantity),
        in_words=told_in_words(quantity),
        set=formula_set(told, quantity),
        beside=said_beside(quantity),
        leads=leads(told, page, quantity),
        constants=constants_of(told, quantity, address),
        scatter=_scatter(told, quantity, part),
        scatter_anchor=scatter_anchor(address),
        says=quantity.says,
        past=led_on(page, past_led(told.campaign, told.evaluation, quantity.id, part)),
        scatter_seen=scatter_seen(told.campaign, told.evaluation, quantity.id, part),
        workings=tuple(working_of(told, page, quantity, r, led) for r in in_order(quantity, results)),
    )


def _first(told: Told, quantity: str, part: str) -> FirstPlace | None:
    return next((f for f in told.evaluation.firsts if (f.quantity, f.part) == (quantity, part)), None)


def _left_out(told: Told, quantity: str, part: str, bearing: list[Caveat]) -> tuple[str, ...]:
    said = [exclusion_line(told.campaign, told.evaluation, c, quantity, part) for c in bearing if c.sort == "exclusion"]
    return tuple(filter(None, said))


def _scatter(told: Told, quantity: Quantity, part: str) -> str:
    """The scatter the quantity was judged with; empty where it is in proportion to the value, or in no unit."""
    used = next((s for s in told.evaluation.scatters if (s.quantity, s.part) == (quantity.id, part)), None)
    rule = told.campaign.test(quantity.test).scatter
    if used is None or rule == "relative":
        return ""
    if rule == "own" and used.found.by_name:
        return _of_each(told, used, quantity.unit)
    found = used.found
    if found.sd is None or found.degrees is None:
        return words("scatter.none")
    results = [r for r in told.evaluation.results if (r.quantity, r.part) == (quantity.id, part)]
    if found.origin == "passes" and any(r.by_specimens for r in results):
        return words("scatter.known.specimens", sd=size(found.sd, quantity.unit), degrees=degrees(found.degrees))
    pooled = pooled_line(told.campaign, results, used)
    origin = words(f"scatter.{found.origin}{'.past' if found.declared_by == 'past campaigns' else ''}")
    line = next((c for r in results if r.estimate and (c := scatter_line(r.estimate)) is not None), None)
    if line is not None and line.behind is not None and abs(line.behind.u - found.sd) > 1e-9 * found.sd and pooled:
        gaps = words("scatter.known.gaps", sd=size(found.sd, quantity.unit), degrees=degrees(found.degrees))
        return in_a_row((gaps, pooled))
    known = words("scatter.known", sd=size(found.sd, quantity.unit), degrees=degrees(found.degrees), origin=origin)
    return in_a_row((known, pooled))


def _of_each(told: Told, used: ScatterUsed, unit: str) -> str:
    """The scatter of each contender, where each has its own."""
    each = [
        words("scatter.of-one", name=c.title, sd=size(sd, unit), degrees=degrees(free))
        for c in told.campaign.contenders
        if c.id in used.found.by_name
        for sd, free in [used.found.by_name[c.id]]
    ]
    return words("scatter.each", each=commas(each))
