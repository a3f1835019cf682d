"""Who gets a page with whom, side by side, and the way there."""

from __future__ import annotations

from reportgen.addresses import from_to, side_by_side_page
from reportgen.campaign.declared import Campaign

MOST_CONTENDERS = 12  # 66 pairs; with more, each against each stands on the tests' pages alone


def pairs_in(campaign: Campaign) -> tuple[tuple[str, str], ...]:
    """Who gets a page with whom, in the campaign's order: everybody with everybody, unless that would be too many."""
    ids = [c.id for c in campaign.contenders]
    if len(ids) > MOST_CONTENDERS:
        return ()
    return tuple((a, b) for n, a in enumerate(ids) for b in ids[n + 1 :])


def way_beside(campaign: Campaign, page: str, one: str, other: str) -> str:
    """From `page` to where the two stand beside each other; "" where such pages would be too many."""
    if len(campaign.contenders) > MOST_CONTENDERS:
        return ""
    return from_to(page, side_by_side_page(campaign.id, one, other))
