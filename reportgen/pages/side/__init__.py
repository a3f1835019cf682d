"""Contenders side by side: a page for each pair, and one to choose from.

In: what every page is told. Out: pages. Nothing is decided here: each word comes from the same sentences as elsewhere.
"""

from __future__ import annotations

from reportgen.pages.side.choose import choosing_page
from reportgen.pages.side.laid import laid_out
from reportgen.pages.side.pair import pair_pages
from reportgen.pages.told import Page, Told

__all__ = ["side_pages"]


def side_pages(told: Told) -> tuple[Page, ...]:
    """The page to choose from and one a pair; none where there is no pair, or where there would be too many."""
    laid = laid_out(told)
    return (choosing_page(told, laid), *pair_pages(told, laid)) if laid.pairs else ()
