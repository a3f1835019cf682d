"""Two rows of grades held against each other: the exact rank sum test, which knows ties."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import groupby
from math import comb, erfc, gcd, sqrt
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

SUMS = 300_000_000  # additions that all ways to deal two rows out may take: up to some ninety values each
SIZE = 1000  # the ways to deal out more than so many are beyond what a float holds


def rank_sum(first: Sequence[float], second: Sequence[float]) -> float:
    """One-sided p that `first` stands higher: how many of all ways to deal the pooled values out to the two have a rank
    sum of the first as great or greater. Equal values have their middle rank (Wilcoxon 1945, Biometrics Bulletin 1:80;
    ties as in Lehmann 1975, Nonparametrics, 1.4).

    Four above four are one of the 70 ways, three above three one of 20:

    >>> round(rank_sum([5, 6, 7, 8], [1, 2, 3, 4]), 4), rank_sum([4, 5, 6], [1, 2, 3])
    (0.0143, 0.05)
    >>> rank_sum([2, 2, 3], [2, 2, 3])
    0.8

    Where the ways are too many to be gone through, with some ninety values each, the normal distribution stands for
    them, its variance less for ties (Lehmann 1975, 1.4).

    Raises ValueError where one of them is empty.
    """
    if not first or not second:
        raise ValueError("a rank sum needs values of both")
    pooled = sorted([*first, *second])
    groups = [(value, len(list(same))) for value, same in groupby(pooled)]
    if len(groups) == 1:
        return 1.0
    counts = tuple(count for _, count in groups)
    shifts, step = _shifts(counts)
    of = {value: shift for (value, _), shift in zip(groups, shifts, strict=True)}
    seen = sum(of[value] for value in first)
    n, m = len(first), len(second)
    if n + m > SIZE or (n + 1) * (n * shifts[-1] + 1) * (n + m) > SUMS:
        return _by_normal(seen, n, m, counts, shifts, step)
    return min(1.0, float(_as_great(n, counts)[seen]))


def _shifts(counts: tuple[int, ...]) -> tuple[tuple[int, ...], int]:
    """The middle rank of each group above that of the lowest, in the largest step that divides them all; that step, in
    halves of a rank."""
    doubled, passed = [], 0
    for count in counts:
        doubled.append(2 * passed + count + 1)  # twice the middle rank, a whole number
        passed += count
    above = [d - doubled[0] for d in doubled]
    step = gcd(*above)
    return tuple(a // step for a in above), step


@lru_cache(maxsize=256)
def _as_great(n: int, counts: tuple[int, ...]) -> NDArray[np.float64]:
    """For every sum of shifts of `n` values dealt out of these groups, the share of ways that give as much or more."""
    import numpy as np

    shifts, _ = _shifts(counts)
    most = n * shifts[-1]
    ways = np.zeros((n + 1, most + 1))  # (dealt to the first, their sum) → ways
    ways[0, 0] = 1.0
    for shift, count in zip(shifts, counts, strict=True):
        before = ways.copy()
        for taken in range(1, min(count, n) + 1):
            by = taken * shift
            if by > most:
                break
            ways[taken:, by:] += comb(count, taken) * before[: n + 1 - taken, : most + 1 - by]
    total = float(comb(sum(counts), n))
    return np.asarray(np.cumsum(ways[n, ::-1])[::-1] / total)


def _by_normal(seen: int, n: int, m: int, counts: tuple[int, ...], shifts: tuple[int, ...], step: int) -> float:
    """The same share, by a normal distribution of the sum's own mean and variance, from half a step below on."""
    size = n + m
    mean = n * sum(c * s for c, s in zip(counts, shifts, strict=True)) / size
    tied = sum(c**3 - c for c in counts)
    variance = n * m / 12.0 * (size + 1 - tied / (size * (size - 1.0))) * (2.0 / step) ** 2
    return 0.5 * erfc((seen - 0.5 - mean) / sqrt(2.0 * variance))


def superiority(first: Sequence[float], second: Sequence[float]) -> float:
    """How often one of `first` stands above one of `second`, ties counting a half (Mann and Whitney 1947).

    >>> superiority([2, 3], [1, 2])
    0.875
    """
    wins = sum((a > b) + 0.5 * (a == b) for a in first for b in second)
    return wins / (len(first) * len(second))
