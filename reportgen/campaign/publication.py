"""The settings of the site."""

from __future__ import annotations

from urllib.parse import urlsplit

from reportgen.addresses import as_id
from reportgen.campaign.declared import Publication
from reportgen.campaign.folder import read_file
from reportgen.campaign.given import Given
from reportgen.campaign.written.publication import WrittenPublication
from reportgen.finding import Finding, Place, Refused
from reportgen.sources import Workspace, exists
from reportgen.sources.workspace import PUBLICATION


def language_at(ws: Workspace) -> Place:
    """Where the settings name the language of the site; the whole file where they don't."""
    if not exists(ws, PUBLICATION):
        return Place(PUBLICATION)
    w = read_file(ws, PUBLICATION, WrittenPublication, [])
    return w.language.at if w is not None and w.language else Place(PUBLICATION)


def load_publication(ws: Workspace) -> tuple[Publication, tuple[Finding, ...]]:
    """The workspace's settings and what there is to say about them; the usual ones where it has none (a lone
    campaign). Raises Refused with every error found.
    """
    if not exists(ws, PUBLICATION):
        return Publication(), ()
    told: list[Finding] = []
    w = read_file(ws, PUBLICATION, WrittenPublication, told)
    if w is not None and (w.address or not told):
        told += _of_its_address(w.address)
    if w is None or any(f.severity == "error" for f in told):
        raise Refused(told)
    usual = Publication()
    return Publication(
        title=w.title.value,
        address=w.address.value if w.address else "",
        language=w.language.value if w.language else usual.language,
        show=tuple(u.value for u in w.show),
        who_pays=w.who_pays.value if w.who_pays else "",
        affiliate_links=w.affiliate_links.value if w.affiliate_links else "",
        samples=w.samples.value if w.samples else "",
        author=w.author.value if w.author else "",
        contact=w.contact.value if w.contact else "",
        licence=w.licence.value if w.licence else "",
        theme=as_id(w.theme.value) if w.theme else usual.theme,
        invented=w.invented.value if w.invented else "",
    ), tuple(told)


def _of_its_address(given: Given[str] | None) -> list[Finding]:
    """What there is to say about where the site will stand."""
    if given is None:
        says = "nothing says at which address the site will stand"
        why = "So it has no feed, no sitemap and no lasting addresses in its pages, and shared links show no picture."
        return [Finding("note", "no-address", Place(PUBLICATION), says, why, "Add `address: https://…`.")]
    if "?" in given.value or "#" in given.value:
        says = f"“{given.value}” is the address of something on a page, and the site is a folder of pages"
        do = "Write it without what begins with ? or #."
        return [Finding("error", "address-of-a-page", given.at, says, "Its pages stand below it.", do)]
    try:
        told = urlsplit(given.value)
        _ = told.port, (told.hostname or "").encode("idna")
    except ValueError:  # UnicodeError is one; RFC 1035, 2.3.4
        says = f"no host can be called as “{given.value}” says"
        why = "Each piece between points has 1 to 63 letters, as they are sent; a port is 65535 at most."
        return [Finding("error", "no-such-host", given.at, says, why, "Compare it with the browser's line of address.")]
    return []
