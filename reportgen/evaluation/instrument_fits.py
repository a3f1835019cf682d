"""What must fit together in the figures of an instrument before anything is worked out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from reportgen.campaign.declared import Amount, Instrument
from reportgen.evaluation.instruments_known import instrument_for_metrology, is_share, read_in
from reportgen.finding import Finding, Place
from reportgen.metrology.calibration import falls
from reportgen.metrology.errors import MetrologyError, UnitError
from reportgen.metrology.instrument import observed
from reportgen.metrology.unit import check_alike, is_decibel, parse_unit
from reportgen.metrology.unit_table import TIME


def instrument_misfits(instrument: Instrument, place: Place) -> Iterable[Finding]:
    """The figures of one instrument: all in units of one thing, and none that can't be worked out."""
    found = tuple(_units(instrument, place))
    yield from found
    if not found:
        yield from _impossible(instrument, place)


def _units(instrument: Instrument, place: Place) -> Iterable[Finding]:
    """The first of its figures in a unit of something else, and a reaction that is no time."""
    figures = list(_figures(instrument))
    for what, amount in figures[1:]:
        of = f"The instrument {instrument.id}{what}"
        found = _alike(amount.unit, figures[0][1].unit, of, place, instrument)
        yield from found
        if found:
            return
    if instrument.reaction:
        yield from _alike(instrument.reaction.unit, "s", f"The instrument {instrument.id}, reaction", place, instrument)


def _figures(instrument: Instrument) -> Iterable[tuple[str, Amount]]:
    """Every amount that is in the unit of its readings, each with the words for where it stands."""
    for amount in (instrument.resolution, instrument.low, instrument.high, instrument.accuracy.absolute):
        if amount:
            yield "", amount
    if instrument.repeatability:
        yield ", repeatability", instrument.repeatability.sd
    calibration = instrument.calibration
    if calibration:
        for at, add in calibration.points:
            yield ", correction", at
            if add.value:
                yield ", correction", add
        for what, stated in ((", correction", calibration.correction), (", uncertainty", calibration.uncertainty)):
            if stated and stated.value and not is_share(stated, instrument):
                yield what, stated
    if instrument.drift and not is_share(instrument.drift, instrument):
        yield ", drift", instrument.drift


def _alike(one: str, other: str, of: str, place: Place, instrument: Instrument) -> tuple[Finding, ...]:
    try:
        check_alike(parse_unit(one), parse_unit(other), difference=True)
    except UnitError as wrong:
        subject = f"instrument/{instrument.id}"
        return (Finding("error", "unit", place, f"{of}: {wrong.says}", do=wrong.do, subject=subject),)
    return ()


def _impossible(instrument: Instrument, place: Place) -> Iterable[Finding]:
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
        yield Finding("error", "accuracy", place, says, why, do, f"instrument/{instrument.id}")
    calibration = figures.calibration and replace(figures.calibration, drift=None)
    try:
        fallen = falls(figures.calibration.correction) if figures.calibration else None
        if fallen:
            raise MetrologyError(*fallen)
        observed(1.0, unit, replace(figures, calibration=calibration), "", "")
    except MetrologyError as wrong:
        why = "A level is the logarithm of a ratio; so many percent of it is no error." if is_decibel(
            unit.dimension
        ) else ""  # fmt: skip
        subject = f"instrument/{instrument.id}"
        yield Finding("error", "accuracy", place, wrong.says, why, _capital(wrong.do), subject)


def _capital(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}." if text else ""
