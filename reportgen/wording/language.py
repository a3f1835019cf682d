"""The language in use: its phrases, how it counts and lists, which way it runs. English is the source of all others."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from reportgen.wording import english
from reportgen.wording.apart import isolated, wrapped
from reportgen.wording.phrase import Forms


@dataclass(frozen=True)
class Language:
    """A language whose table is complete: what its own files lack has come from English, and `lacking` names it.

    `plural` gives the category of a number (CLDR), `small_numbers` are words from none on, `inside` is a title inside
    a sentence. `day` writes a date and `month` one without its day; None: by the phrases `day` and `day.month`.
    `digest` tells two states of its files apart.
    """

    tag: str  # BCP 47
    phrases: Mapping[str, str | Forms]
    plural: Callable[[int | Decimal], str]
    decimal_sign: str
    small_numbers: tuple[str, ...]
    inside: Callable[[str], str]
    day: Callable[[date], str] | None = None
    month: Callable[[date], str] | None = None
    right_to_left: bool = False
    name: str = "English"
    lacking: tuple[str, ...] = ()
    digest: str = ""

    @property
    def direction(self) -> str:
        """As HTML has it."""
        return "rtl" if self.right_to_left else "ltr"


ENGLISH = Language("en", english.PHRASES, english.plural, english.DECIMAL_SIGN, english.SMALL_NUMBERS, english.inside)

_spoken: ContextVar[Language] = ContextVar("spoken", default=ENGLISH)


def spoken() -> Language:
    """The language in use."""
    return _spoken.get()


@contextmanager
def speaking(language: Language) -> Iterator[Language]:
    """Use a language. Without it, all is English: what the terminal says, findings, the record."""
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
    language = spoken()
    entry = language.phrases[key]
    if not isinstance(entry, str):
        raise KeyError(f"{key} has forms: it needs a number")
    return _filled(entry, gaps, language)


def say_of(n: int | Decimal, key: str, /, **gaps: str) -> str:
    """The same for an entry that has a form for each plural category: `n` chooses the form."""
    language = spoken()
    forms = language.phrases[key]
    if isinstance(forms, str):
        raise KeyError(f"{key} has no forms")
    return _filled(forms.get(language.plural(n), forms["other"]), gaps, language)


def as_one(text: str) -> str:
    """A number with its unit or sign, which must not fall apart where text runs from right to left."""
    return wrapped(text) if spoken().right_to_left else text


def _filled(words: str, gaps: Mapping[str, str], language: Language) -> str:
    if language.right_to_left:
        gaps = {name: isolated(text) for name, text in gaps.items()}
    return words.format_map(gaps)
