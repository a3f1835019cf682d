"""The level of a plateau: the mean over the first stretch of a given length in which a trace stays level.

Level means that every sample lies within a declared distance of the stretch's mean over time (of decibels, of their
energies). Stretches begin at samples; one that holds a gap or a sample off the scale is none.

Besides what the instrument leaves open of a mean, two things count: how samples scatter about the straight line through
them, as in `slope.py`, for samples that follow each other are worth fewer (n·(1 − r₁)/(1 + r₁), same source);
and how far that line still moves from one end to the other, for the level may be meant anywhere on it, uniformly.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.traces.during import during, seconds_of
from reportgen.metrology.traces.mean import mean_level
from reportgen.metrology.traces.piece import Piece
from reportgen.metrology.traces.trace import Trace, added, unbroken
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import NUMBER, convert, parse_unit
from reportgen.metrology.unit_algebra import step_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

FEWEST = 5  # samples that can show whether a trace is level
NEAR = 1e-9  # of the stretch: ends that differ by less are one


@dataclass(frozen=True)
class Plateau:
    """The mean of the stretch, and when it begins and ends, in s from the trace's first sample."""

    level: Uncertain
    begins: float
    ends: float


def plateau(trace: Trace, lasts: Uncertain, within: Uncertain) -> Plateau:
    """The first stretch of `trace` that lasts so long (a time, or seconds) within ±`within` (or a number in its unit).

    Raises MetrologyError where either is no plain amount above nothing; NoValue where there is no such stretch, or one
    holds fewer than five samples; UnitError where units don't go together.
    """
    time, most = _plain(seconds_of(lasts)), _plain(_in_steps(trace, within))
    for a, samples in _level(trace, time, most):
        if samples < FEWEST:
            raise NoValue(
                f"too few samples to be called level: {trace.name} has {samples} in {time:g} s, one every "
                f"{trace.interval:g} s, and a plateau takes {FEWEST}",
                "ask for longer: a plain number is in seconds",
            )
        stretch = during(trace, _exact(a), _exact(min(a + time, trace.ends)))
        return Plateau(_with_scatter(stretch), a, stretch.ends)
    raise NoValue(
        f"{trace.name} never stayed within ±{most:g} {trace.unit.symbol} for {time:g} s",
        "look at the trace: allow more, ask for less time, or smooth it first",
    )


def _exact(seconds: float) -> Uncertain:
    return Uncertain(seconds, parse_unit("s"))


def _plain(amount: Uncertain) -> float:
    if amount.contributions or amount.limit or not amount.value or amount.value <= 0:
        raise MetrologyError(
            "a plateau is told by a plain time and a plain distance, both above nothing",
            "write numbers: plateau(temperature, 60, 0.5)",
        )
    return amount.value


def _in_steps(trace: Trace, within: Uncertain) -> Uncertain:
    if within.unit == NUMBER or within.value is None:
        return within
    steps = step_of(trace.unit)
    return replace(within, value=convert(within.value, step_of(within.unit), steps), unit=steps)


def _level(trace: Trace, time: float, within: float) -> Iterator[tuple[float, int]]:
    """When the first level stretch begins and how many samples it holds; nothing where there is none."""
    import numpy as np

    times, values, sides = np.empty(0), np.empty(0), np.empty(0, dtype=np.int8)
    for piece, fresh in unbroken(trace):
        if fresh:
            times, values, sides = times[:0], values[:0], sides[:0]
        times = np.concatenate((times, piece.times))
        values = np.concatenate((values, piece.values))
        sides = np.concatenate((sides, piece.sides))
        whole = int(times.searchsorted(times[-1] - time * (1 - NEAR), side="right"))
        found = _first_level(trace, Piece(times, values, sides), whole, time, within)
        if found is not None:
            yield found
            return
        times, values, sides = times[whole:], values[whole:], sides[whole:]


def _first_level(trace: Trace, held: Piece, whole: int, time: float, within: float) -> tuple[float, int] | None:
    """Among the stretches that begin at the first `whole` samples and end within `held`."""
    import numpy as np

    if not whole:
        return None
    energies = trace.unit.kind == "level"
    read = np.where(held.sides == 0, held.values, 0.0)
    y = 10.0 ** (read / 10) if energies else read
    ends = np.minimum(held.times[:whole] + time, held.times[-1])
    behind = held.times.searchsorted(ends + NEAR * time, side="right")
    steps = np.concatenate(([0.0], np.cumsum((y[1:] + y[:-1]) / 2 * np.diff(held.times))))
    last = np.interp(ends, held.times, y)
    area = steps[behind - 1] + (y[behind - 1] + last) / 2 * np.maximum(ends - held.times[behind - 1], 0.0)
    mean = (area - steps[:whole]) / time
    off = np.concatenate(([0], np.cumsum(held.sides != 0)))
    between = ends > held.times[behind - 1] + NEAR * time
    reached = np.where(between, np.minimum(behind + 1, len(held.times)), behind)  # no line leads to a bound
    if energies:
        mean, last = 10 * np.log10(mean), 10 * np.log10(last)
    high = np.maximum(_outermost(held.values, behind, np.maximum), last)
    low = np.minimum(_outermost(held.values, behind, np.minimum), last)
    level = (high - mean <= within) & (mean - low <= within) & (off[reached] == off[:whole])
    if not bool(level.any()):
        return None
    first = int(level.argmax())
    return float(held.times[first]), int(behind[first]) - first


def _outermost(values: Floats, behind: NDArray[np.intp], of: np.ufunc) -> Floats:
    """The highest or lowest of values[i:behind[i]] for each i, from spans of 1, 2, 4, … that overlap."""
    import numpy as np

    begin = np.arange(len(behind))
    spans = [values]
    while 2 ** len(spans) <= int((behind - begin).max()):
        shift = 2 ** (len(spans) - 1)
        spans.append(of(spans[-1][:-shift], spans[-1][shift:]))
    power = np.floor(np.log2(behind - begin)).astype(int)
    found = np.empty(len(behind))
    for k, span in enumerate(spans):
        at = power == k
        found[at] = of(span[begin[at]], span[behind[at] - 2**k])
    return found


def _with_scatter(stretch: Trace) -> Uncertain:
    import numpy as np

    mean = mean_level(stretch)
    t = np.concatenate([piece.times for piece in stretch.pieces()])
    x = np.concatenate([piece.values for piece in stretch.pieces()])
    slope = float((t - t.mean()) @ (x - x.mean()) / ((t - t.mean()) @ (t - t.mean())))
    r = x - x.mean() - slope * (t - t.mean())
    moved = abs(slope) * (stretch.ends - stretch.begins) / math.sqrt(12)
    where = f"{stretch.reading}/{stretch.begins} to {stretch.ends}"
    more = {Source("assumption", f"how far {stretch.name} still moved", where): moved}
    squares = float(r @ r)
    if squares > len(r) * (1e-12 * float(np.abs(x).max())) ** 2:
        follow = max(0.0, min(float(r[1:] @ r[:-1]) / squares, 1.0))
        worth = max(3.0, len(r) * (1 - follow) / (1 + follow))
        u = math.sqrt(squares / len(r) / (worth - 2))  # s² = Σr²/n·worth/(worth − 2), over worth
        more[Source("repeatability", "", where, "normal", worth - 2)] = u
        stated = {s: c for s, c in mean.contributions.items() if s.sort == "repeatability"}
        if math.hypot(*stated.values()) < u:  # what samples show holds what the instrument was said to do
            mean = replace(mean, contributions={s: c for s, c in mean.contributions.items() if s not in stated})
    return replace(mean, contributions=added(mean.contributions, more))
