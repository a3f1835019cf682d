"""The accuracy a maker states, in the language in use."""

from __future__ import annotations

import re

from reportgen.campaign.declared import Instrument
from reportgen.wording.language import as_one, say, say_of, spoken
from reportgen.wording.unit import joined

_DIGITS = re.compile(r"(\d+)\s*digits?")
_OF_READING = re.compile(r"([\d.,]+)\s*%\s*of\s+(?:the\s+)?reading")
_OF_RANGE = re.compile(r"([\d.,]+)\s*%\s*of\s+(?:the\s+)?(?:range|span|full\s+scale)")
_CLASS = re.compile(r"class\s+(\S+)")
_POINT = re.compile(r"(?<=\d)\.(?=\d)")


def accuracy_in_short(instrument: Instrument) -> str:
    """What is stated; "unknown"; or that its calibration tells."""
    accuracy = instrument.accuracy
    if not accuracy.known:
        return say("page.accuracy.unknown")
    return accuracy_said(accuracy.text) if accuracy.text else say("page.accuracy.by-calibration")


def accuracy_said(stated: str) -> str:
    """ "±(0.3 °C + 0.5 % of reading)", "±5 % + 5 digits", "class 1.6": as it was typed, its words and its decimal sign
    as the language has them."""
    said = _POINT.sub(spoken().decimal_sign, stated)
    said = _DIGITS.sub(lambda m: say_of(int(m[1]), "accuracy.digits", n=m[1]), said)
    said = _OF_READING.sub(lambda m: say("accuracy.of-reading", percent=joined(m[1], "%")), said)
    said = _OF_RANGE.sub(lambda m: say("accuracy.of-range", percent=joined(m[1], "%")), said)
    return as_one(_CLASS.sub(lambda m: say("accuracy.class", n=m[1]), said))
