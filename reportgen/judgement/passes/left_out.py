"""Which single pass could decide who is alone in first place, told quickly: most could not, and need no judging again.

Under a common scatter a half-width grows or shrinks by no more than the part of it that is scatter does. Where a lead
stays clear of that, with room to spare, first place stays as it is without the pass.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from math import fsum, sqrt

from reportgen.judgement.lead import half_at, weigh
from reportgen.judgement.measured import Measured, Rules
from reportgen.judgement.scatter import find_scatter
from reportgen.judgement.simultaneous import ALPHA
from reportgen.metrology.type_a import student

ROOM = 1.08  # for what else a pass left out moves a little: errors in proportion, the shape of Student's t

Unmoved = Callable[[str, int], bool]


@dataclass(frozen=True)
class _Passes:
    """One contender's passes, and the sum of the squares of what they lie off their mean."""

    values: tuple[float, ...]
    mean: float
    squares: float

    def without(self, at: int) -> _Passes:
        n, x = len(self.values), self.values[at]
        mean = (n * self.mean - x) / (n - 1)
        squares = max(0.0, self.squares - n / (n - 1) * (x - self.mean) ** 2)
        return _Passes((*self.values[:at], *self.values[at + 1 :]), mean, squares)


def unmoved_without(measured: Sequence[Measured], rules: Rules, winner: str | None) -> Unmoved | None:
    """Asks of a contender and the place of one of its passes whether `winner` surely stays alone in first place, or
    first place shared, without it; False where it has to be judged. None where nothing can be told so quickly.

    >>> from reportgen.judgement import Rules, from_passes
    >>> ahead = [from_passes("a", 1.0, 1.2, 1.1), from_passes("b", 9.0, 9.1, 9.2)]
    >>> unmoved_without(ahead, Rules("lower"), "a")("a", 0)
    True
    >>> close = [from_passes("a", 1.0, 1.2, 1.1), from_passes("b", 1.25, 1.35, 1.45)]
    >>> unmoved_without(close, Rules("lower"), "a")("b", 2)
    False
    """
    ranked = [m for m in measured if not m.blocked and (m.value is not None or m.limit is not None)]
    if not _is_plain(ranked, rules):
        return None
    scatter = find_scatter(ranked, rules)
    sd, degrees = scatter.found.sd, scatter.found.degrees
    if not sd or not degrees or degrees < 2.0:
        return None
    by_name = {m.name: m for m in ranked}
    passes = {m.name: _of(m.values) for m in ranked}
    whole = fsum(p.squares for p in passes.values())
    step = max((s for m in ranked for s in m.steps), default=0.0)

    @cache
    def half_now(first: str, second: str) -> float:
        return half_at(weigh(by_name[first], by_name[second], scatter, rules), ALPHA)

    def unmoved(of: str, at: int) -> bool:
        left = passes | {of: passes[of].without(at)}
        sd_left = sqrt(max(0.0, whole - passes[of].squares + left[of].squares) / (degrees - 1.0))
        if (sd < ROOM * step / 2.0 or sd_left < ROOM * step / 2.0) and step:
            return False  # where steps begin to count by themselves, judge
        grown = sd_left / sd * student(0.975, degrees - 1.0) / student(0.975, degrees)

        def reach(one: str, other: str) -> tuple[float, float]:
            more = grown * sqrt(_spread(left, one, other) / _spread(passes, one, other))
            half = half_now(*sorted((one, other), key=list(passes).index))
            return half * min(1.0, more) / ROOM, half * max(1.0, more) * ROOM

        sign = 1.0 if rules.better == "higher" else -1.0
        front, *others = sorted(left, key=lambda name: -sign * left[name].mean)
        leads = {other: sign * (left[front].mean - left[other].mean) for other in others}
        if winner is None:
            return leads[others[0]] < reach(front, others[0])[0]
        return front == winner and all(lead > reach(front, other)[1] for other, lead in leads.items())

    return unmoved


def _is_plain(ranked: Sequence[Measured], rules: Rules) -> bool:
    """Whether passes of one session, none of them a bound, scatter alike and are known by themselves alone."""
    plain_rules = rules.scatter == "common" and not rules.rounds and rules.declared is None
    one_session = len({m.sessions for m in ranked}) == 1 and all(len(m.sessions) == 1 for m in ranked)
    plain = all(m.limit is None and len(m.values) > 1 and not any(m.stands_on.values()) for m in ranked)
    return plain_rules and one_session and plain and len(ranked) > 1 and rules.between_sessions is None


def _of(values: Sequence[float]) -> _Passes:
    mean = fsum(values) / len(values)
    return _Passes(tuple(values), mean, fsum((x - mean) ** 2 for x in values))


def _spread(passes: dict[str, _Passes], one: str, other: str) -> float:
    return 1.0 / len(passes[one].values) + 1.0 / len(passes[other].values)
