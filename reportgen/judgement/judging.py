"""Judge one measured quantity: every pair, the ranks, first place, each result's own interval."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations

from reportgen.judgement import first_place
from reportgen.judgement.lead import Weighed, beats, weigh
from reportgen.judgement.measured import First, Judged, Measured, Pair, Rules, Single, check_numbers
from reportgen.judgement.pairs import Level, decide, set_aside
from reportgen.judgement.ranks import rank_ranges
from reportgen.judgement.scale import can_take_logarithms, in_logarithms
from reportgen.judgement.scatter import NONE_KNOWN, Scatter, find_scatter
from reportgen.judgement.simultaneous import ALPHA, bonferroni, tukey
from reportgen.judgement.single import interval_of


def judge(measured: Sequence[Measured], rules: Rules) -> Judged:
    """Decide about one quantity of k contenders, all in one unit, in the order given; `rules` fixed before the data.

    Blocked contenders and those without a result stand in `unranked`: they count in nothing else. Raises ValueError for
    two of one name, and for what is no number.

    Tensile strength of paper by its content of hardwood (Montgomery, Design and Analysis of Experiments, from memory):
    all pairs differ but 10 % and 15 %, by Tukey's method with a scatter of 2.551 and 20 degrees of freedom.

    >>> from reportgen.judgement import Rules, from_passes
    >>> passes = {5: (7, 8, 15, 11, 9, 10), 10: (12, 17, 13, 18, 19, 15), 15: (14, 18, 19, 17, 16, 18),
    ...           20: (19, 25, 22, 23, 18, 20)}
    >>> found = judge([from_passes(f"{n} %", *values) for n, values in passes.items()], Rules("higher"))
    >>> round(found.scatter.sd, 3), found.scatter.degrees
    (2.551, 20)
    >>> [(p.first, p.second) for p in found.pairs if not p.resolved]
    [('10 %', '15 %')]
    >>> found.first.winner, found.ranks
    ('20 %', {'5 %': (4, 4), '10 %': (2, 3), '15 %': (2, 3), '20 %': (1, 1)})
    """
    check_numbers(measured)
    ranked = [m for m in measured if not m.blocked and (m.value is not None or m.limit is not None)]
    working = _on_working_scale(ranked, rules)
    scatter = find_scatter(list(working.values()), rules) if working else Scatter(NONE_KNOWN)
    weighed = {
        (a.name, b.name): weigh(working[a.name], working[b.name], scatter, rules)
        for a, b in combinations(ranked if working else [], 2)
    }
    winner = first_place.find_winner(ranked, list(weighed.values()))
    pairs = tuple(_pair(a, b, weighed, len(ranked), winner, scatter, rules) for a, b in combinations(measured, 2))
    ranges = rank_ranges([m.name for m in ranked], [_better_first(p) for p in pairs if p.favours is not None])
    first = First(
        winner,
        tuple(name for name, (best, _) in ranges.items() if best == 1),
        tuple(m.name for m in measured if m.name not in ranges),
        first_place.why(ranked, list(weighed.values()), winner),
    )
    singles = {m.name: _single(m, working.get(m.name), scatter, rules) for m in measured}
    return Judged(pairs, {m.name: ranges.get(m.name) for m in measured}, first, scatter.found, singles)


def sole_winner(measured: Sequence[Measured], rules: Rules) -> str | None:
    """Who alone is first, as `judge` finds it, and nothing else: cheap enough to ask many times over.

    Whoever is ahead of all the others can't lose to one of them, so 2(k − 1) of the k(k − 1)/2 pairs do.

    Two passes apart by luck, as of two equals one in three are (2·2!·2!/4!), name nobody:

    >>> from reportgen.judgement import Rules, from_passes
    >>> [sole_winner([from_passes("a", 10.1, 10.4), from_passes("b", *b)], Rules("higher"))
    ...  for b in ((10.6, 10.9), (14.6, 14.9))]
    [None, 'b']
    """
    ranked = [m for m in measured if not m.blocked and (m.value is not None or m.limit is not None)]
    working = _on_working_scale(ranked, rules)
    if not working:
        return None
    scatter = find_scatter(list(working.values()), rules)
    names = [m.name for m in ranked]

    def pair(one: str, other: str) -> Weighed:
        first, second = sorted((one, other), key=names.index)
        return weigh(working[first], working[second], scatter, rules)

    front = names[0]
    for other in names[1:]:
        front = pair(front, other).ahead or front
    alone = len(names) > 1 and all(beats(pair(front, other), ALPHA) == front for other in names if other != front)
    return front if alone else None


def _on_working_scale(ranked: Sequence[Measured], rules: Rules) -> dict[str, Measured]:
    if rules.scatter != "relative":
        return {m.name: m for m in ranked}
    return {m.name: in_logarithms(m) for m in ranked} if can_take_logarithms(ranked) else {}


def _single(one: Measured, working: Measured | None, scatter: Scatter, rules: Rules) -> Single:
    """The interval of one result. One that is not ranked lends the others nothing, but takes what they know."""
    if working is not None:
        return interval_of(working, one, scatter, rules)
    alone = _on_working_scale([one], rules).get(one.name)
    if alone is None:  # no logarithm
        return interval_of(one, one, None, replace(rules, scatter="common"))
    if scatter.own or scatter.found.sd is None:
        scatter = find_scatter([alone], rules)
    return interval_of(alone, one, scatter, rules)


def _pair(
    first: Measured,
    second: Measured,
    weighed: dict[tuple[str, str], Weighed],
    ranked: int,
    winner: str | None,
    scatter: Scatter,
    rules: Rules,
) -> Pair:
    found = weighed.get((first.name, second.name))
    if found is None:
        blocked = first.blocked or second.blocked
        missing = any(m.value is None and m.limit is None for m in (first, second))
        return set_aside(first, second, "blocked" if blocked else "no-result" if missing else "not-above-zero")
    return decide(found, first, second, _level(found, ranked, winner, scatter), scatter, rules)


def _level(found: Weighed, ranked: int, winner: str | None, scatter: Scatter) -> Level:
    if winner in (found.first.name, found.second.name) or not found.comparable:
        return Level(ALPHA, adjusted=False)
    assert found.spread is not None
    alpha = bonferroni(ranked) if scatter.own else tukey(ranked, found.spread.degrees)
    return Level(alpha, adjusted=True)


def _better_first(pair: Pair) -> tuple[str, str]:
    assert pair.favours is not None
    return pair.favours, pair.second if pair.favours == pair.first else pair.first
