"""What was asked for and isn't there, and what is there and nobody asked for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign, Column, Test
from reportgen.finding import Finding, Place
from reportgen.intake.layouts.seen import Glance, missing_heading
from reportgen.intake.table import Spot, Table, did_you_mean, key, without_unit

Look = tuple[Table, Glance]


@dataclass(frozen=True)
class Unread:
    """What no test takes from a table: headings, entries under `what`, and entries much like a column, with it."""

    headings: tuple[str, ...] = ()
    entries: tuple[str, ...] = ()
    misspelt: tuple[tuple[str, Place, Column], ...] = ()


def left_unread(looks: Sequence[tuple[Test, Table, Glance]]) -> Unread:
    """What is left of one table when every test that has it has looked."""
    table = looks[0][1]
    asked = {h for _, _, g in looks for h in g.asked}
    names = {n for _, _, g in looks for n in g.names}
    columns = {c.heading: c for t, _, _ in looks for c in t.columns}
    left = {e: at for _, _, g in looks for e, at in g.entries.items() if e not in names}
    near = {e: columns.get(did_you_mean(without_unit(e)[0], columns)) for e in left}
    return Unread(
        tuple(h for h in table.headings if h and h not in asked),
        tuple(e for e in left if e and near[e] is None),
        tuple((e, at, column) for e, at in left.items() if (column := near[e]) is not None),
    )


def missing_columns(
    campaign: Campaign, looks: Mapping[str, Sequence[Look]], unread: Mapping[Spot, Unread]
) -> Iterable[Finding]:
    """Columns of a test found in none of its tables, and conditions found in none of the campaign's.

    `looks`: by test; `unread`: by table. A column that long tables lack is an error; one that a log or a wide table
    lacks is an error only where something much like it stands there, else a warning: it may not have been done yet.
    """
    lacking: set[str] = set()
    for test in campaign.tests:
        everyone = {c.id for c in campaign.contenders} <= set(test.not_yet_tested)
        tables = looks[test.id]
        if not tables or everyone or not all(g.known for _, g in tables):
            continue
        near = {c.heading for t, _ in tables for _, _, c in unread[t.spot].misspelt}
        for column in test.columns:
            if not any(_holds(table, glance, column) for table, glance in tables):
                lacking.add(column.heading)
                if column.heading not in near:
                    yield _missing(test, column, tables)
    for left in unread.values():
        yield from (_misspelt(e, at, c, c.heading in lacking) for e, at, c in left.misspelt)
    yield from _missing_conditions(campaign, looks)


def _holds(table: Table, glance: Glance, column: Column) -> bool:
    if glance.by_row:
        return table.find(column.heading) is not None
    return not table.rows or any(s.column.name == column.name for s in glance.seen)


def _misspelt(entry: str, at: Place, column: Column, lacking: bool) -> Finding:
    return Finding(
        "error" if lacking else "warning",
        "unknown-what",
        at,
        f"Nothing that is measured is called “{entry}”; “{column.heading}” is much like it.",
        "What stands in such rows is read by no test.",
        f"Did you mean “{column.heading}”? If it is something else, give it a name further from that one.",
    )


def _missing(test: Test, column: Column, tables: Sequence[Look]) -> Finding:
    by_name = [t for t, g in tables if not g.by_row]
    if not by_name:
        missing = missing_heading(tables[0][0], column.heading, f"which the test “{test.title}” asks for")
        return replace(missing, do=_called_before(test, column, tables) or _meant_as_unit(column) or missing.do)
    table = by_name[0]
    return Finding(
        "warning",
        "no-readings",
        table.at(table.heading_line),
        f"No row of {table.file} says “{column.heading}”, which the test “{test.title}” asks for.",
        "The test has nothing to show there.",
        _meant_as_unit(column) or "Add the readings, or list the contenders under `not yet tested:`.",
        f"test/{test.id}",
    )


def _called_before(test: Test, column: Column, tables: Sequence[Look]) -> str:
    """A raw file stays as it is when a test is renamed; its entry then names the heading of old."""
    for former in test.formerly:
        old = as_id(column.heading).replace(test.id, former)
        for heading in (h for table, _ in tables for h in table.headings):
            if as_id(without_unit(heading)[0]) == old:
                said = f"columns: {{{column.name.replace('_', ' ')}: {heading}}}"
                return f"“{heading}” is what it was called before: write `{said}` where it says `formerly:`."
    return ""


def _meant_as_unit(column: Column) -> str:
    """`full jar: g` names a column g; whoever writes that mostly means the unit."""
    if len(column.heading) > 3 or key(column.heading) == key(column.name):
        return ""
    name = column.name.replace("_", " ")
    return f"`{name}: {column.heading}` names a column; if it is the unit, write `{name}: {{unit: {column.heading}}}`."


def unread_inline(table: Table, left: Unread) -> Iterable[Finding]:
    """Headings of a table typed in the YAML that no test takes (those of files are kept with the file)."""
    for heading in (*left.headings, *left.entries):
        yield Finding(
            "warning",
            "unread-column",
            table.at(table.heading_line),
            f"Nothing reads “{heading}” in this table.",
            "What was written down and isn't used may be a misspelt name.",
            "Correct the name, add it under `measure:` or `conditions:`, or take it out.",
        )


def _missing_conditions(campaign: Campaign, looks: Mapping[str, Sequence[Look]]) -> Iterable[Finding]:
    tables = {table.spot: table for each in looks.values() for table, _ in each}
    names = dict.fromkeys(name for t in campaign.tests for name in t.conditions)
    for name in names:
        if tables and all(t.find(name) is None for t in tables.values()):
            yield missing_heading(next(iter(tables.values())), name, "which is listed under `conditions:`")
