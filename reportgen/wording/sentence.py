"""Putting sentences together: capitals, full stops, and a title inside a sentence."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.wording.apart import POP, apart_from_the_left
from reportgen.wording.language import say, spoken
from reportgen.wording.lead import CLOSES, begins_at

ENDS = (".", "?", "!", "…", ".”", ".“", ".»", "؟", "۔", "。", "？", "！", "।")  # a sentence needs no stop after one


def capital(text: str) -> str:
    """The text with its first letter in upper case."""
    at = begins_at(text)
    return text[:at] + text[at : at + 1].upper() + text[at + 1 :]


def sentence(text: str) -> str:
    """A whole sentence: capital first, and a full stop where no end mark stands."""
    text = capital(text.strip())
    ended = text.rstrip(CLOSES + POP).endswith(ENDS)
    return text if not text or ended else text + say("sentence.stop")


def paragraph(*sentences: str) -> str:
    """Sentences one after another; empty ones fall out."""
    return in_a_row(sentence(s) for s in sentences if s.strip())


def in_a_row(sentences: Iterable[str]) -> str:
    """Whole sentences one after another, as they stand; empty ones fall out."""
    there = filter(None, sentences)
    return say("sentence.space").join(map(apart_from_the_left, there) if spoken().right_to_left else there)


def inside(title: str) -> str:
    """A title as it reads inside a sentence, by the language's rule ("Gas burned" is "gas burned" in English)."""
    return spoken().inside(title)
