"""Criteria in groups, each with what every contender is worth on it, draw by draw; and weights of the groups.

One property measured three ways must not count three times: weights are of groups, and inside a group criteria share
what it weighs.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import fsum
from typing import TYPE_CHECKING

from reportgen.metrology.draws import named_stream

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]


@dataclass(frozen=True)
class Criterion:
    """One criterion, or one part of one: several of the same `quantity` are one criterion.

    `worth`: of each contender, one number a draw; draws of all criteria and contenders are joint. `estimate`: what its
    result itself is worth. `known`: whether how far a repeat would scatter is known. `weight`: its share of the group.
    `first`: who comes first on it alone (None: nobody).
    """

    quantity: str
    group: str
    worth: Mapping[str, Numbers]
    estimate: Mapping[str, float]
    known: bool = True
    weight: float = 1.0
    first: str | None = None


@dataclass(frozen=True)
class Stack:
    """Criteria joined by group. `worth`: (groups, contenders, draws); `groups`: which of all groups are left;
    `single`: for each of those its one criterion, None where several have weight."""

    groups: tuple[int, ...]
    worth: Numbers
    single: tuple[Criterion | None, ...]


def stack(
    criteria: Sequence[Criterion], groups: Sequence[str], contenders: Sequence[str], estimate: bool = False
) -> Stack | None:
    """The worth of every group: the weighted mean of its criteria. Groups whose criteria have no weight fall out; None
    where all do. `estimate`: only how far draws lie from the worth of the results themselves, as if all were equal."""
    import numpy as np

    left, worths, singles = [], [], []
    for at, group in enumerate(groups):
        inside = [c for c in criteria if c.group == group and c.weight > 0.0]
        total = fsum(c.weight for c in inside)
        if not inside:
            continue
        rows = []
        for name in contenders:
            row = np.zeros(len(inside[0].worth[name]))
            for c in inside:
                row += (c.weight / total) * (c.worth[name] - (c.estimate[name] if estimate else 0.0))
            rows.append(row)
        left.append(at)
        worths.append(np.stack(rows))
        singles.append(inside[0] if len(inside) == 1 else None)
    return Stack(tuple(left), np.stack(worths), tuple(singles)) if left else None


def all_weightings(groups: Sequence[str], draws: int) -> Numbers:
    """(groups, draws): weights uniform on the simplex: exponential numbers divided by their sum (Devroye 1986,
    Non-Uniform Random Variate Generation, V, theorem 2.2; from memory). Each group has a stream of its own name.

    >>> weights = all_weightings(["thrift", "speed"], 4)
    >>> [round(float(total), 12) for total in weights.sum(axis=0)]
    [1.0, 1.0, 1.0, 1.0]
    """
    import numpy as np

    drawn = np.stack([named_stream("weight", group).standard_exponential(draws) for group in groups])
    return np.asarray(drawn / drawn.sum(axis=0))


def weighted(found: Stack, weights: Numbers | Sequence[float]) -> Numbers | None:
    """(contenders, draws): worth at these weights of all groups, (groups,) or (groups, draws), over those left.

    None where what is left weighs nothing. Summed group by group, so that no contender's number depends on how many
    others there are.
    """
    import numpy as np

    given = [np.asarray(weights[at], dtype=np.float64) for at in found.groups]
    total = sum(given[1:], start=given[0])
    if not np.all(total > 0.0):
        return None
    worth: Numbers = np.multiply(given[0] / total, found.worth[0])
    part = np.empty_like(worth)
    for w, each in zip(given[1:], found.worth[1:], strict=True):
        if np.any(w):
            worth += np.multiply(w / total, each, out=part)
    return worth


def only_criterion(found: Stack, weights: Numbers | Sequence[float]) -> Criterion | None:
    """The one criterion that has weight, None where several have."""
    import numpy as np

    weighing = [s for at, s in zip(found.groups, found.single, strict=True) if np.any(np.asarray(weights[at]) > 0.0)]
    return weighing[0] if len(weighing) == 1 else None
