"""What is said of an instrument in single terms: a correction, a drift, how far it repeats itself, its hand, its clock.

A part of the reading is written in percent: `0.4 %`, or `0.4 % of reading` where the instrument itself reads in
percent.
"""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Annotated

from reportgen.campaign.declared import Amount, Repeats
from reportgen.campaign.given import Given
from reportgen.campaign.scalar import AMOUNT, NUMBER, UNIT, amount, number
from reportgen.campaign.shape import NotThat, Scalar

OF_READING = "% of reading"
DEGREES_OF_A_GUESS = 8  # a standard deviation known to 25 %: JCGM 100, G.4.2
_PLAIN = NUMBER.removeprefix("[-+−]?")
_SHARE = r"%\s*of\s+(?:the\s+)?reading"
_IN_TIME = {"ppm": Decimal("1e-6"), "%": Decimal("0.01")}
_SECONDS = {"ms": Decimal("0.001"), "s": Decimal(1), "min": Decimal(60)}
_IN = {"minute": 60, "hour": 3600, "day": 86400, "week": 604800, "month": 2629800, "year": 31557600}  # s; 365.25 days
_MOST_WRONG = Decimal("0.5")  # beyond that a clock tells no time
_RATE = rf"(?:ppm|%|(?:ms|s|min)\s*(?:a|per|/)\s*(?:{'|'.join(_IN)}))"
_YEAR = r"\s*(?:a|per|/)\s*year"
_READINGS = r"\s+from\s+[0-9]{1,6}\s+readings"
_NOT_FROM = r"(?!.*\sfrom\s(?!\s*[0-9]{1,6}\s+readings\s*$))"  # of anything but readings


def amount_or_share(text: str) -> Amount:
    """`+0.12 g`, `-0.4 %`, `0.4 % of reading`: an amount whose unit is then `% of reading`. Raises NotThat."""
    said = text.strip()
    if match := re.fullmatch(rf"({NUMBER})\s*{_SHARE}", said):
        return Amount(number(match[1]), OF_READING, said)
    found = amount(said)
    if not found.unit and found.value:
        raise NotThat(f"“{said}” has no unit", "Write its unit, or % of reading.")
    return found


def size_or_share(text: str) -> Amount:
    """The same where it can only be above nothing: an uncertainty."""
    found = amount_or_share(text)
    if found.value <= 0:
        raise NotThat(f"“{found.text}” is not above nothing", "Write how large it is, without a sign.")
    return found


def drift(text: str) -> Amount:
    """`0.1 g a year`, `0.2 % a year`: how far at most, either way. Raises NotThat."""
    said = text.strip()
    found = re.fullmatch(rf"(?:±|\+/-|\+-)?\s*(.+?){_YEAR}", said)
    if found is None:
        raise NotThat(f"“{said}” doesn't say in what time", "Write it like this: 0.1 g a year · 0.2 % a year.")
    size = size_or_share(found[1])
    return Amount(size.value, size.unit, said)


def repeats(text: str) -> Repeats:
    """`0.05 g`, `0.05 g from 10 readings`, `0.05 g, a guess`: one standard deviation. Raises NotThat."""
    said = text.strip()
    found = re.fullmatch(r"(.+?)(?:\s+from\s+([0-9]{1,6})\s+readings|,\s*(a guess))?", said)
    assert found is not None
    sd = amount(found[1])
    if re.search(r"\sfrom\s", sd.unit):
        raise NotThat(f"“{said}” doesn't say from how many readings", "Write it like this: 0.05 g from 10 readings.")
    if sd.value <= 0 or not sd.unit:
        raise NotThat(f"“{said}” is no standard deviation", "Write a number above 0 with its unit.")
    if found[2] and int(found[2]) < 2:
        raise NotThat(f"“{said}” rests on one reading, which shows no scatter", "Give that of two readings or more.")
    degrees = int(found[2]) - 1 if found[2] else DEGREES_OF_A_GUESS if found[3] else None
    return Repeats(Amount(sd.value, sd.unit, said), degrees)


def clock(text: str) -> Amount:
    """`±50 ppm`, `±2 s a day`, `±1 min a month`: how fast or slow at most, as a part of any time. Raises NotThat."""
    said = text.strip()
    found = re.fullmatch(rf"(?:±|\+/-|\+-)?\s*({_PLAIN})\s*({_RATE})", said)
    if found is None:
        raise NotThat(f"“{said}” doesn't say how fast or slow a clock is", "Write it like this: ±50 ppm · ±2 s a day.")
    unit, _, rest = re.sub(r"\s*(?:\ba\b|\bper\b|/)\s*", " ", found[2]).partition(" ")
    part = number(found[1]) * (_IN_TIME[unit] if not rest else _SECONDS[unit] / _IN[rest])
    if not 0 < part < _MOST_WRONG:
        raise NotThat(f"“{said}” is no accuracy a clock can have", "Write how far off it may be: ±50 ppm · ±2 s a day.")
    return Amount(part, "", said)


_NOTHING = Amount(Decimal(0), "", "")
_PLAIN_AMOUNT = rf"{_PLAIN}(?:\s*{UNIT.replace('±', '±+')})?"
CorrectionOf = Annotated[
    Given[Amount],
    Scalar("a correction", amount_or_share, rf"^\s*(?:{NUMBER}\s*{_SHARE}|{AMOUNT})\s*$", _NOTHING,
           ("+0.12 g", "-0.4 %"), types=("string", "number")),
]  # fmt: skip
UncertaintyOf = Annotated[
    Given[Amount],
    Scalar("an uncertainty", size_or_share, rf"^\s*(?:{_PLAIN}\s*{_SHARE}|{_PLAIN_AMOUNT})\s*$", _NOTHING,
           ("0.04 g", "0.2 %")),
]  # fmt: skip
DriftOf = Annotated[
    Given[Amount],
    Scalar("a drift", drift, rf"^\s*(?:±|\+/-|\+-)?\s*(?:{_PLAIN}\s*{_SHARE}|{_PLAIN_AMOUNT}){_YEAR}\s*$", _NOTHING,
           ("0.1 g a year", "0.2 % a year")),
]  # fmt: skip
ClockOf = Annotated[
    Given[Amount],
    Scalar("how well a clock keeps time", clock, rf"^\s*(?:±|\+/-|\+-)?\s*{_PLAIN}\s*{_RATE}\s*$", _NOTHING,
           ("±50 ppm", "±2 s a day")),
]  # fmt: skip
RepeatsOf = Annotated[
    Given[Repeats],
    Scalar("a standard deviation", repeats, rf"^\s*{_NOT_FROM}{_PLAIN_AMOUNT}(?:{_READINGS}|,\s*a guess)?\s*$",
           Repeats(_NOTHING, None), ("0.05 g", "0.05 g from 10 readings", "0.05 g, a guess")),
]  # fmt: skip
