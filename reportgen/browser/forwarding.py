"""Pages that forward to another: where something had another name once."""

from __future__ import annotations

from collections.abc import Iterator

from reportgen.browser.fault import Check, Fault
from reportgen.browser.links import wrong_with
from reportgen.browser.standing import Standing, parted, reached

FORWARDING = Check(
    "forwarding",
    "an old link, in a video's description perhaps, ends there",
    "forward to the page that holds the thing now, and link to it in words as well",
)


def forwarding(site: Standing) -> Iterator[Fault]:
    """A page that forwards to nothing, off the site, to itself or in a circle, or that gives no link to follow."""
    for address, page in site.pages.items():
        if page.forward is None:
            continue
        line, target = page.forward
        for says in _wrong(site, address, target):
            yield Fault(address, line, FORWARDING.sort, says)


def _wrong(site: Standing, address: str, target: str) -> Iterator[str]:
    if parted(target).netloc or not target:
        yield f"forwards off this site: “{target}”"
        return
    if wrong := wrong_with(address, target, site.pages, site.files):
        yield wrong
        return
    if target not in [link for _, link in site.pages[address].links]:
        yield f"forwards to “{target}” without a link to it, for browsers that forward nobody"
    seen, here = {address}, address
    while (forward := site.pages[here].forward) is not None:
        here, _ = reached(here, forward[1])
        if here in seen:
            yield f"forwards in a circle, over {', '.join(sorted(seen))}"
            return
        if here not in site.pages:
            return
        seen.add(here)
