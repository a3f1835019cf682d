"""The author's own text on a page, its charts where the text asks for them."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.campaign.declared import ProseFile
from reportgen.charts.figure import Figure
from reportgen.pages.told import Told
from reportgen.prose.markdown import render
from reportgen.prose.references import resolver


@dataclass(frozen=True)
class OwnPiece:
    """A stretch of markup, safe as it stands; or a chart with the author's words for it."""

    markup: str
    figure: Figure | None
    words: str


@dataclass(frozen=True)
class OwnText:
    id: str
    pieces: tuple[OwnPiece, ...]


def own_text(told: Told, prose: ProseFile, page: str) -> OwnText:
    """The text as `page` shows it; a chart that could not be drawn leaves the link to it."""
    text = render(prose, resolver(told.declared, told.evaluation, page, told.site_pages), anchors=prose.id)
    return OwnText(prose.id, tuple(OwnPiece(p.markup, told.figures.get(p.figure), p.words) for p in text.pieces))
