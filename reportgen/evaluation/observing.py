"""Readings become values with uncertainty: the declared instrument translated for metrology."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal

from reportgen.campaign.declared import Amount, Campaign
from reportgen.campaign.declared import Instrument as DeclaredInstrument
from reportgen.evaluation.grid import coarser_step
from reportgen.finding import Finding
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.metrology.errors import MetrologyError, UnitError
from reportgen.metrology.instrument import Instrument, Size, observed
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import convert, parse_unit


def instrument_for_metrology(declared: DeclaredInstrument) -> Instrument:
    """Amounts as floats with units, accuracy by its parts. Raises `UnitError` for a unit nobody knows."""

    def size(amount: Amount | None) -> Size | None:
        return Size(float(amount.value), parse_unit(amount.unit)) if amount else None

    accuracy = declared.accuracy
    return Instrument(
        id=declared.id,
        resolution=size(declared.resolution),
        low=size(declared.low),
        high=size(declared.high),
        absolute=size(accuracy.absolute),
        percent=float(accuracy.percent) if accuracy.percent is not None else None,
        digits=accuracy.digits,
        known=accuracy.known,
        by_hand=declared.by_hand,
        shared=declared.shared,
    )


class Observer:
    """Turns readings into values; remembers each, so that one reading stays one variable."""

    def __init__(self, campaign: Campaign, readings: Mapping[ReadingKey, Reading]) -> None:
        self.instruments = {i.id: instrument_for_metrology(i) for i in campaign.instruments.values()}
        self.steps = _steps_seen(campaign, readings.values())
        self.same = _chained(campaign, readings.values())
        self.findings: dict[ReadingKey, Finding] = {}
        self._observed: dict[ReadingKey, Uncertain] = {}

    def observed(self, reading: Reading) -> Uncertain:
        """The reading with its instrument's uncertainty; raises `ReadingRefused` where its unit can't be used."""
        if reading.key not in self._observed:
            self._observed[reading.key] = self._observe(reading)
        return self._observed[reading.key]

    def _observe(self, reading: Reading) -> Uncertain:
        try:
            return observed(
                float(reading.value) if reading.value is not None else None,
                parse_unit(reading.unit),
                self.instruments.get(reading.instrument),
                session=session_of(reading),
                reading=self.same.get(reading.key, _name(reading.key)),
                limit=reading.limit,
                step=self.steps.get(column_of(reading)),
            )
        except (UnitError, MetrologyError) as wrong:
            by = f"“{reading.text}”, read off {reading.instrument}" if reading.instrument else f"“{reading.text}”"
            says, subject = f"{by}: {wrong.says}", f"test/{reading.key.test}"
            finding = Finding("error", "unit", reading.at, says, do=wrong.do, subject=subject)
            raise ReadingRefused(finding, reading.instrument) from None


class ReadingRefused(Exception):
    """A reading whose unit or value can't be used, with the instrument it was read off ("" for none)."""

    def __init__(self, finding: Finding, instrument: str) -> None:
        self.finding, self.instrument = finding, instrument
        super().__init__(finding.says)


def session_of(reading: Reading) -> str:
    """Within one session instruments were not moved or zeroed; a test without a session column is one session."""
    return reading.session or f"the session of {reading.key.test}"


def _name(key: ReadingKey) -> str:
    return "/".join((key.test, key.contender, key.specimen, key.pass_, key.part, key.name))


def column_of(reading: Reading) -> tuple[str, str, str, str]:
    """Readings of one column, unit and instrument are read on one grid."""
    return (reading.key.test, reading.key.name, reading.unit, reading.instrument)


def _steps_seen(campaign: Campaign, readings: Iterable[Reading]) -> Mapping[tuple[str, str, str, str], float]:
    """The step each column was read in, in its unit: the instrument's, or its finest decimal where no instrument
    with a step is named; coarser where the readings keep to a coarser grid."""
    columns: dict[tuple[str, str, str, str], list[Decimal]] = {}
    for r in readings:
        if r.value is not None and r.limit is None and r.decimals is not None:
            columns.setdefault(column_of(r), []).append(r.value)
    return {
        column: max(float(coarser_step(values, _declared_step(campaign, column))), _step_converted(campaign, column))
        for column, values in columns.items()
    }


def _declared_step(campaign: Campaign, column: tuple[str, str, str, str]) -> Decimal | None:
    """The instrument's step as declared, where it is declared in the unit that the column is written in."""
    instrument = campaign.instruments.get(column[3])
    if instrument is None or instrument.resolution is None or instrument.resolution.unit != column[2]:
        return None
    return instrument.resolution.value


def _step_converted(campaign: Campaign, column: tuple[str, str, str, str]) -> float:
    """The instrument's step in the column's unit, where that is another: digits typed after a conversion, or a display
    switched over, show no finer step than the one declared. 0 where nothing is declared or it doesn't fit."""
    instrument = campaign.instruments.get(column[3])
    if instrument is None or instrument.resolution is None or instrument.resolution.unit == column[2]:
        return 0.0
    try:
        step, of = float(instrument.resolution.value), parse_unit(instrument.resolution.unit)
        return convert(step, of, parse_unit(column[2]), difference=True)
    except UnitError:
        return 0.0


def _chained(campaign: Campaign, readings: Iterable[Reading]) -> Mapping[ReadingKey, str]:
    """Where a method says `chained`, the "after" of one weighing is the "before" of the next: one reading, one name."""
    chained = {t.id for t in campaign.tests if t.chained}
    same: dict[ReadingKey, str] = {}
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
            same[r.key] = _name(last[line].key)
    return same
