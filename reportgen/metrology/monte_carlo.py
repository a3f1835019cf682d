"""Draws until the figures stand: the adaptive procedure of JCGM 101:2008, 7.9, and its tolerance, 7.9.2."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

LEAST_BLOCKS = 10  # the scatter of fewer is too rough to stop by: the lucky ones would stop early
FEWEST_BLOCKS = 3  # enough where they agree to a tenth of what is asked: luck goes so far once in a hundred times
MOST_BLOCKS = 100  # of 10 000 draws: a million


def tolerance(u: float, digits: int = 2) -> float:
    """δ: half of one in the last of `digits` significant digits of a standard uncertainty (JCGM 101, 7.9.2).

    >>> tolerance(0.035)
    0.0005
    >>> tolerance(0.035, digits=1)
    0.005
    """
    if not u > 0.0 or math.isinf(u):
        return 0.0
    last = math.floor(math.log10(u)) - digits + 1
    if round(u / 10.0**last) >= 10**digits:  # rounded first: 0.0996 is 0.10, one digit up
        last += 1
    return 0.5 * 10.0**last


@dataclass(frozen=True)
class Settled:
    """Averages of what each block gave, how far they may still be off (twice the standard deviation of the average,
    JCGM 101, 7.9.4 g), how many blocks that took, and whether all came within their tolerances."""

    averages: tuple[float, ...]
    within: tuple[float, ...]
    blocks: int
    stands: bool


def until_settled(
    block: Callable[[int], Sequence[float]],
    tolerances: Callable[[Sequence[float]], Sequence[float]],
    most: int = MOST_BLOCKS,
) -> Settled:
    """Draw block after block until twice the standard deviation of each average is within its tolerance.

    `block` gives the figures of one block, `tolerances` those their averages so far call for (infinite: not asked).
    Stops at `most` blocks, and at once where a figure is no number.
    """
    found: list[Sequence[float]] = []
    while True:
        found.append(block(len(found)))
        n = len(found)
        columns = list(zip(*found, strict=True))
        averages = tuple(math.fsum(column) / n for column in columns)
        if not all(map(math.isfinite, averages)):
            return Settled(averages, (math.inf,) * len(averages), n, stands=False)
        if n < FEWEST_BLOCKS:
            continue
        within = tuple(2.0 * _sd_of_average(column, mean) for column, mean in zip(columns, averages, strict=True))
        closer = 1.0 if n >= LEAST_BLOCKS else 0.1
        stands = all(w <= closer * t for w, t in zip(within, tolerances(averages), strict=True))
        if stands or n >= most:
            return Settled(averages, within, n, stands)


def _sd_of_average(values: Sequence[float], mean: float) -> float:
    n = len(values)
    return math.sqrt(math.fsum((v - mean) ** 2 for v in values) / (n - 1) / n)
