"""The author's own pages (about, how we test, glossary …) and the handbook."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import from_to
from reportgen.finding import Finding
from reportgen.pages.told import Page
from reportgen.prose.markdown import render as render_prose
from reportgen.site.framing import Wide, frame_of, title_of
from reportgen.site.texts import SiteText
from reportgen.site.wide.resolving import resolving
from reportgen.site.words import words
from reportgen.theme import Frame, Link, render


@dataclass(frozen=True)
class TextView:
    """What `wide/text.html` is told.

    `title` is "" where the text brings its own heading; `chapters` are those of the handbook that its first page
    doesn't name itself; `before` and `after` are a chapter's neighbours.
    """

    frame: Frame
    title: str
    markup: str
    chapters: tuple[Link, ...]
    before: Link | None
    after: Link | None


def text_pages(wide: Wide) -> tuple[tuple[Page, ...], tuple[Finding, ...]]:
    """A page a file."""
    made = [_page(wide, text, ()) for text in wide.texts.pages]
    made += [_page(wide, text, wide.texts.handbook) for text in wide.texts.handbook]
    return tuple(page for page, _ in made), tuple(f for _, findings in made for f in findings)


def _page(wide: Wide, text: SiteText, chapters: tuple[SiteText, ...]) -> tuple[Page, tuple[Finding, ...]]:
    page, prose = text.address, text.prose
    own = any(line.startswith("# ") for line in prose.text.splitlines())
    title = title_of(prose.text, text.id)
    told = render_prose(prose, resolving(wide, page, prose.path), top_heading=1 if own else 2)
    at = chapters.index(text) if chapters else 0
    link = [Link(title_of(c.prose.text, c.id), from_to(page, c.address), c == text) for c in chapters]
    trail = [(words("handbook"), chapters[0].address)] if at else []
    view = TextView(
        frame=frame_of(wide, page, title, trail=trail),
        title="" if own else title,
        markup=told.markup,
        chapters=() if at else tuple(Link(c.text, c.href) for c in link[1:] if not _names(told.markup, c.href)),
        before=link[at - 1] if at else None,
        after=link[at + 1] if at + 1 < len(link) else None,
    )
    return Page(page, render(wide.theme, "wide/text.html", view, page)), told.findings


def _names(markup: str, href: str) -> bool:
    """Whether a text leads to that page, or to a place on it."""
    return f'href="{href}"' in markup or f'href="{href}#' in markup
