"""A trace smoothed as a formula declares: at each sample the mean over a time centred on it.

The mean is that of the straight lines between samples (of decibels, of their energies), so it hangs on no even pace. It
leaves a straight slope where it is, flattens a swing of period T by sin(πw/T)/(πw/T), w the time it is taken over, and
evens out what samples have of their own, such as noise, by about √(interval/w). Nothing is made up: within half of w
from the ends of the trace and from its gaps there is no value, and where a sample in reach is only a bound, so is the
mean.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.traces.during import seconds_of
from reportgen.metrology.traces.piece import Piece
from reportgen.metrology.traces.trace import Trace, unbroken
from reportgen.metrology.uncertain import Limit, Uncertain

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

Stretch = tuple[float, float]
NEAR = 1e-9  # of the time smoothed over: ends that differ by less are one


def smoothed(trace: Trace, over: Uncertain) -> Trace:
    """The trace smoothed over a time, or a plain number of seconds.

    Raises MetrologyError where that is no plain time above nothing, NoValue where it is no longer than the time between
    two samples, or where no stretch of the trace is as long; UnitError for what is no time.
    """
    time = seconds_of(over)
    if time.contributions or time.limit or not time.value or time.value <= 0:
        raise MetrologyError(
            "a trace is smoothed over a plain time above nothing", "write seconds: smoothed(light, 10)"
        )
    width, half = time.value, time.value / 2
    if width <= trace.interval:
        raise NoValue(
            f"{trace.name} has no two samples in the time it is to be smoothed over, which would change nothing",
            "smooth over several times the time between two samples",
        )
    left = [(a + half, b - half) for a, b in _stretches(trace) if b - a >= width * (1 - NEAR)]
    if not left:
        raise NoValue(f"no stretch of {trace.name} is as long as it is to be smoothed over", "smooth over less")
    evened = math.sqrt(min(1.0, trace.interval / width))

    def observe(value: float | None, limit: Limit | None, which: str) -> Uncertain:
        found = trace.observe(value, limit, f"{which}, smoothed over {width} s")
        sizes = {s: c * evened if s.sort == "repeatability" else c for s, c in found.contributions.items()}
        return replace(found, contributions=sizes)

    window = trace.window
    return replace(
        trace,
        pieces=lambda: _means(trace, width),
        observe=observe,
        begins=left[0][0],
        ends=left[-1][1],
        gaps=tuple((one[1], other[0]) for one, other in pairwise(left)),
        known_noise=lambda: trace.noise * evened,
        alike=width,
        window=(_moved(window[0], half), _moved(window[1], -half)) if window else None,
    )


def _moved(time: Uncertain, by: float) -> Uncertain:
    return replace(time, value=None if time.value is None else time.value + by)


def _stretches(trace: Trace) -> list[Stretch]:
    """What lies between its gaps: from, to."""
    gaps = [gap for gap in trace.gaps if trace.begins < gap[1] and gap[0] < trace.ends]
    return list(zip((trace.begins, *(b for _, b in gaps)), (*(a for a, _ in gaps), trace.ends), strict=True))


@dataclass
class _Held:
    """The samples of one stretch that are still needed, in order, and the last time a mean was made for."""

    times: Floats
    values: Floats
    sides: NDArray[np.int8]
    done: float = -math.inf

    def took(self, piece: Piece) -> _Held:
        """With more samples behind."""
        import numpy as np

        return _Held(
            np.concatenate((self.times, piece.times)),
            np.concatenate((self.values, piece.values)),
            np.concatenate((self.sides, piece.sides)),
            self.done,
        )

    def without_the_used(self, half: float) -> _Held:
        """Without the samples that no mean to come reaches."""
        first = max(0, int(self.times.searchsorted(self.done - half, side="right")) - 1)
        return _Held(self.times[first:], self.values[first:], self.sides[first:], self.done)


def _means(trace: Trace, width: float) -> Iterator[Piece]:
    held: _Held | None = None
    for piece, fresh in unbroken(trace):
        if fresh and held is not None:
            yield from _made(trace, held, width, last=True)
            held = None
        held = _Held(piece.times, piece.values, piece.sides) if held is None else held.took(piece)
        for made in _made(trace, held, width, last=False):
            yield made
            held.done = float(made.times[-1])
        held = held.without_the_used(width / 2)
    if held is not None:
        yield from _made(trace, held, width, last=True)


def _made(trace: Trace, held: _Held, width: float, last: bool) -> Iterator[Piece]:
    """The means that can be made now: at samples, and at both ends of what a stretch allows."""
    import numpy as np

    half, near = width / 2, NEAR * width
    begin, end = float(held.times[0]) + half, float(held.times[-1]) - half
    centres = held.times[(held.times > held.done) & (held.times <= end + near)]
    if math.isinf(held.done):
        centres = np.concatenate(([begin], centres[centres > begin + near])) if begin <= end + near else centres[:0]
    if last and end > max(held.done, float(centres[-1]) if len(centres) else begin) + near:
        centres = np.append(centres, end)
    if len(centres):
        yield _mean_at(trace, held, centres, half)


def _mean_at(trace: Trace, held: _Held, centres: Floats, half: float) -> Piece:
    import numpy as np

    energies = trace.unit.kind == "level"
    known = np.nan_to_num(held.values, nan=0.0)
    y = 10.0 ** (known / 10) if energies else known
    low = np.clip(centres - half, held.times[0], held.times[-1])
    high = np.clip(centres + half, held.times[0], held.times[-1])
    mean = (_area_to(held.times, y, high) - _area_to(held.times, y, low)) / (high - low)
    first = np.maximum(held.times.searchsorted(low, side="right") - 1, 0)
    behind = np.minimum(held.times.searchsorted(high, side="left"), len(held.times) - 1) + 1
    over, under, unknown = (
        _how_many(flags, first, behind) > 0 for flags in (held.sides > 0, held.sides < 0, np.isnan(held.values))
    )
    if bool((over & under).any()):
        raise NoValue(
            f"{trace.name} goes off both ends of its scale within the time it is smoothed over",
            "smooth over less, or take a stretch that was read",
        )
    values = 10.0 * np.log10(mean) if energies else mean
    sides = over.astype(np.int8) - under.astype(np.int8)
    return Piece(centres, np.where(unknown, np.nan, values), sides)


def _area_to(times: Floats, y: Floats, at: Floats) -> Floats:
    """∫ of the lines from the first sample to each of `at`."""
    import numpy as np

    steps = (y[1:] + y[:-1]) / 2 * np.diff(times)
    whole = np.concatenate(([0.0], np.cumsum(steps)))
    i = np.clip(times.searchsorted(at, side="right") - 1, 0, len(times) - 1)
    return np.asarray(whole[i] + (y[i] + np.interp(at, times, y)) / 2 * (at - times[i]))


def _how_many(flags: NDArray[np.bool_], first: NDArray[np.intp], behind: NDArray[np.intp]) -> NDArray[np.intp]:
    import numpy as np

    counted = np.concatenate(([0], np.cumsum(flags)))
    return np.asarray(counted[behind] - counted[first])
