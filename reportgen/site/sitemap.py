"""The list of pages for those who gather them (the Sitemaps protocol 0.9, sitemaps.org), and where a site has the root
of its host to itself, robots.txt, which names it (RFC 9309 for the file, the protocol for the line)."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from urllib.parse import urlsplit

from reportgen.addresses import SITEMAP, on_the_web
from reportgen.opendata.citing.citation import written_last
from reportgen.site.framing import Wide
from reportgen.theme import render

MOST = 50_000  # addresses in one file (sitemaps.org, “Using Sitemap index files”)


@dataclass(frozen=True)
class SitemapEntry:
    """A page; `changed` is the day of what it shows (W3C, Date and Time Formats), "" where none is stated."""

    address: str
    changed: str


@dataclass(frozen=True)
class SitemapView:
    """What `wide/sitemap.xml` is told: pages, or where they are too many for one file, files of them."""

    pages: tuple[SitemapEntry, ...]
    files: tuple[SitemapEntry, ...] = ()


def sitemap(wide: Wide, addresses: Iterable[str]) -> dict[str, bytes]:
    """Its files; none where the site doesn't say where it will stand."""
    site = wide.publication.address
    if not site:
        return {}
    days = {f"{card.id}/": written_last(card.date) for card in wide.cards}
    pages = tuple(SitemapEntry(on_the_web(site, a), days.get(a[: a.find("/") + 1], "")) for a in sorted(addresses))
    parts = [pages[n : n + MOST] for n in range(0, len(pages), MOST)]
    made = {SITEMAP: SitemapView(pages)}
    if len(parts) > 1:
        names = [SITEMAP.replace(".", f"-{n}.") for n in range(1, len(parts) + 1)]
        made = {name: SitemapView(part) for name, part in zip(names, parts, strict=True)}
        made[SITEMAP] = SitemapView((), tuple(SitemapEntry(on_the_web(site, name), "") for name in names))
    files = {name: render(wide.theme, "wide/sitemap.xml", view, name).encode() for name, view in made.items()}
    return {**files, **_robots(site)}


def _robots(site: str) -> dict[str, bytes]:
    """Nothing is shut off; the file only says where the sitemap is, and is only looked for at the root of a host."""
    if urlsplit(site).path.strip("/"):
        return {}
    return {"robots.txt": f"User-agent: *\nAllow: /\nSitemap: {on_the_web(site, SITEMAP)}\n".encode()}
