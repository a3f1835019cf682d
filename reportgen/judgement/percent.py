"""A difference as a percentage of the other one's result, with the interval of the ratio behind it.

"5 % less than B" has B for its base: 100·(a − b)/b = 100·(r − 1) with r = a/b. The interval of r is Fieller's (1954,
Journal of the Royal Statistical Society B 16:175): every r for which a − r·b is no more than its own half-width h(r),
with h(r) worked out as that of a difference is, shared errors, scatter and steps together. At r = 1 that is the pair's
own interval, so the percentage leaves 0 open exactly where the difference does.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import expm1, sqrt

from reportgen.judgement.convolution import Parts, with_part
from reportgen.judgement.differed import instrument_half_width
from reportgen.judgement.half_width import Rounding, half_width, rounding, unshared
from reportgen.judgement.lead import Weighed, half_at, with_sessions
from reportgen.judgement.measured import Measured, Percent
from reportgen.judgement.scatter import Scatter, Spread, result_of

TURNS = 4  # secants to each end: the half-width is all but straight between two of them
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
        """Where `ratio`·base stands just a half-width away from the first result, below (−1) or above (1)."""
        first = ratio * self.base
        r, half = 1.0, half_at(self.weighed, self.alpha)
        slope = 0.0
        for _ in range(TURNS):
            further = (first + side * (half - slope * r)) / (self.base - side * slope)
            if abs(further - r) <= 1e-9:
                return further
            found = self.half(further)
            slope = max(-0.9 * self.base, min(0.9 * self.base, (found - half) / (further - r)))
            r, half = further, found
        return (first + side * (half - slope * r)) / (self.base - side * slope)

    def half(self, r: float) -> float:
        """The half-width of first less r times second."""
        second = _times(self.weighed.second, r)
        spread = self.weighed.spread
        assert spread is not None
        alone = [result_of(self.scatter, m) for m in (self.weighed.first, self.weighed.second)]
        a, b = (s.variance if s is not None else spread.variance / 2.0 for s in alone)
        variance = (1.0 - r) * (a - r * b) + r * spread.variance  # Var(a) + r²Var(b) − 2r·Cov(a, b)
        parts = unshared(self.weighed.first.contributions, second.contributions, repeat=True)
        parts = with_sessions(parts, self.weighed.first, second, self.between, r)
        return self._width(replace(spread, variance=max(variance, 0.0)), parts, rounding(self.weighed.first, second))

    def half_of_base(self) -> float:
        """The half-width of second by itself."""
        second, spread = self.weighed.second, self.weighed.spread
        assert spread is not None
        alone = result_of(self.scatter, second)
        variance = alone.variance if alone is not None else spread.variance / 2.0
        parts = with_part(unshared(second.contributions, {}, repeat=True), self.between / sqrt(len(second.sessions)))
        return self._width(replace(spread, variance=variance), parts, rounding(second, NOTHING))

    def _width(self, spread: Spread, parts: Parts, steps: Rounding) -> float:
        return half_width(spread, parts, steps, self.alpha)


def _times(one: Measured, r: float) -> Measured:
    """A result taken r times over; its steps count whatever the sign of r."""
    return replace(
        one,
        contributions={source: r * size for source, size in one.contributions.items()},
        steps=tuple(abs(r) * step for step in one.steps),
    )
