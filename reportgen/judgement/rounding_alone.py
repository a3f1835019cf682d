"""The least lead that counts on a coarse scale: how far rounding alone can part two equal totals.

Two totals of m readings each, of equal true value, differ by J whole steps. J is the sum of 2m rounding errors, each
uniform over one step, seen at whole numbers: P(J = j) is the central B-spline of order 2m at j (the density of a sum
of 2m uniform variables; Feller, An Introduction to Probability Theory, volume II, I.9).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from math import ceil, comb, erf, factorial, fsum, sqrt

EXACT_UP_TO = 120  # errors in the sum; beyond it the normal density is within 1e-3 of the spline


@lru_cache(maxsize=1024)
def chance_of_exactly(steps: int, errors: int) -> Fraction:
    """P(J = `steps`) for a sum of `errors` ≥ 2 rounding errors: the B-spline of that order at a whole number."""
    n = errors
    top = Fraction(2 * steps + n, 2)
    terms = ((-1) ** i * comb(n, i) * (top - i) ** (n - 1) for i in range(n + 1) if top > i)
    return sum(terms, Fraction(0)) / factorial(n - 1)


@lru_cache(maxsize=1024)
def chance_of_lead(steps: int, errors: int) -> float:
    """P(|J| ≥ `steps`): two equal totals, `errors` readings in both together, differ so far by rounding alone."""
    if steps <= 0:
        return 1.0
    if errors > EXACT_UP_TO:
        return 1.0 - erf((steps - 0.5) / sqrt(errors / 12.0) / sqrt(2.0))
    return float(1 - sum(chance_of_exactly(j, errors) for j in range(1 - steps, steps)))


@lru_cache(maxsize=1024)
def least_lead(first: int, second: int | None = None) -> int:
    """Fewest whole steps that rounding alone reaches in at most 5 % of cases, for totals of so many readings each.

    Never less than 2: two readings a hair apart may stand on either side of a rounding edge. Two totals of two readings
    each are four errors; of two totals whose readings come to eight in all two steps come up with a chance of .048, of
    ten .083:

    >>> [round(chance_of_lead(2, errors), 3) for errors in (8, 10)]
    [0.048, 0.083]
    >>> [least_lead(m) for m in (1, 4, 5, 12)]
    [2, 2, 3, 4]
    """
    errors = first + (first if second is None else second)
    steps = 2
    while chance_of_lead(steps, errors) > 0.05:
        steps += 1
    return steps


def readings_behind(steps: Sequence[float], largest: float) -> int:
    """Readings with the largest step that would round as badly as these: Σ(c·δ)²/`largest`², rounded up.

    Exact for equal coefficients. For unequal ones an approximation that keeps the variance of the rounding; rounding
    up errs towards a longer lead.
    """
    return max(1, ceil(fsum((s / largest) ** 2 for s in steps) - 1e-9))


def floor_of_lead(first: Sequence[float], second: Sequence[float]) -> float:
    """What a lead must exceed because of the steps alone, g·δ, in the unit of the steps; 0 where no step is known.

    `first`, `second`: c·δ of the readings behind one pass of each result. δ is the largest of all, g the least lead
    in steps less one.
    """
    largest = max((*first, *second), default=0.0)
    if largest <= 0.0:
        return 0.0
    fewer, more = sorted(readings_behind(steps, largest) for steps in (first, second))
    return (least_lead(fewer, more) - 1) * largest
