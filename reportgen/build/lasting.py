"""What makes a site last and be found: pages at addresses that things had before, its feed, its sitemap."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from reportgen.finding import Finding, Refused
from reportgen.wording.language import speaking

if TYPE_CHECKING:
    from reportgen.build.steps import Made
    from reportgen.campaign.declared import Declared
    from reportgen.site.framing import Wide

RULE = "former-name-in-use"
WHY = "A page at the old address leads to the new one, and can lead to one place alone."


def lasting_files(wide: Wide, made: Sequence[Made], addresses: Sequence[str]) -> dict[str, bytes]:
    """Address → bytes; `addresses` are those of all pages. Raises `Refused` for an old address that is in use."""
    from reportgen.site.feed import feed
    from reportgen.site.forwarding import forwarding_pages, in_use, moved
    from reportgen.site.sitemap import sitemap

    with speaking(wide.publication.speaks):
        found = moved(wide.cards, addresses)
    declared = _by_id(made)
    taken = [
        Finding(
            "error",
            RULE,
            declared[one.campaign].at(one.path),
            f"the old address “{one.old}” is that of another page now",
            WHY,
            "Take the name out of `formerly:`, or rename what has it now.",
        )
        for one in in_use(found, addresses)
    ]
    if taken:
        raise Refused(taken)
    with speaking(wide.publication.speaks):
        forwards = {page.address: page.html.encode() for page in forwarding_pages(wide, found)}
        return {**forwards, **feed(wide), **sitemap(wide, addresses)}


def clashing_names(made: Iterable[Made]) -> Iterator[Finding]:
    """Former names of campaigns, methods and instruments that are in use, or that two of them had."""
    from reportgen.site.forwarding import clashes

    made = tuple(made)
    declared = _by_id(made)
    told = set()
    for card, path, name, other in clashes([m["card"] for m in made]):
        place = declared[card.id].at(path)
        if (place, name) in told:
            continue
        told.add((place, name))
        if other:
            says, do = f"“{name}” was the name of “{other}” before as well", "Take one of them out."
            yield Finding("error", "former-name-twice", place, says, WHY, do)
        else:
            says, do = f"“{name}” is the name of another now", "Take it out of `formerly:`, or rename the other."
            yield Finding("error", RULE, place, says, WHY, do)


def _by_id(made: Iterable[Made]) -> dict[str, Declared]:
    return {m["declared"].campaign.id: m["declared"] for m in made}
