"""What was measured of two contenders, a row a quantity: both values, the decision, and its reason."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import from_to, side_by_side_page, test_page
from reportgen.evaluation.evaluated import Comparison
from reportgen.pages.ahead import way_to
from reportgen.pages.figures_shown import Printed
from reportgen.pages.limits import CaveatMark, marks
from reportgen.pages.named import Named, named
from reportgen.pages.pairs import PairShown
from reportgen.pages.side.laid import Laid, Line
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.sentences import pair_cell
from reportgen.theme import Link
from reportgen.wording.decision import direction

GROUPS = ("first", "second", "nothing-matters", "close", "unknown", "none")
_BY_DECISION = {
    "no difference that matters": "nothing-matters",
    "too close to call": "close",
    "not enough to say": "unknown",
}


@dataclass(frozen=True)
class SideCell:
    """One value, the way to its workings, and the caveats on it."""

    figure: Printed
    href: str
    marks: tuple[CaveatMark, ...]


@dataclass(frozen=True)
class SideRow:
    """A quantity of two contenders. `way` says which direction is better, "" for neither: then nothing is decided.

    `ahead` is who is resolved better, None where nobody is; `group` is one of `GROUPS`; `reason` leads to the pair on
    the test's page.
    """

    anchor: str
    title: str
    href: str
    way: str
    first: SideCell | None
    second: SideCell | None
    ahead: Named | None
    decision: str
    difference: str
    means: str
    why: str
    settle: str
    reason: str
    group: str


@dataclass(frozen=True)
class InShort:
    """What was decided alike: its heading, and the ways to the rows."""

    name: str
    rows: tuple[Link, ...]


def rows_of(told: Told, laid: Laid, first: str, second: str) -> tuple[SideRow, ...]:
    """Every quantity that either was measured on, in the order it is laid out in."""
    return tuple(_row(told, line, first, second) for line in laid.lines if line.values.keys() & {first, second})


def in_short(told: Told, rows: tuple[SideRow, ...], first: str, second: str) -> tuple[InShort, ...]:
    """The rows by what was decided; groups without any stay away."""
    names = {"first": told.campaign.contender(first).title, "second": told.campaign.contender(second).title}
    made = []
    for group in GROUPS:
        of = tuple(Link(row.title, f"#{row.anchor}") for row in rows if row.group == group)
        if of:
            title = words("side.ahead", name=names[group]) if group in names else words(f"side.{group}")
            made.append(InShort(title, of))
    return tuple(made)


def _row(told: Told, line: Line, first: str, second: str) -> SideRow:
    campaign = told.campaign
    page = side_by_side_page(campaign.id, first, second)
    found = line.pairs.get((first, second))
    decided = line.has_direction
    comparison, pair = found or (None, None)
    return SideRow(
        anchor="-".join(filter(None, ("on", line.quantity.id, line.part))),
        title=heading(line.quantity, line.part),
        href=line.href,
        way=direction(line.quantity.better) if decided else "",
        first=_cell(line, first),
        second=_cell(line, second),
        ahead=named(campaign, comparison.favours, page) if comparison and comparison.favours else None,
        decision="" if not decided else pair.decision if pair else words("side.none"),
        difference=pair.difference if pair else "",
        means=_means(told, line, pair, first, second) if decided else "",
        why=pair.why if pair else "",
        settle=pair.settle if pair else "",
        reason=way_to(campaign, page, comparison) if comparison else "",
        group=_group(comparison, first) if decided else "",
    )


def _means(told: Told, line: Line, pair: PairShown | None, first: str, second: str) -> str:
    """What was found between the two, or why they weren't compared."""
    if pair is not None:
        return pair.means
    return pair_cell(told.campaign, told.evaluation, line.quantity.id, first, second, line.part).means


def _cell(line: Line, contender: str) -> SideCell | None:
    value = line.values.get(contender)
    if value is None:
        return None
    return SideCell(value.figure, value.href, marks(value.caveats))


def _group(comparison: Comparison | None, first: str) -> str:
    if comparison is None:
        return "none"
    by_decision = _BY_DECISION.get(comparison.decision)
    return by_decision or ("first" if comparison.favours == first else "second")


def leads_to_tests(told: Told, page: str, tests: list[str]) -> tuple[Link, ...]:
    """The ways from `page` to these tests, in the campaign's order."""
    campaign = told.campaign
    return tuple(Link(heading(t), from_to(page, test_page(campaign.id, t.id))) for t in campaign.tests if t.id in tests)
