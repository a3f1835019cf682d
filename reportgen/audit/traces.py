"""What is looked at in a logger's traces as in readings: samples beyond the range of their instrument."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.audit.case import Case, Seen
from reportgen.evaluation.evaluated import TraceShown
from reportgen.finding import Place
from reportgen.intake.reading import Reading
from reportgen.metrology.calibration import as_shown
from reportgen.metrology.errors import UnitError
from reportgen.metrology.instrument import Instrument
from reportgen.metrology.instrument_range import outside
from reportgen.metrology.unit import parse_unit
from reportgen.wording.number import plain
from reportgen.wording.unit import joined


def samples_outside(case: Case, instruments: Mapping[str, Instrument]) -> Iterable[Seen]:
    """The highest and the lowest sample of each trace that its instrument can't show, at its line where that is known.

    A sample that says itself that the scale ended is none.
    """
    for trace in case.evaluation.traces:
        reading = case.readings.readings[trace.key]
        instrument = instruments.get(reading.instrument)
        if instrument is None:
            continue
        for end, value, bound in (("highest", trace.highest, trace.over), ("lowest", trace.lowest, trace.under)):
            if value is not None and not bound and _is_outside(value, trace.unit, instrument):
                says = f"“{reading.text}” reads {joined(plain(value), trace.unit)} at its {end}"
                says = f"{says}, outside the range of {instrument.id}."
                yield Seen(_line(trace, reading, end), says, f"test/{trace.key.test}", trace.key.contender)


def _is_outside(value: float, unit: str, instrument: Instrument) -> bool:
    try:
        read_in = parse_unit(unit)
        return outside(as_shown(instrument, value, read_in), read_in, instrument)
    except UnitError:
        return False


def _line(trace: TraceShown, reading: Reading, end: str) -> Place:
    assert reading.series is not None
    lines = [mark.line for mark in trace.marks if mark.what == end]
    return Place(reading.series.file, lines[0] if lines else 0)
