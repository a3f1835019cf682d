"""Times along a trace in words: in the unit that suits their size."""

from __future__ import annotations

from reportgen.wording.language import say
from reportgen.wording.number import plain
from reportgen.wording.unit import joined

SUITS = ((2 * 3600.0, "h", 3600.0), (120.0, "min", 60.0))  # from so many seconds on, the unit and its size


def unit_of_times(longest: float) -> tuple[str, float]:
    """The unit for times up to `longest` seconds, and its size in s."""
    return next(((unit, size) for least, unit, size in SUITS if longest >= least), ("s", 1.0))


def time_of(seconds: float) -> str:
    """A time or duration in the unit that suits it: 12 s, 85.2 min, 3.1 h."""
    unit, size = unit_of_times(seconds)
    return joined(plain(seconds / size), unit)


def gap_of_whom(who: str, begins: float, ends: float) -> str:
    """Whose trace has a gap, how long it is and where it begins."""
    return say("trace.gap.of", who=who, gap=say("trace.gap", long=time_of(ends - begins), at=time_of(begins)))
