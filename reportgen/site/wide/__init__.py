"""The pages across campaigns, a kind a file, in one table.

In: the publication, its cards, its own texts, a theme. Out: pages. Never sees a campaign.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence

from reportgen.campaign.declared import Publication
from reportgen.charts.across import Across, figure
from reportgen.charts.figure import Figure
from reportgen.finding import Finding, Place
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
    archive_page,
    lists_page,
    search_page,
    method_pages,
    instrument_pages,
    product_pages,
    text_pages,
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
    return tuple(pages), (*findings, *_hidden(pages, texts))


def _hidden(pages: Sequence[Page], texts: SiteTexts) -> Iterator[Finding]:
    """Texts that would stand where the site has a page of its own."""
    taken = Counter(page.address for page in pages)
    for text in texts.pages:
        if taken[text.address] > 1:
            says = f"“{text.prose.path}” would hide the site’s own page {text.address}"
            yield Finding("error", "hides-a-page", Place(text.prose.path), says, do="Give the file another name.")
