"""How long a trace lay over, or under, a limit, all stretches together, by straight lines between samples.

An error of the trace's or of the limit moves every passing by its size over the slope there, as far as that error
reaches: it is worked out from what the time would be with the limit one standard uncertainty higher and lower, or two
where one changes nothing, so that a trace which stays just short of a limit isn't said to do so for certain. Each
passing may lie anywhere between the two samples around it, by itself. A gap whose ends lie on one side counts as lying
there, give or take all of it; one whose ends lie apart counts half, give or take that half.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from reportgen.metrology.arithmetic import weighted
from reportgen.metrology.errors import NoValue
from reportgen.metrology.limits import opposite
from reportgen.metrology.traces.crossing import Side, in_unit_of
from reportgen.metrology.traces.piece import Piece
from reportgen.metrology.traces.trace import Trace, added, in_gaps, joined
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import parse_unit

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

REACHES = (1.0, 2.0)  # standard uncertainties: a trace that came within two of a limit may have passed it


@dataclass(frozen=True)
class _Time:
    """Seconds beyond the limit; Σ of squares of the steps it was passed in, and of gaps, in s²; samples seen."""

    seconds: float
    steps: float
    gaps: float
    samples: int


def how_long(trace: Trace, side: Side, limit: Uncertain) -> Uncertain:
    """Seconds for which the trace lay over, or under, `limit`: an amount, or a number in the trace's own unit.

    A limit that is only a bound bounds the time. Raises NoValue where a limit beyond the scale can't be told apart from
    its bounds, and where there are not two samples; UnitError where the units don't go together.
    """
    limit = in_unit_of(trace, limit)
    assert limit.value is not None
    found = _beyond(trace, side, limit.value)
    if found.samples < 2:
        raise NoValue(f"{trace.name} has no two samples there", "look at the times: nothing was logged between them")
    here = f"{trace.reading}/how long {side}, {trace.begins} to {trace.ends}"
    contributions = added(
        {Source("step", "time between samples", here): math.sqrt(found.steps / 12)},
        {Source("assumption", f"gap in {trace.name}", here): math.sqrt(found.gaps / 12)},
        _of_errors(trace, side, limit, found.seconds),
        _of_ends(trace, side, limit.value),
        trace.of_clock(found.seconds),
    )
    bound = opposite(limit.limit) if side == "over" else limit.limit
    return Uncertain(found.seconds, parse_unit("s"), contributions, bound)


def _of_errors(trace: Trace, side: Side, limit: Uncertain, seconds: float) -> dict[Source, float]:
    """What the errors of trace and limit make of the time, by the limit moved by both together either way."""
    assert limit.value is not None
    errors = weighted([(1.0, limit), (-1.0, trace.observe(limit.value, None, f"how long {side}"))])
    u = math.sqrt(math.fsum(e * e for e in errors.values()))
    if not u:
        return {}
    for reach in REACHES:
        low, high = (_or(trace, side, limit.value + way * reach * u, seconds) for way in (-1.0, 1.0))
        if low != high:
            return {source: size * (high - low) / (2 * reach * u) for source, size in errors.items()}
    return {}


def _or(trace: Trace, side: Side, limit: float, seconds: float) -> float:
    """The time for another limit; the one found where its own can't be told."""
    try:
        return _beyond(trace, side, limit).seconds
    except NoValue:
        return seconds


def _of_ends(trace: Trace, side: Side, limit: float) -> dict[Source, float]:
    """Uncertain ends of `during` count where the trace lay beyond the limit there."""
    if trace.window is None:
        return {}
    first: float | None = None
    last = 0.0
    for piece in trace.pieces():
        if len(piece.times):
            beyond = _flags(trace, piece, side, limit)
            first = float(beyond[0]) if first is None else first
            last = float(beyond[-1])
    begins, ends = trace.window
    return weighted([(-(first or 0.0), begins), (last, ends)])


def _flags(trace: Trace, piece: Piece, side: Side, limit: float) -> NDArray[np.bool_]:
    """For each sample, whether it lies beyond the limit. Raises NoValue where a bound doesn't tell."""
    import numpy as np

    sign = 1 if side == "over" else -1
    if bool(((piece.sides != 0) & ~(piece.sides * (piece.values - limit) >= 0)).any()):
        raise NoValue(
            f"the limit lies off the scale of {trace.name}, where its samples are only bounds",
            "choose a limit that the instrument can show",
        )
    return np.where(piece.sides == 0, sign * (piece.values - limit) >= 0, sign * piece.sides > 0)


def _beyond(trace: Trace, side: Side, limit: float) -> _Time:
    import numpy as np

    seconds, steps, gaps, samples = [0.0], [0.0], [0.0], 0
    for piece in joined(trace.pieces()):
        samples = max(samples, len(piece.times))
        beyond = _flags(trace, piece, side, limit).astype(float)
        apart, read = np.diff(piece.times), (piece.sides[1:] == 0) & (piece.sides[:-1] == 0)
        gap = in_gaps(piece.times, trace.gaps)
        rise = np.where(read, np.diff(np.where(piece.sides == 0, piece.values, 0.0)), 0.0)
        passed = beyond[1:] != beyond[:-1]
        line = passed & read & ~gap & (rise != 0)
        way = np.where(line, (limit - piece.values[:-1]) / np.where(line, rise, 1.0), 0.5)
        share = np.where(beyond[1:] > 0, 1.0 - way, way)  # of a step it was passed in
        seconds.append(float(np.sum(apart * np.where(passed, share, beyond[1:]))))
        steps.append(float(np.sum(apart[passed & ~gap] ** 2)))
        gaps.append(float(np.sum(np.where(passed, 1.0, 4.0)[gap] * apart[gap] ** 2)))  # ±a is (2a)²/12
    return _Time(math.fsum(seconds), math.fsum(steps), math.fsum(gaps), samples)
