"""Did they differ in these runs? The instrument alone answers; whether a repeat would agree is another question."""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt

from reportgen.judgement.half_width import Rounding, unshared
from reportgen.judgement.measured import Measured
from reportgen.judgement.reach.convolution import quantile
from reportgen.judgement.reach.parts import Parts, joined, parts_of

LEVEL = 0.95


def with_rounding(parts: Parts, steps: Sequence[float]) -> Parts:
    """The parts, and one uniform part as wide as its step for each reading (JCGM 100, F.2.2.1)."""
    return joined(parts, parts_of(step / sqrt(12.0) for step in steps)) if steps else parts


def instrument_half_width(first: Measured, second: Measured, steps: Rounding) -> float | None:
    """Half-width of the instrument's 95 % interval of a difference; None where nothing is known of the instrument.

    Rounding is convolved with the other parts. Never less than g·δ: where rounding is the only part, whole steps
    count, and the least lead decides (the convolution alone would let one step do).
    """
    parts = unshared(first.contributions, second.contributions)
    if not parts and not steps.step and not first.contributions and not second.contributions:
        return None
    all_parts = with_rounding(parts, (*first.steps, *second.steps))
    return max(quantile(LEVEL, 0.0, 1.0, all_parts), steps.floor)
