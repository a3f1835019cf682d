"""Cells seen by a layout → readings: passes numbered, notations read, units settled, doubles refused."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import groupby

from reportgen.campaign.declared import Column, Laboratory, Quantity, Test
from reportgen.finding import Finding, Place
from reportgen.intake.layouts.seen import Glance, Seen
from reportgen.intake.names import EVERYONE, Names
from reportgen.intake.notations.laboratory import page_of, refuse_below_limits
from reportgen.intake.notations.notation import Expected, UnreadableError, read_cell
from reportgen.intake.notations.orders import refuse_itself
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.intake.table import Comma

Run = tuple[str, str, str]  # contender, specimen, part


def numbered(glances: Sequence[Glance], test: Test) -> tuple[tuple[tuple[Seen, ...], ...], tuple[Finding, ...]]:
    """Passes where none is written, table by table: in order of appearance of a column for a contender and part.

    The columns of one row in a long table share its pass. Where a test's columns elsewhere have different counts for
    a contender, an error asks for `pass`.
    """
    turns: Counter[tuple[Run, str]] = Counter()
    loose: dict[Run, dict[str, list[Seen]]] = defaultdict(lambda: defaultdict(list))
    done = []
    for glance in glances:
        rows = (
            groupby(glance.seen, key=lambda s: (s.order, s.contender))
            if glance.by_row
            else ((s, [s]) for s in glance.seen)
        )
        cells: list[Seen] = []
        for _, row in rows:
            together = list(row)
            run = (together[0].contender, together[0].beside.specimen or "1", together[0].beside.part)
            if run[0] == EVERYONE:
                cells.extend(together)  # without a pass it serves every pass
                continue
            turn = 1 + max(turns[run, s.column.name] for s in together)
            turns.update({(run, s.column.name): turn - turns[run, s.column.name] for s in together})
            cells.extend(s if s.pass_ else replace(s, pass_=str(turn), counted=True) for s in together)
            for seen in together:
                if not seen.pass_ and not glance.by_row:
                    loose[run][seen.column.name].append(seen)
        done.append(tuple(cells))
    return tuple(done), tuple(_unequal(test, loose))


def _unequal(test: Test, loose: Mapping[Run, Mapping[str, Sequence[Seen]]]) -> Iterable[Finding]:
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


def as_readings(
    seen: Iterable[Seen], test: Test, comma: Comma, by_unit: Mapping[str, str], names: Names
) -> tuple[tuple[Reading, ...], tuple[Finding, ...]]:
    """Reads every cell. An empty one is absent without a reason, unless its contender is not yet tested.

    `by_unit` names the campaign's instrument for a unit, where rows give units and the column names no instrument;
    `names` are the contenders that a reading may be taken against.
    """
    readings: list[Reading] = []
    findings: list[Finding] = []
    expected = expectations(test, comma, names)
    for cell in seen:
        if not cell.text and cell.contender in test.not_yet_tested:
            continue
        try:
            readings.append(_reading(cell, test, expected[cell.column.name], by_unit))
        except UnreadableError as wrong:
            says = f"{cell.column.heading}: {wrong.says}"
            findings.append(Finding("error", wrong.rule, cell.at, says, wrong.why, wrong.do))
    return tuple(readings), tuple(findings)


def expectations(test: Test, comma: Comma, names: Names) -> Mapping[str, Expected]:
    """What each column of a test may hold, from the quantity that reads it."""
    kinds = {name: q for q in reversed(test.quantities) if q.kind for name in q.reads}
    return {
        c.name: Expected(q.kind, c.unit, q.grades, comma, names, _laboratory(test, q))
        if (q := kinds.get(c.name)) is not None
        else Expected("", c.unit, (), comma, names)
        for c in test.columns
    }


def _reading(seen: Seen, test: Test, expected: Expected, by_unit: Mapping[str, str]) -> Reading:
    beside = seen.beside
    outside = beside.unit or seen.heading_unit or expected.unit
    written = read_cell(seen.text, expected if outside == expected.unit else replace(expected, unit=outside))
    if written.beside and seen.contender in (written.beside, EVERYONE):
        raise _against_itself(seen)
    if expected.kind == "order":
        refuse_itself(written.word, seen.contender)
    if expected.laboratory:
        refuse_below_limits(written, seen.text, outside, expected.laboratory)
    number = not written.word and not written.absent_because
    if number and written.unit and beside.unit and written.unit != beside.unit and ":" not in seen.text:
        raise UnreadableError(
            "units-disagree",
            f"“{seen.text}” has its own unit, and the row says {beside.unit}.",
            "Which of the two holds can't be known.",
            "Leave one of them out.",
        )
    if expected.kind in ("count", "yes/no", "grade", "order"):
        outside = ""
    unit = (written.unit or outside) if number else ""
    specimen = beside.specimen or ("" if seen.contender == EVERYONE else "1")
    key = ReadingKey(test.id, seen.contender, specimen, seen.pass_, beside.part, seen.column.name)
    return Reading(
        key,
        seen.text,
        written.value,
        unit,
        seen.instrument or _instrument(seen.column, unit, by_unit),
        seen.at,
        written.limit,
        written.word,
        written.absent_because,
        written.decimals,
        beside.session,
        beside.round_,
        beside.time,
        beside.note,
        seen.order,
        beside.conditions,
        width=written.width,
        rough=written.rough,
        unweighed=written.unweighed,
        beside=written.beside,
        frames=written.frames,
        unfinished=written.unfinished,
        attachment=expected.laboratory.report if expected.laboratory else "",
        page=page_of(beside.page, expected.laboratory),
        counted=seen.counted,
    )


def _laboratory(test: Test, quantity: Quantity) -> Laboratory | None:
    return test.laboratory if quantity.kind == "laboratory" else None


def _against_itself(seen: Seen) -> UnreadableError:
    return UnreadableError(
        "against-itself",
        f"“{seen.text}” stands with {'all contenders' if seen.contender == EVERYONE else seen.contender} itself.",
        "A difference to itself says nothing of how much it is.",
        "Write what was read, or name the contender it was read against.",
    )


def _instrument(column: Column, unit: str, by_unit: Mapping[str, str]) -> str:
    """The one named for the column, else the campaign's for the unit that was written."""
    named = column.instrument and column.instrument != by_unit.get(column.unit)
    return column.instrument if named else by_unit.get(unit, column.instrument)


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
    where = f"line {first.line}" if first.file == second.at.file and not first.sheet else str(first)
    part = f", part {key.part}" if key.part else ""
    return Finding(
        "error",
        "reading-twice",
        second.at,
        f"{key.contender}, pass {key.pass_}{part}: “{key.name}” is read here and already in {where}.",
        "Only one of the two can be the reading of that pass.",
        "Number the passes apart, or take one of the rows out of the table.",
    )
