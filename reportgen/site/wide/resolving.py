"""What the references of a text mean that belongs to no campaign."""

from __future__ import annotations

import posixpath

from reportgen.addresses import from_to
from reportgen.prose.reference import Answer, Reference, Resolve
from reportgen.prose.references import site_resolver
from reportgen.site.framing import Wide


def resolving(wide: Wide, page: str, path: str) -> Resolve:
    """Answers for a text that stands in the file `path` and on the page `page`.

    A link to another Markdown file of the site (`how-we-test.md`, `handbook/readings.md`) leads to that file's page.
    """
    known = {t.prose.path: t.address for t in (*wide.texts.pages, *wide.texts.handbook)}
    others = site_resolver(page, wide.texts.addresses)

    def resolve(reference: Reference) -> Answer:
        if not reference.scheme and not reference.picture:
            file, hash_, anchor = reference.target.partition("#")
            address = known.get(posixpath.normpath(posixpath.join(posixpath.dirname(path), file))) if file else None
            if address is not None:
                return Answer(from_to(page, address) + hash_ + anchor, reference.text)
        return others(reference)

    return resolve
