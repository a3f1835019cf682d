"""Terms of the trade that pages explain in place, and where in a page's text each is said first."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice

from markupsafe import Markup, escape

MOST = 8  # on one page


@dataclass(frozen=True)
class Term:
    """`forms` are the words it goes by inside a sentence, as they are written there; `meaning` is one line of plain
    text. `address` is the site's address of its entry in the glossary; "" where it has none."""

    id: str
    title: str
    forms: tuple[str, ...]
    meaning: str
    address: str = ""


@dataclass(frozen=True)
class Piece:
    """A stretch of a page's markup; then, but for the last, the words by which a term is said there first."""

    markup: Markup
    said: Markup | None = None
    term: Term | None = None


@dataclass(frozen=True)
class _Said:
    start: int
    end: int
    term: Term


# A term is looked for in paragraphs alone, and there in nothing that is a link, a name, a formula or typed as it is.
_SHUT = frozenset(
    {"a", "abbr", "bdi", "button", "code", "del", "details", "figure", "label", "math", "nav", "pre", "sup", "svg"}
    | {"table", "time", "h1", "h2", "h3", "h4", "h5", "h6"}
)
_ON = r"[\w\u0300-\u036f\u0591-\u05bd\u064b-\u0652-]"  # what carries a word on: a letter, or a mark that stands on one
_TAG = re.compile(r"<(/?)([a-z][a-z0-9]*)\b[^>]*>")


def pieces_of(markup: str, terms: Sequence[Term]) -> tuple[Piece, ...]:
    """A page's text, taken apart where a term is said first in its running sentences: `MOST` terms at the most.

    Capitals count: a title that bears the word isn't taken for it.
    """
    pieces, at = [], 0
    for said in islice(_first_said(markup, terms), MOST):
        pieces.append(Piece(Markup(markup[at : said.start]), Markup(markup[said.start : said.end]), said.term))
        at = said.end
    return (*pieces, Piece(Markup(markup[at:])))


def _first_said(markup: str, terms: Sequence[Term]) -> Iterator[_Said]:
    by_form = {str(escape(form.replace("'", "’"))): term for term in terms for form in term.forms}
    if not by_form:
        return
    longest_first = sorted(by_form, key=lambda form: (-len(form), form))
    search = re.compile(rf"(?<!{_ON})(?:{'|'.join(re.escape(form) for form in longest_first)})(?!{_ON})")
    known: set[str] = set()
    for start, end in _sentences(markup):
        for hit in search.finditer(markup, start, end):
            term = by_form[hit[0]]
            if term.id not in known:
                known.add(term.id)
                yield _Said(hit.start(), hit.end(), term)


def _sentences(markup: str) -> Iterator[tuple[int, int]]:
    """From where to where running sentences go on between two tags."""
    paragraph, shut, at = False, 0, 0
    for tag in _TAG.finditer(markup):
        if paragraph and not shut and tag.start() > at:
            yield at, tag.start()
        at = tag.end()
        if tag[2] == "p":
            paragraph = not tag[1]
        elif tag[2] in _SHUT:
            shut += -1 if tag[1] else 1
