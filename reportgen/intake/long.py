"""The long table: a row is a pass of one contender, its columns are readings."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign, Test
from reportgen.finding import Finding
from reportgen.intake.names import find_contender, unknown_contender
from reportgen.intake.seen import Frame, Glance, Seen, all_rounds, seen_in
from reportgen.intake.table import Table, without_unit


def read_long(table: Table, frame: Frame, test: Test, campaign: Campaign) -> Glance:
    """The test's own columns of every row. A column that isn't here may stand in another table: no finding."""
    columns = {i: c for c in test.columns if (i := table.find(c.heading)) is not None}
    who = frame.roles["contender"]
    seen: list[Seen] = []
    findings: list[Finding] = []
    for order, row in enumerate(table.rows):
        contender = find_contender(row.cells[who], campaign)
        if contender is None:
            findings.append(unknown_contender(row.cells[who], campaign, table.at(row.line, who)))
            continue
        for i, column in columns.items():
            unit = without_unit(table.headings[i])[1]
            seen.append(seen_in(table, frame, row, order, contender, column, i, unit))
    asked = frame.asked(table) | {table.headings[i] for i in columns}
    return Glance(tuple(seen), tuple(findings), asked, by_row=True, ordered=True, rounds=all_rounds(seen))
