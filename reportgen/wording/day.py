"""Days and times of day as text."""

from __future__ import annotations

import re
from datetime import date

from reportgen.wording.count import counted
from reportgen.wording.language import say, spoken

_DAY_AND_TIME = re.compile(r"(?P<day>\d{4}-\d{2}-\d{2})[T ]+(?P<time>\d.*)")
_TO = re.compile(r"\s+to\s+")
_TYPED = re.compile(r"\d{4}(?:-\d{2}){0,2}")  # a year, a month, a day (ISO 8601)
_NOT_NOTED = "not noted"  # as authors write it


def day(first: str, last: str, text: str) -> str:
    """ "2 May 2026" for one day (`first` and `last` in ISO 8601), "2 to 17 May 2026", "May 2026" for what was typed as
    days or a month; "not noted" in words, and anything else as it was typed."""
    if first and first == last:
        return _written(first)
    pieces = _TO.split(text.strip())
    if text == _NOT_NOTED:
        return say("day.not-noted")
    if len(pieces) > 2 or not all(map(_TYPED.fullmatch, pieces)):
        return text
    if len(pieces) == 1:
        return _written(text)
    begins, ends = pieces
    if len(begins) == len(ends) == len("2026-05-02") and begins[:7] == ends[:7]:
        return say("day.range.in-month", day=str(int(begins[8:])), last=_written(ends))
    return say("day.range", first=_written(begins), last=_written(ends))


def _written(typed: str) -> str:
    """A day or a month with its month in letters; a year as it is."""
    if len(typed) == len("2026"):
        return typed
    language = spoken()
    if len(typed) == len("2026-05"):
        one = date.fromisoformat(f"{typed}-01")
        if language.month is not None:
            return language.month(one)
        return say("day.month", month=say(f"month.{one.month}"), year=str(one.year))
    one = date.fromisoformat(typed)
    if language.day is not None:
        return language.day(one)
    return say("day", day=str(one.day), month=say(f"month.{one.month}"), year=str(one.year))


def at_time(text: str) -> str:
    """ "on 2 May 2026 at 18:05", for a time with its day in ISO 8601; "at 9:12" for any other; "" for none."""
    found = _DAY_AND_TIME.fullmatch(text)
    if not found or not _is_day(found["day"]):
        return say("at.time", time=text) if text else ""
    return say("at.day", day=day(found["day"], found["day"], found["day"]), time=found["time"])


def days_long(days: int) -> str:
    """How long so many days are: "12 days", "three months", "two years", rounded to whole ones."""
    if days < 60:
        return counted("day", days)
    months = round(days / (365.25 / 12))
    return counted("month", months) if months < 24 else counted("year", round(days / 365.25))


def _is_day(text: str) -> bool:
    try:
        return bool(date.fromisoformat(text))
    except ValueError:
        return False
