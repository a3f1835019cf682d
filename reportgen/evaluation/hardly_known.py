"""Results of which the uncertainty leaves little: more than half of the value, or more than all of it."""

from __future__ import annotations

from typing import Literal

from reportgen.evaluation.evaluated import Result
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import parse_unit

Hardly = Literal["", "side alone", "not even the side"]


def hardly_known(result: Result) -> Hardly:
    """Whether it is known on which side of nothing a result lies, and little more; "" where it is known better.

    By its 95 % interval. Only where nothing means nothing: not of temperatures, nor of levels.
    """
    e = result.estimate
    if (
        result.kind != "measured"
        or e is None
        or e.value is None
        or e.limit
        or result.low is None
        or result.high is None
    ):
        return ""
    if result.low == result.high or not (e.step or _from_nothing(e.unit)):
        return ""
    if result.low <= 0.0 <= result.high:
        return "not even the side"
    return "side alone" if result.high - result.low > abs(e.value) else ""


def _from_nothing(unit: str) -> bool:
    try:
        return parse_unit(unit).kind in ("plain", "difference")
    except UnitError:
        return False
