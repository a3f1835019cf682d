"""What pages say besides their templates: fixed words with named gaps, from the language's table."""

from __future__ import annotations

from reportgen.wording.language import has, say, say_of


def words(key: str, **gaps: str) -> str:
    """The words of `page.<key>` with their gaps filled; KeyError for what isn't in the language's table."""
    return say(f"page.{key}", **gaps)


def words_of(n: int, key: str, /, **gaps: str) -> str:
    """The same for words that depend on a number."""
    return say_of(n, f"page.{key}", **gaps)


def has_words(key: str) -> bool:
    """Whether there are words of that key."""
    return has(f"page.{key}")
