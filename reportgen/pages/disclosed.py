"""What an author discloses of interests besides who paid: links that earn, samples, what was decided afterwards."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.campaign.declared import Campaign
from reportgen.pages.words import words


@dataclass(frozen=True)
class Disclosed:
    """A line: `name` in the words of pages, `says` the author's."""

    name: str
    says: str


def disclosed(campaign: Campaign) -> tuple[Disclosed, ...]:
    """Whether links earn money and makers gave samples, as far as the campaign or the publication says so."""
    told = (("links", campaign.affiliate_links), ("samples", campaign.samples))
    return tuple(Disclosed(words(f"disclosed.{what}"), says) for what, says in told if says)
