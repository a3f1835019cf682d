"""The nearest known word to one that isn't."""

from __future__ import annotations

import difflib
from collections.abc import Iterable


def is_meant(word: str, written: Iterable[str]) -> bool:
    """Whether one of the words written is near enough to have been meant for `word`."""
    return bool(difflib.get_close_matches(word, [w.lower() for w in written], n=1, cutoff=0.6))


def nearest(word: str, known: Iterable[str]) -> str:
    """The known word that is nearest, "" where none is near."""
    return next(iter(difflib.get_close_matches(word, list(known), n=1, cutoff=0.6)), "")


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """“Did you mean …?”, or the words there are; "" where there are none."""
    words = list(dict.fromkeys(known))
    alike = difflib.get_close_matches(word.lower(), words, n=1, cutoff=0.6)
    if alike:
        return f"Did you mean “{alike[0]}”?"
    return f"There is: {', '.join(words)}." if words else ""
