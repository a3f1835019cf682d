"""What must fit together before anything is worked out: units of one thing, and ends the right way round.

Each mistake is told where the author made it, rather than where a formula later stumbles over it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from functools import partial

from reportgen.campaign.declared import Amount, Campaign, Declared, Kind, Quantity, Test
from reportgen.evaluation.cost_fits import cost_misfits
from reportgen.evaluation.frames_read import unit_read
from reportgen.evaluation.instrument_fits import instrument_misfits
from reportgen.evaluation.laboratory_fits import laboratory_misfits
from reportgen.evaluation.method_fits import method_misfits
from reportgen.evaluation.order_clashes import order_clashes
from reportgen.evaluation.unweighed import some_of_nothing
from reportgen.evaluation.verdict_fits import criterion_misfits
from reportgen.finding import Finding, Place
from reportgen.intake.notations.frames import is_frames
from reportgen.intake.reading import Reading, Readings
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import Unit, check_alike, parse_unit
from reportgen.metrology.unit_table import FORCE, MASS, TIME

OF_KIND: Mapping[Kind, tuple[str, Callable[[Unit], bool]]] = {
    "timed": ("a time", lambda unit: unit.dimension == TIME),
    "weighed before and after": ("a mass", lambda unit: unit.dimension in (MASS, FORCE)),
    "level": ("a level", lambda unit: unit.kind == "level"),
    "level over background": ("a level", lambda unit: unit.kind == "level"),
    "share lost": ("a share", lambda unit: not unit.dimension),
}


def misfits(declared: Declared, readings: Readings, units: Mapping[str, Unit]) -> Iterable[Finding]:
    """Everything that doesn't fit. `units`: those of the quantities, by id, as far as they are known."""
    campaign = declared.campaign
    for test in campaign.tests:
        for quantity in test.quantities:
            unit = units.get(quantity.id)
            if unit is None:
                continue  # an unknown unit is told by itself
            yield from _kind_and_unit(declared, quantity, unit)
            matters = declared.at(_at(quantity, "matters"))
            of = f"{quantity.id}, `unit: {quantity.unit}` and `matters`"
            for finding in _amount(quantity.matters, unit, of, matters):
                do = "Correct the one of the two that isn't what the formula comes to."
                yield replace(finding, do=do, subject=f"quantity/{quantity.id}")
            yield from _readings_of(declared, readings, test, quantity, unit)
    yield from some_of_nothing(readings)
    yield from laboratory_misfits(declared, readings, units)
    yield from order_clashes(declared, readings)
    yield from _off_their_instruments(campaign, readings)
    for instrument in campaign.instruments.values():
        yield from instrument_misfits(instrument, partial(_key, declared, instrument.id))
    yield from method_misfits(declared, units)
    yield from criterion_misfits(declared, units)
    yield from cost_misfits(declared)


def _key(declared: Declared, instrument: str, key: str) -> Place:
    return declared.at(f"instrument/{instrument}/{key}")


def _at(quantity: Quantity, key: str) -> str:
    return f"quantity/{quantity.id}/{key}"


def _kind_and_unit(declared: Declared, quantity: Quantity, unit: Unit) -> Iterable[Finding]:
    """A kind that says what is measured, with a unit of something else."""
    if not quantity.kind or quantity.kind not in OF_KIND:
        return
    what, fits = OF_KIND[quantity.kind]
    if not fits(unit):
        says = f"{quantity.id} is of kind {quantity.kind}, and “{quantity.unit}” is no unit of {what}"
        do = "Correct the unit, or use the kind `one reading`."
        yield Finding(
            "error", "unit", declared.at(_at(quantity, "unit")), says, do=do, subject=f"quantity/{quantity.id}"
        )


def _readings_of(
    declared: Declared, readings: Readings, test: Test, quantity: Quantity, unit: Unit
) -> Iterable[Finding]:
    """Readings that a kind's own formula takes as they are, in a unit of something else: one finding a unit."""
    if not quantity.kind or quantity.kind in ("yes/no", "grade", "count", "order") or _is_reckoned(quantity):
        return
    columns = {c.name: c for c in test.columns}
    told: set[tuple[str, str]] = set()
    for reading in readings.readings.values():
        name = reading.key.name
        if reading.key.test != test.id or name not in quantity.reads or not _is_amount(reading):
            continue
        read_in = unit_read(reading, declared.campaign)
        if (name, read_in) in told or not _is_known(read_in):
            continue
        told.add((name, read_in))
        declared_there = reading.unit == columns[name].unit and f"column/{test.id}/{name}" in declared.places
        place = declared.at(f"column/{test.id}/{name}") if declared_there else reading.at
        for finding in _alike(read_in, unit, columns[name].heading, place, difference=bool(reading.beside)):
            yield replace(finding, subject=f"quantity/{quantity.id}")


def _is_reckoned(quantity: Quantity) -> bool:
    """Whether the author's own formula makes something else of the readings."""
    return quantity.formula.strip() not in (
        *quantity.reads,
        " - ".join(quantity.reads),
        " - ".join(reversed(quantity.reads)),
    )


def _is_known(unit: str) -> bool:
    """Whether it is a unit at all; one that isn't is told of its reading, whatever the formula."""
    try:
        parse_unit(unit)
    except UnitError:
        return False
    return True


def _is_amount(reading: Reading) -> bool:
    return (reading.value is not None or reading.limit is not None) and bool(reading.unit)


def _off_their_instruments(campaign: Campaign, readings: Readings) -> Iterable[Finding]:
    """Readings in a unit that their instrument doesn't read in: a weight off a watch. One finding a unit and test."""
    told: set[tuple[str, str, str]] = set()
    told_already = {i.id for i in campaign.instruments.values() if any(instrument_misfits(i, Place))}
    for reading in readings.readings.values():
        instrument = None if reading.instrument in told_already else campaign.instruments.get(reading.instrument)
        figure = (instrument.resolution or instrument.high or instrument.low) if instrument else None
        key = (reading.key.test, reading.unit, reading.instrument)
        if is_frames(reading.unit):
            continue  # what a camera makes of them is told where they go
        if figure is None or key in told or not _is_amount(reading) or not _is_known(reading.unit):
            continue
        told.add(key)
        if _is_level(reading.unit) and _is_level(figure.unit):
            continue  # a meter's figures in plain dB hold for its weightings
        of = f"“{reading.text}”, read off {reading.instrument}"
        for finding in _alike(reading.unit, parse_unit(figure.unit), of, reading.at, difference=True):
            yield replace(finding, do="Name the instrument that took it, or correct the unit.")


def _is_level(unit: str) -> bool:
    return parse_unit(unit).kind == "level"


def _amount(amount: Amount | None, unit: Unit, of: str, place: Place) -> Iterable[Finding]:
    return _alike(amount.unit, unit, of, place, difference=True) if amount else ()


def _alike(one: str, other: Unit | str, of: str, place: Place, difference: bool = False) -> Iterable[Finding]:
    """Nothing where the two units go together, else what is wrong with them."""
    try:
        check_alike(parse_unit(one), parse_unit(other) if isinstance(other, str) else other, difference)
    except UnitError as wrong:
        yield Finding("error", "unit", place, f"{of}: {wrong.says}", do=wrong.do)
