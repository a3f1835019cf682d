"""Pieces of another direction, kept apart in text that runs from right to left.

There, numbers, units and names in Latin letters run the other way, and what stands beside them (a minus, a bracket, the
next number) would be drawn into their run and land on the wrong side. One rule keeps it right: whatever fills a gap,
and each number with its unit or sign, is isolated (U+2068 … U+2069; Unicode Standard Annex 9, 2.4). It then takes its
direction from its own first letter and is, for what surrounds it, one unbroken thing.
"""

from __future__ import annotations

import re
import unicodedata

ISOLATE, LEFT, POP = "\u2068", "\u2066", "\u2069"  # first strong isolate, left-to-right isolate, their end
MARKS = ISOLATE + LEFT + POP
_NUMBER = r"√?(?:{\w+}|\d+(?:[.,]\d+)*|\b[a-z]\b)%?"  # of a phrase: a gap, digits, a letter such as the t of Student
_TERM = rf"(?:±?{_NUMBER}|\([^()]+\))"
_FORMULA = re.compile(rf"{_TERM}(?:\s*[×÷=+−±–/]\s*{_TERM})+|±?{_NUMBER}")
_RUNS_TO_THE_LEFT = ("R", "AL")  # letters of Hebrew, Arabic and their kin
_RUNS_ITS_OWN_WAY = ("L", "EN")  # bidirectional classes (UAX 9, table 4): letters from left to right, Western digits


def isolated(text: str) -> str:
    """The text as one piece; as it is where nothing in it runs from left to right, or all that does is isolated."""
    if ISOLATE in text or LEFT in text or not any(unicodedata.bidirectional(c) in _RUNS_ITS_OWN_WAY for c in text):
        return text
    return wrapped(text)


def wrapped(text: str) -> str:
    """The same whatever is in it: a number that begins with a sign, and its unit."""
    return f"{ISOLATE}{text}{POP}"


def apart_from_the_left(text: str) -> str:
    """The text as one piece where its first letter, those inside isolated pieces left aside, runs from left to right: a
    sentence of the author's among the program's own."""
    depth = 0
    for c in text:
        depth += (c in ISOLATE + LEFT) - (c == POP)
        if not depth and (kind := unicodedata.bidirectional(c)) in ("L", *_RUNS_TO_THE_LEFT):
            return wrapped(text) if kind == "L" else text
    return text


def formulas_apart(words: str) -> str:
    """The words of a phrase from right to left, its formulas and percentages as pieces that run from left to right."""
    if ISOLATE in words or LEFT in words:
        return words
    return _FORMULA.sub(lambda found: from_the_left(found[0]) if set(found[0]) & set("×÷=+−±–/√%") else found[0], words)


def among_latin(text: str) -> str:
    """The text as one piece for a place where everything runs from left to right, as in a chart; as it is where nothing
    in it runs from right to left."""
    return wrapped(text) if any(unicodedata.bidirectional(c) in _RUNS_TO_THE_LEFT for c in text) else text


def from_the_left(text: str) -> str:
    """Words that are known to run from left to right, whatever fills their gaps."""
    return f"{LEFT}{text}{POP}"


def plain(text: str) -> str:
    """The text without such marks, for measuring how long it is."""
    return text.translate(dict.fromkeys(map(ord, MARKS)))
