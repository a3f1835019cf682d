"""How many tries, grades or events would settle a gap like the one seen: 80 % power, two-sided 5 %.

Rules of thumb to plan by; decisions never use them.
"""

from __future__ import annotations

from math import asin, ceil, sqrt

Z = 1.959964 + 0.841621  # quantiles of the normal distribution at 97.5 % and 80 %
MOST = 10_000  # nobody tries more often


def tries_for(share: float, other: float) -> int | None:
    """Tries each, by the arcsine of the root of a share (Cohen 1988, Statistical Power Analysis, 6.4: 2·(Z/h)²).

    Cohen's table 6.4.1 has 392 for h = .20 at a = .05 two-sided (from memory):

    >>> from math import sin
    >>> tries_for(sin(0.8) ** 2, sin(0.7) ** 2)
    393
    """
    apart = 2.0 * abs(asin(sqrt(share)) - asin(sqrt(other)))
    return _whole(2.0 * (Z / apart) ** 2) if apart else None


def grades_for(superiority: float) -> int | None:
    """Grades each, where one of the first stands above one of the second so often (Noether 1987, JASA 82:645, for equal
    numbers: Z²/(6(P − ½)²))."""
    apart = abs(superiority - 0.5)
    return _whole(Z * Z / (6.0 * apart * apart)) if apart > 1e-12 else None


def exposure_for(rate: float, other: float) -> float | None:
    """Exposure each, by twice the root of a Poisson number, whose variance is one (Bartlett 1936, JRSS Suppl. 3:68):
    Z²/(2(√λ₁ − √λ₂)²)."""
    apart = abs(sqrt(rate) - sqrt(other))
    return Z * Z / (2.0 * apart * apart) if apart > 1e-12 else None


def _whole(n: float) -> int | None:
    return ceil(n) if n <= MOST else None
