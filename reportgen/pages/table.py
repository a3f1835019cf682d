"""Every kind of page of a campaign, and what builds it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from reportgen.pages.campaign import campaign_pages
from reportgen.pages.test import test_pages
from reportgen.pages.told import Page, Told

PAGES: Mapping[str, Callable[[Told], tuple[Page, ...]]] = {
    "campaign": campaign_pages,
    "test": test_pages,
}


def build_pages(told: Told) -> tuple[Page, ...]:
    """All pages of the campaign, kind after kind."""
    return tuple(page for build in PAGES.values() for page in build(told))
