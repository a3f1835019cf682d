"""How fast a trace rises: the slope of the straight line fitted to its samples by least squares (JCGM 100, H.3).

Every sample counts alike. An offset that all samples share drops out, a gain moves the slope by its own part, a clock
that is fast makes it too small by the clock's.

What is left over beside the line tells how well the slope is known. Left-overs of a trace follow each other, so n
samples are worth fewer: with r₁ the correlation of each left-over with the next, n·(1 − r₁)/(1 + r₁) of them, and
s² and its degrees of freedom are worked out with that number (B. D. Santer and others, Journal of Geophysical
Research 105 (2000), 7337, equations 4 to 6; from memory).

A stretch that bends has no one slope, and passes that bend alike don't scatter by it. So a term in t² is fitted beside
the line; where Student's t says that it is there (at 95 %), its left-overs tell the scatter, and how far the slope at
any moment may lie from the line's is counted: along a parabola uniformly, so far either way as at its ends. It is one
error for all passes of a contender. What beside a parabola still follows itself, so that it is worth fewer than five
samples, is a shape and no noise: no line is fitted.

Where samples scatter by less than half of the instrument's step, the line may rise by as much as a step over its length
without being seen to: so far either way, uniformly, is added.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from reportgen.metrology.arithmetic import weighted
from reportgen.metrology.errors import NoValue
from reportgen.metrology.traces.piece import Piece
from reportgen.metrology.traces.trace import Trace, added
from reportgen.metrology.type_a import student
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import parse_unit
from reportgen.metrology.unit_algebra import step_of, unit_of_product

OF_EACH_SAMPLE = frozenset({"step", "repeatability"})
LEVEL = 0.95
TELLING = 20  # samples whose left-overs tell how they follow each other; of fewer each counts as one
FEWEST = 5  # independent samples that left-overs must be worth, to be noise
_ROUNDING = 1e-12  # of a trace's height: left-overs smaller than that are rounding


@dataclass(frozen=True)
class _Line:
    """height + slope·τ through `count` samples, τ = t − middle; `spread` is Στ², `third` Στ³, `top` the top |value|."""

    count: int
    middle: float
    height: float
    slope: float
    spread: float
    third: float
    top: float

    @property
    def lean(self) -> float:
        """k of the parabola τ² − k·τ − Στ²/n, which neither height nor slope of the line has a part in."""
        return self.third / self.spread

    def at(self, time: float) -> float:
        return self.height + self.slope * (time - self.middle)


@dataclass(frozen=True)
class _Left:
    """What is left over: Σr², r₁ (the correlation of each with the next), the first and the last beside the line.

    `taken` is how many parameters were fitted, `bend` that of the parabola, 0 where none is told.
    """

    squares: float
    follow: float
    first: float
    last: float
    taken: int = 2
    bend: float = 0.0

    def worth(self, count: int) -> float:
        """How many independent samples `count` are worth; ones that alternate aren't worth more."""
        follow = max(0.0, min(self.follow, 1.0))
        return count * (1 - follow) / (1 + follow)

    def sd(self, count: int) -> float:
        """Their standard deviation, each sample for one."""
        return math.sqrt(self.squares / max(1, count - self.taken))


def slope(trace: Trace) -> Uncertain:
    """The slope of the line through the samples, in the trace's steps a second.

    Raises NoValue for fewer than three samples, for samples off the scale, and where left-overs follow each other so
    much that they don't tell how well a line is known.
    """
    line = _fitted(trace)
    left = _left_over(trace, line)
    unit = unit_of_product(step_of(trace.unit), parse_unit("s"), "/")
    s = left.sd(line.count)
    ends = [trace.observe(line.at(t), None, f"slope, {which}") for t, which in ((trace.begins, "1"), (trace.ends, "2"))]
    found = added(
        _of_scatter(trace, line, left),
        _of_bend(trace, line, left),
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
    spread, third, product = [0.0], [0.0], [0.0]
    for piece in trace.pieces():
        t = piece.times - middle
        spread.append(float(t @ t))
        third.append(float(t @ (t * t)))
        product.append(float(t @ (piece.values - height)))
    total = math.fsum(spread)
    return _Line(count, middle, height, math.fsum(product) / total, total, math.fsum(third), top)


def _left_over(trace: Trace, line: _Line) -> _Left:
    """One walk, for the line and for the parabola beside it."""
    squares, followed, against, curved, lagged, crossed = ([0.0] for _ in range(6))
    first, before = math.nan, (math.nan, math.nan)
    for piece in _filled(trace.pieces()):
        t = piece.times - line.middle
        r = piece.values - line.height - line.slope * t
        p = t * t - line.lean * t - line.spread / line.count
        squares.append(float(r @ r))
        against.append(float(r @ p))
        curved.append(float(p @ p))
        followed.append(float(r[1:] @ r[:-1]))
        lagged.append(float(p[1:] @ p[:-1]))
        crossed.append(float(r[1:] @ p[:-1] + p[1:] @ r[:-1]))
        now = float(r[0]), float(p[0])
        if math.isnan(first):
            first = now[0]
        else:
            followed.append(before[0] * now[0])
            lagged.append(before[1] * now[1])
            crossed.append(before[0] * now[1] + before[1] * now[0])
        before = float(r[-1]), float(p[-1])
    total, parabola = math.fsum(squares), math.fsum(curved)
    if total <= line.count * (_ROUNDING * line.top) ** 2:
        return _Left(0.0, 0.0, 0.0, 0.0)
    straight = _Left(total, math.fsum(followed) / total, first, before[0])
    if line.count < 4 or not parabola:
        return straight
    bend = math.fsum(against) / parabola
    rest = max(0.0, total - bend * bend * parabola)
    if rest <= line.count * (_ROUNDING * line.top) ** 2 or rest <= 1e-12 * total:
        return _Left(0.0, 0.0, first, before[0], 3, bend)
    follow = (math.fsum(followed) - bend * math.fsum(crossed) + bend * bend * math.fsum(lagged)) / rest
    bent = _Left(rest, follow, first, before[0], 3, bend)
    return bent if _bends(trace, line, bent, parabola) else straight


def _bends(trace: Trace, line: _Line, bent: _Left, parabola: float) -> bool:
    """Whether Student's t says that the parabola is there. Raises NoValue where its left-overs leave nothing to say."""
    degrees = float(line.count - 3)
    if line.count >= TELLING:
        worth = bent.worth(line.count)
        if worth < FEWEST:
            raise _no_line(trace)
        degrees = worth - 3
    return abs(bent.bend) > student(0.5 + LEVEL / 2, degrees) * math.sqrt(bent.squares / degrees / parabola)


def _of_scatter(trace: Trace, line: _Line, left: _Left) -> dict[Source, float]:
    if not left.squares:
        return {}
    degrees = left.worth(line.count) - left.taken
    if degrees < 1:
        raise _no_line(trace)
    where = f"{trace.reading}/{trace.begins} to {trace.ends}"
    source = Source("fit", f"slope of {trace.name}", where, "normal", degrees)
    return {source: math.sqrt(left.squares / degrees / line.spread)}


def _of_bend(trace: Trace, line: _Line, left: _Left) -> dict[Source, float]:
    """The slope of the parabola beside the line, 2τ − k times its size: between its ends any value is as likely."""
    if not left.bend:
        return {}
    furthest = max(abs(2 * (t - line.middle) - line.lean) for t in (trace.begins, trace.ends))
    return {Source("bend", trace.name, trace.whose or trace.reading): left.bend * furthest / math.sqrt(3)}


def _no_line(trace: Trace) -> NoValue:
    return NoValue(
        f"{trace.name} doesn't run along a straight line there",
        "take a stretch that is straight, such as slope(during(x, from, to))",
    )


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
