"""Who beat whom on what: a row a test, a column a contender, each cell a sign and a word."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import caveat_anchor, from_to, test_page
from reportgen.campaign.declared import Quantity, Test
from reportgen.evaluation.evaluated import Caveat, FirstPlace, Result
from reportgen.evaluation.says import says_of
from reportgen.pages.limits import CaveatMark
from reportgen.pages.named import Named, named
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.traces import working
from reportgen.pages.words import words
from reportgen.prose.sentences import finding_line, short
from reportgen.wording.interval import rank_range
from reportgen.wording.language import say
from reportgen.wording.listing import and_list
from reportgen.wording.order import in_short
from reportgen.wording.reason import why_blocked, why_missing
from reportgen.wording.unit import NO_BREAK


@dataclass(frozen=True)
class GridCell:
    """`sign` is first, shared, behind, open, unranked, shown or none; `word` and `more` are read with it.

    `who` is whose cell it is, for where there is no room for a heading above.

    `aloud` says the same with names in full; `href` leads to the working of the result, "" where there is none.
    """

    who: Named
    sign: str
    word: str
    more: str
    aloud: str
    href: str
    marks: tuple[CaveatMark, ...]


@dataclass(frozen=True)
class GridRow:
    title: str
    href: str
    found: str
    marks: tuple[CaveatMark, ...]
    cells: tuple[GridCell, ...]


@dataclass(frozen=True)
class Grid:
    """`signs` are those that occur, in a fixed order, for the key.

    `many`: too many columns for a small screen; `crowd`: too many for any.
    """

    contenders: tuple[Named, ...]
    rows: tuple[GridRow, ...]
    signs: tuple[str, ...]
    many: bool
    crowd: bool


SIGNS = ("first", "shared", "behind", "open", "unranked", "shown")
COLUMNS_ON_A_PHONE, COLUMNS, LETTERS_ON_A_LINE = 5, 8, 4


def grid_of(told: Told, page: str) -> Grid:
    """The grid of the headline quantities as `page` shows it."""
    campaign = told.campaign
    rows = []
    for test in campaign.tests:
        quantity = next(q for q in test.quantities if q.id == test.headline)
        parts = dict.fromkeys(r.part for r in told.evaluation.results if r.quantity == quantity.id)
        rows += [_row(told, page, test, quantity, part) for part in parts]
    used = {cell.sign for row in rows for cell in row.cells}
    columns = tuple(named(campaign, c.id, page) for c in campaign.contenders)
    return Grid(
        contenders=columns,
        rows=tuple(rows),
        signs=tuple(s for s in SIGNS if s in used),
        many=len(columns) > COLUMNS_ON_A_PHONE,
        crowd=len(columns) > COLUMNS,
    )


def _row(told: Told, page: str, test: Test, quantity: Quantity, part: str) -> GridRow:
    campaign, evaluation = told.campaign, told.evaluation
    results = [r for r in evaluation.results if (r.quantity, r.part) == (quantity.id, part)]
    bearing = {r.contender: evaluation.caveats_on(quantity.id, r.rests_on) for r in results}
    of_all = [c for c in next(iter(bearing.values()), ()) if not c.contender]
    first = next((f for f in evaluation.firsts if (f.quantity, f.part) == (quantity.id, part)), None)
    by_contender = {r.contender: r for r in results}
    cells = []
    for c in campaign.contenders:
        own = [k for k in bearing.get(c.id, ()) if k not in of_all]
        cells.append(_cell(told, page, named(campaign, c.id, page), by_contender.get(c.id), first, own))
    return GridRow(
        title=heading(quantity, part),
        href=from_to(page, test_page(campaign.id, test.id)),
        found=finding_line(campaign, evaluation, quantity.id, part),
        marks=_marks(of_all),
        cells=tuple(cells),
    )


def _cell(told: Told, page: str, who: Named, r: Result | None, first: FirstPlace | None, own: list[Caveat]) -> GridCell:
    if r is None:
        return GridCell(who, "none", words("cell.missing"), "", words("cell.missing"), "", ())
    href = working(told.campaign, page, r.test, r.quantity, r.contender, r.part)
    at = _marks(own)
    if r.missing:
        said = why_missing(r.missing)
        return GridCell(who, "none", said, "", said, href, at)
    if r.blocked:
        word = words("cell.unranked")
        return GridCell(who, "unranked", word, short(r), f"{word}: {why_blocked(r.blocked)}", href, at)
    if r.kind == "order":
        said = short(r)
        return GridCell(who, "shown", _stood(told, r), "", words("cell.value.aloud", value=said), href, at)
    if r.rank is None or first is None:
        return GridCell(who, "shown", short(r), "", words("cell.value.aloud", value=short(r)), href, at)
    if first.reason.code == "no-scatter-known" and not any(_beaten(told, r)):
        return GridCell(who, "open", words("cell.open"), short(r), words("cell.open.aloud"), href, at)
    return _ranked(told, who, r, first, href, at)


def _ranked(told: Told, who: Named, r: Result, first: FirstPlace, href: str, at: tuple[CaveatMark, ...]) -> GridCell:
    beats, behind = _beaten(told, r)
    place = rank_range(r.rank) if r.rank else ""
    sign = "first" if first.winner == r.contender else "shared" if r.contender in first.may_be_first else "behind"
    if beats:
        more = words("cell.beats", letters=_letters(told, beats))
        said = words("cell.beats.aloud", names=_names(told, beats))
    elif behind:
        more = words("cell.behind", letters=_letters(told, behind))
        said = words("cell.behind.aloud", names=_names(told, behind))
    else:
        more = said = words("cell.all-tied")
    if r.running:
        more, said = words("cell.running.more", more=more), words("cell.running.more", more=said)
    of = str(sum(1 for o in told.evaluation.results if (o.quantity, o.part) == (r.quantity, r.part) and o.rank))
    return GridCell(who, sign, place, more, f"{words('cell.rank.aloud', rank=place, of=of)}, {said}", href, at)


def _beaten(told: Told, r: Result) -> tuple[list[str], list[str]]:
    """Whom this result beats and whom it is behind, resolved pairs alone."""
    beats: list[str] = []
    behind: list[str] = []
    for c in told.evaluation.comparisons:
        if (c.quantity, c.part) == (r.quantity, r.part) and c.resolved and r.contender in (c.first, c.second):
            other = c.second if c.first == r.contender else c.first
            (beats if c.favours == r.contender else behind).append(other)
    return beats, behind


def _stood(told: Told, r: Result) -> str:
    """Less or more than whom, or about like whom, by letters: there is no room for names in a cell."""
    by_way: dict[str, list[str]] = {}
    for stands in r.stands:
        by_way.setdefault(stands.told, []).append(stands.other)
    return say("order.several").join(in_short(way, _letters(told, others)) for way, others in by_way.items())


def _letters(told: Told, contenders: list[str]) -> str:
    """Few letters keep to one line; many may break."""
    between = NO_BREAK if len(contenders) <= LETTERS_ON_A_LINE else " "
    return between.join(named(told.campaign, c, "").letter for c in contenders)


def _names(told: Told, contenders: list[str]) -> str:
    return and_list([told.campaign.contender(c).title for c in contenders])


def _marks(caveats: list[Caveat]) -> tuple[CaveatMark, ...]:
    return tuple(CaveatMark(str(c.number), f"#{caveat_anchor(c.number)}", says_of(c)) for c in caveats)
