"""Two numbers of events held against each other: given their total, the first is binomial."""

from __future__ import annotations


def greater_rate(events: int, exposure: float, other_events: int, other_exposure: float) -> float:
    """One-sided p that the first comes more often per unit of exposure, where events come independently of each other.

    Given both together, the first's are binomial with its share of the exposure (Przyborowski and Wilenski 1940,
    Biometrika 31:313). Over equal exposure 6 against 0 tell two apart at 2.5 %, 5 against 0 don't; 8 against 1 do, 7
    against 1 don't:

    >>> [round(greater_rate(n, 1.0, m, 1.0), 4) for n, m in ((6, 0), (5, 0), (8, 1), (7, 1))]
    [0.0156, 0.0312, 0.0195, 0.0352]

    Raises ValueError for fewer than no events, and where nothing was watched.
    """
    if events < 0 or other_events < 0 or not (exposure > 0.0 and other_exposure > 0.0):
        raise ValueError(f"{events} over {exposure} against {other_events} over {other_exposure} are no rates")
    if not events:
        return 1.0
    from scipy.special import betainc

    return float(betainc(events, other_events + 1, exposure / (exposure + other_exposure)))
