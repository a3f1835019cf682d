"""Times along a trace in words: `12.5 s`, `4 min 15 s`, `3 h 5 min 45 s`; or by the clock of its file."""

from __future__ import annotations

from reportgen.wording.language import say
from reportgen.wording.number import plain, rounded
from reportgen.wording.unit import joined

MINUTE, HOUR, DAY = 60, 3600, 86400
SUITS = ((2.0 * HOUR, "h", 3600.0), (2.0 * MINUTE, "min", 60.0))  # of an axis: from so many seconds on, unit and size


def unit_of_times(longest: float) -> tuple[str, float]:
    """The unit for an axis of times up to `longest` seconds, and its size in s."""
    return next(((unit, size) for least, unit, size in SUITS if longest >= least), ("s", 1.0))


def time_of(seconds: float) -> str:
    """A time or duration: from two minutes on in h, min and whole s, the parts that are nought left out."""
    if abs(seconds) < 2 * MINUTE:
        return joined(plain(seconds), "s")
    whole = int(rounded(seconds, 0))
    parts = ((whole // HOUR, "h"), (whole % HOUR // MINUTE, "min"), (whole % MINUTE, "s"))
    return " ".join(joined(plain(n), unit) for n, unit in parts if n)


def clock_of(seconds: float) -> str:
    """A time of day, `22:08:15`, from seconds since midnight; a trace may go on for days."""
    whole = int(rounded(seconds, 0)) % DAY
    return f"{whole // HOUR:02d}:{whole % HOUR // MINUTE:02d}:{whole % MINUTE:02d}"


def since(seconds: float, clock: float | None) -> str:
    """Where along a trace something is: by the clock of its file, where its first sample came at `clock` seconds after
    midnight, else counted from the first sample."""
    return time_of(seconds) if clock is None else clock_of(clock + seconds)


def gap_of(begins: float, ends: float, clock: float | None) -> str:
    """How long a gap is and where it begins."""
    return say("trace.gap", long=time_of(ends - begins), at=since(begins, clock))


def gap_of_whom(who: str, begins: float, ends: float, clock: float | None) -> str:
    """Whose trace has a gap, how long it is and where it begins."""
    return say("trace.gap.of", who=who, gap=gap_of(begins, ends, clock))
