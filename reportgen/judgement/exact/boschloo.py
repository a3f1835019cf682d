"""Two shares held against each other: Boschloo's exact test, one-sided.

Boschloo (1970, Statistica Neerlandica 24:1) takes Fisher's p as the statistic and its worst case over the share that
both might have in common, so that it never says less than Fisher's test and still keeps its level.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

MOST_OUTCOMES = 100_000  # of two rows of tries
ALIKE = 1e-9  # two of Fisher's p this near, in parts of themselves, are one
FINER = 3  # times the grid closes in on the worst case


@lru_cache(maxsize=4096)
def boschloo(yes: int, of: int, other_yes: int, other_of: int) -> float:
    """One-sided p that the first has the greater share, from 0 to 1.

    Three of three against none of three: at most 1/64 where both have one share, whatever it is (θ³(1 − θ)³ is largest
    at a half); two of two against none of two are 1/16, which is never enough. Fisher's test says 1/20 of the former.

    >>> round(boschloo(3, 3, 0, 3), 6) == round(1 / 64, 6), round(boschloo(2, 2, 0, 2), 6)
    (True, 0.0625)

    Beyond some hundreds of tries each it is Fisher's p itself, which is never smaller. Raises ValueError for what is no
    share of tries.
    """
    if of < 1 or other_of < 1 or not (0 <= yes <= of and 0 <= other_yes <= other_of):
        raise ValueError(f"{yes} of {of} against {other_yes} of {other_of} are no shares of tries")
    if of * other_of > MOST_OUTCOMES:
        return _fisher(yes, of, other_yes, other_of)
    fisher = fisher_table(of, other_of)
    in_the_set = fisher <= fisher[yes, other_yes] * (1.0 + ALIKE)
    at_most = in_the_set.sum(axis=1) - 1  # of each row, the largest y in the set
    points = min(max(201, 8 * (of + other_of) + 1), 2001)
    angle = np.linspace(0.0, np.pi / 2.0, points)  # shares lie denser towards both ends
    worst = 0.0
    for _ in range(FINER + 1):
        chance = _chance_of(at_most, of, other_of, np.sin(angle) ** 2)
        best = int(chance.argmax())
        worst = max(worst, float(chance[best]))
        angle = np.linspace(angle[max(best - 1, 0)], angle[min(best + 1, len(angle) - 1)], 51)
    return min(worst, 1.0)


def fisher_table(of: int, other_of: int) -> Floats:
    """Fisher's one-sided p of each outcome, (of + 1) × (other_of + 1): the chance, with the total of yes as it is, of
    as many for the first or more (Fisher 1935, JRSS 98:39).

    >>> float(round(fisher_table(3, 3)[3, 0], 10))
    0.05
    """
    total = _log_choose(of + other_of)
    point = np.exp(
        _log_choose(of)[:, None]
        + _log_choose(other_of)[None, :]
        - total[np.arange(of + 1)[:, None] + np.arange(other_of + 1)[None, :]]
    )
    for x in range(of - 1, -1, -1):
        point[x, 1:] += point[x + 1, :-1]
    return np.asarray(np.minimum(point, 1.0))


@lru_cache(maxsize=128)
def decides(of: int, allowed: float) -> NDArray[np.bool_]:
    """Which outcomes of `of` tries each have a p of at most `allowed`, (of + 1) × (of + 1). To plan by: worked out on
    a grid of shares.

    >>> int(decides(3, 0.025).sum()), bool(decides(3, 0.025)[3, 0])
    (1, True)
    """
    fisher = fisher_table(of, of)
    share = np.sin(np.linspace(0.0, np.pi / 2.0, 201)) ** 2
    points = _points(of, share)
    order = np.argsort(fisher, axis=None, kind="stable")
    nested = np.cumsum((points[:, None, :] * points[None, :, :]).reshape(-1, len(share))[order], axis=0).max(axis=1)
    sizes = np.searchsorted(fisher.ravel()[order], fisher.ravel() * (1.0 + ALIKE), side="right")
    return np.asarray((nested[sizes - 1] <= allowed).reshape(of + 1, of + 1))


def _fisher(yes: int, of: int, other_yes: int, other_of: int) -> float:
    total = yes + other_yes
    x = np.arange(max(yes, total - other_of), min(of, total) + 1)
    logs = _log_choose(of)[x] + _log_choose(other_of)[total - x] - _log_choose(of + other_of)[total]
    return min(float(np.exp(logs).sum()), 1.0)


def extreme(of: int, other_of: int) -> float:
    """The least p that any outcome can have, all of the first against none of the other: the worst case of θⁿ(1 − θ)ᵐ.

    >>> extreme(3, 3) == 1 / 64, extreme(2, 2)
    (True, 0.0625)
    """
    share = of / (of + other_of)
    return float(share**of * (1.0 - share) ** other_of)


def _chance_of(at_most: NDArray[np.int64], of: int, other_of: int, share: Floats) -> Floats:
    """The chance of the set {y ≤ at_most[x]} where both have one share, for each of `share`."""
    below = np.vstack([np.zeros(len(share)), np.cumsum(_points(other_of, share), axis=0)])
    return np.asarray((_points(of, share) * below[at_most + 1]).sum(axis=0))


def _points(of: int, share: Floats) -> Floats:
    """Binomial chances, (of + 1) × shares."""
    x = np.arange(of + 1)[:, None]
    return np.asarray(np.exp(_log_choose(of))[:, None] * share**x * (1.0 - share) ** (of - x))


def _log_choose(n: int) -> Floats:
    """Logarithms of n choose 0, 1, … n."""
    logs = np.concatenate([[0.0], np.cumsum(np.log(np.arange(1, n + 1)))])
    return np.asarray(logs[n] - logs - logs[::-1])
