"""How much comes before a reader sees something: what a page is as a host sends it, compressed."""

from __future__ import annotations

import gzip
from collections.abc import Iterator
from functools import cache

from reportgen.browser.fault import Check, Fault
from reportgen.browser.standing import Standing, reached

FIRST = 14_000  # bytes: about what ten segments of TCP carry, the first that a server sends (RFC 6928, 2)
PACKED = (".html", ".css", ".js", ".json", ".svg", ".xml", ".csv", ".txt")  # what hosts compress
WEIGHT = Check(
    "too heavy before the first picture",
    "on a slow phone nothing is seen until it has all come",
    "shorten what stands above the first picture, or keep rules from pages that don't need them (`/* for: … */`)",
)


def weight(site: Standing) -> Iterator[Fault]:
    """Pages whose text up to the first picture and whose rules for screens are more than `FIRST` bytes together."""
    for address, page in site.pages.items():
        if page.forward is None:
            came = before_the_first_picture(site, address)
            if came > FIRST:
                yield Fault(address, 0, WEIGHT.sort, f"{came} bytes of text and rules, compressed; {FIRST} is the most")


def before_the_first_picture(site: Standing, address: str) -> int:
    """Bytes of the page up to its first picture and of its rules for screens; of the rules alone where there is none.

    Signs that stand for nothing (hidden from voices) are part of the text. Rules for print hold nothing up.
    """
    page = site.pages[address]
    text = ""
    if page.first_picture is not None:
        line, column = page.first_picture
        lines = site.text(address).split("\n")
        text = "\n".join([*lines[: line - 1], lines[line - 1][:column]])
    rules = [reached(address, href)[0] for href in page.sheets]
    return packed(text.encode()) + sum(packed(site.bytes(name)) for name in rules if name in site.files)


@cache
def packed(content: bytes) -> int:
    """Bytes after gzip (RFC 1952), as a host sends them."""
    return len(gzip.compress(content, 9, mtime=0))


def as_sent(name: str, content: bytes) -> int:
    """Bytes a host sends of a file: compressed where that is worth it."""
    return packed(content) if name.endswith(PACKED) else len(content)
