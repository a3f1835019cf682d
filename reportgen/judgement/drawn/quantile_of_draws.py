"""Quantiles of draws in order, alone or beside a scatter that is added to them: T·√A + B, averaged over draws of B.

Student's t beside them is worked out exactly, so no luck of draws is in it (JCGM 101:2008, 7.5 and 7.7).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import inf
from typing import TYPE_CHECKING

from reportgen.judgement.reach.zero import zero_of_rising

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

GROUPS = 250  # of neighbouring draws, each taken as one beside Student's t, which smooths more than that


@dataclass(frozen=True)
class Scattered:
    """The scatter beside the draws: √A with its degrees of freedom; `repeat` as of `Beyond.block`."""

    root: float
    degrees: float
    repeat: bool


INSTRUMENT_ALONE = Scattered(0.0, 1.0, repeat=False)


def quantile(ordered: Numbers, share: float, scattered: Scattered) -> float:
    """h with P(T·√A + B ≤ h) = `share`, B among draws in order; infinite where the share isn't between 0 and 1."""
    from scipy.special import stdtr, stdtrit

    if not 0.0 < share < 1.0:
        return inf if share >= 1.0 else -inf
    if scattered.root <= 0.0:
        return quantile_of(ordered, share)
    groups = _grouped(ordered) / scattered.root
    alone = float(stdtrit(scattered.degrees, share))

    def excess(h: float) -> float:
        return float(stdtr(scattered.degrees, h - groups).mean()) - share

    return scattered.root * zero_of_rising(excess, float(groups[0]) + alone, float(groups[-1]) + alone, close=1e-9)


def _grouped(ordered: Numbers) -> Numbers:
    import numpy as np

    if len(ordered) <= GROUPS:
        return ordered
    begins = np.linspace(0, len(ordered), GROUPS, endpoint=False).astype(np.intp)
    counts = np.diff(np.append(begins, len(ordered)))
    means: Numbers = np.add.reduceat(ordered, begins) / counts
    return means


def quantile_of(ordered: Numbers, share: float) -> float:
    """Between the two draws it lies between (JCGM 101, 7.5 and 7.7, of draws in order)."""
    if not 0.0 < share < 1.0:
        return inf if share >= 1.0 else -inf
    at = share * (len(ordered) - 1)
    below = int(at)
    above = min(below + 1, len(ordered) - 1)
    return float(ordered[below] + (at - below) * (ordered[above] - ordered[below]))


def share_below(full: Numbers, x: float, scattered: Scattered) -> float:
    """The share of the draws, of all of them, with T·√A + B ≤ x; those without an answer lie on neither side."""
    import numpy as np
    from scipy.special import stdtr

    known = full[np.isfinite(full)]
    if scattered.root > 0.0:
        groups = _grouped(np.sort(known))
        share = float(stdtr(scattered.degrees, (x - groups) / scattered.root).mean())
    else:
        share = float((known <= x).mean())
    return share * len(known) / len(full)
