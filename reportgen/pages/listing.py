"""A raw file with numbered lines: where every trace ends."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import campaign_page, from_to, raw_file
from reportgen.pages.framing import frame_of
from reportgen.pages.told import Page, Told
from reportgen.pages.traces import in_campaign, listing_page
from reportgen.pages.words import words
from reportgen.theme import Frame, Link, render


@dataclass(frozen=True)
class ListedLine:
    """`anchor` is L1, L2 …, as links name it; `used` says whether a reading came from this line."""

    number: str
    anchor: str
    text: str
    used: bool


@dataclass(frozen=True)
class ListingView:
    """What the template `listing.html` is told."""

    frame: Frame
    name: str
    file: str
    digest: str
    lines: tuple[ListedLine, ...]


def listing_pages(told: Told) -> tuple[Page, ...]:
    """One page a raw file whose text is known."""
    made = []
    for f in told.readings.files:
        if f.path in told.texts:
            page = listing_page(told.campaign, f.path)
            made.append(Page(page, render(told.theme, "listing.html", listing_view(told, f.path, f.digest), page)))
    return tuple(made)


def listing_view(told: Told, path: str, digest: str) -> ListingView:
    """The view of one raw file."""
    campaign = told.campaign
    page = listing_page(campaign, path)
    name = in_campaign(campaign, path)
    data = Link(words("data.title"), from_to(page, campaign_page(campaign.id, "data")))
    used = {r.at.line for r in told.readings.readings.values() if r.at.file == path}
    return ListingView(
        frame=frame_of(told, page, words("listing.title", file=name), trail=(data,)),
        name=name,
        file=from_to(page, raw_file(campaign.id, name)),
        digest=digest,
        lines=tuple(
            ListedLine(str(n), f"L{n}", text, n in used) for n, text in enumerate(told.texts[path].splitlines(), 1)
        ),
    )
