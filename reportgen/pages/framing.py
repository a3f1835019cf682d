"""The page around the text, the same for every page of a campaign."""

from __future__ import annotations

from reportgen.addresses import FEED, SEARCH, campaign_page, from_to, on_the_web, preview_file
from reportgen.campaign.declared import Campaign, Publication
from reportgen.pages.beside import pairs_in
from reportgen.pages.formerly import has_former_places
from reportgen.pages.preview.of_campaign import leading_quantity
from reportgen.pages.terms import terms_told
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.theme import Frame, Link, Shared
from reportgen.wording.invented import invented

CONTENTS = ("method", "data", "changes")


def frame_of(
    told: Told, page: str, title: str, description: str = "", trail: tuple[Link, ...] = (), linked_data: str = ""
) -> Frame:
    """The frame of the page at `page`. `trail` holds what lies between the campaign's first page and this one."""
    campaign, publication = told.campaign, told.publication
    first = campaign_page(campaign.id)
    way = () if page == first else (Link(campaign.title, from_to(page, first)), *trail)
    return Frame(
        linked_data=linked_data,
        title=title,
        publication=publication.title,
        home=from_to(page, "index.html"),
        language=publication.language,
        direction=publication.speaks.direction,
        description=description,
        contents_of=words("contents.of"),
        contents=_contents(campaign, page),
        trail=way,
        invented=invented(campaign.invented or publication.invented),
        foot=_foot(publication),
        foot_links=_links(told, page),
        on_paper=_on_paper(publication.address, page, str(told.issue)),
        shared=_shared(told, page) if publication.address else None,
        canonical=on_the_web(publication.address, page),
        feed=_feed(told, page),
        renamed=has_former_places(campaign),
        terms=terms_told(campaign, told.terms),
    )


def _contents(campaign: Campaign, page: str) -> tuple[Link, ...]:
    """The ways to the campaign's main pages."""
    names = ("index", *(("side-by-side/index",) if pairs_in(campaign) else ()), *CONTENTS)
    addresses = {name: campaign_page(campaign.id, name) for name in names}
    return tuple(Link(words(f"contents.{n}"), from_to(page, there), there == page) for n, there in addresses.items())


def _foot(publication: Publication) -> tuple[str, ...]:
    said = (
        words("foot.text"),
        words("foot.licence", licence=publication.licence) if publication.licence else "",
        words("foot.contact", contact=publication.contact) if publication.contact else "",
    )
    return tuple(filter(None, said))


def _feed(told: Told, page: str) -> Link | None:
    """The way to the site's feed, where this campaign is in it."""
    if not told.publication.address or told.campaign.dated is None:
        return None
    return Link(words("feed"), from_to(page, FEED))


def _shared(told: Told, page: str) -> Shared:
    """What is shown with a link to the page: the campaign's picture, with what is to be seen on it."""
    site = told.publication.address
    quantity = leading_quantity(told.campaign, told.evaluation)
    title = told.campaign.title
    alt = words("preview.alt", title=title, quantity=quantity.title) if quantity else ""
    picture = on_the_web(site, preview_file(told.campaign.id))
    return Shared("article", on_the_web(site, page), picture, alt or words("preview.alt.plain", title=title))


def _on_paper(site: str, page: str, issue: str) -> str:
    """Where the page is to be found and the issue it is of: a sheet of paper leads nowhere by itself."""
    if not site:
        return words("paper.issue", issue=issue)
    return words("paper.at", address=f"{site.rstrip('/')}/{page}", issue=issue)


def _links(told: Told, page: str) -> tuple[Link, ...]:
    """The ways out of the campaign that any site has."""
    ways = [Link(words("trail.home"), from_to(page, "index.html"))]
    if told.campaign.methods:
        ways.append(Link(words("links.methods"), from_to(page, "methods/index.html")))
    if told.campaign.instruments:
        ways.append(Link(words("links.instruments"), from_to(page, "instruments/index.html")))
    return (*ways, Link(words("links.search"), from_to(page, SEARCH)))
