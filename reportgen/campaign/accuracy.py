"""The accuracy of an instrument as its maker states it."""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Annotated

from reportgen.campaign.declared import Accuracy
from reportgen.campaign.given import Given
from reportgen.campaign.scalar import NUMBER, UNIT, amount, number
from reportgen.campaign.shape import NotThat, Scalar

EXAMPLES = ("±0.3 g", "±0.5 % + 2 digits", "±(0.3 °C + 0.5 % of reading)", "±1 % of range", "class 1.6", "unknown")
_PLAIN = NUMBER.removeprefix("[-+−]?")
_READING, _RANGE = r"%(?:\s*of\s+(?:the\s+)?reading)?", r"%\s*of\s+(?:the\s+)?(?:range|span|full\s+scale)"
# what leaflets print for them (common practice, no source), and the words they stand for
_SHORT_FOR = (
    (r"%\s*(?:of\s+)?(?:rdg|reading)(?![A-Za-z])\.?", "% of reading"),
    (r"%\s*(?:of\s+)?(?:F\.?S\.?|FSD|full\s+scale)(?![A-Za-z])", "% of range"),
    (r"(?<=[\d\s])dgts?(?![A-Za-z])\.?", "digits"),
)
_CLASS = rf"class\s+({_PLAIN})"
_LEAFLET = "|".join((r"dgts?\.?", *(short for short, _ in _SHORT_FOR[:2])))
_TERM = rf"{_PLAIN}\s*(?:digits?|{_LEAFLET}|{_RANGE}|{_READING}|{UNIT.replace('±', '±+')})"
_SIGN = r"(?:±|\+/-|\+-)"
PATTERN = rf"^\s*(?:unknown|{_CLASS.replace('(', '(?:', 1)}|{_SIGN}\s*\(?\s*{_TERM}(?:\s*\+\s*{_TERM})*\s*\)?)\s*$"


def accuracy(text: str) -> Accuracy:
    """±(absolute + percent of reading + percent of range + digits), each once, in any order; a class; or `unknown`.

    `class 1.6` is ±1.6 % of the range: EN 837-1 for pressure gauges, IEC 60051 for pointer meters. Raises NotThat.
    """
    said = text.strip()
    for short, words in _SHORT_FOR:
        said = re.sub(short, words, said)
    if said == "unknown":
        return Accuracy(known=False)
    if match := re.fullmatch(_CLASS, said):
        return Accuracy(True, text=said, of_range=_above_nothing(match[1], said))
    if re.fullmatch(r"class\s+\d+,\d+", said):
        raise NotThat(f"“{said}” has a comma in a number", f"Write a decimal point: {said.replace(',', '.')}.")
    if said.startswith("class"):
        do = "Where its class is so many percent of its range, write that: class 1.6. Else write its limits: ±0.3 g."
        raise NotThat(f"“{said}” is no class of a number", do)
    found = re.fullmatch(rf"{_SIGN}\s*(?:\((.*)\)|([^()]*))", said)
    if found is None:
        raise NotThat(f"“{said}” is not an accuracy")
    absolute, percent, digits, of_range = None, None, None, None
    for term in (t.strip() for t in (found[1] or found[2] or "").split("+")):
        if match := re.fullmatch(rf"({_PLAIN})\s*digits?", term):
            _once(digits, said)
            if not match[1].isdigit() or len(match[1]) > 4:
                raise NotThat(f"“{term}” is not a whole number of digits")
            digits = int(match[1])
        elif match := re.fullmatch(rf"({_PLAIN})\s*{_RANGE}", term):
            _once(of_range, said)
            of_range = number(match[1])
        elif match := re.fullmatch(rf"({_PLAIN})\s*{_READING}", term):
            _once(percent, said)
            percent = number(match[1])
        elif re.search(r"%\s*of\s", term):
            do = "Work it out and write it in the unit itself: ±0.5 g."
            raise NotThat(f"“{term}” is a percentage neither of the reading nor of the range", do)
        else:
            _once(absolute, said)
            absolute = amount(term)
            if absolute.value < 0:
                raise NotThat(f"“{term}” has a sign of its own", "Write ± once, and sizes without a sign: ±0.3 g.")
            if not absolute.unit:
                raise NotThat(f"“{term}” has no unit", "Write its unit, or digits, or %.")
    if not (percent or digits or of_range or (absolute and absolute.value)):
        do = "Write its limits from the leaflet: ±0.3 g. Where there are none: unknown."
        raise NotThat(f"“{said}” would be an instrument that never errs", do)
    return Accuracy(True, absolute, percent, digits, said, of_range)


def _above_nothing(text: str, said: str) -> Decimal:
    value = number(text)
    if not value:
        raise NotThat(f"“{said}” would be an instrument that never errs", "Write the class on its dial: class 1.6.")
    return value


def _once(already: object, said: str) -> None:
    if already is not None:
        raise NotThat(f"“{said}” has two pieces of one sort", "Add them up.")


AccuracyOf = Annotated[Given[Accuracy], Scalar("an accuracy", accuracy, PATTERN, Accuracy(False), EXAMPLES)]
