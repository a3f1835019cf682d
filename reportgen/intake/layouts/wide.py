"""The wide table: like the sheet on the bench, its headings are contenders and each row says what was read."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.campaign.declared import Campaign, Column, Test
from reportgen.finding import Finding
from reportgen.intake.layouts.seen import (
    Frame,
    Glance,
    Seen,
    all_rounds,
    by_heading,
    column_called,
    contender_headings,
    entries_of,
    missing_heading,
    unit_beside,
)
from reportgen.intake.names import EVERYONE, spellings
from reportgen.intake.table import Row, Table, did_you_mean


def read_wide(table: Table, frame: Frame, test: Test, campaign: Campaign, alone: bool) -> Glance:
    """The rows whose `what` is one of the test's columns, a reading for each contender.

    Without a column `what` every row is of the test's only column, where no other test has the table.
    """
    people = contender_headings(table, campaign)
    findings = [*_twice(table, people), *_misspelt(table, frame, people, campaign)]
    if "what" not in frame.roles and not (alone and len(test.columns) == 1):
        findings.append(missing_heading(table, "what", "and the headings are contenders"))
    asked = frame.asked(table) | {table.headings[i] for i in people}
    if findings:
        return Glance((), tuple(findings), asked, known=False)
    seen: list[Seen] = []
    names: set[str] = set()
    for order, row in enumerate(table.rows):
        column, unit = _column(frame, row, test)
        if column is None:
            continue
        names.add(frame.of(row, "what"))
        beside = frame.beside(row)
        for i, contender in people.items():
            if not row.cells[i] and (contender == EVERYONE or _for_all(row, people)):
                continue
            at = table.at(row.line, i)
            seen.append(Seen(contender, column, row.cells[i], at, order, beside, beside.pass_, unit))
    ordered = bool(seen) and (all(s.beside.time for s in seen) or all_rounds(seen))
    return Glance(
        tuple(seen),
        (),
        asked,
        entries_of(table, frame),
        frozenset(names),
        ordered=ordered,
        rounds=all_rounds(seen),
    )


def _for_all(row: Row, people: Mapping[int, str]) -> bool:
    """Whether the row has one reading for all of them: then the empty cells beside it want none."""
    return any(contender == EVERYONE and row.cells[i] for i, contender in people.items())


def _column(frame: Frame, row: Row, test: Test) -> tuple[Column | None, str]:
    if "what" not in frame.roles:
        return (test.columns[0] if len(test.columns) == 1 else None), ""
    column = column_called(frame.of(row, "what"), by_heading(test))
    return column, unit_beside(frame.of(row, "what"), column) if column else ""


def _twice(table: Table, people: Mapping[int, str]) -> list[Finding]:
    found: dict[str, int] = {}
    wrong = []
    for i, contender in people.items():
        first = found.setdefault(contender, i)
        if first != i:
            wrong.append(
                Finding(
                    "error",
                    "heading-twice",
                    table.at(table.heading_line, i),
                    f"“{table.headings[first]}” and “{table.headings[i]}” are one contender, {contender}.",
                    "Which column is meant can't be known.",
                    "Give each contender one column.",
                )
            )
    return wrong


def _misspelt(table: Table, frame: Frame, people: Mapping[int, str], campaign: Campaign) -> list[Finding]:
    rest = [i for i in range(len(table.headings)) if i not in people and i not in frame.roles.values()]
    wrong = []
    for i in rest:
        near = did_you_mean(table.headings[i], spellings(campaign)) if table.headings[i] else ""
        if near and i not in frame.conditions.values():
            wrong.append(
                Finding(
                    "error",
                    "unknown-contender",
                    table.at(table.heading_line, i),
                    f"There is no contender “{table.headings[i]}”.",
                    "Its readings would be lost.",
                    f"Did you mean “{near}”?",
                )
            )
    return wrong
