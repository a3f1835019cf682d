"""Two contenders side by side: what was measured of both, what was decided, what they are, what that leaves open."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import from_to, side_by_side_index, side_by_side_page
from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Caveat
from reportgen.pages.beside import way_beside
from reportgen.pages.framing import frame_of
from reportgen.pages.limits import CaveatShown, shown
from reportgen.pages.named import Named, named
from reportgen.pages.side.laid import Laid
from reportgen.pages.side.papers import SideClaims, SideFact, claims_beside, facts_of
from reportgen.pages.side.rows import InShort, SideRow, in_short, leads_to_tests, rows_of
from reportgen.pages.told import Page, Told
from reportgen.pages.words import words
from reportgen.pages.worth import worth_beside
from reportgen.prose.missed import missed
from reportgen.theme import Frame, Link, render


@dataclass(frozen=True)
class CannotTell:
    """What can't be told, and the tests it is said of; none for the whole comparison."""

    says: str
    tests: tuple[Link, ...]


@dataclass(frozen=True)
class Others:
    """Whom else one of the two stands beside."""

    who: Named
    beside: tuple[Link, ...]


@dataclass(frozen=True)
class PairView:
    """What `side-by-side.html` is told. `missed`: conditions of the verdict that one is shown to miss; `weighed`: who
    of the two is worth more, "" where nothing was weighed. `described` are rows in which nothing is better or worse."""

    frame: Frame
    first: Named
    second: Named
    missed: tuple[str, ...]
    weighed: str
    in_short: tuple[InShort, ...]
    rows: tuple[SideRow, ...]
    described: tuple[SideRow, ...]
    facts: tuple[SideFact, ...]
    claims: tuple[SideClaims, ...]
    limits: tuple[CaveatShown, ...]
    cannot_tell: tuple[CannotTell, ...]
    others: tuple[Others, ...]
    choose: Link


def pair_pages(told: Told, laid: Laid) -> tuple[Page, ...]:
    """One page a pair."""
    made = []
    for first, second in laid.pairs:
        page = side_by_side_page(told.campaign.id, first, second)
        made.append(Page(page, render(told.theme, "side-by-side.html", pair_view(told, laid, first, second), page)))
    return tuple(made)


def pair_view(told: Told, laid: Laid, first: str, second: str) -> PairView:
    """The view of one pair, `first` standing first in the campaign."""
    campaign = told.campaign
    page = side_by_side_page(campaign.id, first, second)
    both = (campaign.contender(first), campaign.contender(second))
    names = {"first": both[0].title, "second": both[1].title}
    rows = rows_of(told, laid, first, second)
    choose = Link(words("side.choose"), from_to(page, side_by_side_index(campaign.id)))
    return PairView(
        frame=frame_of(
            told,
            page,
            words("side.title", **names),
            words("side.description", campaign=campaign.title, **names),
            (choose,),
        ),
        first=named(campaign, first, page),
        second=named(campaign, second, page),
        missed=tuple(filter(None, (missed(campaign, told.evaluation, c.id) for c in both))),
        weighed=worth_beside(told, first, second),
        in_short=in_short(told, rows, first, second),
        rows=tuple(row for row in rows if row.way),
        described=tuple(row for row in rows if not row.way),
        facts=facts_of(both),
        claims=claims_beside(told, page, both),
        limits=tuple(shown(campaign, c, page) for c in _bearing(told, laid, first, second)),
        cannot_tell=_cannot_tell(told, page, laid, first, second),
        others=tuple(_others(campaign, page, one, other) for one, other in ((first, second), (second, first))),
        choose=choose,
    )


def _bearing(told: Told, laid: Laid, first: str, second: str) -> list[Caveat]:
    """The caveats on any result of the two, or on a claim of theirs, in the order of their numbers."""
    found = {
        caveat.number: caveat
        for line in laid.lines
        for contender in (first, second)
        if contender in line.values
        for caveat in line.values[contender].caveats
    }
    for outcome in told.evaluation.claims:
        if outcome.contender in (first, second):
            on = told.evaluation.caveats_on(outcome.quantity, outcome.rests_on)
            found |= {caveat.number: caveat for caveat in on}
    return [found[n] for n in sorted(found)]


def _cannot_tell(told: Told, page: str, laid: Laid, first: str, second: str) -> tuple[CannotTell, ...]:
    """What the campaign, its methods and its tests say can't be told, each once."""
    campaign = told.campaign
    said: dict[str, list[str]] = {line: [] for line in campaign.cannot_tell}
    tested = {line.test.id for line in laid.lines if line.values.keys() & {first, second}}
    for test in (t for t in campaign.tests if t.id in tested):
        method = campaign.methods.get(f"{test.method}.{test.method_version}")
        for line in dict.fromkeys((*(method.cannot_tell if method else ()), *test.cannot_tell)):
            said.setdefault(line, []).append(test.id)
    return tuple(
        CannotTell(line, () if line in campaign.cannot_tell else leads_to_tests(told, page, tests))
        for line, tests in said.items()
    )


def _others(campaign: Campaign, page: str, one: str, other: str) -> Others:
    beside = tuple(
        Link(c.title, way_beside(campaign, page, one, c.id)) for c in campaign.contenders if c.id not in (one, other)
    )
    return Others(named(campaign, one, page), beside)
