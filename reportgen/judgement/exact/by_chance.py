"""Pairs, ranks and first place from exact tests: how likely chance alone would be to put one so far ahead of another.

First place: one-sided p of at most 2.5 % over every other, without a factor for their number (an intersection of tests;
Gutmann and Maymin 1987). Pairs: two-sided p times the number of pairs at most 5 % (Bonferroni), but a winner's own
pairs as first place found them. Each family errs at most once in twenty.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from reportgen.judgement.measured import Decision, First, Pair, Reason, Settle
from reportgen.judgement.ranks import rank_ranges

ALLOWED = 0.025  # one-sided
NOISE = 1e-9


@dataclass(frozen=True)
class Against:
    """Two that are ranked: the one-sided p of each being ahead of the other, and the least that any outcome of so many
    tries could have given.

    `tries`: how many the fewer of the two has; `enough`: how many each would make an outcome possible that decides.
    `differed`: did they, in these runs? `settle`: what would settle a gap like the one seen.
    """

    p_first: float
    p_second: float
    least: float = 0.0
    tries: int = 0
    enough: int = 0
    differed: bool = False
    settle: Settle | None = None

    @property
    def never(self) -> bool:
        """Could no outcome have decided?"""
        return exceeds_allowed(self.least, ALLOWED)


@dataclass(frozen=True)
class JudgedByChance:
    """Pairs in the order given (those of which one isn't ranked among them), ranks, first place."""

    pairs: tuple[Pair, ...]
    ranks: Mapping[str, tuple[int, int] | None]
    first: First


def exceeds_allowed(p: float, allowed: float) -> bool:
    """Is p above what is allowed, by more than a computer's fractions can feign?"""
    return p > allowed * (1.0 + NOISE)


def judge_by_chance(
    names: Sequence[str], against: Mapping[tuple[str, str], Against], set_aside: Mapping[str, str]
) -> JudgedByChance:
    """Decide about contenders in the order given. `against`: of every pair of ranked ones, keyed in that order;
    `set_aside`: those that are not ranked, with the reason's code.

    >>> clear, close = Against(0.015, 1.0), Against(0.3, 0.9)
    >>> found = judge_by_chance("abc", {("a", "b"): clear, ("a", "c"): clear, ("b", "c"): close}, {})
    >>> found.first.winner, found.ranks
    ('a', {'a': (1, 1), 'b': (2, 3), 'c': (2, 3)})
    """
    ranked = [n for n in names if n not in set_aside]
    count = len(ranked) * (len(ranked) - 1) // 2
    winner = _winner(ranked, against)
    pairs = []
    for one, other in combinations(names, 2):
        if one in set_aside or other in set_aside:
            pairs.append(_undecided(one, other, set_aside.get(one) or set_aside[other]))
        else:
            allowed = ALLOWED if winner in (one, other) else ALLOWED / count
            pairs.append(_pair(one, other, against[one, other], allowed, winner in (one, other)))
    resolved = [(p.favours, p.second if p.favours == p.first else p.first) for p in pairs if p.favours is not None]
    ranges = rank_ranges(ranked, resolved)
    first = First(
        winner,
        tuple(n for n, (best, _) in ranges.items() if best == 1),
        tuple(n for n in names if n in set_aside),
        _why(ranked, against, winner),
    )
    return JudgedByChance(tuple(pairs), {n: ranges.get(n) for n in names}, first)


def _p(one: str, other: str, against: Mapping[tuple[str, str], Against]) -> float:
    """One-sided p of `one` being ahead of `other`."""
    return against[one, other].p_first if (one, other) in against else against[other, one].p_second


def _winner(ranked: Sequence[str], against: Mapping[tuple[str, str], Against]) -> str | None:
    if len(ranked) < 2:
        return None
    beats = (
        name for name in ranked if not any(exceeds_allowed(_p(name, o, against), ALLOWED) for o in ranked if o != name)
    )
    return next(beats, None)


def _pair(first: str, second: str, pair: Against, allowed: float, of_winner: bool) -> Pair:
    p = min(pair.p_first, pair.p_second)
    resolved = not exceeds_allowed(p, allowed)
    numbers = {"p": p, "allowed": allowed}
    decision: Decision = "better" if resolved else "not enough to say" if pair.never else "too close to call"
    if not resolved and pair.never:
        numbers |= {"least": pair.least, "tries": float(pair.tries), "enough": float(pair.enough)}
    return Pair(
        first, second, difference=None, u=None, low=None, high=None, decision=decision, resolved=resolved,
        differed=pair.differed, differed_low=None, differed_high=None,
        favours=(first if pair.p_first <= pair.p_second else second) if resolved else None,
        reason=Reason(_code(resolved, pair), numbers), adjusted=not of_winner,
        settle=None if resolved else pair.settle,
    )  # fmt: skip


def _code(resolved: bool, pair: Against) -> str:
    return "chance-excluded" if resolved else "never-enough" if pair.never else "chance-open"


def _undecided(first: str, second: str, code: str) -> Pair:
    return Pair(
        first, second, difference=None, u=None, low=None, high=None, decision="not enough to say", resolved=False,
        differed=None, differed_low=None, differed_high=None, favours=None, reason=Reason(code),
    )  # fmt: skip


def _why(ranked: Sequence[str], against: Mapping[tuple[str, str], Against], winner: str | None) -> Reason:
    """What decided first place: a winner's narrowest lead; else the one who came nearest, and what stood in the way."""
    if len(ranked) < 2:
        return Reason("one-contender", {"contenders": float(len(ranked))})
    worst = {n: max(_p(n, o, against) for o in ranked if o != n) for n in ranked}
    numbers = {"p": min(worst.values()), "allowed": ALLOWED}
    if winner is not None:
        return Reason("chance-excluded", numbers)
    if all(pair.never for pair in against.values()):
        fewest = min(against.values(), key=lambda pair: pair.least)
        numbers |= {"least": fewest.least, "tries": float(fewest.tries), "enough": float(fewest.enough)}
        return Reason("never-enough", numbers)
    return Reason("chance-open", numbers)
