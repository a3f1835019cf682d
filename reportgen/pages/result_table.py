"""The table of one quantity's results: by place, brackets over those that can't be told apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.addresses import pairs_anchor
from reportgen.campaign.declared import Quantity
from reportgen.charts.order import in_order
from reportgen.charts.ties import tied
from reportgen.evaluation.evaluated import Caveat, Result
from reportgen.pages.figures_shown import Printed, printed, rank_shown, unit_of, why_unranked
from reportgen.pages.limits import CaveatMark, CaveatShown, marks, shown
from reportgen.pages.named import Named, named
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.traces import working
from reportgen.pages.words import words
from reportgen.prose.draws import draws_line
from reportgen.prose.hardly_known import hardly_known_line
from reportgen.prose.sentences import also_line, covers_line, instrument_line, lost_line
from reportgen.wording.count import whole
from reportgen.wording.decision import direction
from reportgen.wording.listing import or_list

MOST_LANES = 4
MOST_ROWS_DOWN = 12


@dataclass(frozen=True)
class ResultRow:
    """One contender's line. `lanes` are the pieces of the brackets past it: "top", "tick", "through", "bottom", "none".

    `marks` are of caveats that bear on it and not on all. `joined` is its piece of the hairline to the side column:
    "" for none, "only", "top", "through" (past it), "tick" or "bottom". `reasons` leads to the pairs behind its place.
    """

    contender: Named
    lanes: tuple[str, ...]
    tied: str
    passes: str
    figure: Printed
    href: str
    rank: str
    reasons: str
    unranked: str
    marks: tuple[CaveatMark, ...]
    joined: str


@dataclass(frozen=True)
class ResultTable:
    """`ranked`, `intervals` and `passes` (not where each has one at most) say whether those columns are there; `notes`
    stand under the table.

    `marks` are of the caveats that bear on every row; `limits` are those about one row each, in full, in the order of
    the rows, and `limits_from` is how many rows stand above the first of them (at most `MOST_ROWS_DOWN`).
    """

    title: str
    unit: str
    direction: str
    ranked: bool
    intervals: bool
    passes: bool
    lanes: int
    limits: tuple[CaveatShown, ...]
    limits_from: int
    marks: tuple[CaveatMark, ...]
    rows: tuple[ResultRow, ...]
    notes: tuple[str, ...]
    said: bool = False  # results are said in words of any length


def result_table(told: Told, page: str, quantity: Quantity, part: str, in_full: Sequence[Caveat]) -> ResultTable:
    """The table of `quantity` on `page`; caveats in `in_full` that are about one contender stand beside it."""
    campaign, evaluation = told.campaign, told.evaluation
    results = in_order(quantity, [r for r in evaluation.results if (r.quantity, r.part) == (quantity.id, part)])
    bearing = {r.contender: evaluation.caveats_on(quantity.id, r.rests_on) for r in results}
    of_all = [c for c in next(iter(bearing.values()), ()) if all(c in found for found in bearing.values())]
    limits = [
        tuple(shown(campaign, c, page) for c in bearing[r.contender] if c in in_full and c.contender == r.contender)
        for r in results
    ]
    joined = _joined([bool(of) for of in limits])
    lanes = _lanes(told, quantity, part, results)
    compared = any((c.quantity, c.part) == (quantity.id, part) for c in evaluation.comparisons)
    rows = []
    for n, (r, figure) in enumerate(zip(results, printed(results), strict=True)):
        own = [c for c in bearing[r.contender] if c not in of_all]
        rows.append(
            ResultRow(
                contender=named(campaign, r.contender, page),
                lanes=lanes[n],
                tied=tied_words(told, quantity, part, r.contender) if r.rank else "",
                passes="" if quantity.count_of else _passes(r),
                figure=figure,
                href=working(campaign, page, r.test, r.quantity, r.contender, r.part),
                rank=rank_shown(r),
                reasons=f"#{pairs_anchor(quantity.id, part)}" if compared and r.rank else "",
                unranked=why_unranked(r),
                marks=marks(own),
                joined=joined[n],
            )
        )
    return ResultTable(
        title=heading(quantity, part),
        unit=unit_of(results, quantity),
        direction=direction(quantity.better) if quantity.better != "neither" else "",
        ranked=any(r.rank or r.unranked for r in rows),
        intervals=any(r.figure.interval for r in rows),
        passes=any(r.passes not in ("", whole(1)) for r in rows),
        lanes=max((len(r.lanes) for r in rows), default=0),
        limits=tuple(caveat for of in limits for caveat in of),
        limits_from=min(next((n for n, of in enumerate(limits) if of), 0), MOST_ROWS_DOWN),
        marks=marks(of_all),
        rows=tuple(rows),
        notes=_notes(told, quantity, results),
        said=quantity.kind == "order",
    )


def _passes(r: Result) -> str:
    if r.missing and not r.passes:
        return ""
    return words("passes.of", n=whole(r.passes), of=whole(r.passes + r.excluded)) if r.excluded else whole(r.passes)


def _notes(told: Told, quantity: Quantity, results: Sequence[Result]) -> tuple[str, ...]:
    of = (told.campaign, told.evaluation, quantity.id, results[0].part if results else "")
    lost = lost_line(told.campaign, results, told.readings.readings)
    first = (covers_line(*of), lost, draws_line(*of))
    lines = (*first, hardly_known_line(*of), also_line(*of), instrument_line(*of))
    return tuple(filter(None, lines))


def _resolved(told: Told, quantity: Quantity, part: str) -> list[tuple[str, str]]:
    return [
        (c.first, c.second)
        for c in told.evaluation.comparisons
        if (c.quantity, c.part) == (quantity.id, part) and c.resolved
    ]


def tied_words(told: Told, quantity: Quantity, part: str, contender: str) -> str:
    """Whom the readings can't tell this contender from, in words; or that a repeat isn't known."""
    others = _tied_with(told, quantity, part, contender)
    if not others:
        return ""
    mine = [
        c
        for c in told.evaluation.comparisons
        if (c.quantity, c.part) == (quantity.id, part)
        and contender in (c.first, c.second)
        and c.reason.code != "blocked"
    ]
    if all(c.reason.code == "never-enough" for c in mine):
        return words("tied.few")
    if all(c.decision == "not enough to say" for c in mine):
        return words("tied.once")
    return words("tied", others=or_list([told.campaign.contender(o).title for o in others]))


def _tied_with(told: Told, quantity: Quantity, part: str, contender: str) -> list[str]:
    """Whom the readings can't tell this contender from."""
    return [
        c.second if c.first == contender else c.first
        for c in told.evaluation.comparisons
        if (c.quantity, c.part) == (quantity.id, part)
        and contender in (c.first, c.second)
        and not c.resolved
        and c.reason.code != "blocked"
    ]


def _lanes(told: Told, quantity: Quantity, part: str, results: Sequence[Result]) -> list[tuple[str, ...]]:
    """For each row, its piece of every bracket; no brackets where nothing is ranked or there would be too many."""
    ranked = [r.contender for r in results if r.rank]
    groups = tied(ranked, _resolved(told, quantity, part)) if len(ranked) > 1 else ()
    if not groups or len(groups) > MOST_LANES:
        return [() for _ in results]
    rows = []
    for r in results:
        pieces = []
        for group in groups:
            first, last = ranked.index(group[0]), ranked.index(group[-1])
            at = ranked.index(r.contender) if r.contender in ranked else -1
            if not first <= at <= last:
                pieces.append("none")
            elif at == first:
                pieces.append("top")
            elif at == last:
                pieces.append("bottom")
            else:
                pieces.append("tick" if r.contender in group else "through")
        rows.append(tuple(pieces))
    return rows


def _joined(has: Sequence[bool]) -> list[str]:
    """For each line its piece of the hairline that joins all lines with caveats of their own to the side column."""
    at = [n for n, here in enumerate(has) if here]
    if len(at) < 2:
        return ["only" if here else "" for here in has]
    ends = {at[0]: "top", at[-1]: "bottom"}
    inside = range(at[0], at[-1])
    return [ends.get(n, "tick" if here else "through" if n in inside else "") for n, here in enumerate(has)]
