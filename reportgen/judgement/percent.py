"""A difference as a percentage of the other one's result, with the interval of the ratio behind it.

"5 % less than B" has B for its base: 100·(a − b)/b = 100·(r − 1) with r = a/b. The interval of r is Fieller's (1954,
Journal of the Royal Statistical Society B 16:175): every r for which a − r·b is no more than its own half-width h(r),
with h(r) worked out as that of a difference is, shared errors, scatter and steps together. At r = 1 that is the pair's
own interval, so the percentage leaves 0 open exactly where the difference does.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property
from math import expm1, fsum, sqrt

from reportgen.judgement.differed import instrument_half_width
from reportgen.judgement.half_width import Rounding, half_width, holds_steps, rounding, unshared
from reportgen.judgement.lead import Weighed, draws_at, half_at, with_sessions
from reportgen.judgement.measured import Measured, Percent
from reportgen.judgement.reach.convolution import quantile
from reportgen.judgement.reach.parts import NOTHING as NO_PARTS
from reportgen.judgement.reach.parts import Parts, with_part
from reportgen.judgement.scatter import Scatter, Spread, result_of

TURNS, CLOSE = 50, 1e-10
FINER, ENOUGH = 3, 1e-4  # of the half-width: how often, and until when, an end is put nearer
NOTHING = Measured("", 0.0, ())


def percent_of_second(weighed: Weighed, scatter: Scatter, alpha: float, between: float | None = None) -> Percent | None:
    """First less second in percent of second; None where second can't be told from nothing, or there is no difference.

    `between` is a declared scatter between sessions. Without known scatter there is no interval, and the base has to
    stand clear of what the instrument alone may feign.
    """
    if weighed.d is None:
        return None
    if weighed.centre is not None:
        return _of_logarithms(weighed, alpha)
    base = weighed.second.value
    if base is None or base <= 0.0:
        return None
    ratio = (base + weighed.d) / base
    if not weighed.comparable:
        half = instrument_half_width(weighed.second, NOTHING, rounding(weighed.second, NOTHING))
        return Percent(100 * (ratio - 1), None, None) if half is not None and base > half else None
    asked = _Ratio(weighed, base, scatter, alpha, between or 0.0)
    if base <= asked.half_of_base():
        return None
    draws = draws_at(weighed, alpha)
    if draws is not None and draws.needed:  # to first order the ends are off, and draws are of the difference alone
        return Percent(100 * (ratio - 1), None, None)
    low, high = asked.end(ratio, -1), asked.end(ratio, 1)
    return Percent(100 * (ratio - 1), 100 * (low - 1), 100 * (high - 1))


def turned(percent: Percent) -> Percent | None:
    """Second less first in percent of first: 5 % less is 5.3 % more seen from the other side. None from −100 % on."""

    def other(x: float | None) -> float | None:
        return None if x is None else 100 * (100 / (100 + x) - 1)

    least = percent.value if percent.low is None else percent.low
    if least <= -100:
        return None
    value = other(percent.value)
    assert value is not None
    return Percent(value, other(percent.high), other(percent.low))


def _of_logarithms(weighed: Weighed, alpha: float) -> Percent | None:
    """On a scale of logarithms the interval is one of the ratio already."""
    assert weighed.d is not None
    if not weighed.comparable:
        return Percent(100 * expm1(weighed.d), None, None)
    half = half_at(weighed, alpha)
    low, middle, high = (100 * expm1(weighed.d + side) for side in (-half, 0.0, half))
    return Percent(middle, low, high)


@dataclass(frozen=True)
class _Ratio:
    """A pair whose second is taken r times over: its half-width as a function of r."""

    weighed: Weighed
    base: float
    scatter: Scatter
    alpha: float
    between: float

    def end(self, ratio: float, side: int) -> float:
        """Where r·base stands just a half-width away from the first result, below (−1) or above (1).

        The half-width is worked out at 1 and near the end alone; in between, how many combined standard uncertainties
        it is long is taken for straight.
        """
        u_at, first = self._u, ratio * self.base
        if not u_at(1.0):
            return ratio
        r, factor = 1.0, half_at(self.weighed, self.alpha) / u_at(1.0)
        near = _crossing(first, self.base, side, lambda x: factor * u_at(x))
        for _ in range(FINER):
            if abs(near - r) <= ENOUGH * abs(near - ratio) or not u_at(near):
                break
            found = self.half(near) / u_at(near)
            slope, r, factor = (found - factor) / (near - r), near, found
            near = _crossing(first, self.base, side, _straight(r, factor, slope, u_at))
        return near

    @cached_property
    def _u(self) -> Callable[[float], float]:
        """The combined standard uncertainty of first less r times second: its square is quadratic in r."""
        first, second, spread = self.weighed.first, self.weighed.second, self.weighed.spread
        assert spread is not None
        a, b = self._alone
        sources = [s for s in {*first.contributions, *second.contributions} if s.sort != "step"]
        pairs = [(first.contributions.get(s, 0.0), second.contributions.get(s, 0.0)) for s in sources]
        held = holds_steps(spread.sd, max((*first.steps, *second.steps), default=0.0))
        rounded = [0.0 if held else fsum(s * s for s in one.steps) / 12.0 for one in (first, second)]
        plain = a + fsum(x * x for x, _ in pairs) + rounded[0]
        square = b + fsum(y * y for _, y in pairs) + rounded[1]
        both = (a + b - spread.variance) / 2.0 + fsum(x * y for x, y in pairs)
        between = self.between**2
        return lambda r: sqrt(max(0.0, plain - 2.0 * both * r + square * r * r + between * (1.0 + r * r)))

    @cached_property
    def _alone(self) -> tuple[float, float]:
        """The scatter's variance of either result by itself."""
        spread = self.weighed.spread
        assert spread is not None
        alone = [result_of(self.scatter, m) for m in (self.weighed.first, self.weighed.second)]
        a, b = (s.variance if s is not None else spread.variance / 2.0 for s in alone)
        return a, b

    def half(self, r: float) -> float:
        """The half-width of first less r times second."""
        second = _times(self.weighed.second, r)
        spread = self.weighed.spread
        assert spread is not None
        a, b = self._alone
        variance = (1.0 - r) * (a - r * b) + r * spread.variance  # Var(a) + r²Var(b) − 2r·Cov(a, b)
        seen = sqrt(max(variance, 0.0))
        parts = unshared(self.weighed.first.contributions, second.contributions, repeat=True, scatter=seen)
        parts = with_sessions(parts, self.weighed.first, second, self.between, r)
        return self._width(replace(spread, variance=max(variance, 0.0)), parts, rounding(self.weighed.first, second))

    def half_of_base(self) -> float:
        """The half-width of second by itself, or a longer one that is found quickly where base is far beyond it."""
        second, spread = self.weighed.second, self.weighed.spread
        assert spread is not None
        variance = self._alone[1]
        own = unshared(second.contributions, {}, repeat=True, scatter=sqrt(variance))
        parts = with_part(own, self.between / sqrt(len(second.sessions)))
        steps = rounding(second, NOTHING)
        scatter = quantile(1.0 - self.alpha / 2.0, sqrt(variance + steps.variance), spread.degrees, NO_PARTS)
        reach = max(scatter + parts.bounded + 4.0 * parts.normal, steps.floor)
        if self.base > reach and not parts.student:  # whose tails end nowhere
            return reach
        return self._width(replace(spread, variance=variance), parts, steps)

    def _width(self, spread: Spread, parts: Parts, steps: Rounding) -> float:
        return half_width(spread, parts, steps, self.alpha)


def _straight(r: float, factor: float, slope: float, u_at: Callable[[float], float]) -> Callable[[float], float]:
    return lambda x: (factor + slope * (x - r)) * u_at(x)


def _crossing(first: float, base: float, side: int, half: Callable[[float], float]) -> float:
    """r where r·base = first ± half(r), by secants; half grows more slowly than r·base."""
    r, width, slope = 1.0, half(1.0), 0.0
    for _ in range(TURNS):
        further = (first + side * (width - slope * r)) / (base - side * slope)
        if abs(further - r) <= CLOSE:
            return further
        found = half(further)
        slope = max(-0.9 * base, min(0.9 * base, (found - width) / (further - r)))
        r, width = further, found
    return r


def _times(one: Measured, r: float) -> Measured:
    """A result taken r times over; its steps count whatever the sign of r."""
    return replace(
        one,
        contributions={source: r * size for source, size in one.contributions.items()},
        steps=tuple(abs(r) * step for step in one.steps),
    )
