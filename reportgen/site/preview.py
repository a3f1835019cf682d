"""The preview picture of the site: its title, and the newest comparisons by theirs."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Publication
from reportgen.pages.preview import sheet_of
from reportgen.pages.preview.sheet import Told
from reportgen.prose.specimens import day_of
from reportgen.site.card import Card
from reportgen.site.wide.newest import newest_first
from reportgen.site.words import words
from reportgen.theme import Theme, render
from reportgen.theme.colours import light_colours
from reportgen.wording.invented import invented
from reportgen.wording.language import speaking


def site_preview(publication: Publication, cards: Sequence[Card], theme: Theme) -> str:
    """The drawing, an SVG."""
    with speaking(publication.speaks):
        newest = newest_first(tuple(cards))
        told = Told(
            publication=words("archive"),
            date=day_of(newest[0].date) if newest else "",
            title=publication.title,
            answer="\n".join(card.title for card in newest),
            invented=invented(publication.invented),
        )
        return render(
            theme, "preview.svg", sheet_of(told, light_colours(theme), publication.speaks.right_to_left), "preview.svg"
        )
