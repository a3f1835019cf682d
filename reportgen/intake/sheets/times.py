"""Dates, times of day and stretches of time in a spreadsheet, as text.

Typing 4:20 into a spreadsheet gives twenty past four, whatever was meant. Only where seconds were typed, or where the
format shows none but minutes and seconds, is it known what was meant; a bare hour and minute is a time of day.
"""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from typing import Literal

from reportgen.intake.sheets.sheet import Cell

Shows = Literal["hours", "minutes", "all minutes"]  # what a time's format begins with; all: 90 minutes show as 90:00


def day_of(value: date | datetime) -> Cell:
    """A date as ISO 8601 writes it, with its time where it has one: `2026-05-02`, `2026-05-02 10:05`."""
    if not isinstance(value, datetime):
        return Cell(value.isoformat(), "date")
    if value.time() == time():
        return Cell(value.date().isoformat(), "date")
    return Cell(f"{value.date().isoformat()} {_clock(value.time())}", "date")


def time_of_day(value: time, shows: Shows = "hours") -> Cell:
    """A clock time: `10:05`, or with seconds `10:05:30`. One that can only be a stretch of time is text."""
    stretch = datetime.combine(date.min, value) - datetime.min
    return elapsed(stretch, shows) if _sure(stretch, shows) else Cell(_clock(value), "time of day")


def elapsed(value: timedelta, shows: Shows = "hours") -> Cell:
    """A stretch of time: `0:04:20`. A `time of day` where it can't be known that hours and minutes were meant."""
    minutes, rest = divmod(abs(value), timedelta(minutes=1))
    tail = (datetime.min + rest + timedelta(minutes=minutes % 60)).time().isoformat()[2:]
    text = f"{'-' if value < timedelta() else ''}{minutes // 60}{tail.rstrip('0') if '.' in tail else tail}"
    return Cell(text, "text" if _sure(value, shows) else "time of day")


def _sure(value: timedelta, shows: Shows) -> bool:
    """Whether minutes and seconds can be told from hours and minutes."""
    typed_seconds = bool(value % timedelta(minutes=1))
    return typed_seconds or shows == "all minutes" or (shows == "minutes" and abs(value) < timedelta(hours=1))


def _clock(value: time) -> str:
    text = value.isoformat()
    return text.removesuffix(":00") if text.count(":") == 2 else text
