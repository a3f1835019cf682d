"""The accuracy of an instrument as its maker states it."""

from __future__ import annotations

import re
from typing import Annotated

from reportgen.campaign.declared import Accuracy
from reportgen.campaign.given import Given
from reportgen.campaign.scalar import NUMBER, UNIT, amount, number
from reportgen.campaign.shape import NotThat, Scalar

EXAMPLES = ("±0.3 g", "±0.5 % + 2 digits", "±(0.3 °C + 0.5 % of reading)", "unknown")
_PLAIN = NUMBER.removeprefix("[-+−]?")
_TERM = rf"{_PLAIN}\s*(?:digits?|%(?:\s*of\s+(?:the\s+)?reading)?|{UNIT.replace('±', '±+')})"
PATTERN = rf"^\s*(?:unknown|(?:±|\+/-|\+-)\s*\(?\s*{_TERM}(?:\s*\+\s*{_TERM})*\s*\)?)\s*$"


def accuracy(text: str) -> Accuracy:
    """±(absolute + percent of reading + digits), each once, in any order; or `unknown`. Raises NotThat."""
    said = text.strip()
    if said == "unknown":
        return Accuracy(known=False)
    found = re.fullmatch(r"(?:±|\+/-|\+-)\s*(?:\((.*)\)|([^()]*))", said)
    if found is None:
        raise NotThat(f"“{said}” is not an accuracy")
    absolute, percent, digits = None, None, None
    for term in (t.strip() for t in (found[1] or found[2] or "").split("+")):
        if re.search(r"%\s*of\s+(?!(the\s+)?reading)", term):
            do = "Work it out and write it in the unit itself: ±0.5 g."
            raise NotThat(f"“{term}” is not a percentage of the reading", do)
        if match := re.fullmatch(rf"({_PLAIN})\s*digits?", term):
            _once(digits, said)
            if not match[1].isdigit() or len(match[1]) > 4:
                raise NotThat(f"“{term}” is not a whole number of digits")
            digits = int(match[1])
        elif match := re.fullmatch(rf"({_PLAIN})\s*%(\s*of\s+(the\s+)?reading)?", term):
            _once(percent, said)
            percent = number(match[1])
        else:
            _once(absolute, said)
            absolute = amount(term)
            if absolute.value < 0 or not absolute.unit:
                raise NotThat(f"“{term}” has no unit", "Write its unit, or digits, or %.")
    return Accuracy(True, absolute, percent, digits, said)


def _once(already: object, said: str) -> None:
    if already is not None:
        raise NotThat(f"“{said}” has two pieces of one sort", "Add them up.")


AccuracyOf = Annotated[Given[Accuracy], Scalar("an accuracy", accuracy, PATTERN, Accuracy(False), EXAMPLES)]
