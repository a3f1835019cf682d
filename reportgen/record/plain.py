"""Floats as the record holds them: rounded once, here and nowhere before.

Results of `exp`, `log10` and powers differ in their last bits between processors; twelve significant digits are the
same everywhere and finer than any measurement.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

DIGITS = 12


def number(x: float | None) -> float | None:
    """`x` to twelve significant digits, without a negative zero; None for what is not a finite number."""
    if x is None or not math.isfinite(x):
        return None
    return float(f"{x:.{DIGITS}g}") + 0.0


def numbers(by_name: Mapping[str, float]) -> dict[str, float | None]:
    """The same for each number of a mapping, in the order of the names."""
    return {name: number(by_name[name]) for name in sorted(by_name)}
