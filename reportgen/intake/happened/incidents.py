"""Rows of the bench log that tell what happened: `what` is `incident`, the value says what."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign, Incident, Narrowing, Test
from reportgen.finding import Finding, Place
from reportgen.intake.layouts.pictured import shown_beside
from reportgen.intake.layouts.seen import Frame, frame_of
from reportgen.intake.names import EVERYONE, contenders_in
from reportgen.intake.reading import Happened, Reading, ReadingKey
from reportgen.intake.table import Row, Table, did_you_mean, key

INCIDENT = "incident"
ABOUT = ("about", "test")  # headings of the column that says which test it happened in
_TIMES = re.compile(r"(?P<event>.*\S?),?\s+(?:(?P<n>[1-9][0-9]{0,3}) times|(?P<twice>twice))")


def is_incident(what: str, test: Test) -> bool:
    """Whether a row of the log tells an incident; a test may read a column of that name instead."""
    return key(what) == INCIDENT and all(key(c.heading) != INCIDENT for c in test.columns)


def happened_in(
    table: Table, frame: Frame, tests: Sequence[Test], campaign: Campaign, readings: Mapping[ReadingKey, Reading]
) -> tuple[tuple[Happened, ...], tuple[Finding, ...]]:
    """The incidents of one log. `tests` read it; `readings` say what was read on which pass.

    An incident is about what its column `about` (or `test`) names, else about the tests in which its event is counted,
    else about the tests of this log that have a reading of that contender and pass; several of these are told.
    """
    rows = [row for row in table.rows if all(is_incident(frame.of(row, "what"), t) for t in tests)]
    people = contenders_in((frame.of(row, "contender") for row in rows), campaign)
    found: list[Happened] = []
    findings: list[Finding] = []
    for row in rows:
        contender = people[frame.of(row, "contender")]
        at = table.at(row.line, frame.roles["value"])
        if contender is None:
            continue  # told where the log is read
        if not frame.of(row, "value"):
            says = "this row says that something happened, and not what"
            findings.append(Finding("error", "incident-of-nothing", at, says, do="Write it under `value`."))
            continue
        about = _narrowed(row, frame, contender)
        event, times, wrong = _event(frame.of(row, "value"), frame.of(row, "note"), at, campaign)
        quantities, unclear = _about(row, table, event, about, tests, campaign, readings)
        findings += [*wrong, *unclear]
        id = f"{as_id(f'{table.file} {table.sheet}')}-{row.line}"
        said = _says(frame.of(row, "value"), frame.of(row, "note"))
        narrowing = Narrowing(quantities, about.contender, about.specimen, about.pass_, about.part)
        beside = frame.beside(row)
        shown = shown_beside(table, row, beside, campaign, findings)
        of = (about.contender, about.specimen, f"pass {about.pass_}" if about.pass_ else "", about.part, event)
        incident = Incident(id, narrowing, said, event=event, times=times, photos=shown.photos, film=shown.film)
        found.append(Happened(replace(incident, when=beside.time, name=as_id(" ".join(of))), at))
    return tuple(found), tuple(findings)


def about_headings(table: Table) -> frozenset[str]:
    """The headings of the columns that say which test an incident happened in."""
    return frozenset(table.headings[i] for name in ABOUT if (i := table.find(name)) is not None)


def counted_events(campaign: Campaign) -> frozenset[str]:
    """The events that some quantity counts."""
    return frozenset(q.count_of for t in campaign.tests for q in t.quantities if q.count_of)


def log_of(table: Table, roles: Mapping[str, str], tests: Sequence[Test]) -> Frame | None:
    """The frame of a bench log, or None for another table."""
    frame = frame_of(table, roles, tests[0])
    return frame if not frame.findings and {"contender", "what", "value"} <= frame.roles.keys() else None


def _narrowed(row: Row, frame: Frame, contender: str) -> Narrowing:
    beside = frame.beside(row)
    return Narrowing((), "" if contender == EVERYONE else contender, beside.specimen, beside.pass_, beside.part)


def _says(value: str, note: str) -> str:
    if not note:
        return value
    return note if key(value) in key(note) else f"{value}: {note}"


def _event(value: str, note: str, at: Place, campaign: Campaign) -> tuple[str, int, Iterable[Finding]]:
    """The event a value names (its id, "" for a sentence) and how many times; one much like a counted event is told."""
    counted = counted_events(campaign)
    declared = {i.event for i in (*campaign.incidents, *(i for t in campaign.tests for i in t.incidents)) if i.event}
    found = _TIMES.fullmatch(value)
    name, times = (found["event"].rstrip(","), 2 if found["twice"] else int(found["n"])) if found else (value, 1)
    if as_id(name) in counted | declared:
        return as_id(name), times, ()
    near = did_you_mean(name, counted)
    if near:
        says = f"nothing counts “{name}”; “{near}” is counted and much like it"
        do = f"Did you mean “{near}”? If it is something else, say it in other words."
        return "", 1, [Finding("error", "unknown-event", at, says, "It would not be counted.", do)]
    return (as_id(name), times, ()) if note else ("", 1, ())


def _about(
    row: Row, table: Table, event: str, about: Narrowing, tests: Sequence[Test], campaign: Campaign,
    readings: Mapping[ReadingKey, Reading],
) -> tuple[tuple[str, ...], Iterable[Finding]]:  # fmt: skip
    """The quantities it is about."""
    of_tests = {t.id: tuple(q.id for q in t.quantities) for t in campaign.tests}
    column = next((i for name in ABOUT if (i := table.find(name)) is not None), None)
    named = row.cells[column] if column is not None else ""
    if named:
        quantity = next((q for ids in of_tests.values() for q in ids if q == as_id(named)), "")
        if quantity or as_id(named) in of_tests:
            return of_tests.get(as_id(named), (quantity,)), ()
        near = did_you_mean(named, [*of_tests, *(q for ids in of_tests.values() for q in ids)])
        says = f"there is no test or quantity “{named}”"
        do = f"Did you mean “{near}”?" if near else "Write the name of a test, or leave the cell empty."
        return (), [Finding("error", "unknown-test", table.at(row.line, column), says, do=do)]
    counting = [q for t in campaign.tests for q in t.quantities if q.count_of and q.count_of == event]
    said = [id for q in counting for id in q.count_in]
    where = said or [t.id for t in tests if any(_of(k, t, about) for k in readings)]
    quantities = tuple(q for id in dict.fromkeys(where) for q in of_tests[id])
    if len(set(where)) > 1 and not said:
        titles = ", ".join(campaign.test(id).title for id in dict.fromkeys(where))
        says = f"This incident could be of several tests, and shows on all of them: {titles}."
        do = "Add a column `about` to the log and name the test in it."
        why = "Which readings it touched can't be known from the log."
        return quantities, [Finding("note", "incident-of-several", table.at(row.line), says, why, do)]
    return quantities, ()


def _of(k: ReadingKey, test: Test, about: Narrowing) -> bool:
    return (
        k.test == test.id
        and about.contender in ("", k.contender)
        and about.pass_ in ("", k.pass_)
        and about.part in ("", k.part)
        and about.specimen in ("", k.specimen)
    )
