"""Levels at which Student's t gives simultaneous intervals over all pairs: Tukey and Kramer's, or Bonferroni's.

With the studentized range q, Tukey and Kramer's half-width is q/√2·√A. The two-sided level α′ at which Student's t
equals q/√2 puts that into the same half-width as any other (Kramer 1956, Biometrics 12:307; Hayter 1984, Annals of
Statistics 12:61).
"""

from __future__ import annotations

from math import lgamma, log, sqrt

import numpy as np
from scipy.special import gammainccinv, gammaincinv, ndtr, stdtr, stdtrit

from reportgen.judgement.reach.remembered import remembered
from reportgen.judgement.reach.zero import zero_of_rising

ALPHA = 0.05
NODES = 160  # of Gauss and Legendre's rule in either direction: q agrees with tables to six digits


def tukey(contenders: int, degrees: float) -> float:
    """Two-sided level of one pair, under a common scatter with `degrees`, so that all pairs hold at 5 %."""
    if contenders <= 2:
        return ALPHA
    q = studentized_range(1.0 - ALPHA, contenders, degrees)
    return 2.0 * float(stdtr(degrees, -q / sqrt(2.0)))


def bonferroni(contenders: int) -> float:
    """Two-sided level of one pair, whatever the scatters, so that all pairs hold at 5 % together."""
    return ALPHA / max(1, contenders * (contenders - 1) // 2)


@remembered
def studentized_range(level: float, means: int, degrees: float) -> float:
    """Quantile q of the range of `means` normal means over an independent standard deviation with `degrees`.

    P(q) = ∫ f(s) ∫ k·φ(z)·[Φ(z) − Φ(z − q·s)]^(k−1) dz ds, f the density of s = χ/√ν (Miller, Simultaneous Statistical
    Inference, 1981, 2.1). Worked out here because the general library's takes a hundred times as long.

    >>> round(studentized_range(0.95, 4, 20), 2)  # tables of q: 3.96
    3.96
    """
    x, w = np.polynomial.legendre.leggauss(NODES)
    z, weight_z = 8.5 * x, 8.5 * w
    share_z = means * weight_z * np.exp(-z * z / 2.0) / sqrt(2.0 * np.pi)
    low = sqrt(2.0 * float(gammaincinv(degrees / 2.0, 1e-14)) / degrees)
    high = sqrt(2.0 * float(gammainccinv(degrees / 2.0, 1e-14)) / degrees)
    s = low + (high - low) * (x + 1.0) / 2.0
    half = degrees / 2.0
    log_density = log(2.0) + half * log(half) - lgamma(half) + (degrees - 1.0) * np.log(s) - half * s * s
    share_s = np.exp(log_density) * w * (high - low) / 2.0

    def below(q: float) -> float:
        gap = ndtr(z)[None, :] - ndtr(z[None, :] - q * s[:, None])
        return float(share_s @ (gap ** (means - 1) @ share_z))

    alone, together = (1.0 - level) / 2.0, (1.0 - level) / (means * (means - 1))
    least, most = (-sqrt(2.0) * float(stdtrit(degrees, tail)) for tail in (alone, together))
    return zero_of_rising(lambda q: below(q) - level, least, most)
