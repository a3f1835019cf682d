"""A slip in a raw file put right: what the file says struck through, what was meant beside it."""

from __future__ import annotations

import posixpath
from collections.abc import Iterator
from dataclasses import dataclass

from reportgen.campaign.declared import Amendment
from reportgen.finding import Place
from reportgen.intake.raw.rows import RawView
from reportgen.intake.reading import Reading
from reportgen.intake.table import key
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.wording.sentence import capital

SEPARATORS = (",", ";", "\t")


@dataclass(frozen=True)
class Piece:
    """A piece of a line: as it stands, struck through (the file's text), or put beside it (what was meant)."""

    text: str
    struck: bool = False
    meant: bool = False


@dataclass(frozen=True)
class Slip:
    """One amendment and its cell; `at.column` is 0 where no reading says which. `says` is for the reader."""

    at: Place
    was: str
    meant: str
    says: str


def slips_in(told: Told, path: str) -> tuple[Slip, ...]:
    """The amendments of one raw file (path from the workspace), in its order."""
    campaign = told.campaign
    found = []
    for a in campaign.amendments:
        if posixpath.normpath(posixpath.join(campaign.folder, a.file)) == path:
            read = (r.at for r in told.readings.readings.values() if r.amendment == a.id and is_struck(r, a))
            column = a.number or _column(told.raw_views[path], a)
            found.append(Slip(next(read, Place(path, a.line, column, a.sheet)), a.was, a.is_, says_of_slip(a)))
    return tuple(sorted(found, key=lambda s: s.at))


def is_struck(r: Reading, a: Amendment) -> bool:
    """Whether it was the reading's own cell that was put right, not another of its row, or its heading."""
    return bool(r.was) or (not a.was and (r.at.line, r.text) == (a.line, a.is_.strip()))


def _column(view: RawView, a: Amendment) -> int:
    """The column whose heading the amendment names, from 1; 0 where none is found among those shown."""
    for sheet in view.sheets:
        for row in sheet.rows if a.sheet in ("", sheet.name) else ():
            for cells in _splits(row.cells[0]) if view.form == "text" else (row.cells,):
                headings = [key(cell) for cell in cells]
                if key(a.column) in headings:
                    return headings.index(key(a.column)) + 1
    return 0


def _splits(line: str) -> Iterator[tuple[str, ...]]:
    for separator in SEPARATORS:
        yield tuple(_bare(line[first:last]) for first, last in _cells(line, separator))


def says_of_slip(a: Amendment) -> str:
    """What was put right and why, in a sentence or two."""
    said = words("slip", was=a.was or words("empty"), meant=a.is_ or words("empty"), why=capital(a.why.rstrip(".")))
    return f"{said} {words('slip.seen', by=a.seen_by)}" if a.seen_by else said


def why_put_right(a: Amendment) -> str:
    """Why a slip was put right, and who saw it, where both texts stand beside this."""
    said = words("slip.why", why=capital(a.why.rstrip(".")))
    return f"{said} {words('slip.seen', by=a.seen_by)}" if a.seen_by else said


def struck_cell(text: str, slips: tuple[Slip, ...]) -> tuple[Piece, ...]:
    """A cell with its slip, if it is one."""
    slip = next((s for s in slips if text.strip() == s.was), None)
    return (Piece(text, struck=True), Piece(slip.meant, meant=True)) if slip else (Piece(text),)


def struck_line(line: str, slips: tuple[Slip, ...]) -> tuple[Piece, ...]:
    """A line of a text table with its slips; cells are found by whichever separator puts the file's text there."""
    spans = sorted(filter(None, ((span := _span(line, s)) and (*span, s.meant) for s in slips)))
    pieces, done = [], 0
    for first, last, meant in spans:
        pieces += [Piece(line[done:first]), Piece(line[first:last], struck=True), Piece(meant, meant=True)]
        done = last
    return tuple(p for p in (*pieces, Piece(line[done:])) if p.text) or (Piece(line),)


def _span(line: str, slip: Slip) -> tuple[int, int] | None:
    for separator in SEPARATORS:
        cells = _cells(line, separator)
        wanted = cells[slip.at.column - 1 : slip.at.column] if slip.at.column else cells
        for first, last in wanted:
            if _bare(line[first:last]) == slip.was:
                return first, last
    return None


def _cells(line: str, separator: str) -> list[tuple[int, int]]:
    """Where each cell begins and ends; a separator inside double quotes parts nothing (RFC 4180, 2.6)."""
    found, first, quoted = [], 0, False
    for i, sign in enumerate(line):
        quoted = quoted != (sign == '"')
        if sign == separator and not quoted:
            found.append((first, i))
            first = i + 1
    return [*found, (first, len(line))]


def _bare(cell: str) -> str:
    cell = cell.strip()
    return cell[1:-1].replace('""', '"').strip() if len(cell) > 1 and cell[0] == cell[-1] == '"' else cell
