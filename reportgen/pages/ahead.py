"""Whom a contender is shown to be better than and whom worse, each with the way to the pair that shows it."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import from_to, pair_anchor, pairs_anchor, test_page
from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Comparison, Result
from reportgen.pages.named import Named, named
from reportgen.pages.told import Told


@dataclass(frozen=True)
class Against:
    """Another contender; `href` leads to the row of the pair on the test's page."""

    other: Named
    href: str


@dataclass(frozen=True)
class Ahead:
    """Resolved pairs of one result, in the campaign's order."""

    beats: tuple[Against, ...]
    behind: tuple[Against, ...]


def ahead_of(told: Told, page: str, r: Result) -> Ahead:
    """Whom the result beats and whom it is behind, resolved pairs alone."""
    beats: list[Against] = []
    behind: list[Against] = []
    for c in told.evaluation.comparisons:
        if (c.quantity, c.part) == (r.quantity, r.part) and c.resolved and r.contender in (c.first, c.second):
            other = c.second if c.first == r.contender else c.first
            against = Against(named(told.campaign, other, page), way_to(told.campaign, page, c))
            (beats if c.favours == r.contender else behind).append(against)
    return Ahead(tuple(beats), tuple(behind))


def way_to(campaign: Campaign, page: str, c: Comparison) -> str:
    """From `page` to the row of a pair on its test's page."""
    return from_to(page, f"{test_page(campaign.id, c.test)}#{pair_anchor(c.quantity, c.first, c.second, c.part)}")


def way_to_all(campaign: Campaign, page: str, test: str, quantity: str, part: str) -> str:
    """From `page` to the table of all pairs of a quantity."""
    return from_to(page, f"{test_page(campaign.id, test)}#{pairs_anchor(quantity, part)}")
