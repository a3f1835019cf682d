"""An ODS spreadsheet (OpenDocument 1.3, part 3, clause 9) → the cells of one sheet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.etree.ElementTree import Element, ParseError, iterparse
from zipfile import ZipFile

from reportgen.finding import Refused
from reportgen.intake.sheets.bounds import bounded, too_large
from reportgen.intake.sheets.choice import Listed, choose
from reportgen.intake.sheets.ods_cell import cell_of
from reportgen.intake.sheets.ods_styles import STYLE, TABLE, Styles, attribute, learn_all
from reportgen.intake.sheets.package import damaged, open_package, part, with_password
from reportgen.intake.sheets.sheet import MOST_CELLS, MOST_COLUMNS, MOST_LINES, Block, Cell, Sheet, SheetRow

_HIDDEN = frozenset({"collapse", "filter"})
_MANIFEST = "META-INF/manifest.xml"


@dataclass
class _Growing:
    """The sheet that is being read. `line` and `columns` count what was read."""

    name: str
    hidden: bool
    line: int = 0
    rows: list[SheetRow] = field(default_factory=list)
    merged: list[Block] = field(default_factory=list)
    hidden_rows: set[int] = field(default_factory=set)
    hidden_columns: set[int] = field(default_factory=set)
    styles: list[tuple[int, str]] = field(default_factory=list)  # last column and the style of cells up to it
    columns: int = 0
    filled: int = 0  # cells so far, those of earlier sheets among them


def read_ods(data: bytes, file: str, sheet: str = "") -> Sheet:
    """One sheet of a spreadsheet: the one named, else the only visible one with cells. Raises `Refused`.

    Formulas give the value that was saved with them. Rows and cells that are written once and said to repeat are
    counted, and kept only where they hold something.
    """
    package = open_package(data, file)
    try:
        return _read(package, file, sheet)
    except Refused:
        raise
    except (ParseError, ValueError, ArithmeticError, LookupError, RecursionError):
        raise damaged(file) from None


def _read(package: ZipFile, file: str, sheet: str) -> Sheet:
    manifest = part(package, _MANIFEST, file)
    if manifest is not None and b"encryption-data" in manifest.getvalue():
        raise with_password(file)
    content = part(package, "content.xml", file)
    if content is None:
        raise damaged(file)
    styles = Styles()
    learn_all(part(package, "styles.xml", file), styles)
    found = {grown.name: grown for grown in _sheets(iterparse(content, ("start", "end")), styles, file)}
    chosen = choose([Listed(g.name, g.hidden, bool(g.rows)) for g in found.values()], sheet, file)
    grown = found[chosen.name]
    hidden = frozenset(grown.hidden_rows), frozenset(grown.hidden_columns)
    return Sheet(grown.name, tuple(bounded(grown.rows, file, grown.name)), tuple(grown.merged), *hidden, grown.hidden)


def _sheets(events: Iterator[tuple[str, Element]], styles: Styles, file: str) -> Iterator[_Growing]:
    now: _Growing | None = None
    filled = 0  # cells of all sheets
    closed = 0  # depth of row groups that are folded away
    inside = 0  # tables inside a cell are no sheets
    for event, element in events:
        tag = element.tag
        if event == "start":
            if tag == TABLE + "table":
                inside += 1
                if inside == 1:
                    hidden = element.get(TABLE + "style-name") in styles.hidden
                    now = _Growing(element.get(TABLE + "name", ""), hidden, filled=filled)
            elif tag == TABLE + "table-row-group" and (closed or element.get(TABLE + "display") == "false"):
                closed += 1
        elif tag.startswith(STYLE) or "datastyle" in tag:
            styles.learn(element)
        elif tag == TABLE + "table":
            inside -= 1
            if now is not None and not inside:
                filled = now.filled
                yield now
                now = None
            element.clear()
        elif tag == TABLE + "table-row-group":
            closed = max(closed - 1, 0)
        elif now is not None and inside == 1:
            if tag == TABLE + "table-column":
                _column(now, element)
            elif tag == TABLE + "table-row":
                _row(now, element, bool(closed), styles, file)
                element.clear()


def _column(now: _Growing, element: Element) -> None:
    times = attribute(element.attrib, TABLE + "number-columns-repeated", MOST_COLUMNS)
    if element.get(TABLE + "visibility") in _HIDDEN:
        now.hidden_columns.update(range(now.columns + 1, min(now.columns + times, MOST_COLUMNS) + 1))
    now.columns += times
    now.styles.append((now.columns, element.get(TABLE + "default-cell-style-name", "")))


def _row(now: _Growing, element: Element, folded: bool, styles: Styles, file: str) -> None:
    times = attribute(element.attrib, TABLE + "number-rows-repeated", MOST_LINES)
    own = element.get(TABLE + "default-cell-style-name", "")
    cells: dict[int, Cell] = {}
    column = 0
    for written in element:
        if written.tag not in (TABLE + "table-cell", TABLE + "covered-table-cell"):
            continue
        repeated = attribute(written.attrib, TABLE + "number-columns-repeated", MOST_COLUMNS)
        style = written.get(TABLE + "style-name") or own or _style_of(now, column + 1)
        cell = cell_of(written, styles.style(style))
        if cell is not None:
            cells.update((n, cell) for n in range(column + 1, min(column + repeated, MOST_COLUMNS) + 1))
        _merged(now, written, column + 1)
        column += repeated
    if cells:
        if (now.filled + len(cells) * times) > MOST_CELLS:
            raise too_large(file, now.name, now.line + 1)
        now.filled += len(cells) * times
        now.rows.extend(SheetRow(line, cells) for line in range(now.line + 1, now.line + times + 1))
        if folded or element.get(TABLE + "visibility") in _HIDDEN:
            now.hidden_rows.update(range(now.line + 1, now.line + times + 1))
    now.line += times


def _style_of(now: _Growing, column: int) -> str:
    return next((style for last, style in now.styles if column <= last), "")


def _merged(now: _Growing, cell: Element, column: int) -> None:
    wide = attribute(cell.attrib, TABLE + "number-columns-spanned", MOST_COLUMNS)
    high = attribute(cell.attrib, TABLE + "number-rows-spanned", MOST_LINES)
    if wide > 1 or high > 1:
        now.merged.append(Block(now.line + 1, now.line + high, column, column + wide - 1))
