"""Limits as text: never rounded to the side on which they wouldn't hold."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from typing import Literal

from reportgen.wording.number import decimals_of, exact, fixed
from reportgen.wording.unit import joined


def at_the_limit(value: float, u: float | None, unit: str, side: Literal["most", "least"]) -> str:
    """A limit with as many digits as `u` gives a value: "231.4 s"; the most is rounded down, the least up."""
    places = decimals_of(u) if u else 2
    down = ROUND_FLOOR if side == "most" else ROUND_CEILING
    return joined(fixed(exact(value).quantize(Decimal(1).scaleb(-places), rounding=down), places), unit)


def share(value: float, way: Literal["down", "up"]) -> str:
    """A share in whole percent: "74 %"."""
    rounding = ROUND_FLOOR if way == "down" else ROUND_CEILING
    return joined(fixed(exact(100.0 * value).quantize(Decimal(1), rounding=rounding), 0), "%")
