"""Chooses the table of phrases. Another language is one more module beside `english` and one more line here."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass

from reportgen.wording import english
from reportgen.wording.phrase import Forms


@dataclass(frozen=True)
class Language:
    """A language's phrases, plural rule, decimal sign, words for small numbers (from none on), titles in a sentence."""

    tag: str  # BCP 47
    phrases: Mapping[str, str | Forms]
    plural: Callable[[int], str]
    decimal_sign: str
    small_numbers: tuple[str, ...]
    inside: Callable[[str], str]


LANGUAGES: Mapping[str, Language] = {
    "en": Language("en", english.PHRASES, english.plural, english.DECIMAL_SIGN, english.SMALL_NUMBERS, english.inside),
}

_spoken: ContextVar[Language] = ContextVar("spoken", default=LANGUAGES["en"])


def spoken() -> Language:
    """The language in use."""
    return _spoken.get()


@contextmanager
def speaking(tag: str) -> Iterator[Language]:
    """Use the language of a publication (`en`, `en-GB`); English where its table isn't written yet."""
    language = LANGUAGES.get(tag) or LANGUAGES.get(tag.partition("-")[0]) or LANGUAGES["en"]
    token = _spoken.set(language)
    try:
        yield language
    finally:
        _spoken.reset(token)


def say(key: str, *, n: int | None = None, **gaps: str) -> str:
    """The words of `key` with their gaps filled; `n` chooses the plural form where the entry has forms.

    Raises KeyError for a key or gap that isn't there: a mistake in the program, held by a test on its source.
    """
    language = spoken()
    entry = language.phrases[key]
    if not isinstance(entry, str):
        if n is None:
            raise KeyError(f"{key} needs n")
        entry = entry.get(language.plural(n), entry["other"])
    return entry.format_map(gaps)
