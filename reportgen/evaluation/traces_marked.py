"""The lines of a logger's file that a reader will want to see: where a trace was highest and lowest, where it passed a
limit.

Said only where every line from the first sample to the last is a sample: a line is then as far down as its sample.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import chain

from reportgen.evaluation.evaluated import Crossing, Marked
from reportgen.intake.reading import Series
from reportgen.metrology.traces.trace import Trace


def marked(trace: Trace, series: Series, crossings: Iterable[Crossing]) -> tuple[Marked, ...]:
    """The marked lines of one trace, walked once."""
    if series.samples != series.last - series.first + 1:
        return ()
    return tuple(chain(_ends(trace, series), _passed(trace, series, [c for c in crossings if not c.past])))


def _ends(trace: Trace, series: Series) -> Iterator[Marked]:
    """The first of its highest samples and of its lowest; samples off the scale count with their limits."""
    import numpy as np

    best: dict[int, tuple[float, int]] = {}
    before = 0
    for piece in trace.pieces():
        if np.isfinite(piece.values).any():
            for sign in (1, -1):
                at = int(np.nanargmax(sign * piece.values))
                top = float(sign * piece.values[at])
                if sign not in best or top > best[sign][0]:
                    best[sign] = top, before + at
        before += len(piece.times)
    for sign, what in ((1, "highest"), (-1, "lowest")):
        if sign in best:
            yield Marked("highest" if what == "highest" else "lowest", series.first + best[sign][1])


def _passed(trace: Trace, series: Series, crossings: list[Crossing]) -> Iterator[Marked]:
    """For each limit that was passed the first sample behind it."""
    import numpy as np

    waiting, before = list(dict.fromkeys(crossings)), 0
    for piece in trace.pieces():
        for crossing in tuple(waiting):
            at = int(np.searchsorted(piece.times, crossing.at))
            if at < len(piece.times):
                yield Marked("passed", series.first + before + at, crossing.quantity)
                waiting.remove(crossing)
        before += len(piece.times)
