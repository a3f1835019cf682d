"""Samples that stand apart from those around them: shown and told, never taken out.

A sample does so where it lies further from the median of the seven around it than three times their scaled median
absolute deviation (1.4826·MAD; F. R. Hampel, Journal of the American Statistical Association 69 (1974), 383, from
memory), further from the mean of its two neighbours than noise of the trace's own size would bring one sample in a
hundred such traces, and further than a step and a half of the display. Whether it is a fault or what happened, nobody
can tell from it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from statistics import NormalDist
from typing import TYPE_CHECKING

from reportgen.metrology.traces.noise import FEWEST
from reportgen.metrology.traces.piece import Piece
from reportgen.metrology.traces.trace import Trace, unbroken

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

AROUND = 3  # samples on either side
WIDTHS = 3 * 1.4826  # of the median absolute deviation
ONE_IN = 100  # traces like it in which noise alone would bring one
KEPT = 12  # samples that are told one by one
MOST = 0.01  # of all samples: where more do, that is how the trace is, and none stands apart


@dataclass(frozen=True)
class Apart:
    """How many samples stand apart, and the first few: seconds, value, how far from the mean of its two neighbours."""

    count: int = 0
    first: tuple[tuple[float, float, float], ...] = ()


def apart(trace: Trace) -> Apart:
    """The samples of a trace that stand apart; none where it has too few samples to tell."""
    samples = sum(len(piece.times) for piece in trace.pieces())
    if samples < FEWEST:
        return Apart()
    furthest = NormalDist().inv_cdf(1 - 0.5 / ONE_IN / samples)
    least = max(furthest * math.sqrt(1.5) * trace.noise, 1.5 * _step(trace))  # the mean of two adds half a variance
    count = 0
    first: list[tuple[float, float, float]] = []
    for piece in _with_room(trace):
        for i in _standing(piece, least):
            off = float(piece.values[i] - (piece.values[i - 1] + piece.values[i + 1]) / 2)
            if count < KEPT:
                first.append((float(piece.times[i]), float(piece.values[i]), off))
            count += 1
    return Apart(count, tuple(first)) if count <= max(1.0, MOST * samples) else Apart()


def _step(trace: Trace) -> float:
    read = trace.observe(0.0, None, "step").contributions
    return math.sqrt(12) * max((abs(size) for source, size in read.items() if source.sort == "step"), default=0.0)


def _with_room(trace: Trace) -> Iterator[Piece]:
    """Its pieces, each with the last samples of the one before, so that every sample has its neighbours once."""
    import numpy as np

    before: Piece | None = None
    for piece, fresh in unbroken(trace):
        if not fresh and before is not None:
            last = slice(-2 * AROUND, None)
            piece = Piece(
                np.concatenate((before.times[last], piece.times)),
                np.concatenate((before.values[last], piece.values)),
                np.concatenate((before.sides[last], piece.sides)),
            )
        yield piece
        before = piece


def _standing(piece: Piece, least: float) -> Iterator[int]:
    """Where samples stand apart, of those with `AROUND` read ones on either side."""
    import numpy as np

    x, n = piece.values, len(piece.values)
    if n < 2 * AROUND + 1:
        return
    middle = slice(AROUND, n - AROUND)
    off = np.abs(x[middle] - (x[AROUND - 1 : n - AROUND - 1] + x[AROUND + 1 : n - AROUND + 1]) / 2)
    for i in np.flatnonzero(off > least) + AROUND:
        around: NDArray[np.float64] = x[i - AROUND : i + AROUND + 1]
        if bool(piece.sides[i - AROUND : i + AROUND + 1].any()):
            continue
        median = float(np.median(around))
        if abs(float(x[i]) - median) > WIDTHS * float(np.median(np.abs(around - median))):
            yield int(i)
