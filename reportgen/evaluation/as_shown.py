"""Readings that are what an instrument showed, beside that instrument: what can be held against its figures."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from contextlib import suppress

from reportgen.campaign.declared import Campaign
from reportgen.campaign.declared import Instrument as DeclaredInstrument
from reportgen.evaluation.instruments_known import instrument_for_metrology
from reportgen.intake.notations.frames import is_frames
from reportgen.intake.reading import Reading
from reportgen.metrology.calibration import correction
from reportgen.metrology.errors import UnitError
from reportgen.metrology.instrument import Instrument
from reportgen.metrology.unit import Unit, parse_unit

Held = Callable[[float, Unit, Instrument], bool]


def is_as_shown(reading: Reading) -> bool:
    """Whether it is what the instrument showed: no limit, no rough reading, no difference to another contender."""
    exact = reading.value is not None and reading.width is None
    return exact and not (reading.limit or reading.rough or reading.beside or reading.word or reading.incident)


def those(campaign: Campaign, readings: Iterable[Reading], held: Held) -> Iterable[Reading]:
    """The readings of which `held` is true; one in a unit that its instrument's figures can't be put in is none."""
    return (found for found, _ in each_of_those(campaign, readings, (held,)))


def each_of_those(
    campaign: Campaign, readings: Iterable[Reading], several: Sequence[Held]
) -> Iterable[tuple[Reading, Held]]:
    """The same for several questions at once: each reading with each that holds of it."""
    known: dict[str, Instrument] = {}
    for declared in campaign.instruments.values():
        with suppress(UnitError):  # told by itself
            known[declared.id] = instrument_for_metrology(declared)
    for reading in readings:
        instrument = known.get(reading.instrument)
        if instrument is None or not is_as_shown(reading) or is_frames(reading.unit):
            continue
        try:
            value, unit = float(reading.value or 0), parse_unit(reading.unit)
        except UnitError:
            continue
        for held in several:
            if _holds(held, value, unit, instrument):
                yield reading, held


def _holds(held: Held, value: float, unit: Unit, instrument: Instrument) -> bool:
    try:
        return held(value, unit, instrument)
    except UnitError:
        return False


def is_corrected(instrument: DeclaredInstrument | None) -> bool:
    """Whether what an instrument shows is corrected by what its calibration found."""
    return instrument is not None and instrument.calibration is not None and instrument.calibration.corrects


def correction_of(instrument: DeclaredInstrument | None, reading: Reading) -> float | None:
    """What the calibration of its instrument adds to a reading, in the reading's unit; None where it adds nothing.

    Of a difference to another contender's reading only its two ends could tell, and of a trace each sample has its own.
    """
    if instrument is None or not is_corrected(instrument):
        return None
    if reading.value is None or reading.beside or reading.unweighed or is_frames(reading.unit):
        return None
    try:
        return correction(instrument_for_metrology(instrument), float(reading.value), parse_unit(reading.unit)) or None
    except UnitError:
        return None
