"""How many tries, grades or events would settle a gap like the one seen: 80 % power, two-sided 5 %.

To plan by; decisions never use them. Where few would do, the power is that of the exact test; else a rule of thumb.
"""

from __future__ import annotations

from functools import lru_cache
from math import asin, ceil, sqrt
from typing import TYPE_CHECKING

import numpy as np

from reportgen.judgement.exact.boschloo import decides

if TYPE_CHECKING:
    from numpy.typing import NDArray

Z = 1.959964 + 0.841621  # quantiles of the normal distribution at 97.5 % and 80 %
POWER = 0.80
ALLOWED = 0.025  # one-sided
MOST = 10_000  # nobody tries more often
FEW = 50  # tries each, or events of both together, up to which the exact power is worked out


def tries_for(share: float, other: float) -> int | None:
    """Tries each, by the arcsine of the root of a share (Cohen 1988, Statistical Power Analysis, 6.4: 2·(Z/h)²).

    Cohen's table 6.4.1 has 392 for h = .20 at a = .05 two-sided (from memory):

    >>> from math import sin
    >>> tries_for(sin(0.8) ** 2, sin(0.7) ** 2)
    393

    Up to some 50 tries it is Boschloo's own power that counts.

    >>> tries_for(1.0, 0.0)
    3
    """
    apart = 2.0 * abs(asin(sqrt(share)) - asin(sqrt(other)))
    if not apart:
        return None
    rough = 2.0 * (Z / apart) ** 2
    return _whole(rough) if rough > FEW else _exact_tries(max(share, other), min(share, other))


@lru_cache(maxsize=1024)
def _exact_tries(greater: float, less: float) -> int:
    """The fewest from which Boschloo's test finds the one that is greater four times in five."""
    tries = 2
    while tries < 2 * FEW and _power(tries, greater, less) < POWER:
        tries += 1
    return tries


def _power(tries: int, greater: float, less: float) -> float:
    from scipy.special import bdtr

    x = np.arange(tries + 1)
    first, second = (np.diff(bdtr(x, tries, share), prepend=0.0) for share in (greater, less))
    return float(first @ decides(tries, ALLOWED) @ second)


def grades_for(superiority: float) -> int | None:
    """Grades each, where one of the first stands above one of the second so often (Noether 1987, JASA 82:645, for equal
    numbers: Z²/(6(P − ½)²))."""
    apart = abs(superiority - 0.5)
    return _whole(Z * Z / (6.0 * apart * apart)) if apart > 1e-12 else None


def exposure_for(rate: float, other: float) -> float | None:
    """Exposure each, by twice the root of a Poisson number, whose variance is one (Bartlett 1936, JRSS Suppl. 3:68):
    Z²/(2(√λ₁ − √λ₂)²); where few events would do, by the power of the binomial test.

    None a run against one a run takes some eight runs: six or more of a Poisson number of mean 7.9 are seen four times
    in five, and 6 against 0 is the least that decides.

    >>> exposure = exposure_for(1.0, 0.0)
    >>> 7.8 < (exposure or 0.0) < 8.2
    True
    """
    apart = abs(sqrt(rate) - sqrt(other))
    if apart <= 1e-12:
        return None
    rough = Z * Z / (2.0 * apart * apart)
    return rough if rough * (rate + other) > FEW else _exact_exposure(max(rate, other), min(rate, other))


@lru_cache(maxsize=1024)
def _exact_exposure(greater: float, less: float) -> float:
    """The exposure from which the binomial test finds the greater rate four times in five, to some 2 %."""
    exposure = Z * Z / (4.0 * (greater + less))
    while _found(exposure * greater, exposure * less) < POWER:
        exposure *= 1.02
    return exposure


def _found(greater: float, less: float) -> float:
    """The chance that two Poisson numbers of these means are told apart over equal exposure."""
    from scipy.special import pdtr

    x = np.arange(4 * FEW + 1)
    first, second = (np.diff(pdtr(x, mean), prepend=0.0) for mean in (greater, less))
    return float(first @ _told_apart() @ second)


@lru_cache(maxsize=1)
def _told_apart() -> NDArray[np.bool_]:
    """Which numbers of events over equal exposure the binomial test tells apart."""
    from scipy.special import betainc

    x = np.arange(4 * FEW + 1)
    p = betainc(np.maximum(x, 1)[:, None], (x + 1)[None, :], 0.5)
    p[0] = 1.0
    return np.asarray(p <= ALLOWED)


def _whole(n: float) -> int | None:
    return ceil(n) if n <= MOST else None
