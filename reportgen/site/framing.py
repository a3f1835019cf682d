"""The page around the text of pages that belong to no campaign."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from reportgen.addresses import FEED, PRODUCTS, SEARCH, from_to, on_the_web, preview_file
from reportgen.campaign.declared import Publication
from reportgen.charts.across import Across, figure
from reportgen.charts.figure import Figure
from reportgen.site.card import Card
from reportgen.site.glossary import terms_for
from reportgen.site.texts import SiteTexts
from reportgen.site.words import words
from reportgen.theme import Frame, Link, Shared, Theme
from reportgen.wording.invented import invented
from reportgen.wording.sentence import capital


@dataclass(frozen=True)
class Wide:
    """What site-wide pages are made from: the publication, its cards, its own texts, the theme they are set in.

    `draw` gives a chart across campaigns: drawn anew, or as it was kept.
    """

    publication: Publication
    cards: tuple[Card, ...]
    texts: SiteTexts
    theme: Theme
    draw: Callable[[Across], Figure] = figure


def title_of(text: str, fallback: str) -> str:
    """A Markdown text's own title: its first heading of the highest level, else `fallback` as words."""
    for line in text.splitlines():
        if line.startswith("# "):
            return line[2:].strip().rstrip("#").strip()
    return capital(fallback.replace("-", " "))


def frame_of(wide: Wide, page: str, title: str, description: str = "", trail: Sequence[tuple[str, str]] = ()) -> Frame:
    """The frame of the page at `page`; `trail` holds (text, address) of what lies above it."""
    publication = wide.publication
    return Frame(
        title=title,
        publication=publication.title,
        home=from_to(page, "index.html"),
        language=publication.language,
        direction=publication.speaks.direction,
        description=description,
        contents_of=words("contents.of"),
        contents=tuple(Link(text, from_to(page, to), to == page) for text, to in _contents(wide)),
        trail=tuple(Link(text, from_to(page, to)) for text, to in trail),
        invented=invented(publication.invented),
        foot=_foot(publication),
        foot_links=tuple(Link(text, from_to(page, to), to == page) for text, to in _texts(wide)),
        on_paper=f"{publication.address.rstrip('/')}/{page}" if publication.address else "",
        shared=_shared(publication, page) if publication.address else None,
        canonical=on_the_web(publication.address, page),
        terms=terms_for(page, wide.texts),
        feed=Link(words("feed"), from_to(page, FEED)) if has_feed(wide) else None,
    )


def has_feed(wide: Wide) -> bool:
    """Whether the site has a feed: it says where it will stand, and a comparison says when it was published."""
    return bool(wide.publication.address) and any(card.date and card.date.last for card in wide.cards)


def _shared(publication: Publication, page: str) -> Shared:
    """What is shown with a link to the page: the site's picture."""
    site = publication.address
    sort = "website" if page == "index.html" else "article"
    alt = words("preview.alt", title=publication.title)
    return Shared(sort, on_the_web(site, page), on_the_web(site, preview_file()), alt)


def _contents(wide: Wide) -> list[tuple[str, str]]:
    found = [(words("archive"), "index.html")]
    if any(card.methods for card in wide.cards):
        found.append((words("methods"), "methods/index.html"))
    if any(card.instruments for card in wide.cards):
        found.append((words("instruments"), "instruments/index.html"))
    return found


def _texts(wide: Wide) -> list[tuple[str, str]]:
    found = [(title_of(t.prose.text, t.id), t.address) for t in wide.texts.pages]
    if wide.cards:
        found += [(words("products"), PRODUCTS), (words("search"), SEARCH)]
    if wide.texts.handbook:
        found.append((words("handbook"), wide.texts.handbook[0].address))
    return [*found, (words("feed"), FEED)] if has_feed(wide) else found


def _foot(publication: Publication) -> tuple[str, ...]:
    return tuple(
        line
        for line in (
            words("foot.pays", who=publication.who_pays) if publication.who_pays else "",
            words("foot.contact", contact=publication.contact) if publication.contact else "",
            words("foot.licence", licence=publication.licence) if publication.licence else "",
        )
        if line
    )
