"""Cells seen by a layout → readings: passes numbered, notations read, units settled, doubles refused."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Test
from reportgen.finding import Finding, Place
from reportgen.intake.notation import NO_REASON, Expected, UnreadableError, read_cell
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.intake.seen import Glance, Seen
from reportgen.intake.table import Comma


def numbered(glance: Glance, test: Test) -> tuple[tuple[Seen, ...], tuple[Finding, ...]]:
    """Passes where none is written: in order of appearance, a row each in a long table, else a reading each.

    Where a test's columns then have different counts for a contender, an error asks for `pass`.
    """
    turns: Counter[tuple[str, ...]] = Counter()
    rows: dict[tuple[int, str], str] = {}
    done = []
    loose: dict[tuple[str, str, str], dict[str, list[Seen]]] = defaultdict(lambda: defaultdict(list))
    for seen in glance.seen:
        run = (seen.contender, seen.specimen or "1", seen.part)
        if glance.by_row:
            if (seen.order, seen.contender) not in rows:
                turns[run] += 1
                rows[seen.order, seen.contender] = str(turns[run])
            number = rows[seen.order, seen.contender]
        else:
            turns[(*run, seen.column.name)] += 1
            number = str(turns[(*run, seen.column.name)])
            if not seen.pass_:
                loose[run][seen.column.name].append(seen)
        done.append(replace(seen, pass_=seen.pass_ or number))
    return tuple(done), tuple(_unequal(test, loose))


def _unequal(test: Test, loose: Mapping[tuple[str, str, str], Mapping[str, Sequence[Seen]]]) -> Iterable[Finding]:
    headings = {c.name: c.heading for c in test.columns}
    for (contender, _, part), by_name in loose.items():
        if len({len(s) for s in by_name.values()}) > 1:
            last = max((s for each in by_name.values() for s in each), key=lambda s: s.order)
            counts = ", ".join(f"“{headings[name]}” {len(s)} times" for name, s in by_name.items())
            where = f"{contender}, {part}" if part else contender
            yield Finding(
                "error",
                "pass-unclear",
                last.at,
                f"{where}: {counts}.",
                "Without passes, which readings belong together can't be known.",
                "Add a column `pass`, or write `none (reason)` where a reading is missing.",
            )


def as_readings(seen: Iterable[Seen], test: Test, comma: Comma) -> tuple[tuple[Reading, ...], tuple[Finding, ...]]:
    """Reads every cell. Empty ones are absent without a reason, and one warning a column says so."""
    readings: list[Reading] = []
    findings: list[Finding] = []
    expected = expectations(test, comma)
    empty: dict[str, list[Seen]] = defaultdict(list)
    for cell in seen:
        try:
            readings.append(_reading(cell, test, expected[cell.column.name]))
        except UnreadableError as wrong:
            findings.append(
                Finding("error", wrong.rule, cell.at, f"{cell.column.heading}: {wrong.says}", wrong.why, wrong.do)
            )
            continue
        if readings[-1].absent_because == NO_REASON:
            empty[cell.column.heading].append(cell)
    findings.extend(_without_reason(test, heading, cells) for heading, cells in empty.items())
    return tuple(readings), tuple(findings)


def expectations(test: Test, comma: Comma) -> Mapping[str, Expected]:
    """What each column of a test may hold, from the quantity that reads it."""
    kinds = {name: q for q in reversed(test.quantities) if q.kind for name in q.reads}
    return {
        c.name: Expected(kinds[c.name].kind, c.unit, kinds[c.name].grades, comma)
        if c.name in kinds
        else Expected("", c.unit, (), comma)
        for c in test.columns
    }


def _reading(seen: Seen, test: Test, expected: Expected) -> Reading:
    outside = seen.row_unit or seen.heading_unit or expected.unit
    written = read_cell(seen.text, replace(expected, unit=outside))
    number = not written.word and not written.absent_because
    if number and written.unit and seen.row_unit and written.unit not in (seen.row_unit, "s"):
        raise UnreadableError(
            "units-disagree",
            f"“{seen.text}” has its own unit, and the row says {seen.row_unit}.",
            "Which of the two holds can't be known.",
            "Leave one of them out.",
        )
    if expected.kind in ("count", "yes/no", "grade"):
        outside = ""
    key = ReadingKey(test.id, seen.contender, seen.specimen or "1", seen.pass_ or "1", seen.part, seen.column.name)
    return Reading(
        key,
        seen.text,
        written.value,
        (written.unit or outside) if number else "",
        seen.column.instrument,
        seen.at,
        written.limit,
        written.word,
        written.absent_because,
        written.decimals,
        seen.session,
        seen.round_,
        seen.time,
        seen.note,
        seen.order,
        seen.conditions,
    )


def _without_reason(test: Test, heading: str, cells: Sequence[Seen]) -> Finding:
    lines = ", ".join(str(n) for n in dict.fromkeys(c.at.line for c in cells))
    many = f"{len(cells)} empty cells, lines {lines}" if len(cells) > 1 else "an empty cell"
    return Finding(
        "warning",
        "empty-cell",
        cells[0].at,
        f"{heading}: {many}.",
        "A reader can't tell a reading that was lost from one that was never meant to be.",
        "Write `none (reason)`.",
        f"test/{test.id}",
        cells[0].contender if len(cells) == 1 else "",
    )


def without_doubles(readings: Iterable[Reading]) -> tuple[Mapping[ReadingKey, Reading], tuple[Finding, ...]]:
    """Two readings of one contender, pass, part and name are an error that names both places."""
    kept: dict[ReadingKey, Reading] = {}
    findings = []
    for reading in readings:
        first = kept.setdefault(reading.key, reading)
        if first is not reading:
            findings.append(_double(first.at, reading))
    return kept, tuple(findings)


def _double(first: Place, second: Reading) -> Finding:
    key = second.key
    where = f"line {first.line}" if first.file == second.at.file else str(first)
    part = f", part {key.part}" if key.part else ""
    return Finding(
        "error",
        "reading-twice",
        second.at,
        f"{key.contender}, pass {key.pass_}{part}: “{key.name}” is read here and already in {where}.",
        "Only one of the two can be the reading of that pass.",
        "Number the passes apart, or take one of the rows out of the table.",
    )
