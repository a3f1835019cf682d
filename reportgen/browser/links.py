"""Dead links and anchors, found on disk: as true from a USB stick as from a server."""

from __future__ import annotations

import posixpath
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

FETCHED = {
    "img": "src",
    "script": "src",
    "link": "href",
    "source": "src",
    "iframe": "src",
    "embed": "src",
    "video": "src",
}


@dataclass
class Page:
    """What one page points to, with the line; what can be pointed to in it; images with no text in their stead."""

    links: list[tuple[int, str]] = field(default_factory=list)
    anchors: set[str] = field(default_factory=set)
    repeated: list[tuple[int, str]] = field(default_factory=list)


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.page = Page()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        line = self.getpos()[0]
        if id_ := given.get("id"):
            if id_ in self.page.anchors:
                self.page.repeated.append((line, id_))
            self.page.anchors.add(id_)
        if tag == "a" and given.get("name"):
            self.page.anchors.add(given["name"])
        target = given.get("href") if tag in ("a", "area") else given.get(FETCHED.get(tag, ""))
        if target is not None and not (tag == "link" and given.get("rel") == "canonical"):
            self.page.links.append((line, target))


def read_page(html: str) -> Page:
    """The links and anchors of a page."""
    reader = _Reader()
    reader.feed(html)
    return reader.page


def dead_links(pages: Mapping[str, Page], files: Iterable[str]) -> list[tuple[str, int, str]]:
    """(page, line, what is wrong) for each link into the site that leads nowhere. Links to the web aren't followed.

    `pages` by address from the site's root; `files` are the addresses of everything on it.
    """
    there = set(files)
    dead = []
    for address, page in pages.items():
        for line, target in page.links:
            wrong = _wrong(address, target, pages, there)
            if wrong:
                dead.append((address, line, wrong))
        dead += [(address, line, f"the anchor “{id_}” stands here twice") for line, id_ in page.repeated]
    return dead


def html_files(site: Path) -> tuple[str, ...]:
    """Addresses of all pages under `site`, sorted."""
    return tuple(sorted(path.relative_to(site).as_posix() for path in site.rglob("*.html")))


def _wrong(address: str, target: str, pages: Mapping[str, Page], files: set[str]) -> str:
    parts = urlsplit(target)
    if parts.scheme or parts.netloc:
        return ""
    if parts.path.startswith("/"):
        return f"“{target}” begins at the server's root: from disk, or in a folder of a host, it leads nowhere"
    path = unquote(parts.path)
    wanted = posixpath.normpath(posixpath.join(posixpath.dirname(address), path)) if path else address
    if wanted.startswith("../") or wanted not in files:
        return f"the link “{target}” leads nowhere"
    anchor = unquote(parts.fragment)
    if anchor and wanted in pages and anchor not in pages[wanted].anchors:
        return f"the link “{target}” names an anchor that isn't there"
    return ""
