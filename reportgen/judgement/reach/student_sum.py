"""How a sum of Student's t's is spread: T₁·a₁ + T₂·a₂ + …, each with its own degrees of freedom.

Student's t is a normal variable whose variance isn't known: T² = N²/V with V·ν a χ² of ν degrees of freedom (JCGM
101:2008, 6.4.9.4 draws it so). A sum of several is therefore a mixture of normals over the sum of their variances. That
is taken over a grid of logarithms of the variance, where densities are smooth and the trapezium rule is exact to many
digits, however heavy the tails; no random draws.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import ceil, exp, floor, log, sqrt

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr, stdtrit

Numbers = NDArray[np.float64]
Student = tuple[tuple[float, float], ...]  # size, degrees of freedom
UNLIKELY = 25.0  # e to the −25: what a variance is left out for
BETWEEN = 0.5  # standard deviations of the logarithm of a variance between two points of the grid
IN_LOGARITHMS = 0.06  # between two points, where variances of several are summed
IN_TABLE = 0.04  # between two points of asinh(x), where the distribution is tabled
FURTHEST = 17.0  # asinh of the last: 12 million sizes away


@dataclass(frozen=True)
class StudentSum:
    """P(sum ≤ x) and its slope on a grid of asinh(x/size): between two points a cubic, to some 1e-8."""

    size: float
    probabilities: Numbers
    slopes: Numbers

    def below(self, x: Numbers) -> Numbers:
        """P(sum ≤ x) for each x."""
        at = np.minimum(np.arcsinh(np.abs(x) / self.size) / IN_TABLE, len(self.probabilities) - 1.001)
        i = at.astype(np.int64)
        t = at - i
        p, q, m, n = self.probabilities[i], self.probabilities[i + 1], self.slopes[i], self.slopes[i + 1]
        found = p + t * (m + t * (3.0 * (q - p) - 2.0 * m - n + t * (2.0 * (p - q) + m + n)))
        return np.where(x < 0.0, 1.0 - found, found)

    def cells(self) -> tuple[Numbers, Numbers]:
        """The sum as points with their probabilities, for what is spread so much wider that no more is seen of it."""
        x = self.size * np.sinh(np.arange(len(self.probabilities)) * IN_TABLE)
        middles, weights = (x[1:] + x[:-1]) / 2.0, np.diff(self.probabilities)
        return np.concatenate([-middles[::-1], middles]), np.concatenate([weights[::-1], weights])


def reach_between(level: float, parts: Student) -> tuple[float, float]:
    """Between what lies the h that holds `level` of the sum: no less than of the widest alone (Anderson 1955: what is
    added only spreads a symmetric single-peaked variable further), no more than if all that leave theirs left it."""
    left = (1.0 - level) / len(parts)
    alone = (size * float(stdtrit(degrees, 0.5 + level / 2.0)) for size, degrees in parts)
    return max(alone), sum(size * float(stdtrit(degrees, 1.0 - left / 2.0)) for size, degrees in parts)


@lru_cache(maxsize=512)
def student_sum(parts: Student) -> StudentSum:
    """The distribution of the sum of `parts`, at least one."""
    logarithms, weights = _variance(*parts[0])
    for part in parts[1:]:
        more, with_weights = _variance(*part)
        summed = np.logaddexp(logarithms[:, None], more[None, :]).ravel()
        logarithms, weights = _on_grid(summed, np.outer(weights, with_weights).ravel())
    sds = np.exp(logarithms / 2.0)
    size = max(size for size, _ in parts)
    steps = np.arange(ceil(FURTHEST / IN_TABLE) + 1) * IN_TABLE
    x = size * np.sinh(steps)
    off = x[:, None] / sds[None, :]
    probabilities = ndtr(off) @ weights
    densities = np.exp(-np.square(np.minimum(off, 40.0)) / 2.0) @ (weights / sds) / sqrt(2.0 * np.pi)
    return StudentSum(size, probabilities, densities * size * np.cosh(steps) * IN_TABLE)


def _variance(size: float, degrees: float) -> tuple[Numbers, Numbers]:
    """Logarithms of what the variance size²/V may be, and how likely each is: V·ν is χ² with ν = `degrees`."""
    half = degrees / 2.0
    # ln of the density of u = ln V against its peak is half·(u + 1 − e^u): where that falls to −UNLIKELY
    near = sqrt(3.0 * UNLIKELY / half)
    lowest = -near if near < 1.0 else -1.0 - UNLIKELY / half
    highest = sqrt(2.0 * UNLIKELY / half)
    step = BETWEEN * min(sqrt(2.0 / degrees), 1.0)
    u = np.arange(floor(lowest / step), ceil(highest / step) + 1) * step
    weights = np.exp(half * (u + 1.0 - np.exp(u)))
    kept = weights > exp(-UNLIKELY)
    u, weights = u[kept], weights[kept]
    return 2.0 * log(size) - u, weights / weights.sum()


def _on_grid(logarithms: Numbers, weights: Numbers) -> tuple[Numbers, Numbers]:
    """The same on equal steps: each weight is shared out to the four points around it as a cubic through them asks."""
    low = logarithms.min() - 2.0 * IN_LOGARITHMS
    at = (logarithms - low) / IN_LOGARITHMS
    i = at.astype(np.int64)
    t = at - i
    shares = (
        -t * (t - 1.0) * (t - 2.0) / 6.0,
        (t + 1.0) * (t - 1.0) * (t - 2.0) / 2.0,
        -(t + 1.0) * t * (t - 2.0) / 2.0,
        (t + 1.0) * t * (t - 1.0) / 6.0,
    )
    points = int(i.max()) + 3
    total = np.zeros(points)
    for ahead, share in zip((-1, 0, 1, 2), shares, strict=True):
        total += np.bincount(i + ahead, weights * share, points)
    return low + np.arange(points) * IN_LOGARITHMS, total
