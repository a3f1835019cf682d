"""Exact limits of what is counted rather than measured: a share of tries, events that come at random."""

from __future__ import annotations

ALPHA = 0.05  # two-sided


def share_interval(yes: int, of: int, alpha: float = ALPHA) -> tuple[float, float]:
    """The interval of a share of `of` tries, 0 to 1 (Clopper and Pearson 1934, Biometrika 26:404).

    It misses the true share at most in `alpha` of all cases: of 95 %, where nothing is said. Newcombe 1998
    (Statistics in Medicine 17:857, table I) prints .2527 to .3676 for 81 of 263, and 0 to .1684 for none of 20; one
    of one leaves a no at up to 97.5 %:

    >>> [[round(x, 4) for x in share_interval(*of)] for of in ((81, 263), (0, 20))]
    [[0.2527, 0.3676], [0.0, 0.1684]]
    >>> round(1.0 - share_interval(1, 1)[0], 3)
    0.975

    Raises ValueError for no tries, or for more or fewer yes than can be.
    """
    if of < 1 or not 0 <= yes <= of:
        raise ValueError(f"{yes} of {of} is no share of tries")
    from scipy.special import betaincinv

    low = float(betaincinv(yes, of - yes + 1, alpha / 2.0)) if yes else 0.0
    high = float(betaincinv(yes + 1, of - yes, 1.0 - alpha / 2.0)) if yes < of else 1.0
    return low, high


def rate_interval(events: int, exposure: float = 1.0, alpha: float = ALPHA) -> tuple[float, float]:
    """The interval, of 95 % where no two-sided `alpha` is said, of events per unit of `exposure` that come by
    themselves, so that their number is Poisson's (Garwood 1936, Biometrika 28:437). None leaves up to 3.689, ten
    are 4.795 to 18.390:

    >>> [[round(x, 3) for x in rate_interval(n)] for n in (0, 10)]
    [[0.0, 3.689], [4.795, 18.39]]

    Raises ValueError for fewer than no events, and where nothing was watched.
    """
    if events < 0 or not exposure > 0.0:
        raise ValueError(f"{events} events over {exposure} is no rate")
    from scipy.special import gammaincinv

    low = float(gammaincinv(events, alpha / 2.0)) if events else 0.0
    return low / exposure, float(gammaincinv(events + 1, 1.0 - alpha / 2.0)) / exposure
