"""What must fit together in the figures of an instrument before anything is worked out."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from reportgen.campaign.declared import Amount, Instrument
from reportgen.evaluation.instruments_known import instrument_for_metrology, is_share, read_in
from reportgen.finding import Finding, Place
from reportgen.metrology.calibration import falls
from reportgen.metrology.errors import MetrologyError, UnitError
from reportgen.metrology.instrument import observed
from reportgen.metrology.unit import check_alike, is_decibel, parse_unit
from reportgen.metrology.unit_table import TIME

At = Callable[[str], Place]


def instrument_misfits(instrument: Instrument, at: At) -> Iterable[Finding]:
    """The figures of one instrument: all in units of one thing, and none that can't be worked out. `at` gives the place
    of one of its keys, or of the whole where that has none."""
    found = tuple(_units(instrument, at))
    yield from found
    if not found:
        yield from _impossible(instrument, at)


def _units(instrument: Instrument, at: At) -> Iterable[Finding]:
    """The first of its figures in a unit of something else, and a reaction that is no time."""
    figures = list(_figures(instrument))
    for key, amount in figures[1:]:
        found = _alike(key, amount, figures[0][1].unit, at, instrument)
        yield from found
        if found:
            return
    if instrument.reaction:
        yield from _alike("reaction", instrument.reaction, "s", at, instrument)


def _figures(instrument: Instrument) -> Iterable[tuple[str, Amount]]:
    """Every amount that is in the unit of its readings, each with its key."""
    ends = (("resolution", instrument.resolution), ("range", instrument.low), ("range", instrument.high))
    for key, amount in (*ends, ("accuracy", instrument.accuracy.absolute)):
        if amount:
            yield key, amount
    if instrument.repeatability:
        yield "repeatability", instrument.repeatability.sd
    calibration = instrument.calibration
    if calibration:
        for point, add in calibration.points:
            yield "correction", point
            if add.value:
                yield "correction", add
        u = "u" if calibration.k == 1 else "uncertainty"
        for key, stated in (("correction", calibration.correction), (u, calibration.uncertainty)):
            if stated and stated.value and not is_share(stated, instrument):
                yield key, stated
    if instrument.drift and not is_share(instrument.drift, instrument):
        yield "drift", instrument.drift


def _alike(key: str, one: Amount, other: str, at: At, instrument: Instrument) -> tuple[Finding, ...]:
    try:
        check_alike(parse_unit(one.unit), parse_unit(other), difference=True)
    except UnitError as wrong:
        of, subject = f"The instrument {instrument.id}, `{key}: {one.text}`", f"instrument/{instrument.id}"
        do = f"Correct the unit of `{key}:`, or of the instrument's other figures."
        return (Finding("error", "unit", at(key), f"{of}: {wrong.says}", do=do, subject=subject),)
    return ()


def _impossible(instrument: Instrument, at: At) -> Iterable[Finding]:
    """Figures that can't be worked out for any reading at all: tried on one, so that nothing is said twice."""
    unit = parse_unit(read_in(instrument))
    if not unit.symbol or (instrument.by_hand and unit.dimension != TIME):
        return  # told of the reading, whose unit is known
    figures = instrument_for_metrology(instrument)
    said = instrument.accuracy.text
    if unit.symbol == "%" and instrument.accuracy.percent and "reading" not in said:
        says = f"“{said}” of {instrument.id}, which shows percent, is of the reading or in percentage points"
        why = "Nothing tells which: 2 % of a reading of 50 % are 1 percentage point."
        do = "Write `±2 % of reading`, or percentage points as digits: on one that shows 0.1 %, ±2 are `±20 digits`."
        yield Finding("error", "accuracy", at("accuracy"), says, why, do, f"instrument/{instrument.id}")
    calibration = figures.calibration and replace(figures.calibration, drift=None)
    fallen = falls(figures.calibration.correction) if figures.calibration else None
    try:
        if fallen:
            raise MetrologyError(*fallen)
        observed(1.0, unit, replace(figures, calibration=calibration), "", "")
    except MetrologyError as wrong:
        why = "A level is the logarithm of a ratio; so many percent of it is no error." if is_decibel(
            unit.dimension
        ) else ""  # fmt: skip
        subject = f"instrument/{instrument.id}"
        place = at("correction" if fallen else "accuracy")
        yield Finding("error", "accuracy", place, wrong.says, why, _capital(wrong.do), subject)


def _capital(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}." if text else ""
