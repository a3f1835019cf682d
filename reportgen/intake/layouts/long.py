"""The long table: a row is a pass of one contender, its columns are readings."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign, Test
from reportgen.finding import Finding
from reportgen.intake.layouts.seen import Frame, Glance, Seen, all_rounds, unit_beside
from reportgen.intake.names import EVERYONE, contenders_in, unknown_contender
from reportgen.intake.table import Table


def read_long(table: Table, frame: Frame, test: Test, campaign: Campaign) -> Glance:
    """The test's own columns of every row. A column that isn't here may stand in another table: no finding."""
    columns = {i: c for c in test.columns if (i := table.find(c.heading)) is not None}
    units = {i: unit_beside(table.headings[i], c) for i, c in columns.items()}
    who = frame.roles["contender"]
    seen: list[Seen] = []
    findings: list[Finding] = []
    people = contenders_in((row.cells[who] for row in table.rows), campaign)
    for order, row in enumerate(table.rows):
        contender = people[row.cells[who]]
        if contender is None:
            findings.append(unknown_contender(row.cells[who], campaign, table.at(row.line, who)))
            continue
        beside = frame.beside(row)
        for i, column in columns.items():
            if contender == EVERYONE and not row.cells[i]:
                continue  # what is read once for all of them is one cell of many
            at = table.at(row.line, i)
            seen.append(Seen(contender, column, row.cells[i], at, order, beside, beside.pass_, units[i]))
    asked = frame.asked(table) | {table.headings[i] for i in columns}
    return Glance(tuple(seen), tuple(findings), asked, by_row=True, ordered=True, rounds=all_rounds(seen))
