"""Means and areas of a trace over time, by the trapezoidal rule: straight lines between samples.

An offset that all samples share counts whole in a mean and times the duration in an area; a gain counts in proportion
to them (JCGM 100, 5.1.2, with the sum of weights 1). The instrument's own step counts whole as well: that steps of
many samples even out is true only of a trace that moves through many of them, and isn't taken for granted. How far the
instrument repeats itself, each sample has of its own, so that it evens out: by √Σwᵢ², w the weight of a sample in the
mean. A clock that is fast makes an area too large by the same part, and a mean not at all; what happens between two
samples is taken as straight.

A gap is bridged by a straight line, and what the trace may have done there is a source of its own: anywhere between
its lowest and its highest, uniformly.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from reportgen.metrology.arithmetic import exact, multiply, weighted
from reportgen.metrology.errors import NoValue, UnitError
from reportgen.metrology.limits import joint
from reportgen.metrology.traces.trace import Trace, added, in_gaps, joined
from reportgen.metrology.uncertain import Limit, Source, Uncertain
from reportgen.metrology.unit import parse_unit

PER_NEPER = 10 / math.log(10)  # dB that a small relative change of an energy makes


@dataclass
class _Sum:
    """What one walk along a trace adds up: areas of steps, seconds, those of them in gaps, ends of the range."""

    areas: list[float] = field(default_factory=list)
    seconds: float = 0.0
    in_gaps: float = 0.0
    low: float = math.inf
    high: float = -math.inf
    begins: float = math.nan  # s, of its first sample
    ends: float = math.nan  # s, of its last
    first: float = math.nan
    last: float = math.nan
    weights: list[float] = field(default_factory=list)  # squared, in s²: of each sample, half of the steps beside it
    half: float = 0.0  # s, half of the step before the next piece
    over: bool = False
    under: bool = False
    unknown: bool = False

    @property
    def limit(self) -> Limit | None:
        """Where the truth lies when samples are bounds. Raises NoValue where they pull apart."""
        return joint("above" if self.over else None, "below" if self.under else None)


def mean_level(trace: Trace) -> Uncertain:
    """The mean over time, in the trace's unit: of levels the level of the mean energy (ISO 1996-1, 3.1.4, LeqT).

    Raises NoValue for a single sample, which lasts no time.
    """
    energies = trace.unit.kind == "level"
    found = _walk(trace, energies)
    if found.unknown:
        return trace.observe(None, found.limit, "mean")
    if not found.seconds:
        raise NoValue(
            f"{trace.name} has one sample there, and no mean over time", "use at(…), or look at where the stretch ends"
        )
    total = math.fsum(found.areas)
    mean = total / found.seconds
    value = trace.observe(10 * math.log10(mean) if energies else mean, found.limit, "mean")
    slope = PER_NEPER / mean if energies else 1.0
    more = _of_gaps(trace, found, slope / found.seconds) | _of_ends(trace, found, slope / found.seconds, mean)
    return replace(value, contributions=added(_evened(value.contributions, found), more))


def area(trace: Trace) -> Uncertain:
    """The area under the trace, in its unit times s. Raises UnitError for levels and temperatures on a scale."""
    if trace.unit.kind in ("level", "absolute"):
        what = "levels" if trace.unit.kind == "level" else "temperatures"
        raise UnitError(f"an area under {what} means nothing", "use mean_level(…), or a rise above a start")
    found = _walk(trace, energies=False)
    if not found.seconds:
        raise NoValue(f"{trace.name} has one sample there, and no area", "widen the times")
    seconds = exact(found.seconds, parse_unit("s"))
    if found.unknown:
        return multiply(trace.observe(None, found.limit, "mean"), seconds)
    mean = math.fsum(found.areas) / found.seconds
    value = multiply(trace.observe(mean, found.limit, "mean"), seconds)
    of_clock = trace.of_clock(value.value or 0.0)
    more = added(_of_gaps(trace, found, 1.0), _of_ends(trace, found, 1.0, 0.0), of_clock)
    return replace(value, contributions=added(_evened(value.contributions, found), more))


def _walk(trace: Trace, energies: bool) -> _Sum:
    """One walk along the trace; sums of pieces are joined without loss (math.fsum)."""
    import numpy as np

    found = _Sum()
    steps: list[float] = []
    gaps: list[float] = []
    for piece in joined(trace.pieces()):
        y = 10.0 ** (piece.values / 10) if energies else piece.values
        apart = np.diff(piece.times)
        found.over = found.over or bool((piece.sides > 0).any())
        found.under = found.under or bool((piece.sides < 0).any())
        found.unknown = found.unknown or bool(np.isnan(y).any())
        found.areas.append(float(np.sum((y[1:] + y[:-1]) / 2 * apart)))
        steps.append(float(apart.sum()))
        halves = np.concatenate(([found.half], apart / 2)) + np.concatenate((apart / 2, [0.0]))
        found.weights.append(float(np.square(halves[:-1]).sum()))
        found.half = float(halves[-1])
        gaps.append(float(apart[in_gaps(piece.times, trace.gaps)].sum()))
        found.low, found.high = min(found.low, float(y.min())), max(found.high, float(y.max()))
        found.begins = float(piece.times[0]) if math.isnan(found.begins) else found.begins
        found.ends = float(piece.times[-1])
        found.first = float(y[0]) if math.isnan(found.first) else found.first
        found.last = float(y[-1])
    if math.isinf(found.low) and not found.unknown:
        raise NoValue(f"{trace.name} has no sample there", "look at the times: nothing was logged between them")
    if trace.window and (found.begins > trace.begins or found.ends < trace.ends):
        raise NoValue(
            f"the stretch of {trace.name} begins or ends where nothing was read",
            "in a gap, or beside samples off the scale: choose times outside of it",
        )
    found.seconds, found.in_gaps = math.fsum(steps), math.fsum(gaps)
    found.weights.append(found.half**2)
    return found


def _evened(contributions: Mapping[Source, float], found: _Sum) -> dict[Source, float]:
    """Errors that each sample has of its own even out in a mean: √Σwᵢ²/Σwᵢ of one are left (JCGM 100, 5.1.2)."""
    left = math.sqrt(math.fsum(found.weights)) / found.seconds
    return {s: size * left if s.sort == "repeatability" else size for s, size in contributions.items()}


def _of_gaps(trace: Trace, found: _Sum, slope: float) -> dict[Source, float]:
    """What the trace may have done where nothing was logged: half of its range, uniformly (JCGM 100, 4.3.7)."""
    size = abs(slope) * found.in_gaps * (found.high - found.low) / 2 / math.sqrt(3)
    return {Source("assumption", f"gap in {trace.name}", trace.reading): size} if size else {}


def _of_ends(trace: Trace, found: _Sum, slope: float, mean: float) -> dict[Source, float]:
    """What the uncertain ends of `during` leave: the trace's height there above what is being averaged."""
    if trace.window is None:
        return {}
    begins, ends = trace.window
    return weighted([(-slope * (found.first - mean), begins), (slope * (found.last - mean), ends)])
