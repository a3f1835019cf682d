"""A text ready for a page: markup, with the places where charts belong, its headings and what was found wrong."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.finding import Finding


@dataclass(frozen=True)
class Heading:
    """A heading of the text: its level on the page, plain words, and the anchor it can be reached by."""

    level: int
    words: str
    anchor: str


@dataclass(frozen=True)
class Piece:
    """A stretch of markup, or the place of a chart or photograph: `figure` is the chart's quantity, `photo` an id;
    `markup` is then a link to it."""

    markup: str
    figure: str = ""
    words: str = ""  # the author's words for the chart or photograph
    photo: str = ""  # the id of the photograph that belongs here


@dataclass(frozen=True)
class Text:
    """The author's text, safe to put into a page. `markup` is whole by itself; `pieces` lets a page place charts."""

    pieces: tuple[Piece, ...] = ()
    headings: tuple[Heading, ...] = ()
    findings: tuple[Finding, ...] = ()

    @property
    def markup(self) -> str:
        """All of it as markup; where a chart belongs stands a link to it."""
        return "".join(p.markup for p in self.pieces)

    @property
    def figures(self) -> tuple[str, ...]:
        """The quantities whose charts the text asks for, in order."""
        return tuple(p.figure for p in self.pieces if p.figure)
