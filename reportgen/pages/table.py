"""Every kind of page of a campaign, and what builds it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from reportgen.pages.campaign import campaign_pages
from reportgen.pages.changes import changes_pages
from reportgen.pages.contender import contender_pages
from reportgen.pages.data import data_pages
from reportgen.pages.listing import listing_pages
from reportgen.pages.method import method_pages
from reportgen.pages.test import test_pages
from reportgen.pages.told import Page, Told
from reportgen.wording.language import speaking

PAGES: Mapping[str, Callable[[Told], tuple[Page, ...]]] = {
    "campaign": campaign_pages,
    "test": test_pages,
    "method": method_pages,
    "contender": contender_pages,
    "data": data_pages,
    "listing": listing_pages,
    "changes": changes_pages,
}


def build_pages(told: Told) -> tuple[Page, ...]:
    """All pages of the campaign, kind after kind, in the publication's language."""
    with speaking(told.publication.language):
        return tuple(page for build in PAGES.values() for page in build(told))
