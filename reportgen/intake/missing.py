"""What was asked for and isn't there, and what is there and nobody asked for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reportgen.campaign.declared import Campaign, Column, Test
from reportgen.finding import Finding
from reportgen.intake.seen import Glance, missing_heading
from reportgen.intake.table import Table, did_you_mean, key, without_unit

Look = tuple[Table, Glance]


def missing_columns(
    campaign: Campaign, looks: Mapping[str, Sequence[Look]], unread: Mapping[str, tuple[str, ...]]
) -> Iterable[Finding]:
    """Columns of a test found in none of its tables, and conditions found in none of the campaign's.

    `looks`: by test; `unread`: by file, the headings and entries under `what` that no test takes. A column that long
    tables lack is an error; one that a log or a wide table lacks is an error only where something like it stands
    there unread, else a warning: it may not have been done yet.
    """
    for test in campaign.tests:
        everyone = {c.id for c in campaign.contenders} <= set(test.not_yet_tested)
        tables = looks[test.id]
        if not tables or everyone or not all(g.known for _, g in tables):
            continue
        for column in test.columns:
            if not any(_holds(table, glance, column) for table, glance in tables):
                yield _missing(test, column, tables, unread)
    yield from _missing_conditions(campaign, looks)


def _holds(table: Table, glance: Glance, column: Column) -> bool:
    if glance.by_row:
        return table.find(column.heading) is not None
    return not table.rows or any(s.column.name == column.name for s in glance.seen)


def _missing(test: Test, column: Column, tables: Sequence[Look], unread: Mapping[str, tuple[str, ...]]) -> Finding:
    by_name = [t for t, g in tables if not g.by_row]
    if not by_name:
        return missing_heading(tables[0][0], column.heading, f"which the test “{test.title}” asks for")
    for table in by_name:
        near = did_you_mean(column.heading, [without_unit(n)[0] for n in unread.get(table.file, ())])
        for row in table.rows if near else ():
            for i, cell in enumerate(row.cells):
                if key(without_unit(cell)[0]) == key(near):
                    return Finding(
                        "error",
                        "unknown-what",
                        table.at(row.line, i),
                        f"Nothing is called “{cell}”; the test “{test.title}” asks for “{column.heading}”.",
                        "Its readings would be lost.",
                        f"Did you mean “{column.heading}”?",
                    )
    table = by_name[0]
    return Finding(
        "warning",
        "no-readings",
        table.at(table.heading_line),
        f"No row of {table.file} says “{column.heading}”, which the test “{test.title}” asks for.",
        "The test has nothing to show there.",
        "Add the readings, or list the contenders under `not yet tested:`.",
        f"test/{test.id}",
    )


def _missing_conditions(campaign: Campaign, looks: Mapping[str, Sequence[Look]]) -> Iterable[Finding]:
    tables = {table.file: table for each in looks.values() for table, _ in each}
    names = dict.fromkeys(name for t in campaign.tests for name in t.conditions)
    for name in names:
        if tables and all(t.find(name) is None for t in tables.values()):
            yield missing_heading(next(iter(tables.values())), name, "which is listed under `conditions:`")


def left_unread(table: Table, headings: set[str], names: set[str], by_name: bool) -> tuple[str, ...]:
    """The headings, and in logs and wide tables the entries under `what`, that no test takes."""
    what = table.find("what") if by_name else None
    entries = dict.fromkeys(row.cells[what] for row in table.rows) if what is not None else {}
    return (*(h for h in table.headings if h and h not in headings), *(e for e in entries if e and e not in names))
