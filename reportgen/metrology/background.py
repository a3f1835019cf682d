"""A level freed from the background it was measured in, by the rule of ISO 3744:2010, 8.2.3 (clause from memory).

With ΔL the level above its background: over 15 dB nothing is taken off; from 6 to 15 dB the background's energy is,
K₁ = −10·lg(1 − 10^(−0.1·ΔL)); under 6 dB too little of the reading is the source's own, at most 1.3 dB may be taken
off and what is left is an upper bound. Where the formula itself takes off less than 1.3 dB, it is used there too, so
that the bound holds at every ΔL.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from reportgen.metrology.arithmetic import in_unit, weighted
from reportgen.metrology.errors import NoValue, UnitError
from reportgen.metrology.uncertain import Limit, Source, Uncertain
from reportgen.metrology.unit import is_decibel, named

NOTHING_FROM, BOUND_UNDER = 15.0, 6.0  # dB above the background
MOST = 1.3  # dB that may be taken off at the most
_CHECK = "measure the background again where it is quieter, or leave the pass out with its reason"


def stands_above(level: float, background: float) -> float:
    """ΔL in dB as the rule compares it: 70.1 − 64.1 is 6, whatever binary fractions make of it."""
    return round(level - background, 9)


def correction(above: float) -> float:
    """K₁ in dB for a level `above` dB over its background (ISO 3744:2010, 8.2.3): 0 to 1.3."""
    if above > NOTHING_FROM:
        return 0.0
    if above <= 0:
        return MOST
    return min(MOST, -10 * math.log10(-math.expm1(-above * math.log(10) / 10)))


def less_background(level: Uncertain, background: Uncertain) -> Uncertain:
    """The level of the source alone, in the unit of `level`; only a bound where the background is within 6 dB.

    An offset that both readings share stays whole. A background below what the meter can show leaves an upper bound,
    and nothing to correct where even that limit lies over 15 dB down. Raises UnitError for what are no levels, NoValue
    where bounds pull apart.
    """
    _check_levels(level, background)
    background = in_unit(background, level.unit)
    known = level.value is not None and background.value is not None
    above = stands_above(level.value or 0.0, background.value or 0.0) if known else None
    limit = _limit(level, background, above)
    if level.value is None:
        return Uncertain(None, level.unit, {}, limit)
    if above is None or above > NOTHING_FROM or (background.limit == "below" and limit == "below"):
        return Uncertain(level.value, level.unit, level.contributions, limit)
    return Uncertain(level.value - correction(above), level.unit, _contributions(level, background, above), limit)


def _limit(level: Uncertain, background: Uncertain, above: float | None) -> Limit | None:
    """Which side of the result the source lies on: its level rises with the reading and falls with the background."""
    plain = above is not None and above > NOTHING_FROM and background.limit != "above"
    if plain:
        return level.limit
    open_above = background.limit == "above" or (background.value is None and background.limit != "below")
    too_near = above is None or above < BOUND_UNDER
    if level.limit == "above" and level.value is not None and (open_above or too_near):
        raise NoValue("a level off the scale over a background that may be as loud can be anything", _CHECK)
    if level.limit == "above":
        return "above"
    return "below" if level.limit or background.limit or too_near else None


def _contributions(level: Uncertain, background: Uncertain, above: float) -> Mapping[Source, float]:
    """∂L′/∂L = 1 + k and ∂L′/∂B = −k with k = 1/(10^(0.1·ΔL) − 1), while the background's energy is taken off."""
    if above < BOUND_UNDER:
        return level.contributions
    k = 1 / math.expm1(above * math.log(10) / 10)
    return weighted([(1 + k, level), (-k, background)])


def _check_levels(level: Uncertain, background: Uncertain) -> None:
    for x in (level, background):
        if x.unit.kind != "level":
            what = "a difference of levels" if is_decibel(x.unit.dimension) else named(x.unit)
            raise UnitError(f"less_background(…) takes two levels in dB, not {what}", "name the readings themselves")
