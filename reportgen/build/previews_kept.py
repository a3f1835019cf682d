"""Preview pictures as they are kept: set in pixels once for each drawing."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from reportgen.store.kept import Kept, get, key_of, put

if TYPE_CHECKING:
    from reportgen.campaign.declared import Publication
    from reportgen.pages.told import Told
    from reportgen.site.card import Card
    from reportgen.theme import Theme


def campaign_preview(told: Told, program: str, kept: Kept) -> dict[str, bytes]:
    """Address → the picture for links to a campaign; none where nobody says at which address the site will stand."""
    if not told.publication.address:
        return {}
    from reportgen.addresses import preview_file
    from reportgen.pages.preview import preview_of
    from reportgen.wording.language import speaking

    with speaking(told.publication.speaks):
        drawing = preview_of(told)
    return {preview_file(told.campaign.id): _kept(drawing, program, kept)}


def site_preview(
    publication: Publication, cards: Sequence[Card], theme: Theme, program: str, kept: Kept
) -> dict[str, bytes]:
    """Address → the picture for links to pages across campaigns; none without an address."""
    if not publication.address:
        return {}
    from reportgen.addresses import preview_file
    from reportgen.site.preview import site_preview as drawing_of

    return {preview_file(): _kept(drawing_of(publication, cards, theme), program, kept)}


def _kept(drawing: str, program: str, kept: Kept) -> bytes:
    key = key_of("preview", program, drawing)
    data = get(kept, key)
    if data is None:
        from reportgen.pictures import set_in_pixels

        data = set_in_pixels(drawing)
        put(kept, key, data)
    return data
