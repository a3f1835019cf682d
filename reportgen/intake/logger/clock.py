"""How a logger writes its times, told from its first rows, and the query that turns them into seconds.

Seconds count from wherever the logger counts from; a clock's begin at midnight again, which is mended where samples are
taken in order.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

SECONDS = {
    "s": 1.0, "sec": 1.0, "second": 1.0, "seconds": 1.0, "ms": 1e-3, "µs": 1e-6, "us": 1e-6, "min": 60.0,
    "minute": 60.0, "minutes": 60.0, "h": 3600.0, "hr": 3600.0, "hour": 3600.0, "hours": 3600.0, "d": 86400.0,
}  # fmt: skip
DAY = 86400.0
NUMBER = r"[+-]?([0-9]+([.,][0-9]*)?|[.,][0-9]+)([eE][+-]?[0-9]+)?"
_CLOCK = r"[0-9]{1,4}:[0-5]?[0-9]:[0-5]?[0-9]([.,][0-9]+)?"
_HALF_DAY = r"[0-9]{1,2}:[0-5][0-9]:[0-5][0-9] ?[AaPp][Mm]"
_ISO = r"[0-9]{4}-[0-9]{2}-[0-9]{2}[T ][0-9]{2}:[0-9]{2}(:[0-9]{2}([.,][0-9]+)?)?(Z|[+-][0-9]{2}(:?[0-9]{2})?)?"
_DOTTED = r"[0-9]{1,2}\.[0-9]{1,2}\.[0-9]{4} [0-9]{1,2}:[0-9]{2}:[0-9]{2}([.,][0-9]+)?"
_SLASHED = re.compile(r"\d{1,4}/\d{1,2}/\d{2,4}\b.*")
_HALF = re.compile(r"\d{1,2}:\d{2}")


class NoTimes(Exception):
    """A time column that can't be read: what is wrong, why, what to do; `row` of the sample it is told at."""

    def __init__(self, says: str, why: str, do: str) -> None:
        self.says, self.why, self.do = says, why, do
        super().__init__(says)


@dataclass(frozen=True)
class Clock:
    """`sql` turns the text `{x}` into seconds, or NULL. `wraps`: it begins anew at midnight. `of_day`: seconds less
    whole days are the time of day that stands in the file."""

    sql: str
    wraps: bool = False
    of_day: bool = False


def clock_of(cells: Sequence[str], unit: str) -> Clock:
    """The way these times are written. `unit` is that of plain numbers, "" where nothing says. Raises NoTimes."""
    first = next((c for c in cells if c), "")
    if re.fullmatch(NUMBER, first):
        return Clock(_elapsed(unit, first))
    if re.fullmatch(_CLOCK, first):
        return Clock(_counted(), wraps=True, of_day=True)
    if re.fullmatch(_HALF_DAY, first):
        parsed = "epoch(try_strptime(replace(upper({x}), ' ', ''), '%I:%M:%S%p'))"
        return Clock(_matched(_HALF_DAY, parsed), wraps=True, of_day=True)
    if re.fullmatch(_ISO, first):
        parsed = "epoch_us(TRY_CAST(replace({x}, ',', '.') AS TIMESTAMP)) / 1e6"
        return Clock(_matched(_ISO, parsed), of_day=not re.search(r"(Z|[+-]\d{2}:?(\d{2})?)$", first[10:]))
    if re.fullmatch(_DOTTED, first):
        parsed = "try_strptime(replace({x}, ',', '.'), ['%d.%m.%Y %H:%M:%S', '%d.%m.%Y %H:%M:%S.%f'])"
        return Clock(_matched(_DOTTED, f"epoch_us({parsed}) / 1e6"), of_day=True)
    raise _unreadable(first)


def _matched(pattern: str, then: str) -> str:
    return f"CASE WHEN regexp_full_match({{x}}, '{pattern}') THEN {then} END"


def _counted() -> str:
    parts = [f"CAST(replace(split_part({{x}}, ':', {i}), ',', '.') AS DOUBLE)" for i in (1, 2, 3)]
    return _matched(_CLOCK, f"{parts[0]} * 3600 + {parts[1]} * 60 + {parts[2]}")


def _elapsed(unit: str, first: str) -> str:
    if not unit:
        raise NoTimes(
            f"Times are plain numbers here (“{first}”), and nothing says in which unit.",
            "Seconds, minutes and hours look alike.",
            "Write the unit behind the heading: `time: Elapsed, s`.",
        )
    if unit not in SECONDS:
        raise NoTimes(
            f"“{unit}” is no unit of time that a logger's clock can have.",
            "Every time would be wrong.",
            "Write s, ms, min, h or d: `time: Elapsed, s`.",
        )
    return _matched(NUMBER, f"TRY_CAST(replace({{x}}, ',', '.') AS DOUBLE) * {SECONDS[unit]}")


def _unreadable(first: str) -> NoTimes:
    if _SLASHED.fullmatch(first):
        return NoTimes(
            f"“{first}” has slashes in its date.",
            "Day and month can't be told apart, and a run may go over the end of one.",
            "Export it with dates such as 2026-05-02, or name a column that counts seconds.",
        )
    if _HALF.fullmatch(first):
        return NoTimes(
            f"“{first}” could be hours and minutes or minutes and seconds.",
            "The two differ by a factor of sixty.",
            "Export it with seconds (0:05:31), or leave `time` out and give `rate:`.",
        )
    return NoTimes(
        f"“{first}” is no time." if first else "The time column is empty.",
        "Without times nothing can be said of a trace.",
        "Name the column of times with `time:`; for a file without one give `rate: 10 Hz`.",
    )
