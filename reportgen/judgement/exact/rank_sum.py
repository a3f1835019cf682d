"""Two rows of grades held against each other: the exact rank sum test, which knows ties."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import groupby
from math import comb


def rank_sum(first: Sequence[float], second: Sequence[float]) -> float:
    """One-sided p that `first` stands higher: how many of all ways to deal the pooled values out to the two have a rank
    sum of the first as great or greater. Equal values have their middle rank (Wilcoxon 1945, Biometrics Bulletin 1:80;
    ties as in Lehmann 1975, Nonparametrics, 1.4).

    Four above four are one of the 70 ways, three above three one of 20:

    >>> round(rank_sum([5, 6, 7, 8], [1, 2, 3, 4]), 4), rank_sum([4, 5, 6], [1, 2, 3])
    (0.0143, 0.05)
    >>> rank_sum([2, 2, 3], [2, 2, 3])
    0.8

    Raises ValueError where one of them is empty.
    """
    if not first or not second:
        raise ValueError("a rank sum needs values of both")
    pooled = sorted([*first, *second])
    groups = [(value, len(list(same))) for value, same in groupby(pooled)]
    doubled: dict[float, int] = {}
    passed = 0
    for value, count in groups:
        doubled[value] = 2 * passed + count + 1  # twice the middle rank, a whole number
        passed += count
    seen = sum(doubled[value] for value in first)
    ways: dict[tuple[int, int], int] = {(0, 0): 1}  # (dealt to the first, its doubled ranks) → ways
    for value, count in groups:
        more: dict[tuple[int, int], int] = {}
        for (dealt, total), number in ways.items():
            for taken in range(min(count, len(first) - dealt) + 1):
                at = (dealt + taken, total + taken * doubled[value])
                more[at] = more.get(at, 0) + number * comb(count, taken)
        ways = more
    as_great = sum(number for (dealt, total), number in ways.items() if dealt == len(first) and total >= seen)
    return float(Fraction(as_great, comb(len(pooled), len(first))))


def superiority(first: Sequence[float], second: Sequence[float]) -> float:
    """How often one of `first` stands above one of `second`, ties counting a half (Mann and Whitney 1947).

    >>> superiority([2, 3], [1, 2])
    0.875
    """
    wins = sum((a > b) + 0.5 * (a == b) for a in first for b in second)
    return wins / (len(first) * len(second))
