"""What every page of a site has around its text."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.theme.terms import Term


@dataclass(frozen=True)
class Link:
    """Something to follow: printed text, a link relative to the page, and whether it is this very page."""

    text: str
    href: str
    here: bool = False


@dataclass(frozen=True)
class Shared:
    """What is shown where a link to the page is shared, in the words of the Open Graph protocol.

    `address` and `picture` are whole addresses; `sort` is "article" or "website".
    """

    sort: str
    address: str
    picture: str
    alt: str


@dataclass(frozen=True)
class Frame:
    """The page around the text. `trail` leads from the site's first page to this one; `contents` are its neighbours.

    `contents_of` names what the contents are of ("This comparison"). `invented` stands on every page where
    products and readings are made up. `foot` holds plain sentences under the text. `on_paper` stands at the foot
    of every printed sheet: where the page is to be found, and the issue it is of. `shared` is None where nobody says
    at which address the site will stand. `canonical` is the page's whole address, `feed` the way to the site's feed,
    `renamed` says that places on the page may have had other names. `terms` are
    explained where the page says them first.
    """

    title: str
    publication: str
    home: str
    language: str = "en"
    direction: str = "ltr"
    description: str = ""
    contents_of: str = ""
    contents: tuple[Link, ...] = ()
    trail: tuple[Link, ...] = ()
    invented: str = ""
    foot: tuple[str, ...] = ()
    foot_links: tuple[Link, ...] = ()
    on_paper: str = ""
    shared: Shared | None = None
    canonical: str = ""
    feed: Link | None = None
    renamed: bool = False
    terms: tuple[Term, ...] = ()
    linked_data: str = ""  # JSON-LD, escaped as a data block needs it
