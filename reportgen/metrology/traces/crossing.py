"""When a trace passes a limit: the first time, by a straight line between the two samples around it.

An error of the trace's or of the limit moves the crossing by its size over the slope, as far as that error reaches;
what both share, such as the instrument's gain where the limit is a part of the trace's own peak, cancels by its name.
So does noise from sample to sample; that its first dip under a limit comes early as well is told (`passings`) and not
mended: smoothing is. A clock that is fast or slow makes the time longer or shorter by the same part of it.
Between the two samples the true crossing may lie anywhere: half of their distance either way, uniformly. Where they are
the ends of a gap, the middle of the gap is taken, and the same holds of it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Literal

from reportgen.metrology.arithmetic import in_unit, weighted
from reportgen.metrology.errors import NoValue
from reportgen.metrology.limits import opposite
from reportgen.metrology.traces.noise import beyond_stated
from reportgen.metrology.traces.trace import Trace, added, in_gaps, joined
from reportgen.metrology.uncertain import Limit, Source, Uncertain
from reportgen.metrology.unit import NUMBER, parse_unit

Side = Literal["over", "under"]


@dataclass(frozen=True)
class _Step:
    """The two samples a crossing lies between, their values NaN where they are bounds."""

    before: float
    after: float
    rise: float  # of the values, NaN where one is a bound
    share: float  # of the way from `before` to `after`
    gap: bool

    @property
    def apart(self) -> float:
        """Seconds from one to the other."""
        return self.after - self.before

    @property
    def known(self) -> bool:
        """Whether a line between the two means anything: both are read, and no gap lies between."""
        return not self.gap and not math.isnan(self.rise)

    @property
    def at(self) -> float:
        """Where the line passes the limit; the middle, where there is no line."""
        return self.before + self.apart * (self.share if self.known else 0.5)


def when(trace: Trace, side: Side, limit: Uncertain) -> Uncertain:
    """Seconds from the trace's first sample to where it first goes over, or under, `limit`: an amount, or a number
    in the trace's own unit.

    More than its length where it never does. Raises NoValue where it lay there from the first sample on, where a limit
    beyond the scale can't be told apart from its bounds, and where it may have passed a limit that is only known to lie
    nearer than the one it never passed; UnitError where the units don't go together.
    """
    seconds = parse_unit("s")
    limit = in_unit_of(trace, limit)
    assert limit.value is not None
    step, began_there = _first(trace, side, limit.value)
    if step is None:
        if began_there:
            raise NoValue(
                f"{trace.name} lay {side} the limit from its first sample on",
                "the log must begin before the limit is passed; or choose another limit",
            )
        return _never(trace, side, limit)
    here = f"{side}, {step.before}"
    found = {Source("step", "time between samples", f"{trace.reading}/{here}"): step.apart / math.sqrt(12)}
    if step.known:
        read = trace.observe(limit.value, None, here)
        errors = weighted([(1.0, limit), (-1.0, read)])
        if noise := beyond_stated(trace.noise, read):
            errors[Source("repeatability", "", f"{trace.reading}/{here}", "normal")] = noise
        slope = _slope(trace, side, limit.value, math.sqrt(math.fsum(e * e for e in errors.values())), step)
        found |= {source: size / slope for source, size in errors.items()}
    return Uncertain(step.at, seconds, added(found, trace.of_clock(step.at)), _bounded(side, limit.limit))


def passings(trace: Trace, side: Side, limit: Uncertain) -> int:
    """How often the trace passes the limit that way, from one sample to the next that is read."""
    import numpy as np

    value = in_unit_of(trace, limit).value or 0.0
    sign, count = 1 if side == "over" else -1, 0
    for piece in joined(trace.pieces()):
        beyond = np.where(piece.sides == 0, sign * (piece.values - value) >= 0, sign * piece.sides > 0)
        count += int(np.count_nonzero(~beyond[:-1] & beyond[1:]))
    return count


def in_unit_of(trace: Trace, limit: Uncertain) -> Uncertain:
    """A limit in the trace's unit, in which a plain number is taken to be. Raises UnitError; NoValue for an unknown."""
    limit = replace(limit, unit=trace.unit) if limit.unit == NUMBER else in_unit(limit, trace.unit)
    if limit.value is None:
        raise NoValue(f"the limit for {trace.name} isn't known", "the trace went off the scale: take a fixed limit")
    return limit


def _never(trace: Trace, side: Side, limit: Uncertain) -> Uncertain:
    """More than the trace's length; where the error of trace and limit reaches back to a passing, as unsure as that."""
    if _bounded(side, limit.limit) == "below":
        raise NoValue(
            f"{trace.name} never passed the limit as far as that is known, and the limit may lie nearer",
            "the limit rests on samples off the scale: take a fixed one",
        )
    errors = weighted([(1.0, limit), (-1.0, trace.observe(limit.value, None, f"{side}, never"))])
    u = math.sqrt(math.fsum(e * e for e in errors.values()))
    early = _at(trace, side, (limit.value or 0.0) + (-u if side == "over" else u)) if u else None
    reach = trace.ends - early if early is not None else 0.0
    found = {source: size / u * reach for source, size in errors.items()} if reach else {}
    return Uncertain(trace.ends, parse_unit("s"), added(found, trace.of_clock(trace.ends)), "above")


def _slope(trace: Trace, side: Side, limit: float, u: float, step: _Step) -> float:
    """How fast the trace passes the limit, taken over as much of it as the error `u` of the two reaches.

    Between two samples alone it would be that of a display's step or of noise. Where the trace isn't known as far as
    that on one side, the other counts; the sign is that of the passing.
    """
    sign = 1.0 if side == "over" else -1.0
    before = _at(trace, side, limit - sign * u)
    after = _at(trace, side, limit + sign * u)
    begins, ends = before if before is not None else step.at, after if after is not None else step.at
    reach = u * ((before is not None) + (after is not None))
    return sign * reach / (ends - begins) if u and ends > begins else step.rise / step.apart


def _at(trace: Trace, side: Side, limit: float) -> float | None:
    """When it first passes another limit, None where that isn't known."""
    try:
        step, _ = _first(trace, side, limit)
    except NoValue:
        return None
    return step.at if step else None


def _bounded(side: Side, limit: Limit | None) -> Limit | None:
    """A limit that is really higher is passed later on the way up, and earlier on the way down."""
    return limit if side == "over" else opposite(limit)


def _first(trace: Trace, side: Side, limit: float) -> tuple[_Step | None, bool]:
    """The step in which the trace first passes the limit, and whether its first sample lay beyond it already."""
    import numpy as np

    sign = 1 if side == "over" else -1
    began_there: bool | None = None
    for piece in joined(trace.pieces()):
        unclear = (piece.sides != 0) & ~(piece.sides * (piece.values - limit) >= 0)
        beyond = np.where(piece.sides == 0, sign * (piece.values - limit) >= 0, sign * piece.sides > 0)
        if began_there is None:
            began_there = bool(beyond[0])
        passes = np.flatnonzero(~beyond[:-1] & beyond[1:])
        until = int(passes[0]) + 1 if len(passes) else len(beyond) - 1
        if bool(unclear[: until + 1].any()):
            raise NoValue(
                f"the limit lies off the scale of {trace.name}, where its samples are only bounds",
                "choose a limit that the instrument can show",
            )
        if not len(passes):
            continue
        i = until - 1
        bounds = bool(piece.sides[i : i + 2].any())
        rise = math.nan if bounds else float(piece.values[i + 1] - piece.values[i])
        share = math.nan if bounds else (limit - float(piece.values[i])) / rise
        gap = bool(in_gaps(piece.times[i : i + 2], trace.gaps)[0])
        return _Step(float(piece.times[i]), float(piece.times[i + 1]), rise, share, gap), False
    if began_there is None:
        raise NoValue(f"{trace.name} has no sample there", "look at the times: nothing was logged between them")
    return None, began_there
