"""Readings become values with uncertainty: the declared instrument translated for metrology."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.assumed import ALL
from reportgen.evaluation.exact import counted
from reportgen.evaluation.frames_read import SECONDS, first_frame, rate_of
from reportgen.evaluation.instruments_known import instrument_for_metrology
from reportgen.evaluation.laboratories import as_stated, laboratory_of
from reportgen.evaluation.reading_days import day_of, span_of, years_apart
from reportgen.evaluation.steps_seen import column_of, steps_seen
from reportgen.evaluation.traces_read import Pieces, no_samples, not_of_its_instrument, trace_of, units_apart
from reportgen.finding import Finding
from reportgen.intake.notations.against import chain_of, other_of
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.metrology.arithmetic import add
from reportgen.metrology.errors import MetrologyError, NoValue, UnitError
from reportgen.metrology.instrument import clock, observed, observed_difference
from reportgen.metrology.traces.trace import Trace
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import convert, is_decibel, parse_unit
from reportgen.metrology.unit_algebra import step_of


class Observer:
    """Turns readings into values; remembers each, so that one reading stays one variable.

    That holds for a reading which serves several contenders, and for one that others were read against: its errors
    bear one name wherever it goes, and cancel between those that stand on it. How far an eye or a laboratory errs alike
    from pass to pass nobody says: what they state is one error for all readings of a contender in a column, so that no
    number of passes makes it smaller, and each contender's own, so that it never cancels between two (JCGM 100, 5.2.2
    and F.1.2.4: a correlation that isn't known may not be taken for none).
    """

    def __init__(self, campaign: Campaign, readings: Mapping[ReadingKey, Reading], pieces: Pieces = no_samples) -> None:
        self.campaign, self.readings, self.pieces = campaign, readings, pieces
        self.instruments = {i.id: instrument_for_metrology(i) for i in campaign.instruments.values()}
        self.steps = steps_seen(campaign, readings.values())
        self.chained = _chained(campaign, readings.values())
        self.same = {**{k: _name(o) for k, o in self.chained.items()}, **_for_all(readings.values())}
        self.leant_on = frozenset(_leant_on(readings))
        self.exact = counted(campaign, readings)
        self.findings: dict[ReadingKey, Finding] = {}
        self._observed: dict[ReadingKey, Uncertain] = {}
        self._traces: dict[ReadingKey, Trace] = {}

    def observed(self, reading: Reading) -> Uncertain:
        """The reading with its instrument's uncertainty; raises `ReadingRefused` where its unit can't be used.

        One read against another contender stands on that one's reading; raises `NoValue` where that was not
        read, and where a bound from above stands on one from below.
        """
        for one in reversed((reading, *chain_of(reading, self.readings))):
            if one.key not in self._observed:
                self._observed[one.key] = self._observe(one)
        return self._observed[reading.key]

    def _observe(self, reading: Reading) -> Uncertain:
        if reading.absent_because:
            raise NoValue(f"{reading.key.contender}, which it was read against, was not read: {reading.absent_because}")
        try:
            other = other_of(reading, self.readings) if reading.beside else None
            return self._alone(reading) if other is None else self._beside(reading, self._observed[other.key])
        except NoValue:
            raise
        except (UnitError, MetrologyError) as wrong:
            by = f"“{reading.text}”, read off {reading.instrument}" if reading.instrument else f"“{reading.text}”"
            says, subject = f"{by}: {wrong.says}", f"test/{reading.key.test}"
            finding = Finding("error", "unit", reading.at, says, do=wrong.do, subject=subject)
            raise ReadingRefused(finding, reading.instrument) from None

    def trace(self, reading: Reading) -> Trace:
        """The trace a reading stands for; raises `ReadingRefused` where its unit can't be used."""
        if reading.key not in self._traces:
            self._traces[reading.key] = self._trace(reading)
        return self._traces[reading.key]

    def _trace(self, reading: Reading) -> Trace:
        instrument = self.instruments.get(reading.instrument)
        try:
            of_session = (session_of(reading), self._name(reading), self.pieces, self._years(reading))
            trace = trace_of(reading, instrument, *of_session, whose=self._stated(reading))
        except MetrologyError as wrong:
            raise ReadingRefused(units_apart(reading, wrong), reading.instrument) from None
        if instrument is not None:
            try:
                trace.observe(1.0, None, "")
            except MetrologyError as wrong:
                raise ReadingRefused(not_of_its_instrument(reading, wrong), reading.instrument) from None
        return trace

    def _alone(self, reading: Reading) -> Uncertain:
        if reading.word:
            says = "it is a word, and a formula works out numbers alone"
            raise MetrologyError(says, "take its name out of the formula")
        rate, name = rate_of(reading, self.campaign), self._name(reading)
        if reading.unweighed:  # nobody read anything: nothing an instrument could add
            return Uncertain(0.0, parse_unit(SECONDS if rate else reading.unit), {}, reading.limit)
        step = self._step(reading, rate)
        value = observed(
            _in_seconds(reading.value, rate),
            parse_unit(SECONDS if rate else reading.unit),
            self.instruments.get(reading.instrument),
            session=session_of(reading),
            reading=name,
            limit=reading.limit,
            step=step,
            width=_in_seconds(reading.width, rate),
            leant_on=reading.key in self.leant_on,
            stated=self._stated(reading),
            years=self._years(reading),
        )
        value = as_stated(value, laboratory_of(self.campaign, reading), self._stated(reading))
        of_frame = first_frame(reading, reading.instrument, name, step or 0.0)
        further = {**of_frame, **self._clock(reading, rate)}
        return replace(value, contributions={**value.contributions, **further}) if further else value

    def _beside(self, reading: Reading, other: Uncertain) -> Uncertain:
        """The other contender's reading and the difference to it."""
        rate = rate_of(reading, self.campaign)
        unit, difference = parse_unit(SECONDS if rate else reading.unit), _in_seconds(reading.value, rate)
        if reading.unweighed:
            return add(other, Uncertain(0.0, step_of(unit), {}, reading.limit))
        ends = None
        if other.value is not None and difference is not None:
            levels = is_decibel(unit.dimension)
            there = other.value if levels else convert(other.value, other.unit, unit)
            ends = (there + difference, there)
        apart = observed_difference(
            difference,
            unit,
            self.instruments.get(reading.instrument),
            session=session_of(reading),
            reading=self._name(reading),
            limit=reading.limit,
            step=self._step(reading, rate),
            width=_in_seconds(reading.width, rate),
            leant_on=reading.key in self.leant_on,
            stated=self._stated(reading),
            ends=ends,
            years=self._years(reading),
        )
        return add(other, replace(apart, contributions={**apart.contributions, **self._clock(reading, rate)}))

    def _clock(self, reading: Reading, rate: Fraction | None) -> dict[Source, float]:
        """How far a camera's rate may be off, as a part of the time its frames make."""
        seconds = _in_seconds(reading.value, rate)
        if rate is None or not seconds:
            return {}
        return {source: seconds * part for source, part in clock(self.instruments.get(reading.instrument)).items()}

    def _name(self, reading: Reading) -> str:
        return self.same.get(reading.key, _name(reading.key))

    def _stated(self, reading: Reading) -> str:
        """Whose error a stated width or uncertainty is: the contender's in that column, or that of one for all."""
        key = self.chained.get(reading.key, reading.key)
        return "/".join((key.test, ALL if reading.for_all else key.contender, key.name))

    def _years(self, reading: Reading) -> float | None:
        """Years between the calibration of an instrument that drifts and the reading; None for one that doesn't."""
        declared = self.campaign.instruments.get(reading.instrument)
        if declared is None or declared.drift is None:
            return None
        years = years_apart(span_of(declared.calibrated), day_of(reading, self.campaign.tested))
        if years is None:
            says = f"{declared.id} drifts from its calibration on, and nothing says when this was read"
            raise MetrologyError(says, "Add `tested: 2026-05-02` to campaign.yaml, or dates in a column `time`.")
        return years

    def _step(self, reading: Reading, rate: Fraction | None) -> float | None:
        """The step it was read in. What says itself how rough it is has its instrument's own alone, or one frame."""
        if reading.rough:
            return 1 / float(rate) if rate else None
        if reading.key in self.exact:
            return None
        step = self.steps.get(column_of(reading))
        return _in_seconds(step, rate)


class ReadingRefused(Exception):
    """A reading whose unit or value can't be used, with the instrument it was read off ("" for none)."""

    def __init__(self, finding: Finding, instrument: str) -> None:
        self.finding, self.instrument = finding, instrument
        super().__init__(finding.says)


def session_of(reading: Reading) -> str:
    """Within one session instruments were not moved or zeroed; a test without a session column is one session."""
    return reading.session or f"the session of {reading.key.test}"


def _in_seconds(number: Decimal | float | None, rate: Fraction | None) -> float | None:
    """A number of frames as a time at `rate`, rounded once; as it stands where there is no rate."""
    if number is None:
        return None
    return float(Fraction(number) / rate) if rate else float(number)


def _name(key: ReadingKey) -> str:
    return "/".join((key.test, key.contender, key.specimen, key.pass_, key.part, key.name))


def _for_all(readings: Iterable[Reading]) -> Mapping[ReadingKey, str]:
    """A reading that serves every contender is one variable, named by its place."""
    return {r.key: f"{r.key.test}/all/{r.key.name}/{r.at}" for r in readings if r.for_all}


def _leant_on(readings: Mapping[ReadingKey, Reading]) -> Iterable[ReadingKey]:
    """Readings that values of several contenders stand on."""
    for reading in readings.values():
        if reading.for_all:
            yield reading.key
        if reading.beside and (other := other_of(reading, readings)) is not None:
            yield other.key


def _chained(campaign: Campaign, readings: Iterable[Reading]) -> Mapping[ReadingKey, ReadingKey]:
    """Where a method says `chained`, the "after" of one weighing is the "before" of the next: one reading, told of the
    "before" by the key of the "after"."""
    chained = {t.id for t in campaign.tests if t.chained}
    same: dict[ReadingKey, ReadingKey] = {}
    last: dict[tuple[str, str, str], Reading] = {}
    in_order = sorted((r for r in readings if r.key.test in chained), key=lambda r: (r.at.file, r.order))
    for r in in_order:
        stem, _, _side = r.key.name.rpartition("before" if r.key.name.endswith("before") else "after")
        line = (r.key.test, r.key.contender, stem)
        if r.key.name.endswith("after"):
            last[line] = r
        elif (
            r.key.name.endswith("before") and line in last and (last[line].value, last[line].unit) == (r.value, r.unit)
        ):
            same[r.key] = last[line].key
    return same
