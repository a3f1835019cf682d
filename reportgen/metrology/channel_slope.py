"""How fast a trace rises: the slope of the straight line fitted to its samples by least squares (JCGM 100, H.3).

Every sample counts alike. An offset that all samples share drops out, a gain moves the slope by its own part, a clock
that is fast makes it too small by the clock's.

What is left over beside the line tells how well the slope is known. Left-overs of a trace follow each other, so n
samples are worth fewer: with r₁ the correlation of each left-over with the next, n·(1 − r₁)/(1 + r₁) of them, and
s² and its degrees of freedom are worked out with that number (B. D. Santer and others, Journal of Geophysical
Research 105 (2000), 7337, equations 4 to 6; from memory). A stretch that bends leaves ones that follow each other all
the way; where fewer than one degree of freedom is left, no line is fitted.

Where samples scatter by less than half of the instrument's step, the line may rise by as much as a step over its length
without being seen to: so far either way, uniformly, is added.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from reportgen.metrology.arithmetic import weighted
from reportgen.metrology.errors import NoValue
from reportgen.metrology.trace import Piece, Trace, added
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import parse_unit
from reportgen.metrology.unit_algebra import step_of, unit_of_product

OF_EACH_SAMPLE = frozenset({"step", "repeatability"})
_ROUNDING = 1e-12  # of a trace's height: left-overs smaller than that are rounding


@dataclass(frozen=True)
class _Line:
    """height + slope·(t − middle) through `count` samples; `spread` is Σ(t − middle)², `top` the largest |value|."""

    count: int
    middle: float
    height: float
    slope: float
    spread: float
    top: float

    def at(self, time: float) -> float:
        return self.height + self.slope * (time - self.middle)


@dataclass(frozen=True)
class _Left:
    """Of the left-overs: Σr², Σr·(the one before), the first and the last."""

    squares: float
    followed: float
    first: float
    last: float


def slope(trace: Trace) -> Uncertain:
    """The slope of the line through the samples, in the trace's steps a second.

    Raises NoValue for fewer than three samples, for samples off the scale, and where the trace bends so much that its
    left-overs don't tell how well a line is known.
    """
    line = _fitted(trace)
    left = _left_over(trace, line)
    unit = unit_of_product(step_of(trace.unit), parse_unit("s"), "/")
    s = math.sqrt(left.squares / (line.count - 2))
    ends = [trace.observe(line.at(t), None, f"slope, {which}") for t, which in ((trace.begins, "1"), (trace.ends, "2"))]
    found = added(
        _of_scatter(trace, line, left, s),
        _of_instrument(trace, ends),
        _of_step(trace, ends, s),
        trace.of_clock(-line.slope),
        _of_ends(trace, line, left),
    )
    return Uncertain(line.slope, unit, found)


def _fitted(trace: Trace) -> _Line:
    """Two walks: one for the middle, one about it, so that long traces and high values lose no digits."""
    count, times, values, top = 0, [0.0], [0.0], 0.0
    for piece in trace.pieces():
        if bool(piece.sides.any()):
            raise NoValue(
                f"{trace.name} goes off its scale there, and bounds have no slope", "take a stretch where it was read"
            )
        if len(piece.times):
            count += len(piece.times)
            times.append(float(piece.times.sum()))
            values.append(float(piece.values.sum()))
            top = max(top, float(abs(piece.values).max()))
    if count < 3:
        raise NoValue(
            f"a slope with its uncertainty takes three samples, and {trace.name} has {count} there", "widen it"
        )
    middle, height = math.fsum(times) / count, math.fsum(values) / count
    spread, product = [0.0], [0.0]
    for piece in trace.pieces():
        t = piece.times - middle
        spread.append(float(t @ t))
        product.append(float(t @ (piece.values - height)))
    total = math.fsum(spread)
    return _Line(count, middle, height, math.fsum(product) / total, total, top)


def _left_over(trace: Trace, line: _Line) -> _Left:
    squares, followed, first, last = [0.0], [0.0], math.nan, math.nan
    for piece in _filled(trace.pieces()):
        r = piece.values - line.height - line.slope * (piece.times - line.middle)
        squares.append(float(r @ r))
        followed.append(float(r[1:] @ r[:-1]) + (0.0 if math.isnan(last) else last * float(r[0])))
        first, last = float(r[0]) if math.isnan(first) else first, float(r[-1])
    total = math.fsum(squares)
    if total <= line.count * (_ROUNDING * line.top) ** 2:
        return _Left(0.0, 0.0, 0.0, 0.0)
    return _Left(total, math.fsum(followed), first, last)


def _of_scatter(trace: Trace, line: _Line, left: _Left, s: float) -> dict[Source, float]:
    if not s:
        return {}
    follow = max(0.0, min(left.followed / left.squares, 1.0))  # left-overs that alternate aren't worth more samples
    worth = line.count * (1 - follow) / (1 + follow)
    degrees = worth - 2
    if degrees < 1:
        raise NoValue(
            f"{trace.name} doesn't run along a straight line there",
            "take a stretch that is straight, such as slope(during(x, from, to))",
        )
    where = f"{trace.reading}/{trace.begins} to {trace.ends}"
    source = Source("fit", f"slope of {trace.name}", where, "normal", degrees)
    return {source: math.sqrt(left.squares / degrees / line.spread)}


def _of_instrument(trace: Trace, ends: list[Uncertain]) -> dict[Source, float]:
    """What the line's two ends don't share, over their distance; the steps of samples are no part of it."""
    apart = trace.ends - trace.begins
    found = weighted([(-1 / apart, ends[0]), (1 / apart, ends[1])])
    return {source: size for source, size in found.items() if source.sort not in OF_EACH_SAMPLE}


def _of_step(trace: Trace, ends: list[Uncertain], s: float) -> dict[Source, float]:
    steps = {source: size for source, size in ends[1].contributions.items() if source.sort == "step"}
    largest = max((abs(size) for size in steps.values()), default=0.0)
    if s >= math.sqrt(3) * largest:  # half a step: δ/2, with δ/√12 its standard uncertainty
        return {}
    return {source: 2 * size / (trace.ends - trace.begins) for source, size in steps.items()}  # δ/√3 over its length


def _of_ends(trace: Trace, line: _Line, left: _Left) -> dict[Source, float]:
    """Uncertain ends of `during` take samples in or leave them out, each worth its distance from the line."""
    if trace.window is None or not trace.interval:
        return {}
    begins, ends = trace.window
    each = 1 / (trace.interval * line.spread)
    at_begin = left.first * (trace.begins - line.middle) * each
    at_end = left.last * (trace.ends - line.middle) * each
    return weighted([(-at_begin, begins), (at_end, ends)])


def _filled(pieces: Iterator[Piece]) -> Iterator[Piece]:
    return (piece for piece in pieces if len(piece.times))
