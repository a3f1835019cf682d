"""An XLSX workbook (ECMA-376, part 1) → the cells of one sheet."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator, Mapping
from datetime import date, datetime, time, timedelta
from itertools import islice
from typing import Any
from xml.etree.ElementTree import iterparse
from zipfile import ZipFile

from reportgen.finding import Refused
from reportgen.intake.sheets import number_format
from reportgen.intake.sheets.bounds import bounded
from reportgen.intake.sheets.choice import Listed, choose
from reportgen.intake.sheets.package import damaged, open_package, part
from reportgen.intake.sheets.sheet import MOST_COLUMNS, MOST_LINES, Block, Cell, Sheet, SheetRow
from reportgen.intake.sheets.times import Shows, day_of, elapsed, time_of_day

_MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
_FORMULA = re.compile(rb"<(?:\w+:)?f[\s/>]")
_SPOT = re.compile(rb"<(?:\w+:)?(?:row|c)\s(?:[^>]*?\s)?r=\"([A-Z]{0,3})([0-9]+)\"")
_FRAME = re.compile(rb"\bhidden=|mergeCell\b")
_STRICT = "{http://purl.oclc.org/ooxml/spreadsheetml/main}"


def read_xlsx(data: bytes, file: str, sheet: str = "") -> Sheet:
    """One sheet of a workbook: the one named, else the only visible one with cells. Raises `Refused`.

    Formulas give the value that was saved with them. Macros are never run, links never followed. openpyxl may warn of
    what it leaves out: pictures, rules of formatting.
    """
    package = open_package(data, file)
    try:
        return _read(data, package, file, sheet)
    except Refused:
        raise
    except Exception:  # openpyxl answers a damaged workbook with whatever stumbles first
        raise damaged(file) from None


def _read(data: bytes, package: ZipFile, file: str, sheet: str) -> Sheet:
    from openpyxl import load_workbook

    for name in package.namelist():
        if name.endswith((".xml", ".rels")) and not name.startswith("xl/worksheets/"):
            part(package, name, file)
    values = load_workbook(io.BytesIO(data), read_only=True, data_only=True)
    tables = {w.title: w for w in values.worksheets}
    if len(tables) < len(values.worksheets):
        raise damaged(file)  # two sheets of one name (18.2.19 allows none): which is meant can't be known
    listed = [Listed(title, w.sheet_state != "visible", _filled(w)) for title, w in tables.items()]
    chosen = choose(listed, sheet, file)
    xml = part(package, _part_of(package, chosen.name, file), file)
    if xml is None or not _in_order(xml):
        raise damaged(file)
    formulas: frozenset[tuple[int, int]] = frozenset()
    if _FORMULA.search(xml.getbuffer()):
        formulas = _formulas(load_workbook(io.BytesIO(data), read_only=True)[chosen.name])
    rows = tuple(bounded(_rows(tables[chosen.name], formulas), file, chosen.name))
    return Sheet(chosen.name, rows, *_frame(xml), chosen.hidden)


def _in_order(xml: io.BytesIO) -> bool:
    """Whether rows and cells come in their order, each once, where a sheet has room (18.3.1.73 and 18.3.1.4).

    What doesn't is passed over by openpyxl without a word.
    """
    last = (0, 0, b"")
    for found in _SPOT.finditer(xml.getbuffer()):
        spot = (int(found[2]), len(found[1]), found[1])
        if spot <= last or spot[0] > MOST_LINES:
            return False
        last = spot
    return True


def _filled(worksheet: Any) -> bool:
    worksheet.reset_dimensions()  # what a file says of its own size may be wrong
    rows = islice(worksheet.iter_rows(values_only=True), MOST_LINES)  # a row's number may be any
    return any(cell is not None for row in rows for cell in row)


def _formulas(worksheet: Any) -> frozenset[tuple[int, int]]:
    worksheet.reset_dimensions()
    rows = islice(worksheet.iter_rows(), MOST_LINES)
    return frozenset((cell.row, cell.column) for row in rows for cell in row if cell.data_type == "f")


def _rows(worksheet: Any, formulas: frozenset[tuple[int, int]]) -> Iterator[SheetRow]:
    for row in islice(worksheet.iter_rows(), MOST_LINES):
        cells: dict[int, Cell] = {}
        line = 0
        for cell in row:
            if not getattr(cell, "column", 0):
                continue  # a gap, which openpyxl fills without a place
            line = cell.row
            if cell.value is not None:
                cells[cell.column] = _cell(cell)
            elif (line, cell.column) in formulas and cell.data_type == "n":
                cells[cell.column] = Cell("", "not worked out")
        filled = {column: cell for column, cell in cells.items() if cell.text or cell.sort == "not worked out"}
        if filled:
            yield SheetRow(line, filled)


def _cell(cell: Any) -> Cell:
    value = cell.value
    match value:
        case _ if cell.data_type == "e":
            return Cell(str(value), "error")
        case bool():
            return Cell("yes" if value else "no", "truth value")
        case int() | float():
            held = number_format.held(value)
            form = number_format.format_of(cell.number_format or "", held)
            text, seen = number_format.shown(held, form)
            return Cell(text, "number" if form.most is not None and text == seen else "free number", _less(text, seen))
        case timedelta():
            return elapsed(value, _shows(cell.number_format))
        case time():
            return time_of_day(value, _shows(cell.number_format))
        case datetime() | date():
            return day_of(value)
    return Cell(str(value).strip())


def _less(text: str, seen: str) -> str:
    return seen if seen != text else ""


def _shows(code: str | None) -> Shows:
    low = (code or "h").lower()
    if "[m" in low or "[s" in low:
        return "all minutes"
    return "hours" if "h" in low else "minutes"


def _part_of(package: ZipFile, name: str, file: str) -> str:
    """Where the sheet of that name stands in the package (ECMA-376, part 1, 12.3.23 and 12.3.24)."""
    book, links = part(package, "xl/workbook.xml", file), part(package, "xl/_rels/workbook.xml.rels", file)
    if book is None or links is None:
        return ""
    targets = {e.get("Id"): e.get("Target", "") for _, e in iterparse(links)}
    for _, element in iterparse(book):
        if element.tag in (_MAIN + "sheet", _STRICT + "sheet") and element.get("name") == name:
            link = next((v for k, v in element.attrib.items() if k.endswith("}id")), "")
            target = targets.get(link, "")
            return target.lstrip("/") if target.startswith("/") else f"xl/{target}"
    return ""


def _frame(xml: io.BytesIO) -> tuple[tuple[Block, ...], frozenset[int], frozenset[int]]:
    """Merged cells, hidden rows and hidden columns (18.3.1.55, 18.3.1.73, 18.3.1.13)."""
    from openpyxl.utils import range_boundaries

    if not _FRAME.search(xml.getbuffer()):
        return (), frozenset(), frozenset()
    merged: list[Block] = []
    rows: set[int] = set()
    columns: set[int] = set()
    line = 0
    for event, element in iterparse(xml, ("start", "end")):
        if event == "start":
            if element.tag.endswith("}sheetData"):
                data = element
            continue
        tag = element.tag.rpartition("}")[2]
        if tag == "row":
            line = int(float(element.get("r", line + 1)))
            if _true(element.attrib, "hidden"):
                rows.add(line)
        elif tag == "col" and _true(element.attrib, "hidden"):
            first, last = int(element.get("min", 0)), int(element.get("max", 0))
            columns.update(range(first, min(last, MOST_COLUMNS) + 1))
        elif tag == "mergeCell":
            left, top, right, bottom = range_boundaries(element.get("ref", ""))
            merged.append(Block(int(top or 0), int(bottom or 0), int(left or 0), int(right or 0)))
        if tag == "row":
            data.clear()  # a million rows, once seen, are not kept
    return tuple(merged), frozenset(rows), frozenset(columns)


def _true(attributes: Mapping[str, str], name: str) -> bool:
    return attributes.get(name, "0") in ("1", "true")
