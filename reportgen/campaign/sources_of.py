"""Where readings stand: a file, or a table typed into the declaration."""

from __future__ import annotations

import csv
import io
import posixpath
from collections.abc import Mapping, Sequence
from dataclasses import replace

from reportgen.addresses import as_id
from reportgen.campaign.declared import Source
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.logger_of import logger_of, named_in
from reportgen.campaign.look_up import error
from reportgen.campaign.order_words import Saying, one_cell
from reportgen.campaign.written.measure import WrittenQuantity, WrittenSource
from reportgen.finding import Finding

ROLES = (
    "contender", "pass_", "part", "specimen", "session", "round", "unit", "instrument", "time", "note", "photo", "film",
    "page", "what", "value",
)  # fmt: skip


def source_of(written: WrittenSource, told: list[Finding]) -> Source:
    """One place where readings stand."""
    source = _source_of(written, told)
    if written.leave_out and (source.logger is not None or written.logger is not None):
        says = "`leave out:` tells of rows of a table, and a logger's file has none"
        error(told, "leaves-readings-out", written.leave_out[0].at, says, do="Take it out.")
    return replace(source, leave_out=tuple(name.value for name in written.leave_out))


def _source_of(written: WrittenSource, told: list[Finding]) -> Source:
    roles = {r.rstrip("_"): given.value for r in ROLES if (given := getattr(written, r)) is not None}
    if written.logger is not None:
        return logger_of(written, roles, told)
    named = named_in(written, told)
    if named and named.unit:
        roles.pop("time")
    if (written.file is None) == (written.table is None):
        says = "readings stand either in a file or in a table in place"
        error(told, "readings-without-place", written.at, says, do="Write `file:`, `table:` or `logger:`.")
    if written.file is not None:
        sheet = written.sheet.value if written.sheet else ""
        encoding = written.encoding.value if written.encoding else ""
        file, place = written.file.value, written.file.at
        return Source(file=file, roles=roles, sheet=sheet, encoding=encoding, named=named, place=place)
    if (beside := written.sheet or written.encoding) is not None:
        told_of = "sheet" if written.sheet else "encoding"
        says = f"`{told_of}:` tells of a file, and there is none"
        error(told, "readings-without-place", beside.at, says, do="Write `file:`, or take it out.")
    if isinstance(written.table, Given):
        return replace(_from_text(written.table, roles, told), named=named)
    rows = tuple(tuple(cell.value.strip() for cell in row) for row in written.table or ())
    lines = tuple(row[0].at.line if row else written.at.line for row in written.table or ())
    return Source(roles=roles, rows=rows, row_lines=lines, named=named, place=written.at)


def sightings(entries: Sequence[Entry[WrittenQuantity]]) -> tuple[Source, ...]:
    """The sentences under `seen:` of each quantity, as one look: a table in place, with a row for each contender."""
    return tuple(_look(e.name.value, e.value.seen) for e in entries if e.value.seen)


def _look(label: str, seen: Sequence[Given[tuple[tuple[str, Saying], ...]]]) -> Source:
    said: dict[str, list[Saying]] = {}
    line: dict[str, int] = {}
    for at, subject, saying in ((g.at, *pair) for g in seen for pair in g.value):
        known = next((s for s in said if as_id(s) == as_id(subject)), subject)
        said.setdefault(known, []).append(saying)
        line.setdefault(known, at.line)
    rows = (("contender", "pass", label), *((subject, "1", one_cell(of)) for subject, of in said.items()))
    return Source(rows=rows, row_lines=(seen[0].at.line, *line.values()), place=seen[0].at)


def sources_of(written: Sequence[WrittenSource], told: list[Finding]) -> tuple[Source, ...]:
    """All places where readings stand; a file listed twice is an error, for all of it would count twice."""
    kept: list[Source] = []
    seen: list[tuple[str, str, Mapping[str, str]]] = []
    for source in (source_of(w, told) for w in written):
        known = (posixpath.normpath(source.file), source.sheet, source.roles)
        if source.file and known in seen:
            says = f"“{source.file}” is listed twice"
            error(told, "listed-twice", source.place, says, "Its readings would count twice.", "Take one of them out.")
        else:
            kept.append(source)
            seen.append(known)
    return tuple(kept)


def _from_text(table: Given[str], roles: Mapping[str, str], told: list[Finding]) -> Source:
    """A table typed after `|`: comma or tab between cells, rows counted from the line below."""
    rows = csv.reader(io.StringIO(table.text, newline=""), delimiter="\t" if "\t" in table.text else ",")
    found = []
    try:
        for row in rows:
            if any(row):
                found.append((tuple(cell.strip() for cell in row), table.at.line + rows.line_num))
    except csv.Error as broken:
        do = "Put cells with commas in double quotes."
        error(told, "broken-table", table.at, f"this can't be read as a table ({broken})", do=do)
    return Source(roles=roles, rows=tuple(r for r, _ in found), row_lines=tuple(n for _, n in found), place=table.at)
