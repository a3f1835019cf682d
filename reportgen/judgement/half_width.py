"""The half-width h of a difference: what a lead must exceed, and the interval that is printed.

h is a quantile of |T·√A + B|: T Student's with the scatter's degrees of freedom, B the type B parts that the two
results do not share, each with its own shape (JCGM 101:2008, 5.1; JCGM 100, 5.1.3 for what is shared and cancels).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import fsum, hypot, inf, isfinite, sqrt

from reportgen.judgement.blocks import NOISE
from reportgen.judgement.measured import Measured
from reportgen.judgement.reach.convolution import quantile
from reportgen.judgement.reach.parts import NOTHING, Parts, parts_of, sd_of
from reportgen.judgement.rounding_alone import floor_of_lead
from reportgen.judgement.scatter import Spread
from reportgen.metrology.uncertain import OF_ONE_READING, Source, estimate_of

TOLERANCE = 1e-9  # relative: leads and half-widths closer than this are equal but for binary fractions


@dataclass(frozen=True)
class Rounding:
    """What the steps do to a difference: δ (largest c·δ), R of both results, and g·δ that a lead must exceed."""

    step: float = 0.0
    variance: float = 0.0
    floor: float = 0.0


def unshared(
    first: Mapping[Source, float], second: Mapping[Source, float], *, repeat: bool = False, scatter: float = inf
) -> Parts:
    """Type B parts of first minus second: by source, signed contributions subtract, so what is shared cancels.

    A shared gain leaves its share of the difference by the same subtraction. Steps and scatter are left out: they
    have rules of their own; for a `repeat`, what a result carries of the scatter of another quantity is one more part.
    How far an instrument repeats itself, and how a trace scatters about its line, is inside the scatter between passes:
    a `repeat` doesn't count it again. So is the hand on a stopwatch, where the `scatter` of what is told is no smaller
    than the hand alone would make it: a display in whole seconds may hide it.
    Contributions that rest on one estimate of a variance are one Student's t together.
    """
    sources = {*first, *second}
    if not sources:
        return NOTHING
    by_shape: dict[str, list[float]] = {"uniform": [], "normal": [], "triangular": [], "arcsine": []}
    estimated: dict[Source, list[float]] = {}
    left_out = {"step", *(OF_ONE_READING if repeat else ("scatter",))}
    if repeat and hand_is_hidden({s: first.get(s, 0.0) - second.get(s, 0.0) for s in sources}, scatter):
        left_out.discard("reaction")
    for source in (s for s in sources if s.sort not in left_out):
        size, other = first.get(source, 0.0), second.get(source, 0.0)
        left = size - other
        if abs(left) <= TOLERANCE * max(abs(size), abs(other)):
            continue
        if source.shape == "normal" and isfinite(source.degrees):
            estimated.setdefault(estimate_of(source), []).append(left)
        else:
            by_shape[source.shape].append(left)
    return parts_of(
        by_shape["uniform"],
        sorted(by_shape["normal"]),  # so that sums round alike whatever the order of the sources
        by_shape["triangular"],
        by_shape["arcsine"],
        [(hypot(*sorted(sizes)), estimate.degrees) for estimate, sizes in estimated.items()],
    )


def hand_is_hidden(contributions: Mapping[Source, float], scatter: float) -> bool:
    """Whether the hand on a stopwatch errs by more than the scatter that should show it (both of one result)."""
    hand = hypot(*(size for source, size in contributions.items() if source.sort == "reaction"))
    return hand > scatter * (1.0 + TOLERANCE)


def rounding(first: Measured, second: Measured) -> Rounding:
    """Rounding of a difference of two results."""
    both = (*first.steps, *second.steps)
    if not both:
        return Rounding()
    return Rounding(max(both), fsum(s * s for s in both) / 12.0, floor_of_lead(first.steps, second.steps))


def holds_steps(sd: float, step: float) -> bool:
    """Whether the scatter already holds the resolution: s ≥ δ/2."""
    return sd >= step / 2.0 * (1.0 - TOLERANCE)


def half_width(spread: Spread, parts: Parts, steps: Rounding, alpha: float) -> float:
    """h at two-sided `alpha`. Where the scatter is under half a step, R joins A, and h is at least g·δ."""
    if holds_steps(spread.sd, steps.step):
        return quantile(1.0 - alpha, sqrt(spread.variance), spread.degrees, parts)
    root = sqrt(spread.variance + steps.variance)
    return max(quantile(1.0 - alpha, root, spread.degrees, parts), steps.floor)


def combined(spread: Spread, parts: Parts, steps: Rounding) -> float:
    """Combined standard uncertainty of the difference (JCGM 100, 5.1.2)."""
    added = 0.0 if holds_steps(spread.sd, steps.step) else steps.variance
    return sqrt(spread.variance + added + sd_of(parts) ** 2)


def exceeds(lead: float, half: float, level: float = 0.0) -> bool:
    """Strictly more, and by more than binary fractions can feign in numbers as large as `level`."""
    return lead > half + TOLERANCE * max(abs(half), abs(lead)) + NOISE * abs(level)
