"""Spreadsheets for tests, written by openpyxl and odfpy, and the campaign that reads them."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from reportgen.finding import Finding, Refused
from reportgen.intake import Reading, Readings
from tests.intake.table_bench import by_key, measure, source
from tests.intake.table_bench import read as read_files

Rows = Sequence[Sequence[Any]]
TWO_STOVES: Rows = (("contender", "boil time"), ("corvane", 212.4), ("ostler", 230.1))


def xlsx(rows: Rows = TWO_STOVES, change: Callable[[Worksheet], None] | None = None, name: str = "Bench") -> bytes:
    """A workbook of one sheet; `change` may do to it what an author would."""
    book = Workbook()
    sheet = book.active
    assert isinstance(sheet, Worksheet)
    sheet.title = name
    for row in rows:
        sheet.append(list(row))
    if change:
        change(sheet)
    return saved(book)


def saved(book: Workbook) -> bytes:
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def with_part(package: bytes, name: str, change: Callable[[str], str]) -> bytes:
    """The package with one of its XML parts changed, as another program would have written it."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(package)) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for item in old.infolist():
            text = old.read(item.filename)
            if item.filename == name:
                changed = change(text.decode())
                assert changed.encode() != text
                text = changed.encode()
            new.writestr(item.filename, text)
    return out.getvalue()


ODS_HEAD = (
    '<?xml version="1.0" encoding="UTF-8"?><office:document-content'
    ' xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"'
    ' xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0"'
    ' xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"'
    ' xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0"'
    ' xmlns:number="urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0"'
    ' xmlns:calcext="urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0"'
    ' office:version="1.3">'
)


def ods(rows: str, styles: str = "", name: str = "Bench") -> bytes:
    """A spreadsheet of the rows of one sheet, as XML."""
    table = f'<table:table table:name="{name}">{rows}</table:table>'
    return ods_sheets(table, styles)


def ods_sheets(tables: str, styles: str = "") -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as package:
        package.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet", zipfile.ZIP_STORED)
        package.writestr(
            "content.xml",
            f"{ODS_HEAD}<office:automatic-styles>{styles}</office:automatic-styles><office:body><office:spreadsheet>"
            f"{tables}</office:spreadsheet></office:body></office:document-content>",
        )
    return out.getvalue()


def ods_row(*cells: str, more: str = "") -> str:
    return f"<table:table-row {more}>{''.join(cells)}</table:table-row>"


def ods_text(text: str, more: str = "") -> str:
    return f'<table:table-cell office:value-type="string" {more}><text:p>{text}</text:p></table:table-cell>'


def ods_number(value: str, shown: str = "", more: str = "", kind: str = "float") -> str:
    return (
        f'<table:table-cell office:value-type="{kind}" office:value="{value}" {more}>'
        f"<text:p>{shown or value}</text:p></table:table-cell>"
    )


def read(folder: Path, data: bytes, file: str = "day.xlsx", **more: Any) -> Readings:
    """The readings of a boil time; `sheet`, `unit`, `kind` and `headings` as they are given."""
    sheet = more.pop("sheet", "")
    unit, kind = more.pop("unit", "s"), more.pop("kind", "timed")
    from dataclasses import replace

    test = measure("boil time", unit, kind, sources=(replace(source(file), sheet=sheet),), **more)
    return read_files(folder, {file: data}, test)


def told(folder: Path, data: bytes, file: str = "day.xlsx", **more: Any) -> tuple[Finding, ...]:
    """The errors it is refused with, each with what is wrong, why and what to do."""
    try:
        read(folder, data, file, **more)
    except Refused as refused:
        found = tuple(f for f in refused.findings if f.severity == "error")
        assert all(f.says and f.why and f.do for f in found)
        return found
    raise AssertionError("read without an error")


def the_error(folder: Path, data: bytes, file: str = "day.xlsx", **more: Any) -> tuple[str, str]:
    """Rule and place of the only error."""
    (found,) = told(folder, data, file, **more)
    return found.rule, str(found.place)


def of(readings: Readings) -> Mapping[str, Reading]:
    """Contender → its first reading."""
    return {contender: r for (contender, pass_, _), r in by_key(readings).items() if pass_ == "1"}
