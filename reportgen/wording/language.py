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


def has(key: str) -> bool:
    """Whether the program has words of that key."""
    return key in spoken().phrases


def say(key: str, /, **gaps: str) -> str:
    """The words of `key` with their gaps filled.

    Raises KeyError for a key or gap that isn't there: a mistake in the program, held by a test on its source.
    """
    entry = spoken().phrases[key]
    if not isinstance(entry, str):
        raise KeyError(f"{key} has forms: it needs a number")
    return entry.format_map(gaps)


def say_of(n: int, key: str, /, **gaps: str) -> str:
    """The same for an entry that has a form for each plural category: `n` chooses the form."""
    language = spoken()
    forms = language.phrases[key]
    if isinstance(forms, str):
        raise KeyError(f"{key} has no forms")
    return forms.get(language.plural(n), forms["other"]).format_map(gaps)
