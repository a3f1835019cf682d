"""The author's own text on a page, its charts where the text asks for them."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import quantity_anchor
from reportgen.campaign.declared import ProseFile
from reportgen.charts.figure import Figure
from reportgen.pages.ahead import way_to_all
from reportgen.pages.photos import PhotoShown, photo_shown
from reportgen.pages.told import Told
from reportgen.prose.markdown import render
from reportgen.prose.references import resolver
from reportgen.prose.text import Piece


@dataclass(frozen=True)
class OwnPiece:
    """A stretch of markup, safe as it stands; a chart with the author's words for it; or a photograph.

    `reasons` leads from a chart to the pairs behind what was found, "" where nothing was compared.
    """

    markup: str
    figure: Figure | None
    words: str
    photo: PhotoShown | None
    reasons: str = ""


@dataclass(frozen=True)
class OwnText:
    id: str
    pieces: tuple[OwnPiece, ...]


def own_text(told: Told, prose: ProseFile, page: str) -> OwnText:
    """The text as `page` shows it; a chart that could not be drawn leaves the link to it."""
    text = render(prose, resolver(told.declared, told.evaluation, page, told.site_pages), anchors=prose.id)
    return OwnText(
        prose.id,
        tuple(
            OwnPiece(
                p.markup,
                told.figures.get(p.figure),
                p.words,
                _photo(told, page, p) if p.photo else None,
                _reasons(told, page, p.figure),
            )
            for p in text.pieces
        ),
    )


def _photo(told: Told, page: str, piece: Piece) -> PhotoShown:
    """The photograph of a piece; words typed in the text stand for the declared ones there."""
    return photo_shown(told.campaign.id, page, told.campaign.photo(piece.photo), piece.words)


def _reasons(told: Told, page: str, figure: str) -> str:
    """From `page` to the pairs of the quantity that a chart is about."""
    compared = {quantity_anchor(c.quantity, c.part): c for c in told.evaluation.comparisons}
    c = compared.get(figure)
    return way_to_all(told.campaign, page, c.test, c.quantity, c.part) if c else ""
