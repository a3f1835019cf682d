"""Frame rates in print."""

from __future__ import annotations

from fractions import Fraction

from reportgen.wording.language import say
from reportgen.wording.number import fixed, plain

_SHORT_DECIMALS = 2  # as the trade writes them: 29.97, 59.94


def frames_a_second(rate: Fraction) -> str:
    """The rate as it is reckoned with: "30", "60000/1001 (59.94)"."""
    if rate.denominator == 1:
        return plain(rate.numerator)
    return say(
        "frames.rate",
        upper=str(rate.numerator),
        lower=str(rate.denominator),
        short=fixed(float(rate), _SHORT_DECIMALS),
    )
