"""Rows and columns of a table that hold no readings: means, totals, remarks of the sheet's own."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Campaign, Source
from reportgen.finding import Finding
from reportgen.intake.layouts.seen import Frame
from reportgen.intake.names import find_contender, names_of
from reportgen.intake.table import Row, Table, did_you_mean, key, spelt


def without_left_out(table: Table, source: Source, frame: Frame) -> Table:
    """The table without the rows that its source leaves out by what stands under contender or `what`."""
    names = {key(name) for name in source.leave_out}
    where = [frame.roles[role] for role in ("contender", "what") if role in frame.roles]
    if not names:
        return table
    return replace(table, rows=tuple(row for row in table.rows if not _is_one(row, where, names)))


def headings_left_out(table: Table, source: Source) -> frozenset[str]:
    """The headings that its source leaves out: a column of means in a wide table."""
    names = {key(name) for name in source.leave_out}
    return frozenset(h for h in table.headings if key(h) in names)


def _is_one(row: Row, where: Iterable[int], names: set[str]) -> bool:
    return any(key(row.cells[i]) in names for i in where)


def wrong_left_out(campaign: Campaign, tables: Sequence[tuple[Source, Table]]) -> Iterable[Finding]:
    """Names under `leave out:` of which something is measured, and those that no row or heading bears."""
    contenders = names_of(campaign)
    columns = {key(c.heading): c.heading for t in campaign.tests for c in t.columns}
    for source, table in tables:
        held = {key(cell): cell for cells in (table.headings, *(r.cells for r in table.rows)) for cell in cells if cell}
        for name in source.leave_out:
            contender = find_contender(name, contenders)
            if contender or key(name) in columns:
                yield _measured(source, name, contender)
            elif key(name) not in held:
                yield _nothing(source, name, table, held)


def _measured(source: Source, name: str, contender: str | None) -> Finding:
    what = f"is the contender {contender}" if contender else "is something that is measured"
    do = "`exclude:` leaves passes out, with the reason; `not yet tested:` says what is to come."
    says = f"`leave out:` names “{name}”, which {what}."
    why = "It is for rows that hold no readings; readings that vanish are what a sceptic looks for."
    return Finding("error", "leaves-readings-out", source.place, says, why, do)


def _nothing(source: Source, name: str, table: Table, held: Mapping[str, str]) -> Finding:
    near = did_you_mean(name, held.values())
    return Finding(
        "warning",
        "leaves-nothing-out",
        source.place,
        f"`leave out:` names {spelt([name])}, and no row or heading of {table.file or 'this table'} is called that.",
        "What was meant to be left out may still be read.",
        f"Did you mean “{near}”?" if near else "Correct the name, or take it out.",
    )
