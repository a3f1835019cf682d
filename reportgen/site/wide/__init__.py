"""The pages across campaigns, a kind a file, in one table.

In: the publication, its cards, its own texts, a theme. Out: pages. Never sees a campaign.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from reportgen.campaign.declared import Publication
from reportgen.charts.across import Across, figure
from reportgen.charts.figure import Figure
from reportgen.finding import Finding
from reportgen.pages.told import Page
from reportgen.site.card import Card
from reportgen.site.framing import Wide
from reportgen.site.texts import SiteTexts
from reportgen.site.wide.archive import archive_page
from reportgen.site.wide.instruments import instrument_pages
from reportgen.site.wide.lists import lists_page
from reportgen.site.wide.methods import method_pages
from reportgen.site.wide.products import product_pages
from reportgen.site.wide.search import search_page
from reportgen.site.wide.texts import text_pages
from reportgen.theme import Theme

Made = tuple[tuple[Page, ...], tuple[Finding, ...]]

KINDS: tuple[Callable[[Wide], Made], ...] = (
    *(archive_page, lists_page, search_page, method_pages, instrument_pages, product_pages, text_pages),
)


def site_pages(
    publication: Publication,
    cards: Sequence[Card],
    texts: SiteTexts,
    theme: Theme,
    draw: Callable[[Across], Figure] = figure,
) -> Made:
    """Every page that belongs to no campaign, and what is wrong with the texts on them (errors: the site must wait)."""
    wide = Wide(publication, tuple(cards), texts, theme, draw)
    pages: list[Page] = []
    findings: list[Finding] = []
    for kind in KINDS:
        made, told = kind(wide)
        pages += made
        findings += told
    return tuple(pages), tuple(findings)
