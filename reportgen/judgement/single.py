"""The interval of one contender's own result: how well this value is known, apart from any comparison."""

from __future__ import annotations

from dataclasses import replace
from math import fsum, hypot, sqrt
from typing import Literal

from reportgen.judgement.differed import with_rounding
from reportgen.judgement.drawn.draws import ByDraws, by_draws
from reportgen.judgement.drawn.quantile_of_draws import INSTRUMENT_ALONE, Scattered
from reportgen.judgement.half_width import holds_steps, unshared
from reportgen.judgement.measured import Measured, Rules, Single
from reportgen.judgement.reach.convolution import quantile
from reportgen.judgement.reach.parts import sd_of, with_part
from reportgen.judgement.scale import value_from_logarithm
from reportgen.judgement.scatter import Scatter, result_of

LEVEL = 0.95
Covers = Literal["instrument and scatter", "instrument"]


def interval_of(working: Measured, one: Measured, scatter: Scatter | None, rules: Rules) -> Single:
    """95 % interval of a result; `working` is `one` on the working scale, `scatter` None where none applies.

    Codes in `why_no_u`: no-result, limit, accuracy-unknown (neither scatter nor instrument says anything), no-answer
    (in too many draws the formula has none).
    """
    if one.value is None or working.value is None:
        return _without(one, "limit" if one.limit else "no-result")
    if one.limit is not None:
        return _without(one, "limit")
    step = max(working.steps, default=0.0)
    rounding = fsum(s * s for s in working.steps) / 12.0
    spread = result_of(scatter, working) if scatter is not None else None
    if spread is None or (spread.variance == 0.0 and step == 0.0):
        return _instrument_only(working, one, rules)
    between = (rules.between_sessions or 0.0) / sqrt(len(working.sessions))
    parts = with_part(unshared(working.contributions, {}, repeat=True, scatter=sqrt(spread.variance)), between)
    added = 0.0 if holds_steps(spread.sd, step) else rounding
    root = sqrt(spread.variance + added)
    half = quantile(LEVEL, root, spread.degrees, parts)
    u = sqrt(root * root + sd_of(parts) ** 2)
    coarse = is_coarse(spread.sd, step)
    beside = Scattered(hypot(root, between), spread.degrees, repeat=True)
    draws = by_draws(working.beyond, half, u, beside, 1.0 - LEVEL)
    found = _single(one, (u, half), draws, rules, "instrument and scatter", coarse)
    unit = one.value if rules.scatter == "relative" else 1.0
    return replace(
        found,
        scatter=spread.sd * unit,
        sd_of_mean=sqrt(spread.variance) * unit,
        degrees=spread.degrees,
        between=between * unit,
    )


def is_coarse(sd: float, step: float) -> bool:
    """Whether the step is 2 sd of a pass or more, so that an interval that holds 95 % holds more than that.

    `sd` is of passes as they were read; rounding is in it with δ²/12 (Sheppard 1898), and is taken out first: readings
    that stand on two neighbouring steps scatter by the step alone.
    """
    return step > 0.0 and sd * sd <= step * step * (1.0 / 4.0 + 1.0 / 12.0) * (1.0 + 1e-9)


def _instrument_only(working: Measured, one: Measured, rules: Rules) -> Single:
    parts = with_rounding(unshared(working.contributions, {}), working.steps)
    if not parts:
        return _without(one, "accuracy-unknown")
    u, half = sd_of(parts), quantile(LEVEL, 0.0, 1.0, parts)
    draws = by_draws(working.beyond, half, u, INSTRUMENT_ALONE, 1.0 - LEVEL)
    return _single(one, (u, half), draws, rules, "instrument", False)


def _single(
    one: Measured, first: tuple[float, float], draws: ByDraws | None, rules: Rules, covers: Covers, at_least: bool
) -> Single:
    """`first`: u and half-width to first order; the interval is that of the draws where they were needed, and u only
    where it lies far from first order."""
    assert one.value is not None
    u, half = first
    low, high = -half, half
    if draws is not None and draws.needed:
        u, low, high = draws.combined, draws.low, draws.high
        if not draws.ends:
            return replace(_without(one, "no-answer"), draws=draws)
    if rules.scatter == "relative":
        ends = value_from_logarithm(one.value, low), value_from_logarithm(one.value, high)
        in_unit = draws.scaled(one.value) if draws else None
        return Single(one.name, one.value * u, *ends, covers, at_least, draws=in_unit)
    return Single(one.name, u, one.value + low, one.value + high, covers, at_least, draws=draws)


def _without(one: Measured, code: str) -> Single:
    low = one.value if one.limit == "above" else None
    high = one.value if one.limit == "below" else None
    return Single(one.name, None, low, high, "instrument", why_no_u=code)
