"""Slips of the pen put right: the table's cells change before any layout reads them; the raw file stays as it is."""

from __future__ import annotations

import posixpath
from collections.abc import Iterable, Mapping
from dataclasses import replace

from reportgen.campaign.declared import Amendment, Campaign, Declared
from reportgen.finding import Finding, Place, letters
from reportgen.intake.layouts.missing import Look
from reportgen.intake.layouts.seen import missing_heading
from reportgen.intake.opening import Opened
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.intake.table import Row, Spot, Table, did_you_mean, spelt

Righted = Mapping[Place, Amendment]  # the cells that were put right


def amended(declared: Declared, opened: Mapping[str, Opened]) -> tuple[dict[str, Opened], Righted, tuple[Finding, ...]]:
    """Every table with its slips put right, the cells concerned, and what doesn't fit.

    What an amendment says of the file must be so to the letter: an old value that isn't there is an error, never passed
    over.
    """
    campaign = declared.campaign
    tables = dict(opened)
    cells: dict[Place, Amendment] = {}
    findings: list[Finding] = []
    for amendment in campaign.amendments:
        at = declared.at(f"amendment/{amendment.id}")
        names = _tables_of(amendment, campaign, tables)
        if len(names) != 1:
            findings.append(_no_such_file(amendment, campaign, tables, len(names) > 1, at))
            continue
        name = names[0]
        as_it_stands, table = opened[name].table, tables[name].table
        if as_it_stands is None or table is None:
            continue  # the file can't be read at all, which is told of it
        cell = _cell(amendment, as_it_stands, at)
        if isinstance(cell, Finding):
            findings.append(cell)
        elif cell in cells:
            says = f"{cell} is put right twice"
            why = "Only one of the two can have been meant."
            findings.append(Finding("error", "amended-twice", at, says, why, "Take one of them out."))
        else:
            cells[cell] = amendment
            tables[name] = replace(tables[name], table=_righted(table, cell, amendment.is_))
    return tables, cells, tuple(findings)


def with_amendments(
    readings: Mapping[ReadingKey, Reading], cells: Righted, looks: Iterable[Look]
) -> Mapping[ReadingKey, Reading]:
    """Readings marked with the amendment that bears on them: their own cell's, their row's or their column's.

    A row's cell bears on what is read in that row where some test takes its column: whose it is, on which pass.
    """
    if not cells:
        return readings
    seen = list(looks)
    headings = {table.spot for table, _ in seen}
    taken = {(t.file, t.sheet, i + 1) for t, glance in seen for i, h in enumerate(t.headings) if h in glance.asked}
    read = {r.at for r in readings.values()}
    of_rows = {
        cell: a
        for cell, a in cells.items()
        if cell not in read and ((cell.file, cell.sheet, cell.column) in taken or _spot(cell) in headings)
    }
    return {key: _marked(reading, cells, of_rows, headings) for key, reading in readings.items()}


def amends_nothing(declared: Declared, cells: Righted, readings: Mapping[ReadingKey, Reading]) -> Iterable[Finding]:
    """A warning for each amendment of a cell that nothing read rests on."""
    used = {r.amendment for r in readings.values()}
    for cell, amendment in cells.items():
        if amendment.id not in used:
            at = declared.at(f"amendment/{amendment.id}")
            yield Finding(
                "warning", "amends-nothing", at, f"No reading rests on {cell}, so putting it right changes nothing.",
                "What was meant to mend a reading mends none.", "Check file, line and column, or take it out.",
            )  # fmt: skip


def _tables_of(amendment: Amendment, campaign: Campaign, tables: Mapping[str, Opened]) -> list[str]:
    """The names of the tables that may be meant: one, unless a spreadsheet's sheet isn't named."""
    path = posixpath.normpath(posixpath.join(campaign.folder, amendment.file))
    mine = [name for name, o in tables.items() if name == path or (o.raw is not None and o.raw.path == path)]
    sheets = {name: t.sheet for name in mine if (t := tables[name].table) is not None}
    return [name for name in mine if not amendment.sheet or sheets.get(name, amendment.sheet) == amendment.sheet]


def _no_such_file(
    amendment: Amendment, campaign: Campaign, tables: Mapping[str, Opened], several: bool, at: Place
) -> Finding:
    why = "There is nothing to put right in it."
    files = [posixpath.relpath(o.raw.path, campaign.folder or ".") for o in tables.values() if o.raw is not None]
    if several:
        says, why = f"readings come from several sheets of {amendment.file}", "Which cell is meant can't be known."
        do = "Add `sheet:` with the name its tab has."
    elif amendment.sheet and amendment.file in files:
        says = f"nothing is read from a sheet “{amendment.sheet}” of {amendment.file}"
        do = "Write the sheet's name as its tab has it."
    else:
        says = f"no readings come from {amendment.file}; they come from {spelt(sorted(set(files)))}"
        near = did_you_mean(amendment.file, files)
        do = f"Did you mean “{near}”?" if near else "Write the path as under `readings:`."
    return Finding("error", "unknown-file", at, says, why, do)


def _cell(amendment: Amendment, table: Table, at: Place) -> Place | Finding:
    """The place of the cell meant, or what is wrong."""
    if amendment.number:
        column: int | None = amendment.number - 1 if amendment.number <= len(table.headings) else None
    else:
        column = table.find(amendment.column)
    if column is None and amendment.number:
        says = f"the table has {len(table.headings)} columns, and {letters(amendment.number)} is none of them"
        return Finding("error", "missing-column", at, says, do=f"There are A to {letters(len(table.headings))}.")
    if column is None:
        finding = missing_heading(table, amendment.column, "which is to be put right", at)
        do = finding.do if "mean" in finding.do else "Write the heading as the file has it."
        return replace(finding, why="There is nothing to put right in it.", do=do)
    rows = {row.line: row.cells for row in table.rows} | {table.heading_line: table.headings}
    if amendment.line not in rows:
        says = f"{table.file} has no row in line {amendment.line}; they stand in lines {min(rows)} to {max(rows)}"
        return Finding("error", "missing-line", at, says, do=_where(amendment, rows, column))
    found = rows[amendment.line][column]
    if found != amendment.was:
        of = table.headings[column] or letters(column + 1)
        says = f"line {amendment.line} of {table.file} says “{found}” under “{of}”, not “{amendment.was}”"
        why = "An amendment that doesn't match its file may belong elsewhere, or to another version of the file."
        return Finding("error", "amendment-mismatch", at, says, why, _where(amendment, rows, column))
    return table.at(amendment.line, column)


def _where(amendment: Amendment, rows: Mapping[int, tuple[str, ...]], column: int) -> str:
    """The nearest line that does say it in that column, as a remedy."""
    lines = [n for n, cells in rows.items() if cells[column] == amendment.was and amendment.was]
    if not lines:
        return "Copy `from:` out of the file, or correct the line."
    nearest = min(lines, key=lambda n: (abs(n - amendment.line), n))
    return f"Line {nearest} says “{amendment.was}”: write `line: {nearest}` if that is meant."


def _righted(table: Table, cell: Place, text: str) -> Table:
    index = cell.column - 1

    def put(cells: tuple[str, ...]) -> tuple[str, ...]:
        return (*cells[:index], text.strip(), *cells[index + 1 :])

    if cell.line == table.heading_line:
        return replace(table, headings=put(table.headings))

    def row(old: Row) -> Row:
        return replace(old, cells=put(old.cells)) if old.line == cell.line else old

    sorts = {where: sort for where, sort in table.sorts.items() if where != (cell.line, cell.column)}
    return replace(table, rows=tuple(row(old) for old in table.rows), sorts=sorts)


def _marked(reading: Reading, cells: Righted, of_rows: Righted, headings: set[Spot]) -> Reading:
    """Its own cell's amendment shows what the file says; its row's or heading's only bears on it."""
    at = reading.at
    if own := cells.get(at):
        return replace(reading, amendment=own.id, was=own.was)
    for cell, amendment in of_rows.items():
        heading = _spot(cell) in headings
        same = cell.column == at.column if heading else cell.line == at.line
        if same and (cell.file, cell.sheet) == (at.file, at.sheet):
            return replace(reading, amendment=amendment.id)
    return reading


def _spot(cell: Place) -> Spot:
    """The table whose heading this cell is, if it is one."""
    return cell.file, cell.sheet, cell.line
