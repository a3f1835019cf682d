"""A difference in percent of the other one, always named: "5.0 % less than Ostler (3.9 to 6.1 % less)"."""

from __future__ import annotations

from reportgen.wording import number
from reportgen.wording.interval import decimals_for
from reportgen.wording.language import say
from reportgen.wording.unit import joined, spelled

SCARCE = 0.1  # without an interval: two digits, and of small ones a tenth


def less_or_more(value: float, low: float | None, high: float | None, other: str) -> str:
    """`value` percent of `other`'s result, below zero for less, with its interval where there is one."""
    places = _places(value, low, high)
    said = _said(value, other, places)
    if low is None or high is None:
        return said
    least, most = sorted((abs(low), abs(high)))
    if low < 0.0 < high:
        down, up = (joined(number.fixed(abs(x), places), "%") for x in (low, high))
        return say("percent.between.both", said=said, low=down, high=up)
    key = "percent.between.less" if high <= 0.0 else "percent.between.more"
    return say(key, said=said, low=number.fixed(least, places), high=joined(number.fixed(most, places), "%"))


def apart(unit: str) -> str:
    """The unit of a difference between two results in `unit`: of percentages it is percentage points, so that 20 % and
    25 % aren't taken to differ by 5 % of either."""
    return say("percent.points") if spelled(unit) == "%" else unit


def size(value: float, low: float | None, high: float | None) -> str:
    """The percentage alone, without its sign and base: "5.0 %"."""
    return joined(number.fixed(abs(value), _places(value, low, high)), "%")


def _said(value: float, other: str, places: int) -> str:
    if not number.rounded(value, places):
        return say("percent.same", other=other)
    shown = joined(number.fixed(abs(value), places), "%")
    return say("percent.less" if value < 0 else "percent.more", value=shown, other=other)


def _places(value: float, low: float | None, high: float | None) -> int:
    """Two digits of half the interval; two of the percentage itself where there is none."""
    places = decimals_for(None, low, high)
    if places is not None:
        return max(places, 0)
    return max(number.decimals_of(value), 0) if abs(value) >= SCARCE else 1
