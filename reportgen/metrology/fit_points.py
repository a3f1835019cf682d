"""The points of a fit: what each brings with it, in one unit a side."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from reportgen.metrology.arithmetic import exact, in_unit
from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.orthogonal import Number, as_float, as_fraction
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import Unit, parse_unit

OWN = frozenset({"step", "repeatability"})  # sorts that make each point err by itself


@dataclass(frozen=True)
class Points:
    """`xs` and `ys` exactly as they are held or written; `x` and `y` the same with their contributions."""

    xs: tuple[Fraction, ...]
    ys: tuple[Fraction, ...]
    x: tuple[Uncertain, ...]
    y: tuple[Uncertain, ...]
    x_unit: Unit
    y_unit: Unit

    def without_own(self, s: float, steepness: Callable[[Fraction], float]) -> Points:
        """Less the steps and repeatability that one point alone has, for they are in the scatter `s` about the curve.

        Unless s is less than half of the largest step, δ/2 = √3·δ/√12: rounding may then hide in it. `steepness` of
        the curve at an x tells what an error of x is worth in y.
        """
        of = Counter(source for point in (*self.x, *self.y) for source in point.contributions)
        alone = {source for source, count in of.items() if count == 1 and source.sort in OWN}
        if not alone:
            return self
        largest = max(
            math.hypot(*_sizes(y, alone), *(steepness(at) * size for size in _sizes(x, alone)))
            for at, x, y in zip(self.xs, self.x, self.y, strict=True)
        )
        if s < math.sqrt(3) * largest:
            return self
        return replace(self, x=_without(self.x, alone), y=_without(self.y, alone))


def points_of(
    xs: Sequence[Number | Uncertain], ys: Sequence[Number | Uncertain], x_unit: str | Unit, y_unit: str | Unit
) -> Points:
    """Raises MetrologyError where there aren't as many x as y, NoValue for bounds, UnitError."""
    if len(xs) != len(ys):
        raise MetrologyError(f"{len(xs)} values of x beside {len(ys)} of y", "give both for every point")
    all_x, x, unit_of_x = _side(xs, x_unit)
    all_y, y, unit_of_y = _side(ys, y_unit)
    return Points(all_x, all_y, x, y, unit_of_x, unit_of_y)


def _side(
    values: Sequence[Number | Uncertain], unit: str | Unit
) -> tuple[tuple[Fraction, ...], tuple[Uncertain, ...], Unit]:
    written = parse_unit(unit) if isinstance(unit, str) else unit
    stated = next((v.unit for v in values if isinstance(v, Uncertain)), written)
    numbers: list[Fraction] = []
    points: list[Uncertain] = []
    for value in values:
        if isinstance(value, Uncertain):
            point = in_unit(value, stated)
            if point.value is None or point.limit:
                raise NoValue("a point of a fit is only a bound", "leave it out of the fit, or read it again")
            numbers.append(as_fraction(point.value))
        else:
            numbers.append(as_fraction(value))
            point = exact(as_float(numbers[-1]), stated)
        points.append(point)
    return tuple(numbers), tuple(points), stated


def _sizes(point: Uncertain, of: set[Source]) -> list[float]:
    return [size for source, size in point.contributions.items() if source in of]


def _without(points: Sequence[Uncertain], alone: set[Source]) -> tuple[Uncertain, ...]:
    def kept(contributions: Mapping[Source, float]) -> dict[Source, float]:
        return {source: size for source, size in contributions.items() if source not in alone}

    return tuple(replace(point, contributions=kept(point.contributions)) for point in points)
