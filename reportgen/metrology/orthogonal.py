"""Least squares worked out exactly, in fractions, and rounded once at the end.

The columns of a fit are made orthogonal one after another (Gram and Schmidt on exact numbers; for powers of one
variable these are the orthogonal polynomials of the points). Nothing is rounded on the way, so no fit is
ill-conditioned: a difference of nearly equal numbers keeps all of its digits. Every number a computer holds is a
fraction; `Decimal("9.01")` is taken as written. Points of a fit are few, so exactness costs little.

The orthogonal columns are also what makes its errors independent of each other: one cause a column, each of variance
s²/(sum of its squares).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from reportgen.metrology.errors import MetrologyError, NoValue

Number = float | Fraction | Decimal
Row = tuple[Fraction, ...]


@dataclass(frozen=True)
class Orthogonal:
    """`rows[i]` are the orthogonal columns at point i, `squares[j]` the sum of squares of column j.

    `lower[j]` tells column j of the design by the orthogonal ones: designⱼ = orthogonalⱼ + Σ lower[j][k]·orthogonalₖ.
    """

    rows: tuple[Row, ...]
    squares: Row
    lower: tuple[Row, ...]

    def seen(self, functional: Sequence[Fraction]) -> Row:
        """Weights of a sum over the parameters, told in orthogonal ones (forward substitution)."""
        found: list[Fraction] = []
        for j, weight in enumerate(functional):
            found.append(weight - _dot(self.lower[j][:j], found))
        return tuple(found)


def orthogonal(design: Sequence[Sequence[Fraction]]) -> Orthogonal:
    """The design, a row a point, with its columns made orthogonal. Raises NoValue where a column depends on others."""
    columns = [list(column) for column in zip(*design, strict=True)]
    found: list[list[Fraction]] = []
    squares: list[Fraction] = []
    lower: list[Row] = []
    for column in columns:
        shares = [_dot(column, other) / square for other, square in zip(found, squares, strict=True)]
        left = [value - _dot(shares, [other[i] for other in found]) for i, value in enumerate(column)]
        square = _dot(left, left)
        if not square:
            raise NoValue(
                "the points lie too few apart to fit this to them", "take readings at more settings, further apart"
            )
        found.append(left)
        squares.append(square)
        lower.append(tuple(shares))
    return Orthogonal(tuple(zip(*found, strict=True)), tuple(squares), tuple(lower))


def powers(x: Fraction, lowest: int, highest: int) -> Row:
    """x to the powers from `lowest` to `highest`."""
    return tuple(x**k for k in range(lowest, highest + 1))


def slopes_of_powers(x: Fraction, lowest: int, highest: int) -> Row:
    """What each of those powers changes by per change of x."""
    return tuple(k * x ** (k - 1) if k else Fraction(0) for k in range(lowest, highest + 1))


def dot(one: Sequence[Fraction], other: Sequence[Fraction]) -> Fraction:
    """Σ aᵢ·bᵢ, exactly."""
    return _dot(one, other)


def as_fraction(value: Number) -> Fraction:
    """A number exactly as it is held or written. Raises MetrologyError for what is no number."""
    if not isinstance(value, Fraction) and not math.isfinite(value):
        raise MetrologyError(f"a point at {value}", "write a number")
    return Fraction(value)


def as_float(value: Fraction) -> float:
    """The nearest number a computer holds. Raises NoValue for one too large."""
    try:
        return float(value)
    except OverflowError:
        raise NoValue("a number too large to hold", "look for a unit that is wrong by many powers of ten") from None


def root(value: Fraction) -> float:
    """The square root of a fraction, whose own size need not be one that a computer holds."""
    if not value:
        return 0.0
    shift = (value.numerator.bit_length() - value.denominator.bit_length()) // 2
    return math.ldexp(math.sqrt(value / Fraction(4) ** shift), shift)


def _dot(one: Sequence[Fraction], other: Sequence[Fraction]) -> Fraction:
    """Over one common denominator: adding fractions one by one would look for it every time."""
    products = [a * b for a, b in zip(one, other, strict=True) if a and b]
    below = math.lcm(*(p.denominator for p in products))
    return Fraction(sum(p.numerator * (below // p.denominator) for p in products), below)
