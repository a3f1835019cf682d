"""The scale a quantity is judged on: as it is, or in logarithms where scatter grows with the level.

In logarithms a difference is the logarithm of a ratio. It goes back to the quantity's unit as 2·√(xᵢ·xⱼ)·sinh(d/2),
which is exactly xᵢ − xⱼ at d = ln(xᵢ/xⱼ), keeps the sign of every limit, and turns over when i and j change places.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import exp, expm1, fsum, hypot, log, sinh

from reportgen.judgement.drawn.beyond import in_logarithms as beyond_in_logarithms
from reportgen.judgement.measured import Measured


def can_take_logarithms(measured: Sequence[Measured]) -> bool:
    """Whether every number is above zero; ratios mean nothing otherwise."""
    return all(x > 0.0 for m in measured for x in (*m.values, *(() if m.value is None else (m.value,))))


def in_logarithms(one: Measured) -> Measured:
    """The same result in natural logarithms: parts and steps relative to it, value the mean of the logarithms."""
    if one.value is None:
        return replace(one, contributions={}, steps=())
    logs = tuple(log(x) for x in one.values)
    value = fsum(logs) / len(logs) if logs and one.limit is None else log(one.value)
    return replace(
        one,
        value=value,
        values=logs,
        contributions={source: size / one.value for source, size in one.contributions.items()},
        steps=tuple(step / one.value for step in one.steps),
        beyond=beyond_in_logarithms(one.beyond, one.value, hypot(*one.contributions.values())),
    )


def difference_from_logarithm(centre: float, d: float) -> float:
    """A difference in the unit of `centre`, the geometric mean of two results, from the logarithm of their ratio."""
    return 2.0 * centre * sinh(min(max(d / 2.0, -300.0), 300.0))


def ends_from_logarithm(centre: float, d: float, reach: tuple[float, float], of_middle: float) -> tuple[float, float]:
    """Ends of a difference in the unit of `centre` from the logarithm of the ratio, `d`, and how far that reaches below
    and above. `of_middle`: half-width of the logarithm of `centre`, which is off by itself: squares add.

    An end lies on the same side of zero as that of the ratio: whatever the level, it turns no lead round.
    """
    at, low, high = (difference_from_logarithm(centre, d + side) for side in (0.0, -reach[0], reach[1]))
    more, less = abs(at) * expm1(min(of_middle, 300.0)), -abs(at) * expm1(-of_middle)
    further_low, further_high = hypot(at - low, less if d > 0.0 else more), hypot(high - at, more if d > 0.0 else less)
    shrunk = exp(-of_middle)
    return (
        max(at - further_low, low * shrunk) if low > 0.0 else at - further_low,
        min(at + further_high, high * shrunk) if high < 0.0 else at + further_high,
    )


def value_from_logarithm(value: float, d: float) -> float:
    """`value` times e to the `d`, kept finite."""
    return value * exp(min(max(d, -600.0), 600.0))
