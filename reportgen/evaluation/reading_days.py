"""When a reading was taken, and how long after the calibration of its instrument.

The day is the one written beside the reading (`time`), else its session where that is a date, else that of the
campaign (`tested`). Of stretches the ends farthest apart count, so that a drift is never taken too small.
"""

from __future__ import annotations

import re
from datetime import date

from reportgen.campaign.declared import Day, Instrument
from reportgen.intake.reading import Reading

DAYS_A_YEAR = 365.25


def day_of(reading: Reading, tested: Day | None) -> tuple[date, date] | None:
    """The first and the last day on which it may have been taken (ISO 8601 dates alone); None where nobody says."""
    for text in (reading.time, reading.session):
        if found := re.match(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
            try:
                return (date.fromisoformat(found[0]), date.fromisoformat(found[0]))
            except ValueError:
                continue
    return span_of(tested)


def span_of(day: Day | None) -> tuple[date, date] | None:
    """The first and last day of what an author wrote; None for `not noted`."""
    if day is None or not day.first:
        return None
    return (date.fromisoformat(day.first), date.fromisoformat(day.last))


def years_apart(one: tuple[date, date] | None, other: tuple[date, date] | None) -> float | None:
    """Years between two stretches of days, the longest there can be between them; None where one isn't known."""
    if one is None or other is None:
        return None
    return max(abs((other[1] - one[0]).days), abs((one[1] - other[0]).days)) / DAYS_A_YEAR


def days_past(instrument: Instrument, reading: Reading, tested: Day | None) -> int | None:
    """Days by which the calibration of an instrument was over when it was read, at the most; 0 or less where it still
    counted, or counts for ever; None where nobody says when it was read."""
    until = span_of(instrument.calibration.expires) if instrument.calibration else None
    if until is None:
        return 0
    read = day_of(reading, tested)
    return (read[1] - until[1]).days if read else None
