"""Every kind of page of a campaign, and what builds it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from reportgen.pages.campaign import campaign_pages
from reportgen.pages.changes import changes_pages
from reportgen.pages.contender import contender_pages
from reportgen.pages.data import data_pages
from reportgen.pages.formerly import with_former_places
from reportgen.pages.listing import listing_pages
from reportgen.pages.method import method_pages
from reportgen.pages.report_items import report_items_pages
from reportgen.pages.side import side_pages
from reportgen.pages.test import test_pages
from reportgen.pages.told import Page, Told
from reportgen.wording.language import speaking

PAGES: Mapping[str, Callable[[Told], tuple[Page, ...]]] = {
    "campaign": campaign_pages,
    "test": test_pages,
    "method": method_pages,
    "report items": report_items_pages,
    "contender": contender_pages,
    "side by side": side_pages,
    "data": data_pages,
    "listing": listing_pages,
    "changes": changes_pages,
}


WITH_TEXTS = ("campaign", "method")  # kinds that show the author's own texts; the others rest on results alone
OF_RESULTS = tuple(kind for kind in PAGES if kind not in WITH_TEXTS)


def build_pages(told: Told, kinds: Iterable[str] = tuple(PAGES)) -> tuple[Page, ...]:
    """The campaign's pages of those kinds, kind after kind, in the publication's language."""
    with speaking(told.publication.speaks):
        return tuple(with_former_places(told, page) for kind in kinds for page in PAGES[kind](told))
