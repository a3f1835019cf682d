"""A source as a table: a file of the workspace, or rows typed in the YAML."""

from __future__ import annotations

import posixpath
from collections.abc import Collection
from dataclasses import dataclass, replace

from reportgen.campaign.declared import Campaign, Source
from reportgen.finding import Finding, Place, Refused, refuse
from reportgen.intake.dialect import comma_of, decode, records, separator_of
from reportgen.intake.layouts.seen import KEPT, ROLES
from reportgen.intake.names import spellings
from reportgen.intake.reading import RawFile
from reportgen.intake.sheets.package import OTHER_SPREADSHEETS
from reportgen.intake.sheets.spreadsheet import form_of, open_sheet, without_sheets
from reportgen.intake.sheets.tables import sheet_table
from reportgen.intake.table import Table, make_table
from reportgen.sources import Workspace, digest, exists, read_bytes

TEXT_TABLES = (".csv", ".tsv", ".tab", ".txt")


@dataclass(frozen=True)
class Opened:
    """A source as a table (None where it can't be one), with what is wrong with it; `raw` is the file it stood in."""

    table: Table | None
    raw: RawFile | None
    findings: tuple[Finding, ...] = ()


def name_of(campaign: Campaign, source: Source) -> str:
    """What tells sources apart: the path from the workspace, or the place of a table in the YAML."""
    if not source.file:
        return f"table at {source.place}"
    path = posixpath.normpath(posixpath.join(campaign.folder, source.file))
    return f"{path}, sheet {source.sheet}" if source.sheet else path


def expected_headings(campaign: Campaign) -> tuple[str, ...]:
    """Every heading the campaign could ask for, its contenders' names among them."""
    tests = campaign.tests
    return (
        *ROLES,
        *KEPT,
        *spellings(campaign),
        *(c.heading for t in tests for c in t.columns),
        *(h for t in tests for s in t.sources for h in s.roles.values()),
        *(h for t in tests for h in t.conditions),
    )


def open_source(ws: Workspace, campaign: Campaign, source: Source, known: Collection[str]) -> Opened:
    """Reads and splits a source; every error comes back as a finding."""
    if not source.file:
        rows = zip(source.row_lines, source.rows, strict=True)
        table, findings = make_table(source.place.file, rows, source.place)
        stood_in = source.place.file
        raw = _raw(stood_in, read_bytes(ws, stood_in)) if stood_in and exists(ws, stood_in) else None
        return Opened(_with_comma(table, "\t"), raw, findings)
    path = name_of(campaign, replace(source, sheet=""))
    try:
        if form_of(path) == "text" and not path.lower().endswith(OTHER_SPREADSHEETS):
            return _open_text(ws, path, source, known)
        return _open_cells(ws, path, source, known)
    except Refused as refused:
        missing = not exists(ws, path)
        at = source.place if missing and source.place.file else None
        return Opened(None, None, tuple(replace(f, place=at or f.place) for f in refused.findings))


def _open_text(ws: Workspace, path: str, source: Source, known: Collection[str]) -> Opened:
    data = read_bytes(ws, path)
    if not path.lower().endswith(TEXT_TABLES):
        raise refuse(
            "unknown-format",
            Place(path),
            "What sort of table this is can't be told from its name: CSV, TSV, XLSX, ODS and Parquet are read.",
            "Its readings would be lost.",
            "Let its name end in what it is (.csv, .tsv, .xlsx, .ods, .parquet), or export it as “CSV UTF-8”.",
        )
    if source.sheet:
        raise without_sheets(path, source.sheet)
    text, encoding = decode(data, path, source.encoding)
    separator = separator_of(text, path, known)
    table, findings = make_table(path, records(text, path, separator))
    raw = replace(_raw(path, data, _headings(table)), encoding=encoding)
    return Opened(_with_comma(table, separator), raw, findings)


def _open_cells(ws: Workspace, path: str, source: Source, known: Collection[str]) -> Opened:
    if source.encoding:
        raise refuse(
            "no-encoding",
            Place(path),
            f"`encoding:` says {source.encoding}, and {path} is no text.",
            "Only text tables are in an encoding.",
            "Take `encoding:` out.",
        )
    sheet = open_sheet(ws, path, source.sheet)
    table, findings = sheet_table(sheet, path, known)
    raw = _raw(path, read_bytes(ws, path), _headings(table))
    return Opened(table, replace(raw, form=form_of(path), sheets=(sheet.name,) if sheet.name else ()), findings)


def _headings(table: Table | None) -> tuple[str, ...]:
    return tuple(h for h in table.headings if h) if table else ()


def _raw(path: str, data: bytes, headings: tuple[str, ...] = ()) -> RawFile:
    return RawFile(path, digest(data), len(data), headings)


def _with_comma(table: Table | None, separator: str) -> Table | None:
    return replace(table, comma=comma_of(separator, table)) if table else None
