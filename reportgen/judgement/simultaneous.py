"""Levels at which Student's t gives simultaneous intervals over all pairs: Tukey and Kramer's, or Bonferroni's.

With the studentized range q, Tukey and Kramer's half-width is q/√2·√A. The two-sided level α′ at which Student's t
equals q/√2 puts that into the same half-width as any other (Kramer 1956, Biometrics 12:307; Hayter 1984).
"""

from __future__ import annotations

from functools import lru_cache
from math import sqrt

ALPHA = 0.05


@lru_cache(maxsize=512)
def tukey(contenders: int, degrees: float) -> float:
    """Two-sided level of one pair, under a common scatter with `degrees`, so that all pairs hold at 5 %."""
    if contenders <= 2:
        return ALPHA
    from scipy.special import stdtr
    from scipy.stats import studentized_range

    q = float(studentized_range.ppf(1.0 - ALPHA, contenders, degrees))
    return 2.0 * float(stdtr(degrees, -q / sqrt(2.0)))


def bonferroni(contenders: int) -> float:
    """Two-sided level of one pair, whatever the scatters, so that all pairs hold at 5 % together."""
    return ALPHA / max(1, contenders * (contenders - 1) // 2)
