"""What is left of the passes after contender and block, a block being a round or a session that contenders share.

Complete blocks (every contender once in each) have a closed form; with gaps, least squares on contender and block
(the additive two-way layout; Scheffé, The Analysis of Variance, 1959, 4.1 and 4.4).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations
from math import floor, fsum, sqrt

from reportgen.metrology import type_a

NOISE = 1e-12  # of the largest value: smaller scatter is the rounding of binary fractions


@dataclass(frozen=True)
class Fitted:
    """Residual standard deviation and degrees of freedom; by pair of names, in the order given, what the fit found.

    `differences`: first minus second, freed from blocks, and its variance in units of the residual one. Empty for
    complete blocks, where plain means have it; a pair that no chain of shared blocks joins is missing.
    """

    sd: float
    degrees: int
    differences: Mapping[tuple[str, str], tuple[float, float]] = field(default_factory=dict)

    def of_results(self, within: float, degrees: int) -> tuple[float, int]:
        """The scatter of a result by itself and its degrees of freedom: what a block does to all is part of it.

        `within` is the pooled standard deviation inside contenders with its `degrees`. It is a sum of two mean squares,
        between blocks and what is left; Welch and Satterthwaite's degrees of freedom of that sum, truncated (JCGM 100,
        G.4.1). Without blocks taken out of it, 95 % intervals of results would hold 71 % where rounds scatter twice as
        far as passes.
        """
        whole, left = degrees * within**2, self.degrees * self.sd**2
        between, free = max(whole - left, 0.0), degrees - self.degrees
        if free <= 0 or whole <= 0.0:
            return within, degrees
        return within, max(1, floor(whole**2 / (between**2 / free + left**2 / self.degrees) + 1e-9))


Runs = Mapping[str, Sequence[tuple[str, float]]]  # by contender: (block, value) of each pass


def is_complete(runs: Runs) -> bool:
    """Whether every contender ran exactly once in each of the same blocks."""
    seen = [sorted(block for block, _ in passes) for passes in runs.values()]
    return bool(seen) and all(blocks == seen[0] for blocks in seen) and len(set(seen[0])) == len(seen[0])


def fit(runs: Runs) -> Fitted | None:
    """Residual scatter after contender and block; None where no degree of freedom is left."""
    return _complete(runs) if is_complete(runs) else _with_gaps(runs)


def _complete(runs: Runs) -> Fitted | None:
    found = type_a.rounds_scatter({name: dict(passes) for name, passes in runs.items()})
    if found is None:
        return None
    return Fitted(without_noise(found.sd, [x for passes in runs.values() for _, x in passes]), found.degrees)


def _with_gaps(runs: Runs) -> Fitted | None:
    import numpy as np

    names = list(runs)
    blocks = sorted({block for passes in runs.values() for block, _ in passes})
    cells = [(i, blocks.index(block), x) for i, name in enumerate(names) for block, x in runs[name]]
    design = np.zeros((len(cells), len(names) + len(blocks)))
    for row, (i, b, _) in enumerate(cells):
        design[row, i] = design[row, len(names) + b] = 1.0
    y = np.array([x for _, _, x in cells])
    degrees = len(cells) - int(np.linalg.matrix_rank(design))
    if degrees <= 0:
        return None
    centre = float(y.mean())
    inverse = np.linalg.pinv(design)
    effects = inverse @ (y - centre)
    left = y - centre - design @ effects
    found: dict[tuple[str, str], tuple[float, float]] = {}
    for i, j in combinations(range(len(names)), 2):
        contrast = np.zeros(design.shape[1])
        contrast[i], contrast[j] = 1.0, -1.0
        weights = contrast @ inverse
        if np.allclose(weights @ design, contrast, atol=1e-8):
            found[names[i], names[j]] = (float(effects[i] - effects[j]), float(weights @ weights))
    return Fitted(_sd(float(left @ left), degrees, y.tolist()), degrees, found)


def paired(first: Sequence[tuple[str, float]], second: Sequence[tuple[str, float]]) -> tuple[float, float, int] | None:
    """Mean and sd of first minus second within the blocks both ran in, and how many; None under two."""
    other = dict(second)
    differences = [x - other[block] for block, x in first if block in other]
    if len(differences) < 2:
        return None
    mean = fsum(differences) / len(differences)
    squares = fsum((d - mean) ** 2 for d in differences)
    sizes = [x for _, x in (*first, *second)]
    return mean, _sd(squares, len(differences) - 1, sizes), len(differences)


def _sd(squares: float, degrees: int, sizes: Sequence[float]) -> float:
    return without_noise(sqrt(squares / degrees), sizes)


def without_noise(sd: float, sizes: Sequence[float]) -> float:
    """`sd`, or 0 where it is no more than binary fractions feign in numbers of such sizes."""
    return sd if sd > NOISE * max(map(abs, sizes)) else 0.0
