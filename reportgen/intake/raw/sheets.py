"""Sheets of a spreadsheet, as the page of their file shows them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from reportgen.finding import Place
from reportgen.intake.raw.rows import MOST_CELLS, MOST_COLUMNS, RawRow, RawSheet, chosen
from reportgen.intake.reading import RawFile
from reportgen.intake.sheets.sheet import Cell, Sheet
from reportgen.intake.sheets.spreadsheet import open_sheet
from reportgen.sources import Workspace


def raw_sheets(ws: Workspace, file: RawFile, spots: Iterable[Place]) -> tuple[RawSheet, ...]:
    """The sheets that were read, in their order. `spots` are the cells that must be among those shown."""
    spots = tuple(spots)
    names = dict.fromkeys((*file.sheets, *(spot.sheet for spot in spots)))
    return tuple(_shown(open_sheet(ws, file.path, name), spots) for name in names)


def _shown(sheet: Sheet, spots: tuple[Place, ...]) -> RawSheet:
    here = [spot for spot in spots if spot.sheet == sheet.name and spot.line]
    full = max((column for row in sheet.rows for column in row.cells), default=0)
    width = min(full, max((MOST_COLUMNS, *(spot.column for spot in here))))
    rows, total = chosen(_every(sheet, width), {spot.line for spot in here}, MOST_CELLS // max(width, 1))
    return RawSheet(sheet.name, (), rows, total, full - width)


def _every(sheet: Sheet, width: int) -> Iterator[RawRow]:
    """Every row from the first on, the empty ones between them too."""
    line = 1
    for row in sheet.rows:
        for empty in range(line, row.line):
            yield RawRow(empty, ())
        yield RawRow(row.line, _texts(row.cells, width))
        line = row.line + 1


def _texts(cells: Mapping[int, Cell], width: int) -> tuple[str, ...]:
    return tuple(cells[column].text if column in cells else "" for column in range(1, width + 1))
