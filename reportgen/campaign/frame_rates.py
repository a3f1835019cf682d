"""How many frames a camera takes in a second, as an exact fraction.

Television's rates are 1000/1001 of a whole number and are written short: 29.97 stands for 30000/1001 (SMPTE ST 12-1).
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Annotated

from reportgen.campaign.given import Given
from reportgen.campaign.shape import NotThat, Scalar

NUMBER = r"[0-9]{1,7}(?:\.[0-9]{1,6})?(?:\s*/\s*[0-9]{1,7})?"
A_SECOND = r"(?:frames?\s*)?(?:a|per|/)\s*(?:second|s)"
PATTERN = rf"{NUMBER}\s*{A_SECOND}"
FRAMES_A_SECOND = (
    rf"{NUMBER}\s*frames?\s*(?:(?:a|per)\s+second|/\s*s)"  # in an instrument's line, where it must say of what
)
SHORT = {
    "23.976": Fraction(24000, 1001),
    "23.98": Fraction(24000, 1001),
    "29.97": Fraction(30000, 1001),
    "47.952": Fraction(48000, 1001),
    "47.95": Fraction(48000, 1001),
    "59.94": Fraction(60000, 1001),
    "119.88": Fraction(120000, 1001),
    "239.76": Fraction(240000, 1001),
}


def frame_rate(text: str) -> Fraction:
    """`60000/1001 frames a second`, `30 a second`, `29.97 frames a second`. Raises NotThat."""
    said = text.strip()
    found = re.fullmatch(rf"({NUMBER})\s*{A_SECOND}", said)
    if found is None:
        raise NotThat(
            f"“{said}” is no frame rate", "Write it like this: 60000/1001 frames a second · 30 frames a second."
        )
    upper, _, lower = found[1].replace(" ", "").partition("/")
    if upper in SHORT and not lower:
        return SHORT[upper]
    if not Fraction(upper) or (lower and not int(lower)):
        raise NotThat(f"“{said}” is no frame rate", "A camera takes more than no frames a second.")
    return Fraction(upper) / Fraction(lower or 1)


FrameRateOf = Annotated[
    Given[Fraction],
    Scalar("a frame rate", frame_rate, rf"^\s*{PATTERN}\s*$", Fraction(30),
           ("60000/1001 frames a second", "30 frames a second")),
]  # fmt: skip
