"""Days and times of day as text."""

from __future__ import annotations

import re
from datetime import date

from reportgen.wording.count import counted
from reportgen.wording.language import say, spoken

_DAY_AND_TIME = re.compile(r"(?P<day>\d{4}-\d{2}-\d{2})[T ]+(?P<time>\d.*)")


def day(first: str, last: str, text: str) -> str:
    """ "2 May 2026" for one day (`first` and `last` in ISO 8601); anything else as it was typed."""
    if not first or first != last:
        return text
    one = date.fromisoformat(first)
    write = spoken().day
    if write is not None:
        return write(one)
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
