"""A table as CSV: RFC 4180, UTF-8, a heading line, lines that end in CR LF; an empty cell is nothing."""

from __future__ import annotations

import csv
import io

from reportgen.opendata.table import Cell, Table


def as_csv(table: Table) -> bytes:
    """The table's bytes. Numbers stand with every digit the record has, `.` before decimals; yes is `true`."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(column.name for column in table.shape.columns)
    writer.writerows([_text(cell) for cell in row] for row in table.rows)
    return text.getvalue().encode()


def _text(cell: Cell) -> Cell:
    if isinstance(cell, bool):
        return "true" if cell else "false"
    return cell
