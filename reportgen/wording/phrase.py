"""What an entry of a language's table may be: plain words with gaps, or forms by plural category."""

from __future__ import annotations

import re
import string
from collections.abc import Mapping

Forms = Mapping[str, str]
CATEGORIES = ("zero", "one", "two", "few", "many", "other")  # of CLDR (Unicode Technical Standard 35, part 3)
NUMBER_GAPS = frozenset({"count", "n"})  # a form may say its number in a word of its own: "once", "two passes"


def forms_of(entry: str | Forms) -> tuple[str, ...]:
    """All that an entry may say."""
    return (entry,) if isinstance(entry, str) else tuple(entry.values())


def gaps_of(words: str) -> frozenset[str]:
    """The names of the gaps in one form. Raises ValueError where a brace has no partner or holds more than a name."""
    found = set()
    for _, name, format_spec, conversion in string.Formatter().parse(words):
        if name is not None:
            if format_spec or conversion or not re.fullmatch("[a-z][a-z_]*", name):
                raise ValueError(f"no name of a gap: {name}")
            found.add(name)
    return frozenset(found)
