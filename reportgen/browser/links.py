"""Dead links and anchors, found on disk: as true from a USB stick as from a server."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from reportgen.browser.document import Document
from reportgen.browser.fault import Check, Fault
from reportgen.browser.standing import Standing, parted, reached

DEAD = Check(
    "dead link",
    "whoever follows it finds nothing",
    "write the address of what is there, or take the link away",
)
TWICE = Check(
    "anchor twice",
    "a link to it leads to the first alone",
    "give each thing a name of its own",
)


def links(site: Standing) -> Iterator[Fault]:
    """Every link into the site that leads nowhere, and every anchor that stands twice on a page."""
    for page, line, says in dead_links(site.pages, site.files):
        yield Fault(page, line, DEAD.sort, says)
    for address, document in site.pages.items():
        for line, id_ in document.repeated:
            yield Fault(address, line, TWICE.sort, f"the anchor “{id_}” stands here twice")


def dead_links(pages: Mapping[str, Document], files: Iterable[str]) -> list[tuple[str, int, str]]:
    """(page, line, what is wrong) for each link into the site that leads nowhere. Links to the web aren't followed.

    `pages` by address from the site's root; `files` are the addresses of everything on it.
    """
    there = frozenset(files)
    return [
        (address, line, wrong)
        for address, page in pages.items()
        for line, target in page.links
        if (wrong := wrong_with(address, target, pages, there))
    ]


def wrong_with(address: str, target: str, pages: Mapping[str, Document], files: frozenset[str]) -> str:
    """What is wrong with a link on the page at `address`, "" where it leads somewhere or to the web."""
    parts = parted(target)
    if parts.scheme or parts.netloc:
        return ""
    if parts.path.startswith("/"):
        return f"“{target}” begins at the server's root: from disk, or in a folder of a host, it leads nowhere"
    wanted, anchor = reached(address, target)
    if wanted.startswith("../") or wanted not in files:
        return f"the link “{target}” leads nowhere"
    if anchor and wanted in pages and anchor not in pages[wanted].anchors:
        return f"the link “{target}” names an anchor that isn't there"
    return ""
