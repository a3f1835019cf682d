"""Files that aren't text, made from what a block of the handbook shows of them.

A fenced block ```` ```text raw/day.xlsx ```` shows cells as CSV; the test writes a real spreadsheet of them. A line
`[Bench]` begins a sheet of that name. `FROM_TEXT` maps the ending of a name to what makes its bytes: a file of
another sort is one line more.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Callable, Iterator
from decimal import Decimal
from pathlib import PurePosixPath

from tests.lab_reports import lines_of, report
from tests.photographs import photograph

_NUMBER = re.compile(r"-?\d+(?:\.(?P<decimals>\d+))?")
_SHEET = re.compile(r"^\[(?P<name>[^\]\n]+)\]\n", re.M)
Rows = list[list[str]]


def sheets_of(text: str) -> Iterator[tuple[str, Rows]]:
    """The sheets a block shows, each with its rows; one without a name is called Sheet1."""
    parts = _SHEET.split(text)
    if parts[0].strip():
        yield "Sheet1", list(csv.reader(io.StringIO(parts[0])))
    for name, rows in zip(parts[1::2], parts[2::2], strict=True):
        yield name, list(csv.reader(io.StringIO(rows)))


def xlsx(text: str) -> bytes:
    """Numbers become numbers, with a number format of the decimals that are shown."""
    from openpyxl import Workbook

    book = Workbook()
    book.remove(book.worksheets[0])
    for name, rows in sheets_of(text):
        sheet = book.create_sheet(name)
        for line, row in enumerate(rows, 1):
            for column, shown in enumerate(row, 1):
                number = _NUMBER.fullmatch(shown)
                cell = sheet.cell(line, column, float(shown) if number else shown)
                if number:
                    cell.number_format = "0." + "0" * len(number["decimals"]) if number["decimals"] else "0"
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def ods(text: str) -> bytes:
    """Numbers become numbers, without a number format."""
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import Table, TableCell, TableRow
    from odf.text import P

    book = OpenDocumentSpreadsheet()
    for name, rows in sheets_of(text):
        table = Table(name=name)
        for row in rows:
            line = TableRow()
            for shown in row:
                number = {"valuetype": "float", "value": shown} if _NUMBER.fullmatch(shown) else {}
                cell = TableCell(**number or {"valuetype": "string"})
                cell.addElement(P(text=shown))
                line.addElement(cell)
            table.addElement(line)
        book.spreadsheet.addElement(table)
    out = io.BytesIO()
    book.write(out)
    return out.getvalue()


def parquet(text: str) -> bytes:
    """A column of numbers becomes decimals of the most digits shown in it, any other stays text; an empty cell is null."""
    import pyarrow
    import pyarrow.parquet

    headings, *rows = csv.reader(io.StringIO(text))
    columns = {}
    for i, heading in enumerate(headings):
        cells = [row[i] or None for row in rows]
        numbers = [_NUMBER.fullmatch(c) for c in cells if c]
        if numbers and all(numbers):
            scale = max(len(n["decimals"] or "") for n in numbers if n)
            exact = [None if c is None else Decimal(c) for c in cells]
            columns[heading] = pyarrow.array(exact, pyarrow.decimal128(18, scale) if scale else pyarrow.int64())
        else:
            columns[heading] = pyarrow.array(cells, pyarrow.string())
    out = io.BytesIO()
    pyarrow.parquet.write_table(pyarrow.table(columns), out)
    return out.getvalue()


def picture(kind: str) -> Callable[[str], bytes]:
    """A photograph of a display that reads the block's first line, as a camera gives it: with place and camera."""
    return lambda text: photograph(640, 480, kind=kind, words=text.splitlines()[0])


FROM_TEXT: dict[str, Callable[[str], bytes]] = {
    ".xlsx": xlsx, ".ods": ods, ".parquet": parquet, ".jpg": picture("JPEG"), ".png": picture("PNG"),
    ".pdf": lambda text: report(*lines_of(text)),
}  # fmt: skip


def made(name: str, text: str) -> bytes:
    """The bytes of a file of that name of which the block shows `text`: the text itself, unless its ending has a maker."""
    maker = FROM_TEXT.get(PurePosixPath(name).suffix.lower())
    return maker(text) if maker else text.encode()
