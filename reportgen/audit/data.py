"""Rules on the data: readings, columns, instruments, files."""

from __future__ import annotations

import posixpath
from collections.abc import Iterable
from itertools import groupby

from reportgen.audit.case import Case, Seen
from reportgen.audit.traces import samples_outside
from reportgen.campaign.declared import Quantity
from reportgen.campaign.photos_of import is_picture
from reportgen.evaluation.evaluated import Result
from reportgen.evaluation.exact import counted
from reportgen.evaluation.grid import coarser_step
from reportgen.evaluation.hardly_known import hardly_known
from reportgen.evaluation.instruments_known import instrument_for_metrology
from reportgen.evaluation.lookup import NO_READING
from reportgen.evaluation.met.background import LOUDER
from reportgen.evaluation.no_value import nothing_read, without_a_value
from reportgen.evaluation.says import says_of
from reportgen.evaluation.steps_seen import column_of
from reportgen.finding import Place
from reportgen.intake.reading import Reading
from reportgen.metrology.errors import UnitError
from reportgen.metrology.instrument import Instrument
from reportgen.metrology.instrument_range import off_step, outside
from reportgen.metrology.unit import parse_unit
from reportgen.wording.number import plain

FEW = 2  # empty cells under one heading that are told one by one

MOST_COLUMNS = 20  # unread columns of one file named before the rest are only counted
MOST_NAMED = 3  # readings named one by one before the rest are only counted


def unread_columns(case: Case) -> Iterable[Seen]:
    """Columns of a table that no test reads."""
    for file in case.readings.files:
        sheet = file.sheets[0] if len(file.sheets) == 1 else ""
        at = Place(file.path, 1) if file.form == "text" else Place(file.path, sheet=sheet)
        for heading in file.unread[:MOST_COLUMNS]:
            yield Seen(at, f"Nothing reads the column “{heading}”.")
        if (rest := len(file.unread) - MOST_COLUMNS) > 0:
            yield Seen(at, f"Nor does anything read {rest} more columns of it.")


def readings_without_instrument(case: Case) -> Iterable[Seen]:
    """Measured columns whose instrument nobody named."""
    exact = counted(case.declared.campaign, case.readings.readings)
    for column in _measured_columns(case):
        first = column[0]
        if all(r.key in exact for r in column):
            continue
        if not first.instrument and not first.attachment and not all(r.rough or r.unweighed for r in column):
            yield Seen(
                first.at,
                f"No instrument is named for {first.key.name.replace('_', ' ')}; "
                "the finest decimal written counts as its step and nothing else is known.",
                f"test/{first.key.test}",
            )


def readings_without_unit(case: Case) -> Iterable[Seen]:
    """Measured columns without a unit: taken as pure numbers."""
    for column in _measured_columns(case):
        first = column[0]
        if not first.unit:
            says = f"{first.key.name.replace('_', ' ')} has no unit and is taken as a pure number."
            yield Seen(first.at, says, f"test/{first.key.test}")


def outside_range(case: Case) -> Iterable[Seen]:
    """Readings, and samples of traces, beyond the range of their instrument."""
    instruments = {i.id: instrument_for_metrology(i) for i in case.declared.campaign.instruments.values()}
    for column in _measured_columns(case):
        instrument = instruments.get(column[0].instrument)
        if instrument is None:
            continue
        beyond = [r for r in column if _is_as_shown(r) and _is_outside(r, instrument)]
        yield from _named(beyond, f"is outside the range of {instrument.id}")
    yield from samples_outside(case, instruments)


def off_the_step(case: Case) -> Iterable[Seen]:
    """Readings finer than their instrument shows."""
    instruments = {i.id: instrument_for_metrology(i) for i in case.declared.campaign.instruments.values()}
    for column in _measured_columns(case):
        instrument = instruments.get(column[0].instrument)
        if instrument is None:
            continue
        unit = parse_unit(column[0].unit)
        shown = ((r, r.value) for r in column if _is_as_shown(r))
        off = [r for r, value in shown if value is not None and off_step(float(value), unit, instrument)]
        yield from _named(off, f"is not a whole number of steps of {instrument.id}")


def coarser_grid(case: Case) -> Iterable[Seen]:
    """Columns read on a coarser grid than their instrument declares."""
    for column in _measured_columns(case):
        first = column[0]
        declared = case.declared.campaign.instruments.get(first.instrument)
        if declared is None or declared.resolution is None or declared.resolution.unit != first.unit:
            continue
        values = [r.value for r in column if _is_as_shown(r) and r.value is not None and r.decimals is not None]
        step = coarser_step(values, declared.resolution.value) if values else declared.resolution.value
        if step > declared.resolution.value:
            yield Seen(
                first.at,
                f"Every {first.key.name.replace('_', ' ')} is a multiple of {plain(step)} {first.unit}, "
                f"coarser than the {declared.resolution.text} declared for {declared.id}; the coarser step counts.",
                f"test/{first.key.test}",
            )


def _is_as_shown(reading: Reading) -> bool:
    """Whether it is what the instrument showed: no limit, no rough reading, no difference to another contender."""
    exact = reading.value is not None and reading.width is None
    return exact and not (reading.limit or reading.rough or reading.beside)


def empty_cells(case: Case) -> Iterable[Seen]:
    """Empty cells that say nothing of why; many under one heading are one finding, which is about nobody in particular.

    Where the author has answered for some cells, those of each contender stay together: an answer may be about one.
    """
    answered = any(a.rule == "empty-cell" and a.about.contender for a in case.declared.campaign.accepts)
    under: dict[tuple[str, str, str, str, str], list[Reading]] = {}
    for r in case.readings.readings.values():
        if r.absent_because == "no reason given":
            key = (r.at.file, r.at.sheet, r.key.test, r.key.name, r.key.contender if answered else "")
            under.setdefault(key, []).append(r)
    for (_, _, test, named, _), cells in under.items():
        name = named.replace("_", " ")
        if len(cells) <= FEW:
            yield from (Seen(r.at, f"An empty cell: {name}.", f"test/{test}", r.key.contender) for r in cells)
            continue
        cells.sort(key=lambda r: (r.at.line, r.at.column))
        whose = {r.key.contender for r in cells}
        says = f"{len(cells)} empty cells: {name}. This is the first; the last is in line {cells[-1].at.line}."
        yield Seen(cells[0].at, says, f"test/{test}", whose.pop() if len(whose) == 1 else "")


def unused_files(case: Case) -> Iterable[Seen]:
    """Files beside the readings that nothing uses."""
    used = {f.path for f in case.readings.files}
    reports = {t.laboratory.report for t in case.declared.campaign.tests if t.laboratory}
    used |= {posixpath.normpath(posixpath.join(case.declared.campaign.folder, report)) for report in reports}
    folder = case.declared.campaign.folder
    prefix = f"{folder}/" if folder else ""
    kept = tuple(f"{prefix}{name}/" for name in ("raw", "attachments"))
    mentioned = "\n".join(p.text for p in case.declared.campaign.prose)
    for path in case.files:
        if is_picture(path) and path.startswith(f"{prefix}attachments/"):
            continue  # told where photographs are declared
        beside = path.startswith(prefix) and "/" not in path[len(prefix) :] and path.endswith((".csv", ".tsv"))
        grid = path == f"{prefix}contenders.csv"
        if (path.startswith(kept) or beside) and path not in used and not grid and path[len(prefix) :] not in mentioned:
            yield Seen(Place(path), "No test and no text uses this file.")


def uncertainties_over_values(case: Case) -> Iterable[Seen]:
    """Results that can't be told from nothing."""
    for quantity in (q for t in case.declared.campaign.tests for q in t.quantities):
        results = [r for r in case.evaluation.results if r.quantity == quantity.id]
        found = [r for r in results if hardly_known(r) == "not even the side"]
        for r in found:
            who = case.declared.campaign.contender(r.contender).title
            says = f"The uncertainty of {quantity.title} of {who} is larger than its value."
            yield Seen(case.declared.at(f"quantity/{quantity.id}"), says, f"quantity/{quantity.id}", r.contender)


def quantities_without_a_value(case: Case) -> Iterable[Seen]:
    """Quantities whose readings are there and whose formula gives nothing for any contender, or for one pass of one."""
    for quantity in (q for t in case.declared.campaign.tests for q in t.quantities):
        results = [r for r in case.evaluation.results if r.quantity == quantity.id]
        read = [p for r in results for p in r.by_pass if p.keys]
        values = case.readings.readings
        there = any(all(not values[k].absent_because for k in p.keys) for p in read)
        ended = any(r.of for r in results)  # some runs did not finish, which is an outcome and told as such
        if there and all(r.missing for r in results) and not ended and not any(p.excluded for p in read):
            why = next((p.absent_because for p in read if p.absent_because), "")
            place = case.declared.at(f"quantity/{quantity.id}/formula")
            yield Seen(place, f"{quantity.title} has no value for any contender: {why}.", f"quantity/{quantity.id}")
            continue
        for result in results:
            yield from _lost_passes(case, quantity, result)
            yield from _passes_without_a_value(case, quantity, result)


def _lost_passes(case: Case, quantity: Quantity, result: Result) -> Iterable[Seen]:
    """Passes of a contender of which something was read, and which lack something else without a reason."""
    values = case.readings.readings
    lost = [
        p
        for p in result.by_pass
        if p.keys
        and p.absent_because == NO_READING
        and not p.excluded
        and any(k.contender == result.contender and not values[k].for_all for k in p.keys)
        and all(not values[k].absent_because for k in p.keys)
    ]
    if lost:
        title = case.declared.campaign.contender(result.contender).title
        passes = ", ".join(p.pass_ for p in lost)
        why = "something it is worked out from wasn't read"
        says = f"{quantity.title} of {title} has no value for pass {passes}: {why}."
        place = values[lost[0].keys[-1]].at
        yield Seen(place, says, f"quantity/{quantity.id}", result.contender)


def _passes_without_a_value(case: Case, quantity: Quantity, result: Result) -> Iterable[Seen]:
    """Passes that were read, and that the formula makes nothing of, though it does of others."""
    values = case.readings.readings
    for one in without_a_value(result, values):
        title = case.declared.campaign.contender(result.contender).title
        zero = nothing_read(one, values)
        of = f" ({zero.key.name.replace('_', ' ')} is “{zero.text}”)" if zero else ""
        says = f"{quantity.title} of {title} has no value for pass {one.pass_}: {one.absent_because}{of}."
        place = zero.at if zero else values[one.keys[-1]].at
        yield Seen(place, says, f"quantity/{quantity.id}", result.contender)


def louder_backgrounds(case: Case) -> Iterable[Seen]:
    """Levels whose background, which is a part of them, was read as louder."""
    for caveat in case.evaluation.caveats:
        if caveat.id.startswith(f"{LOUDER}/"):
            yield Seen(caveat.at, says_of(caveat), f"quantity/{caveat.quantities[0]}", caveat.contender)


def parts_not_joined(case: Case) -> Iterable[Seen]:
    """Parts of one run that nothing joins."""
    for test in case.declared.campaign.tests:
        parts = {k.part for k in case.readings.readings if k.test == test.id and k.part}
        for quantity in test.quantities:
            fed = any(k.name in quantity.reads for k in case.readings.readings if k.test == test.id and k.part)
            if parts and fed and not quantity.over_parts:
                place = case.declared.at(f"quantity/{quantity.id}")
                says = f"{quantity.title} was read in parts ({', '.join(sorted(parts))}); nothing says how they join."
                yield Seen(place, says, f"quantity/{quantity.id}")


def _measured_columns(case: Case) -> Iterable[list[Reading]]:
    plain = {
        n
        for t in case.declared.campaign.tests
        for q in t.quantities
        if q.kind in ("yes/no", "grade", "count", "order")
        for n in q.reads
    }
    measured = [
        r
        for r in case.readings.readings.values()
        if r.key.name not in plain and not r.incident and (r.value is not None or r.limit or r.series is not None)
    ]
    measured.sort(key=lambda r: (column_of(r), r.at.file, r.order))
    for _, column in groupby(measured, key=column_of):
        yield list(column)


def _is_outside(reading: Reading, instrument: Instrument) -> bool:
    """A reading in a unit that the range can't be put in is another rule's matter."""
    try:
        return outside(float(reading.value or 0), parse_unit(reading.unit), instrument)
    except UnitError:
        return False


def _named(readings: list[Reading], what: str) -> Iterable[Seen]:
    for r in readings[:MOST_NAMED]:
        yield Seen(r.at, f"{r.text} {r.unit} {what}.", f"test/{r.key.test}", r.key.contender)
    if rest := readings[MOST_NAMED:]:
        yield Seen(rest[0].at, f"So with {len(rest)} more of this column.", f"test/{rest[0].key.test}")
