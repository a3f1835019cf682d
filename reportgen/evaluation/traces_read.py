"""A reading that stands for a trace, as metrology walks along it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

from reportgen.finding import Finding
from reportgen.intake.reading import Reading, Series
from reportgen.metrology.calibration import corrections
from reportgen.metrology.errors import MetrologyError, UnitError
from reportgen.metrology.instrument import Instrument, clock, observed
from reportgen.metrology.traces.piece import Piece
from reportgen.metrology.traces.trace import Trace
from reportgen.metrology.uncertain import Limit, Source, Uncertain
from reportgen.metrology.unit import Unit, alike, convert, named, parse_unit

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Read = tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.int8]]

Pieces = Callable[[Series], Iterator["Read"]]  # times in s, values, sides; see intake/logger/samples.py


def no_samples(series: Series) -> Iterator[Read]:
    """What stands in where a campaign has no logger files."""
    raise LookupError(f"no samples of {series.file} were handed over")


def trace_of(
    reading: Reading,
    instrument: Instrument | None,
    session: str,
    name: str,
    pieces: Pieces,
    years: float | None = None,
    whose: str = "",
) -> Trace:
    """The trace behind a reading, `years` after the calibration of its instrument: its samples are corrected, and what
    is worked out from them carries how well the correction is known. Raises UnitError where the file's unit and the
    declared one don't go together.

    A sample beyond a limit that the file doesn't tell is beyond the end of the instrument's range, where that is known.
    """
    series = reading.series
    assert series is not None
    unit = _unit(series)
    step = 10.0**-series.decimals if instrument is None or instrument.resolution is None else None

    def observe(value: float | None, limit: Limit | None, which: str) -> Uncertain:
        read = observed(value, unit, instrument, session, f"{name}/{which}", limit, step, years=years, corrected=True)
        return replace(read, contributions={_of_trace(s, name): size for s, size in read.contributions.items()})

    return Trace(
        name=reading.key.name,
        pieces=lambda: (_piece(read, unit, instrument) for read in pieces(series)),
        unit=unit,
        observe=observe,
        begins=series.begins,
        ends=series.ends,
        interval=series.interval,
        gaps=series.gaps,
        reading=name,
        clock=clock(instrument),
        whose=whose,
    )


def _of_trace(source: Source, name: str) -> Source:
    """An accuracy that instruments don't share is still the same in every sample of a trace: one probe took them."""
    return replace(source, where=name) if source.sort == "accuracy" else source


def units_apart(reading: Reading, wrong: MetrologyError) -> Finding:
    """What is told where the units of a trace can't be used."""
    says = f"“{reading.text}”: {wrong.says}"
    return Finding("error", "unit", reading.at, says, do=wrong.do, subject=f"test/{reading.key.test}")


def not_of_its_instrument(reading: Reading, wrong: MetrologyError) -> Finding:
    """What is told where a trace is in a unit that its instrument doesn't read in."""
    says = f"“{reading.text}”, read off {reading.instrument}: {wrong.says}"
    do = "Name the instrument that took it, or correct the unit."
    return Finding("error", "unit", reading.at, says, do=do, subject=f"test/{reading.key.test}")


def _unit(series: Series) -> Unit:
    """The file's unit where it is one we know, else the declared one. Raises UnitError where the two differ."""
    declared = parse_unit(series.declared_unit)
    if not series.unit:
        return declared
    try:
        of_file = parse_unit(series.unit)
    except UnitError:
        if series.declared_unit:
            return declared
        raise
    if series.declared_unit and not _same(of_file, declared):
        raise UnitError(
            f"the file says {named(of_file)}, and {named(declared)} is declared", "correct the unit under `columns:`"
        )
    return of_file


def _same(one: Unit, other: Unit) -> bool:
    return alike(one, other) and (one.factor, one.offset) == (other.factor, other.offset)


def _piece(read: Read, unit: Unit, instrument: Instrument | None) -> Piece:
    import numpy as np

    times, values, sides = read
    for side, end in ((1, instrument.high), (-1, instrument.low)) if instrument else ():
        if end is not None and bool((unknown := (sides == side) & np.isnan(values)).any()):
            values = np.where(unknown, convert(end.value, end.unit, unit), values)
    if instrument is not None and instrument.calibration is not None:
        values = values + corrections(instrument, values, unit)
    return Piece(times, values, sides)
