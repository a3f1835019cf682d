"""Links and pictures that name no reference of ours: addresses elsewhere, and files of the campaign."""

from __future__ import annotations

import re

from reportgen.addresses import from_to, raw_file
from reportgen.finding import Finding
from reportgen.prose.reference import Answer, Reference

_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:|//", re.IGNORECASE)


def local(reference: Reference, from_page: str, campaign: str) -> Answer:
    """Leaves addresses elsewhere as they are, and leads to a campaign's file where it stands on the site.

    A picture from elsewhere would be fetched when the page is opened: an error. A text that belongs to no campaign has
    no files; a link to another such text (`readings.md`) leads to its page.
    """
    address = reference.target
    if _ELSEWHERE.match(address):
        return Answer(address, reference.text, finding=_fetched(reference) if reference.picture else None)
    if not address or address.startswith("#"):
        return Answer(address, reference.text)
    path, hash_, anchor = address.partition("#")
    if not campaign:
        page = f"{path.removesuffix('.md')}.html" if path.endswith(".md") else path
        return Answer(page + hash_ + anchor, reference.text)
    return Answer(from_to(from_page, raw_file(campaign, path)) + hash_ + anchor, reference.text)


def _fetched(reference: Reference) -> Finding:
    return Finding(
        "error",
        "picture-from-elsewhere",
        reference.place,
        f"The picture {reference.target} lies outside the site.",
        "Pages are complete without a network and tell nobody who reads them.",
        "Put the file into the campaign's folder and name it there.",
    )
