"""How samples scatter from one to the next, and how far that lifts the highest of them.

The standard deviation of noise is told from fourth differences of samples that follow each other evenly: white noise of
σ makes differences of √70·σ (1² + 4² + 6² + 4² + 1² = 70), while a trace that bends smoothly leaves next to nothing in
them and makes them keep their sign, where those of noise mostly change it. It is their median absolute value × 1.4826
(of a normal distribution, as the median absolute deviation is), so that single samples far off don't count. Noise that
several samples share is seen too small.

Of m normal samples of one level the highest lies above it by about Φ⁻¹((m − 3/8)/(m + 1/4))·σ (G. Blom, Statistical
Estimates and Transformed Beta-Variables, 1958; from memory).
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from statistics import NormalDist
from typing import TYPE_CHECKING

from reportgen.metrology.uncertain import Uncertain

if TYPE_CHECKING:
    from reportgen.metrology.traces.piece import Piece

FEWEST = 50  # samples that can tell noise from the shape of a trace
EVEN = 0.1  # of the time between two samples: pauses that differ by less are even
_TO_SD, _OF_FOURTH = 1.4826, math.sqrt(70)
TURNS = 0.5  # of them, at least, change their sign: of white noise 0.795, of a smooth trace next to none
OWN = frozenset({"step", "repeatability"})  # errors that each sample has of its own, as stated


def noise_of(pieces: Iterable[Piece]) -> float:
    """The standard deviation of noise from sample to sample, in the trace's unit; 0 where none can be told."""
    import numpy as np

    told: list[tuple[int, float]] = []
    for piece in pieces:
        if len(piece.times) < FEWEST:
            continue
        pause = np.diff(piece.times)
        usual = float(np.median(pause))
        fits = (np.abs(pause - usual) <= EVEN * usual) & (piece.sides[1:] == 0) & (piece.sides[:-1] == 0)
        whole = fits[:-3] & fits[1:-2] & fits[2:-1] & fits[3:]
        fourth = np.diff(piece.values, 4)
        kept, turns = fourth[whole], (fourth[1:] * fourth[:-1] < 0)[whole[1:] & whole[:-1]]
        if len(kept) < FEWEST - 4 or not len(turns) or float(turns.mean()) < TURNS:
            continue
        told.append((len(kept), float(np.median(np.abs(kept))) * _TO_SD / _OF_FOURTH))
    count = sum(n for n, _ in told)
    return math.sqrt(math.fsum(n * s * s for n, s in told) / count) if count else 0.0


def beyond_stated(noise: float, observed: Uncertain) -> float:
    """The noise that neither the steps of the instrument nor what it was said to repeat itself to account for.

    Less than a quarter of a step can't be told from rounding, and is none.
    """
    own = [(source.sort, size * size) for source, size in observed.contributions.items() if source.sort in OWN]
    left = noise * noise - math.fsum(square for _, square in own)
    step = 12 * max((square for sort, square in own if sort == "step"), default=0.0)
    return math.sqrt(left) if left > step / 16 else 0.0


def lift_of_highest(samples: float) -> float:
    """How far the highest of so many normal samples lies above their mean, in their standard deviation.

    >>> round(lift_of_highest(10), 2)  # 1.54 exactly
    1.55
    """
    if samples <= 1:
        return 0.0
    return NormalDist().inv_cdf((samples - 0.375) / (samples + 0.25))
