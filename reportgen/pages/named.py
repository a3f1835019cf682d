"""A contender as pages show it: its name with its mark, and the way to its sheet."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import contender_page, from_to
from reportgen.campaign.declared import Campaign
from reportgen.marks import mark_of


@dataclass(frozen=True)
class Named:
    """`letter`, `shape` and `css_class` are its mark; `href` leads to its spec sheet, "" on that sheet."""

    id: str
    title: str
    letter: str
    shape: str
    css_class: str
    href: str


def named(campaign: Campaign, contender: str, page: str) -> Named:
    """The contender as it is shown on `page` (an address)."""
    place = [c.id for c in campaign.contenders].index(contender)
    mark = mark_of(place)
    target = contender_page(campaign.id, contender)
    href = "" if target == page else from_to(page, target)
    return Named(contender, campaign.contenders[place].title, mark.letter, mark.shape, mark.css_class, href)
