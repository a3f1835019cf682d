"""Who beat whom on what: a row a test, a column a contender, each cell a sign and a word."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from reportgen.addresses import from_to, test_page
from reportgen.campaign.declared import Quantity, Test
from reportgen.evaluation.evaluated import Caveat, Result
from reportgen.pages.ahead import Ahead, ahead_of, way_to_all
from reportgen.pages.limits import CaveatMark, marks
from reportgen.pages.named import Named, named
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.traces import working
from reportgen.pages.words import words
from reportgen.prose.amounts import short, typed_apart
from reportgen.prose.known_of_ties import largest_gap_hidden, none_that_matters
from reportgen.prose.places import Place, placed
from reportgen.wording.count import whole
from reportgen.wording.decision import direction
from reportgen.wording.interval import rank_range
from reportgen.wording.language import say
from reportgen.wording.listing import labelled
from reportgen.wording.order import in_short
from reportgen.wording.reason import why_blocked, why_missing
from reportgen.wording.unit import NO_BREAK

NOBODY = Ahead((), ())


@dataclass(frozen=True)
class GridCell:
    """`sign` is first, shared, behind, once, open, unranked, shown or none; `word` and `more` are read with it.

    `who` is whose cell it is, for where there is no room for a heading above. `aloud` says the word with names in full;
    `href` leads to the working of the result, "" where there is none. `ahead`: whom it beats and whom it is behind,
    each with the way to the pair that shows it. `brief` stands for `more` where there is no room, "" for nothing.
    """

    who: Named
    sign: str
    word: str
    more: str
    aloud: str
    href: str
    marks: tuple[CaveatMark, ...]
    ahead: Ahead = NOBODY
    brief: str = ""


@dataclass(frozen=True)
class LevelCell:
    """One cell across a row in which nobody can be told from anybody: the places, why, and the way to all pairs."""

    word: str
    more: str
    href: str
    columns: str


@dataclass(frozen=True)
class GridRow:
    """`way` says which direction is better, "" for neither; `level` stands in place of the cells where all tie.

    `layout`: "told" where places alone say who is ahead of whom, so that a phone may leave that out; "undecided" where
    no cell holds a place, so that the row may say that once; else "".
    """

    title: str
    href: str
    way: str
    marks: tuple[CaveatMark, ...]
    cells: tuple[GridCell, ...]
    level: LevelCell | None = None
    layout: Literal["told", "undecided", ""] = ""


@dataclass(frozen=True)
class Grid:
    """`signs` are those that occur, in a fixed order, for the key. `open-once` stands in it for `open` where all that
    is open was run once. `places`: whether any cell holds a place.

    `many`: too many columns for a small screen; `crowd`: too many for any.
    """

    contenders: tuple[Named, ...]
    rows: tuple[GridRow, ...]
    signs: tuple[str, ...]
    places: bool
    many: bool
    crowd: bool


SIGNS = ("first", "shared", "behind", "once", "open", "open-once", "unranked")
COLUMNS_ON_A_PHONE, COLUMNS = 5, 8
LONG = 24  # letters of a reason that a phone has no room for in a cell
PLAIN = (
    *("one reading", "timed", "weighed before and after", "peak", "level", "level over background"),
    *("run to a limit", "logged", "laboratory"),
)  # kinds whose values a cell across the row may leave to the test's page; counts, grades and tries are too telling


def grid_of(told: Told, page: str) -> Grid:
    """The grid of the headline quantities as `page` shows it."""
    campaign = told.campaign
    of_tests: list[tuple[Test, GridRow]] = []
    for test in campaign.tests:
        quantity = next(q for q in test.quantities if q.id == test.headline)
        parts = dict.fromkeys(r.part for r in told.evaluation.results if r.quantity == quantity.id)
        of_tests += [(test, _row(told, page, test, quantity, part)) for part in parts]
    rows = [row for _, row in of_tests]
    used = {cell.sign for row in rows for cell in row.cells} | {"shared" for row in rows if row.level}
    if "open" in used and not any(_repeated(told, t.headline) for t, row in of_tests if _has_open(row)):
        used = {"open-once" if sign == "open" else sign for sign in used}
    columns = tuple(named(campaign, c.id, page) for c in campaign.contenders)
    return Grid(
        contenders=columns,
        rows=tuple(rows),
        signs=tuple(s for s in SIGNS if s in used),
        places=bool(used & {"first", "shared", "behind"}),
        many=len(columns) > COLUMNS_ON_A_PHONE,
        crowd=len(columns) > COLUMNS,
    )


def _has_open(row: GridRow) -> bool:
    return any(cell.sign == "open" for cell in row.cells)


def _repeated(told: Told, quantity: str) -> bool:
    """Whether anybody ran more than once."""
    return any(r.passes > 1 for r in told.evaluation.results if r.quantity == quantity)


def _row(told: Told, page: str, test: Test, quantity: Quantity, part: str) -> GridRow:
    campaign, evaluation = told.campaign, told.evaluation
    results = [r for r in evaluation.results if (r.quantity, r.part) == (quantity.id, part)]
    bearing = {r.contender: evaluation.caveats_on(quantity.id, r.rests_on) for r in results}
    of_all = [c for c in next(iter(bearing.values()), ()) if not c.contender]
    first = next((f for f in evaluation.firsts if (f.quantity, f.part) == (quantity.id, part)), None)
    place = placed(campaign, evaluation, first) if first else None
    by_contender = {r.contender: r for r in results}
    cells = []
    for c in campaign.contenders:
        own = [k for k in bearing.get(c.id, ()) if k not in of_all]
        cells.append(_cell(told, page, named(campaign, c.id, page), by_contender.get(c.id), place, own))
    return GridRow(
        title=heading(quantity, part),
        href=from_to(page, test_page(campaign.id, test.id)),
        way=direction(quantity.better) if first else "",
        marks=marks(of_all),
        cells=tuple(cells),
        level=_level(told, page, place, cells) if place else None,
        layout=_layout(told, results, cells),
    )


def _layout(told: Told, results: list[Result], cells: list[GridCell]) -> Literal["told", "undecided", ""]:
    """Places say all where two of them overlap just when nobody of the two is shown to be ahead."""
    if any(cell.sign == "open" for cell in cells):
        return "" if any(cell.sign in ("first", "shared", "behind") for cell in cells) else "undecided"
    ranks = {r.contender: r.rank for r in results if r.rank}
    of = [
        c
        for c in told.evaluation.comparisons
        if results and (c.quantity, c.part) == (results[0].quantity, results[0].part)
    ]
    pairs = [(c.resolved, ranks[c.first], ranks[c.second]) for c in of if c.first in ranks and c.second in ranks]
    apart = all(resolved == (one[1] < two[0] or two[1] < one[0]) for resolved, one, two in pairs)
    return "told" if pairs and apart else ""


def _level(told: Told, page: str, place: Place, cells: list[GridCell]) -> LevelCell | None:
    """The one cell of a row where all are ranked and none is told from another; None where a cell has more to say."""
    everyone = place.sort == "tied" and place.ranked == len(told.campaign.contenders) == len(place.s.ranked)
    if not everyone or any(cell.marks for cell in cells) or len(cells) > COLUMNS or place.s.quantity.kind not in PLAIN:
        return None
    first = place.first
    if none_that_matters(place.s) and place.s.quantity.matters is not None:
        more = words("cell.level.nothing-matters", matters=typed_apart(place.s.quantity.matters))
    elif gap := largest_gap_hidden(place.s):
        more = words("cell.level.hidden", gap=gap)
    else:
        more = words("cell.level")
    way = way_to_all(told.campaign, page, first.test, first.quantity, first.part)
    return LevelCell(rank_range((1, place.ranked)), more, way, whole(place.ranked))


def _cell(told: Told, page: str, who: Named, r: Result | None, place: Place | None, own: list[Caveat]) -> GridCell:
    if r is None:
        return GridCell(who, "none", words("cell.missing"), "", words("cell.missing"), "", ())
    href = working(told.campaign, page, r.test, r.quantity, r.contender, r.part)
    at = marks(own)
    if r.missing:
        said = why_missing(r.missing)
        brief = words("cell.no-result") if len(said) > LONG else ""
        return GridCell(who, "none", said, "", said, href, at, brief=brief)
    if r.blocked:
        word = words("cell.unranked")
        return GridCell(who, "unranked", word, short(r), labelled(word, why_blocked(r.blocked)), href, at)
    if r.kind == "order":
        said = short(r)
        return GridCell(who, "shown", _stood(told, r), "", words("cell.value.aloud", value=said), href, at)
    if r.rank is None or place is None or place.ranked == 1:  # there is nobody to be ahead of
        return GridCell(who, "shown", short(r), "", words("cell.value.aloud", value=short(r)), href, at)
    ahead = ahead_of(told, page, r)
    if place.sort == "once" and not (ahead.beats or ahead.behind):
        if r.contender in place.front:
            best = say(f"place.{place.s.quantity.better}")
            more = words("cell.once", value=short(r))
            aloud = words("cell.once.aloud", place=best)
            return GridCell(who, "once", best, more, aloud, href, at, brief=short(r))
        return GridCell(who, "open", words("cell.open"), short(r), words("cell.open.aloud", value=short(r)), href, at)
    return _ranked(told, who, r, place, href, at, ahead)


def _ranked(
    told: Told, who: Named, r: Result, place: Place, href: str, at: tuple[CaveatMark, ...], ahead: Ahead
) -> GridCell:
    first = place.first
    ranks = rank_range(r.rank) if r.rank else ""
    sign = "first" if first.winner == r.contender else "shared" if r.contender in first.may_be_first else "behind"
    more = "" if ahead.beats or ahead.behind else words("cell.all-tied")
    if r.kind != "measured":
        more = words("cell.with-value", value=short(r), more=more) if more else short(r)
    if r.running:
        more = words("cell.running.more", more=more) if more else words("cell.running")
    brief = short(r) if r.kind != "measured" and not r.running else ""
    aloud = words("cell.rank.aloud", rank=ranks, of=whole(place.ranked))
    return GridCell(who, sign, ranks, more, aloud, href, at, ahead, brief if brief != more else "")


def _stood(told: Told, r: Result) -> str:
    """Less or more than whom, or about like whom, by letters: there is no room for names in a cell."""
    by_way: dict[str, list[str]] = {}
    for stands in r.stands:
        by_way.setdefault(stands.told, []).append(stands.other)
    return say("order.several").join(in_short(way, _letters(told, others)) for way, others in by_way.items())


def _letters(told: Told, contenders: list[str]) -> str:
    return NO_BREAK.join(named(told.campaign, c, "").letter for c in contenders)
