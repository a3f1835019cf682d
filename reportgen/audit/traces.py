"""What is looked at in a logger's traces: samples beyond the range of their instrument, or apart from those around
them, limits passed to and fro, clocks nobody vouches for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.audit.case import Case, Seen
from reportgen.evaluation.clocks import clock_unknown, functions_along
from reportgen.evaluation.evaluated import TraceShown
from reportgen.finding import Place
from reportgen.intake.reading import Reading
from reportgen.metrology.calibration import as_shown
from reportgen.metrology.errors import UnitError
from reportgen.metrology.instrument import Instrument
from reportgen.metrology.instrument_range import outside
from reportgen.metrology.unit import parse_unit
from reportgen.wording import interval
from reportgen.wording.number import plain
from reportgen.wording.traces import since
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


def samples_apart(case: Case) -> Iterable[Seen]:
    """Traces with samples that stand apart; a warning where a result is such a one."""
    for trace in case.evaluation.traces:
        if not trace.apart_in_all:
            continue
        reading = case.readings.readings[trace.key]
        assert reading.series is not None
        peaks = _peaks_of(case, trace)
        ends = {"highest": trace.highest, "lowest": trace.lowest}
        alone = [(end, o) for end in ends for _, x, o in trace.apart if x == ends[end] and end in peaks]
        seconds = trace.apart[0][0]
        if alone:
            off = interval.uncertainty(abs(alone[0][1]), trace.unit)
            says = f"The {alone[0][0]} of “{reading.text}” is a single sample, {off} from those beside it."
        elif trace.apart_in_all == 1:
            says = f"“{reading.text}” has one sample that stands apart from those around it, {_at(reading, seconds)}."
        else:
            says = f"“{reading.text}” has {plain(trace.apart_in_all)} samples that stand apart from those around them, "
            says = f"{says}the first {_at(reading, seconds)}."
        at = _line(trace, reading, alone[0][0]) if alone else Place(reading.series.file)
        yield Seen(at, says, f"test/{trace.key.test}", trace.key.contender, "warning" if alone else None)


def limits_passed_often(case: Case) -> Iterable[Seen]:
    """Limits that a trace passed several times the same way, so that the first may be too early."""
    for trace in case.evaluation.traces:
        reading = case.readings.readings[trace.key]
        assert reading.series is not None
        for crossing in (c for c in trace.crossings if c.times > 1 and not c.past):
            limit = joined(plain(crossing.level), trace.unit)
            says = f"“{reading.text}” goes {crossing.side} {limit} {plain(crossing.times)} times; the first counts."
            lines = [m.line for m in trace.marks if m.what == "passed" and m.quantity == crossing.quantity]
            at = Place(reading.series.file, lines[0] if lines else 0)
            yield Seen(at, says, f"quantity/{crossing.quantity}", trace.key.contender)


def clocks_not_stated(case: Case) -> Iterable[Seen]:
    """Channels that times, areas or slopes are taken from, by a logger whose clock nobody vouches for."""
    campaign, told = case.declared.campaign, set()
    for reading in (r for r in case.readings.readings.values() if r.series is not None):
        column = (reading.key.test, reading.key.name)
        quantities = campaign.test(reading.key.test).quantities
        if column not in told and any(clock_unknown(campaign, q, [reading]) for q in quantities):
            told.add(column)
            says = f"Nothing says how well the clock behind “{reading.text}” ({reading.instrument}) keeps time."
            yield Seen(Place(reading.series.file if reading.series else ""), says, f"test/{reading.key.test}")


def _peaks_of(case: Case, trace: TraceShown) -> set[str]:
    quantities = case.declared.campaign.test(trace.key.test).quantities
    return {f for q in quantities for f in functions_along(q, trace.key.name, raw=True)} & {"highest", "lowest"}


def _at(reading: Reading, seconds: float) -> str:
    assert reading.series is not None
    return f"at {since(seconds, reading.series.clock)}"


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
