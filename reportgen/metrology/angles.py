"""Sine and cosine of an angle in degrees or radians: of a tilt, of a direction of wind, of a phase."""

from __future__ import annotations

import math
from functools import lru_cache

from reportgen.metrology.arithmetic import in_unit, weighted
from reportgen.metrology.errors import NoValue, UnitError
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import NUMBER, Unit, alike, named, parse_unit


def sine(angle: Uncertain) -> Uncertain:
    """The sine, a plain number. Raises UnitError for what is no angle, NoValue for a bound.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> round(sine(input_quantity(30.0, "°")).value, 12)
    0.5
    """
    x = _in_radians(angle, "sin")
    return Uncertain(math.sin(x.value or 0.0), NUMBER, weighted([(math.cos(x.value or 0.0), x)]))


def cosine(angle: Uncertain) -> Uncertain:
    """The cosine, a plain number. Raises as `sine`.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> from reportgen.metrology.uncertain import combined_standard_uncertainty
    >>> tilt = cosine(input_quantity(60.0, "°", u=1.0, name="level"))
    >>> round(tilt.value, 12), round(combined_standard_uncertainty(tilt), 5)  # sin 60° × π/180
    (0.5, 0.01511)
    """
    x = _in_radians(angle, "cos")
    return Uncertain(math.cos(x.value or 0.0), NUMBER, weighted([(-math.sin(x.value or 0.0), x)]))


@lru_cache(maxsize=1)
def radian() -> Unit:
    """What both are worked out in."""
    return parse_unit("rad")


def _in_radians(angle: Uncertain, function: str) -> Uncertain:
    if not angle.unit.dimension or not alike(angle.unit, radian()):
        what = named(angle.unit) if angle.unit.dimension else "a plain number"
        raise UnitError(f"{function}(…) takes an angle, not {what}", "give its unit: ° or rad")
    if angle.value is None or angle.limit:
        raise NoValue(f"{function}(…) of a bound can be anything", "the angle is known from one side only")
    return in_unit(angle, radian())
