"""Rules on instruments: their ends, their calibration, what their figures leave out."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.audit.case import Case, Seen
from reportgen.campaign.declared import Instrument
from reportgen.evaluation.as_shown import is_as_shown, those
from reportgen.evaluation.reading_days import day_of, days_past, span_of
from reportgen.intake.reading import Reading
from reportgen.metrology.instrument_range import at_the_bottom, at_the_top, outside_points

MOST_NAMED = 3  # readings named one by one before the rest are only counted


def at_an_end(case: Case) -> Iterable[Seen]:
    """Readings that are the highest or lowest their instrument can show."""
    for held, end in ((at_the_top, "the most"), (at_the_bottom, "the least")):
        found = list(those(case.declared.campaign, case.readings.readings.values(), held))
        yield from _named(found, f"is {end} that", "can show")


def beyond_points(case: Case) -> Iterable[Seen]:
    """Readings beyond the points their instrument was calibrated at."""
    found = list(those(case.declared.campaign, case.readings.readings.values(), outside_points))
    yield from _named(found, "lies outside the points at which", "was calibrated")


def past_calibration(case: Case) -> Iterable[Seen]:
    """Instruments whose calibration no longer counted when they were read, or of which that can't be told."""
    tested = case.declared.campaign.tested
    for instrument, several in _by_instrument(case):
        if instrument.calibration is None or instrument.calibration.expires is None:
            continue
        until = instrument.calibration.expires.text
        days = [days_past(instrument, r, tested) for r in several]
        late = [r for r, past in zip(several, days, strict=True) if past is not None and past > 0]
        if late:
            says = f"The calibration of {instrument.id} counted until {until}, and this was read after that."
            yield Seen(late[0].at, says, f"test/{late[0].key.test}")
        elif any(past is None for past in days):
            says = f"The calibration of {instrument.id} counts until {until}, and nothing says when it was read."
            yield Seen(several[0].at, says, f"test/{several[0].key.test}", severity="note")


def calibrated_afterwards(case: Case) -> Iterable[Seen]:
    """Instruments calibrated after they were read."""
    tested = case.declared.campaign.tested
    for instrument, several in _by_instrument(case):
        calibrated = span_of(instrument.calibrated)
        for reading in several:
            read = day_of(reading, tested)
            if calibrated and read and calibrated[0] > read[1] and instrument.calibrated:
                says = f"{instrument.id} was calibrated on {instrument.calibrated.text}, after this was read off it."
                yield Seen(reading.at, says, f"test/{reading.key.test}")
                break


def percent_of_nothing(case: Case) -> Iterable[Seen]:
    """Readings of nothing on an instrument whose accuracy is a percentage of the reading alone."""
    for instrument, several in _by_instrument(case):
        stated = instrument.accuracy
        if not stated.percent or stated.absolute or stated.digits or stated.of_range:
            continue
        found = [r for r in several if is_as_shown(r) and r.value == 0]
        yield from _named(found, "is nothing; the accuracy of", "is a percentage of it")


def accuracy_and_correction(case: Case) -> Iterable[Seen]:
    """Instruments that are corrected, with a known uncertainty, and have their maker's limits besides."""
    for instrument, several in _by_instrument(case):
        found = instrument.calibration
        if found is None or found.uncertainty is None or not found.corrects:
            continue
        if instrument.accuracy.known and instrument.accuracy.text:
            says = f"{instrument.id} is corrected, and its limits ({instrument.accuracy.text}) are counted as well."
            yield Seen(case.declared.at(f"instrument/{instrument.id}"), says, f"test/{several[0].key.test}")


def _by_instrument(case: Case) -> Iterable[tuple[Instrument, list[Reading]]]:
    found: dict[str, list[Reading]] = {}
    for reading in sorted(case.readings.readings.values(), key=lambda r: (r.at.file, r.order)):
        if not reading.absent_because and reading.instrument in case.declared.campaign.instruments:
            found.setdefault(reading.instrument, []).append(reading)
    for id, several in found.items():
        yield case.declared.campaign.instruments[id], several


def _named(readings: list[Reading], before: str, after: str) -> Iterable[Seen]:
    for r in readings[:MOST_NAMED]:
        says = f"{r.text} {r.unit} {before} {r.instrument} {after}."
        yield Seen(r.at, says, f"test/{r.key.test}", r.key.contender)
    if rest := readings[MOST_NAMED:]:
        yield Seen(rest[0].at, f"So with {len(rest)} more.", f"test/{rest[0].key.test}")
