"""Yes and no, counts and grades of one quantity: results with exact limits, and what exact tests decide about them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from reportgen.campaign.declared import Campaign, Quantity, Test
from reportgen.evaluation.decide import is_ranked, pairs_otherwise
from reportgen.evaluation.evaluated import Comparison, FirstPlace, Keys, Result
from reportgen.evaluation.results import plain_result, untested
from reportgen.evaluation.working import Working
from reportgen.judgement.exact.by_chance import JudgedByChance
from reportgen.judgement.exact.counts import Counted, CountsJudged, judge_counts
from reportgen.judgement.exact.exact_limits import share_interval
from reportgen.judgement.exact.grades import Graded, judge_grades
from reportgen.judgement.exact.shares import Tried, judge_shares
from reportgen.judgement.measured import Better, Pair

Passes = Mapping[str, Sequence[Working]]
Over = Callable[[str, Sequence[Working]], tuple[float, ...]]
Blocked = Mapping[str, str]

NO_EXPOSURE, BOUND = "no-exposure", "limit"


@dataclass(frozen=True)
class Exactly:
    """One quantity (and part) that isn't measured."""

    results: tuple[Result, ...]
    comparisons: tuple[Comparison, ...] = ()
    first: FirstPlace | None = None


def judged_exactly(
    campaign: Campaign, test: Test, quantity: Quantity, part: str, passes: Passes, blocked: Blocked, over: Over
) -> Exactly:
    """Results, and where the author gave a direction (of counts also that events are independent), pairs and ranks.

    `over` tells over how much each of some passes of a contender was counted, () where that isn't known.
    """
    counts = _counts(test, quantity, _used(passes), blocked, over) if _has_rates(quantity) else None
    if counts is not None and is_ranked(quantity):
        blocked = {c: blocked[c] or counts.why_not.get(c, "") for c in passes}
    results = tuple(
        _with_limits(plain_result(test, quantity, c, part, ws, blocked[c]), counts) for c, ws in passes.items()
    )
    if not is_ranked(quantity) or (quantity.kind == "count" and not quantity.independent):
        return Exactly(results)
    judged = counts.found.judged if counts else _judge(quantity, _used(passes), blocked)
    if not any(judged.ranks.values()):
        return Exactly(results)
    results = tuple(replace(r, rank=judged.ranks.get(r.contender)) for r in results)
    rests_on = {r.contender: r.rests_on for r in results}
    return Exactly(
        results,
        tuple(comparison_of(test, quantity, part, p, rests_on) for p in judged.pairs),
        first_place_of(campaign, test, quantity, part, results, judged, _again(test, quantity, passes, blocked, over)),
    )


@dataclass(frozen=True)
class _Rates:
    found: CountsJudged
    over: Mapping[str, tuple[float, ...]]
    why_not: Blocked


def _has_rates(quantity: Quantity) -> bool:
    return quantity.kind == "count" and quantity.independent


def _used(passes: Passes) -> Passes:
    return {c: [w for w in ws if (w.value is not None or w.word) and not w.excluded] for c, ws in passes.items()}


def _judge(quantity: Quantity, passes: Passes, blocked: Blocked) -> JudgedByChance:
    better: Better = "lower" if quantity.better == "lower" else "higher"
    if quantity.kind == "yes/no":
        tried = [Tried(c, sum(w.word == "yes" for w in ws), len(ws), _code(blocked[c])) for c, ws in passes.items()]
        return judge_shares(tried, better)
    place = {grade: float(n) for n, grade in enumerate(quantity.grades)}
    graded = [Graded(c, tuple(place[w.word] for w in ws), _code(blocked[c])) for c, ws in passes.items()]
    return judge_grades(graded, better)


def _code(blocked: str) -> str:
    return "blocked" if blocked else ""


def _counts(test: Test, quantity: Quantity, passes: Passes, blocked: Blocked, over: Over) -> _Rates:
    """Counts with what each was taken over; one that is only a bound, or taken over nobody knows what, isn't judged."""
    told, taken, why_not = [], {}, {}
    for contender, ws in passes.items():
        taken[contender] = over(contender, ws)
        whole = all(w.value is not None and w.value.value is not None and not w.value.limit for w in ws)
        why = "" if not ws else BOUND if not whole else NO_EXPOSURE if not taken[contender] else ""
        if why:
            why_not[contender] = why
        events = tuple(round(w.value.value) for w in ws if w.value and w.value.value is not None) if not why else ()
        told.append(Counted(contender, events, taken[contender], blocked=_code(blocked[contender] or why)))
    found = judge_counts(told, "higher" if quantity.better == "higher" else "lower", test.scatter)
    return _Rates(found, taken, why_not)


def _with_limits(result: Result, counts: _Rates | None) -> Result:
    """The result with its exact limits: of a share, or of the events a pass."""
    if result.missing:
        return result
    if result.kind == "yes/no" and result.of:
        low, high = share_interval(result.yes or 0, result.of)
        return replace(result, low=low, high=high, covers="tries", at_least=True)
    limits = counts.found.intervals.get(result.contender) if counts else None
    if limits is None or counts is None:
        return result
    each = counts.over[result.contender]
    of_a_pass = sum(each) / len(each)
    return replace(result, low=limits[0] * of_a_pass, high=limits[1] * of_a_pass, covers="events", at_least=True)


def _again(test: Test, quantity: Quantity, passes: Passes, blocked: Blocked, over: Over) -> JudgedByChance | None:
    """Judged with all that was left out put back; None where nothing was."""
    if not any(w.excluded for ws in passes.values() for w in ws):
        return None
    every = {c: [w for w in ws if w.value is not None or w.word] for c, ws in passes.items()}
    if quantity.kind == "count":
        return _counts(test, quantity, every, blocked, over).found.judged
    return _judge(quantity, every, blocked)


def first_place_of(
    campaign: Campaign,
    test: Test,
    quantity: Quantity,
    part: str,
    results: Sequence[Result],
    judged: JudgedByChance,
    again: JudgedByChance | None,
) -> FirstPlace:
    """First place as the exact test found it; `again`: judged with all that was left out put back."""
    everything: Keys = frozenset().union(*(r.rests_on for r in results))
    unranked = dict.fromkeys((*judged.first.unranked, *untested(campaign.contenders, results)))
    ranks = again.ranks if again else {}
    return FirstPlace(
        test.id, quantity.id, part, judged.first.winner, judged.first.may_be_first, tuple(unranked),
        judged.first.reason, everything,
        order_changes_without=None if again is None else dict(ranks) != dict(judged.ranks),
        ranks_without={c: r for c, r in ranks.items() if r is not None and r != judged.ranks.get(c)},
        pairs_without=pairs_otherwise(judged.pairs, again.pairs) if again else (),
    )  # fmt: skip


def comparison_of(test: Test, quantity: Quantity, part: str, p: Pair, rests_on: Mapping[str, Keys]) -> Comparison:
    """A pair as the exact test found it, with what it rests on."""
    return Comparison(
        test.id, quantity.id, part, p.first, p.second, p.difference, p.u, p.low, p.high, quantity.unit, p.decision,
        p.resolved, p.differed, p.differed_low, p.differed_high, p.favours, p.beyond, p.reason, p.settle,
        rests_on[p.first] | rests_on[p.second],
    )  # fmt: skip
