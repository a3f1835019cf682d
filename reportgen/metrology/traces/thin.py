"""A trace thinned for a picture: of each of a few hundred stretches of time its lowest and its highest sample.

So every peak stays, however long the trace. Bounds stand at their limits; those of unknown size are left out. Of many
gaps those that are narrower than a stretch are passed over: no picture could show them apart.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from reportgen.metrology.traces.trace import Trace

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

Point = tuple[float, float]  # seconds, value
BINS = 150
FEW = 12  # gaps that are all kept, however narrow


def thinned(trace: Trace, bins: int = BINS) -> tuple[tuple[Point, ...], ...]:
    """Stretches of points in order, a stretch ending where the trace has a gap."""
    import numpy as np

    width = (trace.ends - trace.begins) / bins or 1.0
    least: dict[int, Point] = {}
    most: dict[int, Point] = {}
    ends: list[Point] = []
    for piece in trace.pieces():
        kept = ~np.isnan(piece.values)
        times, values = piece.times[kept], piece.values[kept]
        if not len(times):
            continue
        ends = [*ends[:1], (float(times[-1]), float(values[-1]))] if ends else [_point(times, values, 0)]
        number = np.minimum(((times - trace.begins) / width).astype(int), bins - 1)
        edges = np.flatnonzero(np.diff(number)) + 1
        for begin, end in zip([0, *edges], [*edges, len(times)], strict=True):
            low = _point(times, values, begin + int(values[begin:end].argmin()))
            high = _point(times, values, begin + int(values[begin:end].argmax()))
            n = int(number[begin])
            least[n] = min(least.get(n, low), low, key=lambda p: p[1])
            most[n] = max(most.get(n, high), high, key=lambda p: p[1])
        ends = [ends[0], _point(times, values, len(times) - 1)]
    points = sorted({*least.values(), *most.values(), *ends})
    gaps = trace.gaps if len(trace.gaps) <= FEW else tuple(gap for gap in trace.gaps if gap[1] - gap[0] > width)
    return _apart(points, gaps)


def _apart(points: list[Point], gaps: tuple[Point, ...]) -> tuple[tuple[Point, ...], ...]:
    import bisect

    starts = [begin for begin, _ in gaps]
    stretches: list[list[Point]] = []
    before = -1
    for point in points:
        here = bisect.bisect_left(starts, point[0])  # a gap begins at its last sample, which still belongs before it
        if here != before:
            stretches.append([])
        before = here
        stretches[-1].append(point)
    return tuple(tuple(s) for s in stretches)


def _point(times: Floats, values: Floats, i: int) -> Point:
    return float(times[i]), float(values[i])
