"""A trace: one channel of a logger over time, seen in pieces so that its length never matters.

Times are seconds from the trace's first sample, by the logger's own clock, and rise. A sample off the scale is a bound
(`sides`), never a number; its value is the limit, or NaN where the limit isn't known.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise
from typing import TYPE_CHECKING

from reportgen.metrology.traces.noise import noise_of
from reportgen.metrology.uncertain import Limit, Source, Uncertain
from reportgen.metrology.unit import Unit

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Sides = NDArray[np.int8]
from reportgen.metrology.traces.piece import Piece


@dataclass(frozen=True)
class Trace:
    """`pieces` may be walked again and again. `observe` gives a value on it the uncertainty of the instrument;
    its last argument says which sample it is, for two samples have steps of their own.

    `interval` is the usual time between two samples in s, `gaps` are the stretches with none (from, to), in s.
    `begins` and `ends` are its ends in s; where an expression gave them (`during`), `window` holds both with their
    uncertainty. `reading` names it: what errors of its own hang on.

    `clock` is the standard uncertainty of the rate of the logger's clock, as a part of any time it tells: a clock that
    is fast makes every time too long by the same part. Empty where it is taken as right.

    `known_noise` gives the noise of samples where they don't tell it themselves; within `alike` seconds they share it.
    `whose` is what errors that further traces of the same channel repeat hang on, `reading` where it is empty.
    """

    name: str
    pieces: Callable[[], Iterator[Piece]]
    unit: Unit
    observe: Callable[[float | None, Limit | None, str], Uncertain]
    begins: float
    ends: float
    interval: float
    gaps: tuple[tuple[float, float], ...] = ()
    window: tuple[Uncertain, Uncertain] | None = None
    reading: str = ""
    clock: Mapping[Source, float] = field(default_factory=dict)
    known_noise: Callable[[], float] | None = None
    alike: float = 0.0
    whose: str = ""

    @cached_property
    def noise(self) -> float:
        """The standard deviation of noise from sample to sample, in the trace's unit; 0 where none can be told."""
        return self.known_noise() if self.known_noise else noise_of(self.pieces())

    def of_clock(self, seconds: float) -> dict[Source, float]:
        """What the clock leaves open of a time of so many seconds that it told."""
        return {source: seconds * rate for source, rate in self.clock.items() if seconds}


def added(*several: Mapping[Source, float]) -> dict[Source, float]:
    """Contributions to a sum: those of one source together."""
    sources = dict.fromkeys(source for one in several for source in one)
    return {source: total for source in sources if (total := sum(one.get(source, 0.0) for one in several))}


def joined(pieces: Iterator[Piece]) -> Iterator[Piece]:
    """The pieces with the last sample of each in front of the next: every step between two samples is in one piece."""
    import numpy as np

    last: Piece | None = None
    for piece in pieces:
        if not len(piece.times):
            continue
        if last is not None:
            piece = Piece(
                np.concatenate((last.times[-1:], piece.times)),
                np.concatenate((last.values[-1:], piece.values)),
                np.concatenate((last.sides[-1:], piece.sides)),
            )
        yield piece
        last = piece


def in_gaps(times: Floats, gaps: tuple[tuple[float, float], ...]) -> NDArray[np.bool_]:
    """For each step between two of `times`, whether it bridges one of `gaps`."""
    import numpy as np

    if not gaps:
        return np.zeros(max(0, len(times) - 1), dtype=bool)
    begins, ends = (np.array(side) for side in zip(*gaps, strict=True))
    at = np.searchsorted(begins, times[:-1], side="right") - 1
    return np.asarray((at >= 0) & (times[:-1] < ends[np.maximum(at, 0)]))


def unbroken(trace: Trace) -> Iterator[tuple[Piece, bool]]:
    """Its pieces cut at gaps, each with whether a new stretch begins."""
    import numpy as np

    before: float | None = None
    for piece in trace.pieces():
        if not len(piece.times):
            continue
        times = piece.times if before is None else np.concatenate(([before], piece.times))
        cuts = np.flatnonzero(in_gaps(times, trace.gaps)) + (0 if before is not None else 1)
        edges = [0, *(int(c) for c in cuts if c), len(piece.times)]
        for n, (a, b) in enumerate(pairwise(edges)):
            fresh = n > 0 or before is None or (bool(len(cuts)) and cuts[0] == 0)
            yield Piece(piece.times[a:b], piece.values[a:b], piece.sides[a:b]), fresh
        before = float(piece.times[-1])
