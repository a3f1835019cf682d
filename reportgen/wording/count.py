"""Whole numbers in a sentence: small ones as words, and words that follow their number."""

from __future__ import annotations

import math
import re
from decimal import Decimal

from reportgen.wording.language import say, say_of, spoken
from reportgen.wording.number import fixed, plain


def whole(n: int) -> str:
    """A count in figures: "7", "12 000" grouped from 10 000 on."""
    return fixed(n, 0)


def in_words(n: int) -> str:
    """ "two", up to twelve; figures from there on."""
    words = spoken().small_numbers
    return words[n] if 0 <= n < len(words) else whole(n)


def counted(key: str, n: int) -> str:
    """A number and its noun: `counted("pass", 4)` is "four passes". Nouns are the table's `count.…` entries."""
    return say_of(n, f"count.{key}", count=in_words(n))


def tells(text: str, n: int) -> bool:
    """Whether a text already says a number, in figures or in words."""
    said = (whole(n), in_words(n), *((say("count.twice"),) if n == 2 else ()))
    return any(re.search(rf"\b{re.escape(one)}\b", text, re.IGNORECASE) for one in said)


def degrees(n: float) -> str:
    """Degrees of freedom: "1 degree of freedom", "8 degrees of freedom", "6.2 degrees of freedom"."""
    return say_of(Decimal(str(n)).normalize() if math.isfinite(n) else 2, "count.degree", count=plain(n))


def roughly(n: int) -> str:
    """A planning figure, rounded up so that it doesn't look exact: 47 is "50", 8 is "eight"."""
    step = 1 if n <= 12 else 5 if n < 50 else 10 if n < 200 else 50 if n < 1000 else 100
    return in_words(-(-n // step) * step)
