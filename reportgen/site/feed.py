"""The feed by which readers hear of new comparisons (The Atom Syndication Format, RFC 4287).

Times are those that authors state: an instant is taken at midnight UTC of the day, for nobody states an hour.
"""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import FEED, campaign_page, on_the_web
from reportgen.site.card import Card
from reportgen.site.framing import Wide, has_feed
from reportgen.site.wide.newest import newest_first
from reportgen.theme import render
from reportgen.wording.lead import bare

MOST = 50  # entries; older ones stand in the archive


@dataclass(frozen=True)
class FeedEntry:
    """One comparison (RFC 4287, 4.1.2); `kind` is "" where nobody says what is compared."""

    id: str
    title: str
    address: str
    updated: str
    summary: str
    kind: str


@dataclass(frozen=True)
class FeedView:
    """What `wide/feed.xml` is told (RFC 4287, 4.1.1); `rights` is "" where no licence is given."""

    language: str
    id: str
    title: str
    address: str
    home: str
    updated: str
    author: str
    rights: str
    entries: tuple[FeedEntry, ...]


def feed(wide: Wide) -> dict[str, bytes]:
    """Its one file; none where the site doesn't say where it will stand, or no comparison is dated."""
    if not has_feed(wide):
        return {}
    publication = wide.publication
    cards = [card for card in newest_first(wide.cards) if card.date and card.date.last][:MOST]
    entries = tuple(_entry(publication.address, card) for card in cards)
    view = FeedView(
        language=publication.language,
        id=on_the_web(publication.address, ""),
        title=publication.title,
        address=on_the_web(publication.address, FEED),
        home=on_the_web(publication.address, "index.html"),
        updated=max(entry.updated for entry in entries),
        author=publication.author or publication.title,
        rights=publication.licence,
        entries=entries,
    )
    return {FEED: render(wide.theme, "wide/feed.xml", view, FEED).encode()}


def _entry(site: str, card: Card) -> FeedEntry:
    """Its id is the first address the comparison had, so that one that moves isn't told as new (RFC 4287, 4.2.6)."""
    return FeedEntry(
        id=on_the_web(site, campaign_page(card.formerly[0] if card.formerly else card.id)),
        title=card.title,
        address=on_the_web(site, card.address),
        updated=f"{card.date.last if card.date else ''}T00:00:00Z",
        summary=bare(card.answer),
        kind=card.kind,
    )
