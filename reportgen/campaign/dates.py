"""Dates as authors write them: a day, a month, a year, from one to another, or `not noted`."""

from __future__ import annotations

import calendar
import re
from datetime import date
from typing import Annotated

from reportgen.campaign.declared import Day
from reportgen.campaign.given import Given
from reportgen.campaign.shape import NotThat, Scalar

NOT_NOTED = "not noted"
_ONE = r"[0-9]{4}(?:-(?:0[1-9]|1[0-2])(?:-(?:0[1-9]|[12][0-9]|3[01]))?)?"
PATTERN = rf"^\s*(?:{_ONE}(?:\s+to\s+{_ONE})?|{NOT_NOTED})\s*$"


def day(text: str) -> Day:
    """`2026-05-02`, `2026-05`, `2026`, `2026-05-02 to 2026-05-09` (ISO 8601) or `not noted`. Raises NotThat."""
    said = text.strip()
    if said == NOT_NOTED:
        return Day(said)
    found = re.fullmatch(rf"({_ONE})(?:\s+to\s+({_ONE}))?", said)
    if found is None:
        raise NotThat(f"“{said}” is not a date", "Write it like this: 2026-05-02 · 2026-05 · 2026-05-02 to 2026-05-09.")
    first, last = _first(found[1]), _last(found[2] or found[1])
    if last < first:
        raise NotThat(f"“{said}” ends before it begins", "Write the earlier date first.")
    return Day(said, first, last)


def _first(text: str) -> str:
    return _real((text + "-01-01")[:10], text)


def _last(text: str) -> str:
    if len(text) == 4:
        return f"{text}-12-31"
    if len(text) == 7:
        year, month = int(text[:4]), int(text[5:])
        return f"{text}-{calendar.monthrange(max(year, 1), month)[1]:02d}"
    return _real(text, text)


def _real(iso: str, text: str) -> str:
    try:
        return date.fromisoformat(iso).isoformat()
    except ValueError as error:
        raise NotThat(f"there is no {text} in the calendar", "Correct the day.") from error


DayOf = Annotated[
    Given[Day],
    Scalar("a date", day, PATTERN, Day(NOT_NOTED), ("2026-05-02", "2026-05-02 to 2026-05-09", NOT_NOTED),
           types=("string", "integer")),
]  # fmt: skip
