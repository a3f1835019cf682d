"""Where a number comes from, as links: first to its working on the test's page, from there to file and line."""

from __future__ import annotations

import posixpath
from dataclasses import dataclass

from reportgen.addresses import from_to, raw_file, result_anchor, test_page
from reportgen.campaign.declared import Campaign
from reportgen.finding import Place
from reportgen.pages.told import Told


@dataclass(frozen=True)
class LineLink:
    """A raw file's line: as printed, and the way to it."""

    text: str
    href: str


def working(campaign: Campaign, page: str, test: str, quantity: str, contender: str, part: str = "") -> str:
    """From `page` to the working of a result."""
    return from_to(page, f"{test_page(campaign.id, test)}#{result_anchor(quantity, contender, part)}")


def in_campaign(campaign: Campaign, path: str) -> str:
    """A file's path from the workspace, as seen from the campaign's folder."""
    return posixpath.relpath(path, campaign.folder or ".")


def listing_page(campaign: Campaign, path: str) -> str:
    """The address of the page that shows a raw file (path from the workspace) with numbered lines."""
    return f"{raw_file(campaign.id, in_campaign(campaign, path))}.html"


def line_link(told: Told, page: str, place: Place) -> LineLink:
    """From `page` to a line of a raw file: on its numbered page where there is one, else to the file itself."""
    campaign = told.campaign
    text = in_campaign(campaign, place.file)
    if place.file in told.texts:
        target = listing_page(campaign, place.file) + (f"#L{place.line}" if place.line else "")
    else:
        target = raw_file(campaign.id, text)
    return LineLink(text, from_to(page, target))
