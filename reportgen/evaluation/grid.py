"""The grid readings were read on, seen from the digits written."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

COARSER = (Decimal(2), Decimal(5), Decimal(10), Decimal(20), Decimal(50), Decimal(100))


def finest_decimal(values: Sequence[Decimal]) -> Decimal:
    """The place of the last digit written in any of the values: 0.1 for 14.2 and 15; 1 for 250."""
    return Decimal(1).scaleb(min(0, *(_exponent(v) for v in values)))


def coarser_step(values: Sequence[Decimal], step: Decimal | None = None) -> Decimal:
    """The step readings keep to: `step` (or the finest decimal written), or a multiple that all of them sit on.

    A coarser grid counts only where readings on the finer one would agree with it by chance in under 1 % of
    cases: m⁻ⁿ < 0.01 for a grid m times as coarse and n different values.
    """
    fine = step or finest_decimal(values)
    different = len(set(values))
    fits = [m for m in COARSER if all(_on(v, fine * m) for v in values) and float(m) ** -different < 0.01]
    return fine * max(fits, default=Decimal(1))


def _on(value: Decimal, step: Decimal) -> bool:
    """Whether a value sits on a grid, however far from nought: decimals divide to 28 digits only."""
    return (Fraction(value) / Fraction(step)).denominator == 1


def _exponent(value: Decimal) -> int:
    exponent = value.as_tuple().exponent
    return exponent if isinstance(exponent, int) else 0
