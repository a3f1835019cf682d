"""What site-wide pages say besides their templates: fixed words with named gaps, from the language's table."""

from __future__ import annotations

from reportgen.wording.language import say, say_of


def words(key: str, **gaps: str) -> str:
    """The words of `site.<key>` with their gaps filled; KeyError for what isn't in the language's table."""
    return say(f"site.{key}", **gaps)


def words_of(n: int, key: str, /, **gaps: str) -> str:
    """The same for words that depend on a number."""
    return say_of(n, f"site.{key}", **gaps)
