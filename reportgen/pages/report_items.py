"""Where each item of a report stands that ISO/IEC 17025:2017 lists in 7.8.2.1, a) to p), or that it isn't stated."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from reportgen.addresses import campaign_page
from reportgen.pages.framing import frame_of
from reportgen.pages.reported import of_results, of_the_report, of_the_work
from reportgen.pages.reported.item import STATES, Found
from reportgen.pages.told import Page, Told
from reportgen.pages.words import words
from reportgen.theme import Frame, Link, render
from reportgen.wording.sentence import paragraph

NAME = "report-items"
ITEMS: Mapping[str, Callable[[Told, str], Found]] = {
    "a": of_the_report.title,
    "b": of_the_report.tester,
    "c": of_the_work.place,
    "d": of_the_report.which_one,
    "e": of_the_report.customer,
    "f": of_the_work.methods,
    "g": of_the_work.things_tested,
    "h": of_the_work.arrived,
    "i": of_the_work.done_on,
    "j": of_the_report.issued,
    "k": of_the_work.picked,
    "l": of_results.hold_for,
    "m": of_results.results,
    "n": of_results.deviations,
    "o": of_the_report.who_answers,
    "p": of_results.from_others,
}


@dataclass(frozen=True)
class ItemShown:
    """One item: what the standard asks in our words, how far it stands here, what is to say, and the ways to it."""

    anchor: str
    asks: str
    state: str
    says: str
    ways: tuple[Link, ...]


@dataclass(frozen=True)
class Standing:
    """All items that stand alike: `state` in words, and the way to each by its letter."""

    state: str
    items: tuple[Link, ...]


@dataclass(frozen=True)
class ReportItemsView:
    """What the template `report-items.html` is told."""

    frame: Frame
    title: str
    overview: tuple[Standing, ...]
    items: tuple[ItemShown, ...]


def report_items_pages(told: Told) -> tuple[Page, ...]:
    """The one page of report items."""
    page = campaign_page(told.campaign.id, NAME)
    return (Page(page, render(told.theme, "report-items.html", report_items_view(told), page)),)


def report_items_view(told: Told) -> ReportItemsView:
    """The view of the page: sixteen items in the standard's order, and which of them stand."""
    page = campaign_page(told.campaign.id, NAME)
    found = {letter: of(told, page) for letter, of in ITEMS.items()}
    title = words("items.title")
    return ReportItemsView(
        frame=frame_of(told, page, title, words("items.description", campaign=told.campaign.title)),
        title=title,
        overview=tuple(
            Standing(words(f"items.state.{state}"), alike)
            for state in STATES
            if (alike := tuple(Link(x, f"#{_anchor(x)}") for x, of in found.items() if of.state == state))
        ),
        items=tuple(_shown(letter, of) for letter, of in found.items()),
    )


def _shown(letter: str, of: Found) -> ItemShown:
    return ItemShown(
        anchor=_anchor(letter),
        asks=words("items.item", letter=letter, asks=words(f"items.{letter}")),
        state=words(f"items.state.{of.state}"),
        says=paragraph(*of.sentences),
        ways=of.ways,
    )


def _anchor(letter: str) -> str:
    return f"item-{letter}"
