"""Which readings a test expects, and how each is found in a table."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable, Mapping, Sequence

from reportgen.addresses import in_formula
from reportgen.campaign.declared import Column, Source
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error
from reportgen.campaign.written.measure import WrittenColumn, WrittenSource
from reportgen.finding import Finding, Place

ROLES = ("contender", "pass_", "part", "specimen", "session", "round", "unit", "time", "note", "what", "value")
ColumnsWritten = Sequence[Entry[WrittenColumn | None] | Given[str]] | None


def names_in(formula: str) -> tuple[str, ...]:
    """The names a formula mentions, functions aside, each once."""
    return tuple(dict.fromkeys(re.findall(r"(?<![\w.])([A-Za-z_]\w*)\b(?!\s*\()", formula)))


def declared_columns(written: ColumnsWritten, places: dict[str, Place], test: str) -> Iterable[Column]:
    """The columns an author declared, by name."""
    for one in written or ():
        if isinstance(one, Given):
            name, column, at = one.value, None, one.at
        else:
            name, column, at = one.name.value, one.value, one.name.at
        places[f"column/{test}/{in_formula(name)}"] = at
        yield Column(
            in_formula(name),
            column.column.value if column and column.column else name,
            column.unit.value if column and column.unit else "",
            column.instrument.value if column and column.instrument else "",
        )


def source_of(written: WrittenSource, folder: str, told: list[Finding]) -> Source:
    """One place where readings stand."""
    roles = {r.rstrip("_"): given.value for r in ROLES if (given := getattr(written, r)) is not None}
    if (written.file is None) == (written.table is None):
        says = "readings stand either in a file or in a table in place"
        error(told, "readings-without-place", written.at, says, do="Write `file:` or `table:`.")
    if written.file is not None:
        return Source(file=written.file.value, roles=roles, place=written.file.at)
    if isinstance(written.table, Given):
        return _from_text(written.table, roles)
    rows = tuple(tuple(cell.value for cell in row) for row in written.table or ())
    lines = tuple(row[0].at.line if row else written.at.line for row in written.table or ())
    return Source(roles=roles, rows=rows, row_lines=lines, place=written.at)


def _from_text(table: Given[str], roles: Mapping[str, str]) -> Source:
    """A table typed in place after `|`: comma or tab between cells, rows counted from the line below."""
    lines = table.text.splitlines()
    rows = csv.reader(lines, delimiter="\t" if "\t" in table.text else ",")
    found = [(tuple(cell.strip() for cell in row), table.at.line + rows.line_num) for row in rows if any(row)]
    return Source(roles=roles, rows=tuple(r for r, _ in found), row_lines=tuple(n for _, n in found), place=table.at)
