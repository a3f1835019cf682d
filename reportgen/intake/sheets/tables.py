"""The cells of a sheet → a table, with what can't be read of it, or not truthfully."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from reportgen.finding import Finding
from reportgen.intake.sheets.findings import (
    above_headings,
    errors_in,
    hidden_cells,
    hidden_digits,
    hidden_sheet,
    merged_cells,
    second_table,
)
from reportgen.intake.sheets.framed import Framed
from reportgen.intake.sheets.sheet import Sheet, SheetRow, Sort
from reportgen.intake.table import Table, key, make_table, without_unit

_SOUGHT_IN = 50  # filled rows among which the headings are sought


def sheet_table(sheet: Sheet, file: str, known: Collection[str]) -> tuple[Table | None, tuple[Finding, ...]]:
    """The sheet as a table. Its headings are the first row that holds one of `known`, else the first filled row."""
    if not sheet.rows:
        return make_table(file, (), sheet=sheet.name)
    framed = _framed(sheet, file, {key(k) for k in known})
    width = max(max(row.cells, default=0) for row in (framed.heading, *framed.body))
    records = ((row.line, _texts(row, width)) for row in (framed.heading, *framed.body))
    table, findings = make_table(file, records, sheet=sheet.name)
    if table is not None:
        table = replace(table, sorts=dict(_sorts(framed.body)))
    return table, (*findings, *_findings(framed, known))


def _framed(sheet: Sheet, file: str, known: Collection[str]) -> Framed:
    hits = [len(_asked(row, known)) for row in sheet.rows[:_SOUGHT_IN]]
    best = next((i for i, n in enumerate(hits) if n > 1), next((i for i, n in enumerate(hits) if n), 0))
    heading = sheet.rows[best]
    return Framed(file, sheet, heading, sheet.rows[:best], sheet.rows[best + 1 :], _asked(heading, known))


def _asked(row: SheetRow, known: Collection[str]) -> frozenset[int]:
    """The columns whose cell is a heading the campaign could ask for."""
    return frozenset(
        column
        for column, cell in row.cells.items()
        if cell.sort == "text" and (key(cell.text) in known or key(without_unit(cell.text)[0]) in known)
    )


def _texts(row: SheetRow, width: int) -> tuple[str, ...]:
    return tuple(row.cells[n].text if n in row.cells else "" for n in range(1, width + 1))


def _sorts(rows: Iterable[SheetRow]) -> Iterator[tuple[tuple[int, int], Sort]]:
    for row in rows:
        for column, cell in row.cells.items():
            if cell.sort != "text":
                yield (row.line, column), cell.sort


def _findings(framed: Framed, known: Collection[str]) -> Iterator[Finding]:
    for look in (errors_in, merged_cells, hidden_cells, hidden_digits, hidden_sheet, above_headings):
        yield from look(framed)
    yield from second_table(framed, {key(k) for k in known})
