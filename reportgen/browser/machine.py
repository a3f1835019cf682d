"""What other programs read of a site: feeds, the list of its pages, linked data. Well-formed, whole, and true of it."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any
from urllib.parse import unquote
from xml.etree import ElementTree

from reportgen.browser.fault import Check, Fault
from reportgen.browser.standing import Standing

FEED = Check(
    "feed",
    "programs that follow the site drop it, or tell of pages that aren't there",
    "each entry needs id, title, updated and a link to a page of this site (RFC 4287, 4.1)",
)
MAP = Check(
    "list of pages",
    "search engines are sent to pages that aren't there, or miss some",
    "list each page once, by its whole address, and no page that forwards (sitemaps.org, protocol 0.9)",
)
LINKED = Check(
    "linked data",
    "search engines and reference managers read nothing of the page",
    "write one JSON value with @context and @type (JSON-LD 1.1, 4.1)",
)
ATOM = "{http://www.w3.org/2005/Atom}"
LISTED = "{http://www.sitemaps.org/schemas/sitemap/0.9}"


def machine_read(site: Standing) -> Iterator[Fault]:
    """Faults of what stands beside the pages, by what each file's root says it is, and of data inside them."""
    for name in sorted(site.files):
        if name.endswith((".xml", ".atom")) and "/files/" not in name:
            yield from _xml(site, name)
    for address, page in site.pages.items():
        for line, text in page.linked_data:
            if says := _linked(text):
                yield Fault(address, line, LINKED.sort, says)
        for href in page.feeds:
            if "://" in href and site.at and href.removeprefix(site.at) not in site.files:
                yield Fault(address, 0, FEED.sort, f"names the feed “{href}”, which isn't there")


def _xml(site: Standing, name: str) -> Iterator[Fault]:
    sort = MAP.sort if "map" in name.rpartition("/")[2] else FEED.sort
    try:
        root = ElementTree.fromstring(site.bytes(name))
    except ElementTree.ParseError as error:
        yield Fault(name, error.position[0], sort, f"is no XML: {error}")
        return
    if root.tag == f"{ATOM}feed":
        found = _feed(site, root)
    elif root.tag == f"{LISTED}urlset":
        found = _map(site, root)
    else:
        return
    for says in found:
        yield Fault(name, 0, FEED.sort if root.tag == f"{ATOM}feed" else MAP.sort, says)


def _feed(site: Standing, root: ElementTree.Element) -> Iterator[str]:
    for at, part in [("the feed", root), *((f"entry {n}", e) for n, e in enumerate(root.findall(f"{ATOM}entry"), 1))]:
        lacking = [name for name in ("id", "title", "updated") if not (part.findtext(f"{ATOM}{name}") or "").strip()]
        if lacking:
            yield f"{at} lacks {', '.join(lacking)}"
        for link in part.findall(f"{ATOM}link"):
            href = link.get("href", "")
            if link.get("rel", "alternate") in ("alternate", "self", "enclosure") and not _there(site, href):
                yield f"{at} links to “{href}”, which isn't there"
    names = [e.findtext(f"{ATOM}id") for e in root.findall(f"{ATOM}entry")]
    yield from (f"two entries have the id “{name}”" for name in sorted({n for n in names if n and names.count(n) > 1}))


def _map(site: Standing, root: ElementTree.Element) -> Iterator[str]:
    listed = [(url.findtext(f"{LISTED}loc") or "").strip() for url in root]
    for whole in sorted({w for w in listed if listed.count(w) > 1}):
        yield f"“{whole}” is listed twice"
    for whole in listed:
        if "://" not in whole:
            yield f"“{whole}” is no whole address"
        elif not _there(site, whole):
            yield f"“{whole}” isn't there"
    if site.at:
        wanted = {address for address, page in site.pages.items() if _address(site, page.canonical) == address}
        wanted -= {address for address, page in site.pages.items() if page.forward is not None}
        missed = sorted(wanted - {_address(site, whole) for whole in listed})
        if missed:
            yield f"leaves out {', '.join(missed[:3])}{' …' if len(missed) > 3 else ''}"


def _linked(text: str) -> str:
    try:
        told: Any = json.loads(text)
    except ValueError as error:
        return f"is no JSON: {error}"
    if not isinstance(told, dict) or not str(told.get("@context", "")).startswith(("https://schema.org", "http://")):
        return "says no @context"
    graph = told.get("@graph", [told])
    if not isinstance(graph, list) or not all(isinstance(thing, dict) and thing.get("@type") for thing in graph):
        return "says of a thing no @type"
    return ""


def _there(site: Standing, whole: str) -> bool:
    """Whether an address of this site is there; of another site nothing is known, so it counts as there."""
    if not site.at or not whole.startswith(site.at):
        return bool(whole)
    return _address(site, whole) in site.files


def _address(site: Standing, whole: str) -> str:
    address = unquote(whole.removeprefix(site.at).partition("#")[0])
    return f"{address}index.html" if not address or address.endswith("/") else address
