"""Lines and curves through points by least squares, their parameters known together (JCGM 100, H.3).

    line = fit.line(loads, readings, "kg", "mm", name="spring")
    line.slope, line.at(12.5), line.residual_sd

Two things make a fitted parameter uncertain. The scatter of the points about the curve, s² = Σr²/(n − p), makes one
cause a parameter (sort "fit"), normal with n − p degrees of freedom, and one t together, for all rest on one s. What
the points bring with them, a scale's gain or offset say, goes through the fit by exact derivatives: an offset of all y
leaves the slope alone. Steps and repeatability that each point has of its own are what the scatter shows already; they
count beside it only where the scatter is less than half of such a step, and may hide in it.

Points are whole numbers, floats, fractions, decimals as written, or `Uncertain`s. The sums are exact (`orthogonal.py`).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from reportgen.metrology.arithmetic import exact, in_unit, weighted
from reportgen.metrology.errors import MetrologyError, NoValue, UnitError
from reportgen.metrology.fit_points import Points, points_of
from reportgen.metrology.orthogonal import (
    Number,
    Orthogonal,
    Row,
    as_float,
    as_fraction,
    dot,
    orthogonal,
    powers,
    root,
    slopes_of_powers,
)
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import NUMBER, Unit
from reportgen.metrology.unit_algebra import step_of, unit_of_power, unit_of_product

Point = Number | Uncertain
HIGHEST = 20  # power of a polynomial


@dataclass(frozen=True)
class Fitted:
    """y = Σ coefficientₖ·xᵏ through the points, from the lowest power (0, or 1 through the origin) up.

    `residual_sd` is s in y's unit with `degrees` of freedom; `residuals` are y less the curve, point by point;
    `r_squared` is the share of Σ(y − ȳ)² (of Σy² through the origin) that the curve takes up, None where all y are
    alike. `coefficients` carry their correlation by the sources they share.
    """

    coefficients: tuple[Uncertain, ...]
    residual_sd: float
    degrees: int
    residuals: tuple[float, ...]
    r_squared: float | None
    _solved: _Solved

    @property
    def intercept(self) -> Uncertain:
        """y at x = 0; exactly nothing through the origin."""
        return self.coefficients[0] if not self._solved.lowest else exact(0.0, self._solved.points.y_unit)

    @property
    def slope(self) -> Uncertain:
        """The coefficient of x."""
        return self.coefficients[1 - self._solved.lowest]

    def at(self, x: Point) -> Uncertain:
        """y of the curve at x, with the errors of the parameters together and x's own (JCGM 100, H.3.4).

        Digits aren't lost however far x is from 0. Raises UnitError for another kind of x, NoValue for a bound.
        """
        return self._solved.at(x)


def line(
    xs: Sequence[Point],
    ys: Sequence[Point],
    x_unit: str | Unit = "",
    y_unit: str | Unit = "",
    *,
    name: str,
    where: str = "",
) -> Fitted:
    """The straight line through the points (JCGM 100, H.3.2 and H.3.3); `name` is what its errors are known by.

    Of several fits of one name, `where` tells one from another.

    Units are those of plain numbers; an `Uncertain` has its own.

    >>> from reportgen.metrology.uncertain import combined_standard_uncertainty
    >>> spring = line([1, 2, 3, 4], [10.1, 20.0, 29.8, 40.1], "N", "mm", name="spring")
    >>> round(spring.slope.value, 6), spring.slope.unit.symbol, round(combined_standard_uncertainty(spring.slope), 6)
    (9.98, 'mm/N', 0.076158)

    Raises NoValue where the points leave no line or no scatter about one, UnitError for units that don't go together.
    """
    return _fitted(points_of(xs, ys, x_unit, y_unit), 0, 1, name, where)


def line_through_origin(
    xs: Sequence[Point], ys: Sequence[Point], x_unit: str | Unit = "", y_unit: str | Unit = "", *, name: str
) -> Fitted:
    """y = slope·x: for what is nothing where x is nothing. Raises as `line`, and UnitError where y has no true zero.

    >>> round(line_through_origin([4, 5, 6], [3, 4, 4], name="ratio").slope.value, 6)
    0.727273
    """
    return _fitted(points_of(xs, ys, x_unit, y_unit), 1, 1, name)


def polynomial(
    xs: Sequence[Point], ys: Sequence[Point], power: int, x_unit: str | Unit = "", y_unit: str | Unit = "", *, name: str
) -> Fitted:
    """A polynomial up to x to the `power`, 1 to 20. Raises as `line`.

    >>> cell = polynomial([0, 1, 2, 3, 4], [1, 3, 9, 19, 33], 2, name="load cell")
    >>> [round(c.value, 3) for c in cell.coefficients]
    [1.0, 0.0, 2.0]
    """
    if not 1 <= power <= HIGHEST:
        raise MetrologyError(f"a polynomial of power {power}", f"give a whole power from 1 to {HIGHEST}")
    return _fitted(points_of(xs, ys, x_unit, y_unit), 0, power, name)


@dataclass(frozen=True)
class _Solved:
    """A fit with its sums exact: `found[j]` is the parameter of orthogonal column j, `s` the residual sd."""

    name: str
    where: str
    points: Points
    lowest: int
    highest: int
    columns: Orthogonal
    found: Row
    left: Row  # residuals
    s: float
    degrees: int

    def total(self, functional: Sequence[Fraction], unit: Unit) -> Uncertain:
        """A sum over the parameters, each with its weight, with everything that makes it uncertain."""
        seen = self.columns.seen(functional)
        value = as_float(dot(seen, self.found))
        scatter = {
            Source("fit", self.name, "/".join(filter(None, (self.where, str(j + 1)))), "normal", self.degrees): self.s
            * _ratio(h, d)
            for j, (h, d) in enumerate(zip(seen, self.columns.squares, strict=True))
            if h and self.s
        }
        return Uncertain(value, unit, scatter | self._brought(seen))

    def _brought(self, seen: Row) -> dict[Source, float]:
        """What the points' own contributions become: derivatives of the normal equations by each y and each x."""
        terms: list[tuple[float, Uncertain]] = []
        shares = [h / d for h, d in zip(seen, self.columns.squares, strict=True)]
        for i, (x, y) in enumerate(zip(self.points.x, self.points.y, strict=True)):
            if y.contributions:
                terms.append((as_float(dot(shares, self.columns.rows[i])), y))
            if x.contributions:
                steeper = self.columns.seen(slopes_of_powers(self.points.xs[i], self.lowest, self.highest))
                slope = dot(steeper, self.found)
                by_x = [e * self.left[i] - h * slope for e, h in zip(steeper, self.columns.rows[i], strict=True)]
                terms.append((as_float(dot(shares, by_x)), x))
        return weighted(terms)

    def steepness(self, x: Fraction) -> float:
        """The curve's slope at x."""
        return as_float(dot(self.columns.seen(slopes_of_powers(x, self.lowest, self.highest)), self.found))

    def coefficients(self) -> tuple[Uncertain, ...]:
        count = self.highest - self.lowest + 1
        return tuple(
            self.total([Fraction(int(j == k)) for j in range(count)], self._unit_of(self.lowest + k))
            for k in range(count)
        )

    def _unit_of(self, power: int) -> Unit:
        y, x = self.points.y_unit, step_of(self.points.x_unit)
        if not power:
            return y
        return unit_of_product(step_of(y), unit_of_power(x, Fraction(power)), "/") if x != NUMBER else step_of(y)

    def at(self, x: Point) -> Uncertain:
        if not isinstance(x, Uncertain):
            at, own = as_fraction(x), None
        else:
            own = in_unit(x, self.points.x_unit)
            if own.value is None or own.limit:
                raise NoValue("a curve at a bound", "give a value that was read")
            at = as_fraction(own.value)
        y = self.total(powers(at, self.lowest, self.highest), self.points.y_unit)
        if own is None or not own.contributions:
            return y
        return replace(y, contributions=weighted([(1.0, y), (self.steepness(at), own)]))


def _fitted(points: Points, lowest: int, highest: int, name: str, where: str = "") -> Fitted:
    if lowest and (points.y_unit.kind == "level" or points.y_unit.offset):
        raise UnitError(
            f"a line through the origin in {points.y_unit.symbol}: zero there isn't nothing",
            "fit a line with an intercept, or subtract a start first",
        )
    if not name:
        raise MetrologyError("a fit without a name", "name it: equal names are one and the same error")
    parameters, n = highest - lowest + 1, len(points.xs)
    if n <= parameters:
        raise NoValue(
            f"{n} points and {parameters} parameters leave no scatter to judge the fit by",
            f"take {parameters + 1} points or more",
        )
    columns = orthogonal([powers(x, lowest, highest) for x in points.xs])
    by_column = list(zip(*columns.rows, strict=True))
    found = tuple(dot(column, points.ys) / square for column, square in zip(by_column, columns.squares, strict=True))
    left = tuple(y - dot(row, found) for row, y in zip(columns.rows, points.ys, strict=True))
    squares, degrees = dot(left, left), n - parameters
    solved = _Solved(name, where, points, lowest, highest, columns, found, left, root(squares / degrees), degrees)
    solved = replace(solved, points=points.without_own(solved.s, solved.steepness))
    middle = sum(points.ys, Fraction(0)) / n if not lowest else Fraction(0)
    off = [y - middle for y in points.ys]
    whole = dot(off, off)
    return Fitted(
        solved.coefficients(), solved.s, degrees, tuple(map(as_float, left)),
        as_float(1 - squares / whole) if whole else None, solved,
    )  # fmt: skip


def _ratio(h: Fraction, square: Fraction) -> float:
    """h/√square, of fractions that a float need not hold."""
    return math.copysign(root(h * h / square), h)
