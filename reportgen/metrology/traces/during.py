"""A stretch of a trace, and its value at one time: ends between two samples lie on the straight line between them.

An end inside a gap, or beside a sample off the scale, isn't made up: the stretch then ends with the last sample in it,
which is enough for a peak and too little for a mean or an area (`mean.py` refuses).

Times that are asked for are true times. A logger whose clock is fast has by then gone through more of its own, so what
its clock leaves open is taken off; for a time the same clock told (`when`), that leaves nothing.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from reportgen.metrology.arithmetic import exact, in_unit, weighted
from reportgen.metrology.errors import NoValue, UnitError
from reportgen.metrology.traces.piece import Piece
from reportgen.metrology.traces.trace import Trace, added, in_gaps, joined
from reportgen.metrology.uncertain import Limit, Uncertain
from reportgen.metrology.unit import NUMBER, alike, parse_unit


def during(trace: Trace, begins: Uncertain, ends: Uncertain) -> Trace:
    """The trace from `begins` to `ends`, times or plain numbers of seconds; `when` still counts from its first sample.

    Raises NoValue where they lie outside of it or the wrong way round, UnitError where they are no times.
    """
    window = (_on_its_clock(trace, begins), _on_its_clock(trace, ends))
    low, high = _known(trace, window[0]), _known(trace, window[1])
    if low > high:
        raise NoValue(f"the stretch of {trace.name} ends before it begins", "exchange the two times")
    gaps = tuple((max(a, low), min(b, high)) for a, b in trace.gaps if a < high and b > low)
    return replace(
        trace,
        pieces=lambda: _cut(trace.pieces(), low, high, trace.gaps),
        observe=lambda value, limit, which: trace.observe(value, limit, f"{which}, {low} to {high}"),
        begins=low,
        ends=high,
        gaps=gaps,
        window=window,
        known_noise=lambda: trace.noise,
    )


def value_at(trace: Trace, time: Uncertain) -> Uncertain:
    """The trace's value at one time. Its slope there carries the uncertainty of the time. Raises as `during`, and
    NoValue in a gap."""
    when = _on_its_clock(trace, time)
    at = _known(trace, when)
    for piece in joined(trace.pieces()):
        if not piece.times[0] <= at <= piece.times[-1]:
            continue
        i = max(0, min(int(piece.times.searchsorted(at, side="right")) - 1, len(piece.times) - 2))
        times, values, sides = piece.times[i : i + 2], piece.values[i : i + 2], piece.sides[i : i + 2]
        if len(times) > 1 and times[0] < at < times[1] and in_gaps(times, trace.gaps)[0]:
            raise NoValue(f"nothing was logged of {trace.name} at that time", "choose a time outside of the gap")
        j = 1 if len(times) > 1 and at == times[1] else 0
        if at == times[j]:
            side = int(sides[j])
            limit: Limit | None = "above" if side > 0 else "below" if side < 0 else None
            found = trace.observe(None if math.isnan(values[j]) else float(values[j]), limit, f"at {at}")
            slope = _slope_at(piece, i + j, trace.gaps) if found.value is not None else 0.0
            return replace(found, contributions=weighted([(1.0, found), (slope, when)]))
        if sides.any():
            raise NoValue(f"{trace.name} was off the scale at that time", "choose another time")
        slope = float((values[1] - values[0]) / (times[1] - times[0]))
        found = trace.observe(float(values[0]) + slope * (at - float(times[0])), None, f"at {at}")
        return replace(found, contributions=weighted([(1.0, found), (slope, when)]))
    raise NoValue(f"{trace.name} has no sample there", "look at the times: nothing was logged then")


def _slope_at(piece: Piece, i: int, gaps: tuple[tuple[float, float], ...]) -> float:
    """How fast the trace moves at a sample: over the steps before and behind it, as far as both ends are read."""
    near = slice(max(0, i - 1), i + 2)
    times, values, sides = piece.times[near], piece.values[near], piece.sides[near]
    read = ~in_gaps(times, gaps) & (sides[1:] == 0) & (sides[:-1] == 0)
    steps = [float(d) for d in (times[1:] - times[:-1])[read]]
    return sum(float(d) for d in (values[1:] - values[:-1])[read]) / sum(steps) if steps else 0.0


def seconds_of(time: Uncertain) -> Uncertain:
    """A time, or a plain number of seconds, in s. Raises UnitError for anything else."""
    unit = parse_unit("s")
    if alike(time.unit, NUMBER) and time.value is not None:
        return replace(exact(time.value, unit), contributions=time.contributions, limit=time.limit)
    if not alike(time.unit, unit):
        raise UnitError(f"a stretch of a trace is told by times, not by {time.unit.symbol}", "use when(…), or seconds")
    return in_unit(time, unit)


def _on_its_clock(trace: Trace, time: Uncertain) -> Uncertain:
    """A true time as the logger's own clock tells it."""
    true = seconds_of(time)
    off = {source: -size for source, size in trace.of_clock(true.value or 0.0).items()}
    return replace(true, contributions=added(true.contributions, off))


def _known(trace: Trace, time: Uncertain) -> float:
    if time.value is None or time.limit:
        raise NoValue(f"the trace of {trace.name} isn't long enough to know that time", "")
    if not trace.begins <= time.value <= trace.ends:
        raise NoValue(f"that time lies outside of what was logged of {trace.name}", "choose a time within the trace")
    return time.value


def _cut(pieces: Iterator[Piece], low: float, high: float, gaps: tuple[tuple[float, float], ...]) -> Iterator[Piece]:
    """The samples from `low` to `high`, with one made on the line at either end where there is a line."""
    import numpy as np

    fresh = True
    for piece in joined(pieces):
        times, values, sides = piece.times, piece.values, piece.sides
        line = ~in_gaps(times, gaps) & (sides[1:] == 0) & (sides[:-1] == 0)
        kept = (times >= low) & (times <= high)
        kept[0] &= fresh  # the others' first sample was the last one of the piece before
        fresh = False
        ends = [x for x in dict.fromkeys((low, high)) if len(times) > 1 and times[0] < x < times[-1] and x not in times]
        ends = [x for x in ends if line[int(times.searchsorted(x)) - 1]]
        all_times = np.concatenate((times[kept], ends))
        order = np.argsort(all_times, kind="stable")
        made = np.interp(ends, times, values) if ends else np.empty(0)
        yield Piece(
            all_times[order],
            np.concatenate((values[kept], made))[order],
            np.concatenate((sides[kept], np.zeros(len(ends), dtype=np.int8)))[order],
        )
        if times[-1] > high:
            return
