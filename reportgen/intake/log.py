"""The bench log: one long table for everything taken by hand, a reading a row, in the order it was taken."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign, Test
from reportgen.finding import Finding
from reportgen.intake.names import find_contender, unknown_contender
from reportgen.intake.seen import Frame, Glance, Seen, all_rounds, seen_in
from reportgen.intake.table import Table, key, without_unit


def read_log(table: Table, frame: Frame, test: Test, campaign: Campaign) -> Glance:
    """The rows whose `what` is one of the test's columns; `what` may carry its unit in brackets."""
    columns = {key(c.heading): c for c in test.columns}
    who, what, value = (frame.roles[role] for role in ("contender", "what", "value"))
    seen: list[Seen] = []
    findings: list[Finding] = []
    names: set[str] = set()
    for order, row in enumerate(table.rows):
        bare, unit = without_unit(row.cells[what])
        column = columns.get(key(row.cells[what])) or columns.get(key(bare))
        contender = find_contender(row.cells[who], campaign)
        if contender is None:
            findings.append(unknown_contender(row.cells[who], campaign, table.at(row.line, who)))
        elif column is not None:
            names.add(row.cells[what])
            seen.append(seen_in(table, frame, row, order, contender, column, value, unit))
    asked = frame.asked(table)
    return Glance(tuple(seen), tuple(findings), asked, frozenset(names), ordered=True, rounds=all_rounds(seen))
