"""The author's glossary as terms that pages can explain in place.

Each heading of `content/glossary.md` begins an entry. Words set in bold inside an entry are those the term goes by in a
sentence; an entry without any stands in the glossary alone. What a page tells of a term is the entry's first paragraph.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import TYPE_CHECKING

from reportgen.addresses import as_id
from reportgen.prose.parsing import tokens
from reportgen.site.texts import SiteTexts
from reportgen.theme import Term
from reportgen.wording.sentence import capital

if TYPE_CHECKING:
    from markdown_it.token import Token

GLOSSARY = "glossary"


def terms_in(texts: SiteTexts) -> tuple[Term, ...]:
    """The terms of the glossary that can be explained in place, in its order; none where there is no glossary."""
    page = next((text for text in texts.pages if text.id == GLOSSARY), None)
    return _terms(page.prose.text, page.address) if page else ()


def terms_for(page: str, texts: SiteTexts) -> tuple[Term, ...]:
    """Those for a page that belongs to no campaign: a method's, and the author's own but for the glossary itself."""
    own = {text.address for text in texts.pages if text.id != GLOSSARY}
    return terms_in(texts) if page.startswith("methods/") or page in own else ()


@lru_cache(maxsize=4)
def _terms(text: str, address: str) -> tuple[Term, ...]:
    taken: set[str] = set()
    found = []
    for title, paragraphs in _entries(tokens(text)):
        id = as_id(title) or "heading"
        forms = dict.fromkeys(form for block in paragraphs for form in _bold(block))
        if forms and id not in taken:
            found.append(Term(id, title, tuple(forms), _plain(paragraphs[0]), f"{address}#{id}"))
        taken.add(id)
    return tuple(found)


def _entries(found: list[Token]) -> Iterator[tuple[str, list[Token]]]:
    """Each heading below the first level, with the paragraphs up to the next heading."""
    title, heading = "", ""
    paragraphs: list[Token] = []
    for token in found:
        if token.type == "heading_open":
            if title and paragraphs:
                yield title, paragraphs
            title, paragraphs, heading = "", [], token.tag
        elif token.type == "heading_close":
            heading = ""
        elif token.type == "inline" and heading:
            title = _plain(token) if heading != "h1" else ""
        elif token.type == "inline":
            paragraphs.append(token)
    if title and paragraphs:
        yield title, paragraphs


def _bold(block: Token) -> Iterator[str]:
    """The words set in bold in a paragraph."""
    words: list[str] | None = None
    for child in block.children or []:
        if child.type == "strong_open":
            words = []
        elif child.type == "strong_close" and words is not None:
            yield " ".join("".join(words).split())
            words = None
        elif words is not None:
            words.append(_word(child))


def _plain(block: Token) -> str:
    """A block's words without markup, on one line."""
    return capital(" ".join("".join(map(_word, block.children or [])).split()))


def _word(piece: Token) -> str:
    if piece.type in ("softbreak", "hardbreak"):
        return " "
    return "" if piece.type == "image" else piece.content
