"""The bench log: one long table for everything taken by hand, a reading a row, in the order it was taken."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign, Test
from reportgen.finding import Finding
from reportgen.intake.happened.incidents import about_headings, is_incident
from reportgen.intake.layouts.seen import (
    Frame,
    Glance,
    Seen,
    all_rounds,
    by_heading,
    column_called,
    entries_of,
    unit_beside,
)
from reportgen.intake.names import contenders_in, unknown_contender
from reportgen.intake.table import Table


def read_log(table: Table, frame: Frame, test: Test, campaign: Campaign) -> Glance:
    """The rows whose `what` is one of the test's columns; `what` may carry its unit in brackets."""
    columns = by_heading(test)
    who, what, value = (frame.roles[role] for role in ("contender", "what", "value"))
    seen: list[Seen] = []
    findings: list[Finding] = []
    names: set[str] = set()
    people = contenders_in((row.cells[who] for row in table.rows), campaign)
    for order, row in enumerate(table.rows):
        column = column_called(row.cells[what], columns)
        contender = people[row.cells[who]]
        if contender is None:
            findings.append(unknown_contender(row.cells[who], campaign, table.at(row.line, who)))
        elif is_incident(row.cells[what], test):
            names.add(row.cells[what])
        elif column is not None:
            names.add(row.cells[what])
            unit = unit_beside(row.cells[what], column)
            at, beside = table.at(row.line, value), frame.beside(row)
            seen.append(Seen(contender, column, row.cells[value], at, order, beside, beside.pass_, unit))
    return Glance(
        tuple(seen),
        tuple(findings),
        frame.asked(table) | (about_headings(table) if any(is_incident(name, test) for name in names) else frozenset()),
        entries_of(table, frame),
        frozenset(names),
        ordered=True,
        rounds=all_rounds(seen),
    )
