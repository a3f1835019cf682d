"""The site's first page: every comparison with its question, its answer, its date and who took part."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import SEARCH, from_to
from reportgen.finding import Finding
from reportgen.pages.led import led_on
from reportgen.pages.told import Page
from reportgen.prose.specimens import day_of
from reportgen.site.card import Card
from reportgen.site.framing import Wide, frame_of
from reportgen.site.wide.choosing import Choosing, choosing_among, found_by
from reportgen.site.wide.lists import ways_to_lists
from reportgen.site.wide.newest import newest_first
from reportgen.site.words import words
from reportgen.theme import Frame, Link, render
from reportgen.wording.listing import and_list


@dataclass(frozen=True)
class Entry:
    """One comparison; `question` is "" where the title asks it; `day` is ISO for machines, or ""; `found` is JSON, by
    what it is found."""

    title: Link
    question: str
    answer: tuple[Link, ...]
    missed: str
    date: str
    day: str
    contenders: str
    found: str


@dataclass(frozen=True)
class ArchiveView:
    """What `wide/archive.html` is told. `ways` lead to the lists by what a reader may look for, `search` to words."""

    frame: Frame
    title: str
    entries: tuple[Entry, ...]
    empty: str
    ways: tuple[Link, ...]
    search: Link
    choosing: Choosing | None


def archive_page(wide: Wide) -> tuple[tuple[Page, ...], tuple[Finding, ...]]:
    """The one page, at the site's root."""
    page = "index.html"
    cards = newest_first(wide.cards)
    choosing = choosing_among(cards)
    view = ArchiveView(
        frame=frame_of(wide, page, wide.publication.title),
        title=wide.publication.title,
        entries=tuple(_entry(card, page) for card in cards),
        empty=words("empty"),
        ways=ways_to_lists(wide, page) if choosing else (),
        search=Link(words("search"), from_to(page, SEARCH)),
        choosing=choosing,
    )
    return (Page(page, render(wide.theme, "wide/archive.html", view, page)),), ()


def _entry(card: Card, page: str) -> Entry:
    date = card.date
    return Entry(
        title=Link(card.title, from_to(page, card.address)),
        question="" if card.title == card.question else card.question,
        answer=led_on(page, card.answer_led or card.answer),
        missed=card.missed,
        date=day_of(date) or words("no-date"),
        day=date.first if date and date.first == date.last else "",
        contenders=and_list(card.contenders),
        found=found_by(card),
    )
