"""Pieces of another direction, kept apart in text that runs from right to left.

There, numbers, units and names in Latin letters run the other way, and what stands beside them (a minus, a bracket, the
next number) would be drawn into their run and land on the wrong side. One rule keeps it right: whatever fills a gap,
and each number with its unit or sign, is isolated (U+2068 … U+2069; Unicode Standard Annex 9, 2.4). It then takes its
direction from its own first letter and is, for what surrounds it, one unbroken thing.
"""

from __future__ import annotations

import unicodedata

ISOLATE, LEFT, POP = "\u2068", "\u2066", "\u2069"  # first strong isolate, left-to-right isolate, their end
MARKS = ISOLATE + LEFT + POP
_RUNS_ITS_OWN_WAY = ("L", "EN")  # bidirectional classes (UAX 9, table 4): letters from left to right, Western digits


def isolated(text: str) -> str:
    """The text as one piece; as it is where nothing in it runs from left to right, or all that does is isolated."""
    if ISOLATE in text or LEFT in text or not any(unicodedata.bidirectional(c) in _RUNS_ITS_OWN_WAY for c in text):
        return text
    return wrapped(text)


def wrapped(text: str) -> str:
    """The same whatever is in it: a number that begins with a sign, and its unit."""
    return f"{ISOLATE}{text}{POP}"


def from_the_left(text: str) -> str:
    """Words that are known to run from left to right, whatever fills their gaps."""
    return f"{LEFT}{text}{POP}"


def plain(text: str) -> str:
    """The text without such marks, for measuring how long it is."""
    return text.translate(dict.fromkeys(map(ord, MARKS)))
