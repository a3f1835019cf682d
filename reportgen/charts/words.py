"""What charts say: fixed words with named gaps, from the language's table."""

from __future__ import annotations

from reportgen.wording.language import say
from reportgen.wording.listing import semicolons
from reportgen.wording.sentence import sentence as whole


def words(key: str, **gaps: str) -> str:
    """The words of `chart.<key>` with their gaps filled; KeyError for what isn't in the language's table."""
    return say(f"chart.{key}", **gaps)


def sentence(parts: list[str]) -> str:
    """Phrases joined into one sentence: a capital in front, semicolons between, a full stop."""
    return whole(semicolons([p for p in parts if p]))
