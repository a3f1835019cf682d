"""Where two lines of cost (price + uses · cost of a use) meet: the break-even, and who is cheapest where.

The break-even of two lines is a ratio, N* = −ΔP/Δc, and its limits are Fieller's (1954, Journal of the Royal
Statistical Society B 16:175): every N at which the difference of the two totals, ΔP + N·Δc, can't be told from 0. What
was paid has no scatter; then they are −ΔP/Δc at both ends of the interval of Δc. Of a price that is a range each limit
takes the end that puts it further out: a range is no distribution.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, pairwise
from math import inf, isinf
from typing import Literal

from reportgen.judgement.measured import Pair

Why = Literal["crosses", "cheaper-throughout", "not-resolved", "not-known", "beyond-the-use", "alike"]


@dataclass(frozen=True)
class CostLine:
    """What one contender costs over N uses: its price, `price_low` to `price_high` (alike for one price), and N times
    `cost`. `low`, `high`: the interval of `cost`; None where it has none. `limit`: `cost` is only a bound."""

    name: str
    price_low: float
    price_high: float
    cost: float
    low: float | None = None
    high: float | None = None
    limit: Literal["above", "below"] | None = None

    def total(self, uses: float) -> tuple[float, float]:
        """From what to what `uses` uses cost with the price; the cost itself where it has no interval."""
        low = self.cost if self.low is None else self.low
        high = self.cost if self.high is None else self.high
        return self.price_low + uses * low, self.price_high + uses * high


@dataclass(frozen=True)
class BreakEven:
    """From how many uses on `later` is the cheaper of a pair, which until then is `sooner`.

    `at` is the number of uses, None where a price is a range or a cost a bound; `low`, `high` its limits, `high` None
    where there is none. Without a break-even all three are None and `why` says so: cheaper-throughout (`later` is
    `sooner`), not-resolved (the costs of a use can't be told apart), not-known (whether a repeat would agree isn't),
    beyond-the-use (it lies outside the use that was stated; its limits are given), alike (neither costs more to buy
    nor is shown to cost more to use).
    """

    first: str
    second: str
    why: Why
    at: float | None = None
    low: float | None = None
    high: float | None = None
    sooner: str | None = None
    later: str | None = None


@dataclass(frozen=True)
class Stretch:
    """From `low` to `high` uses nobody else than `may_be` can be the cheapest; of one alone it is shown."""

    low: float
    high: float
    may_be: tuple[str, ...]


@dataclass(frozen=True)
class Slope:
    """By how much first costs more a use than second: from `low` to `high`, `value` itself where it is no bound. Of a
    bound one end is infinite."""

    low: float
    high: float
    value: float | None = None

    def turned(self) -> Slope:
        """Second's cost less first's."""
        return Slope(-self.high, -self.low, None if self.value is None else -self.value)


def slope_of(pair: Pair) -> Slope | None:
    """What a pair of costs a use says of first less second; None where whether a repeat would agree isn't known."""
    if pair.low is not None and pair.high is not None:
        return Slope(pair.low, pair.high, pair.difference)
    numbers = pair.reason.numbers
    if pair.resolved and pair.reason.code == "bound-decides":
        least = numbers["lead"] - numbers["half_width"]
        return Slope(least, inf) if pair.favours == pair.second else Slope(-inf, -least)
    return None


def break_even(first: CostLine, second: CostLine, slope: Slope | None, use: tuple[float, float]) -> BreakEven:
    """The break-even of two lines. `slope`: first's cost of a use less second's; `use`: from how many uses to how many.

    One at 90 costs 0.10 to 0.15 less a use than one at 60: between 30/0.15 and 30/0.10 uses it has paid for itself.

    >>> dear, cheap = CostLine("dear", 90.0, 90.0, 0.26), CostLine("cheap", 60.0, 60.0, 0.38)
    >>> found = break_even(dear, cheap, Slope(-0.15, -0.10, -0.12), (0.0, 500.0))
    >>> found.sooner, found.later, [round(n) for n in (found.low, found.at, found.high)]
    ('cheap', 'dear', [200, 250, 300])
    >>> break_even(dear, cheap, Slope(-0.14, 0.02, -0.06), (0.0, 500.0)).why
    'not-resolved'
    >>> break_even(dear, cheap, Slope(-0.15, -0.10, -0.12), (0.0, 100.0)).why
    'beyond-the-use'
    """
    names = first.name, second.name
    apart = _apart(first, second)
    if slope is None:
        return BreakEven(*names, "not-known")
    if slope.low <= 0.0 <= slope.high:
        nothing = slope.low == slope.high == 0.0 and apart == (0.0, 0.0)
        return BreakEven(*names, "alike" if nothing else "not-resolved")
    if slope.low > 0.0:  # first costs more to use: seen from the other side it costs less
        turned = break_even(second, first, slope.turned(), use)
        return replace(turned, first=first.name, second=second.name)
    if apart[1] <= 0.0:  # no dearer to buy either
        return BreakEven(*names, "cheaper-throughout", sooner=first.name, later=first.name)
    soonest = 0.0 if isinf(slope.low) else max(0.0, apart[0]) / -slope.low
    latest = apart[1] / -slope.high
    at = apart[0] / -slope.value if slope.value is not None and apart[0] == apart[1] else None
    outside = soonest > use[1] or latest < use[0] or (at is not None and not use[0] <= at <= use[1])
    return BreakEven(*names, "beyond-the-use" if outside else "crosses", at, soonest, latest, second.name, first.name)


Slopes = Mapping[tuple[str, str], "Slope | None"]  # by (first, second), in the order of the lines


def break_evens(lines: Sequence[CostLine], slopes: Slopes, use: tuple[float, float]) -> tuple[BreakEven, ...]:
    """The break-even of every pair, in the order of `lines`."""
    return tuple(break_even(a, b, slopes.get((a.name, b.name)), use) for a, b in combinations(lines, 2))


def cheapest(lines: Sequence[CostLine], slopes: Slopes, use: tuple[float, float]) -> tuple[Stretch, ...]:
    """Over which stretch of the use who may be the cheapest: nobody whom another is shown to undercut there.

    >>> lines = [CostLine("dear", 90.0, 90.0, 0.26), CostLine("cheap", 60.0, 60.0, 0.38)]
    >>> for s in cheapest(lines, {("dear", "cheap"): Slope(-0.15, -0.10, -0.12)}, (0.0, 500.0)):
    ...     print(round(s.low), round(s.high), *s.may_be)
    0 200 cheap
    200 300 dear cheap
    300 500 dear
    """
    ends = {use[0], use[1]}
    for a, b in combinations(lines, 2):
        ends.update(_turns(a, b, slopes.get((a.name, b.name))))
    inside = sorted(n for n in ends if use[0] <= n <= use[1])
    stretches: list[Stretch] = []
    for low, high in pairwise(inside):
        middle = (low + high) / 2.0
        may_be = tuple(x.name for x in lines if not any(_undercuts(y, x, slopes, middle) for y in lines))
        if stretches and stretches[-1].may_be == may_be:
            stretches[-1] = replace(stretches[-1], high=high)
        else:
            stretches.append(Stretch(low, high, may_be))
    return tuple(stretches)


def _apart(first: CostLine, second: CostLine) -> tuple[float, float]:
    """From what to what first costs more to buy."""
    return first.price_low - second.price_high, first.price_high - second.price_low


def _turns(a: CostLine, b: CostLine, slope: Slope | None) -> Iterable[float]:
    """Where an end of the difference of two totals passes 0."""
    if slope is not None:
        yield from (-p / s for p in _apart(a, b) for s in (slope.low, slope.high) if s and not isinf(s))


def _undercuts(y: CostLine, x: CostLine, slopes: Slopes, uses: float) -> bool:
    """Whether `y` is shown to cost less than `x` over so many uses."""
    if (x.name, y.name) in slopes:
        slope = slopes[x.name, y.name]
    else:
        turned = slopes.get((y.name, x.name))
        slope = turned.turned() if turned else None
    return y is not x and slope is not None and _apart(x, y)[0] + uses * slope.low > 0.0
