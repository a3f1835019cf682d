"""When along a trace something happened: an incident's time, as typed, on the clock of the logger's file."""

from __future__ import annotations

import re
from collections.abc import Iterator

from reportgen.evaluation.evaluated import Evaluation, TraceShown

DAY = 86400.0
SIZE = {"h": 3600.0, "min": 60.0, "s": 1.0}
_CLOCK = re.compile(r"(?P<h>[01]?\d|2[0-3])[:.](?P<min>[0-5]\d)(?:[:.](?P<s>[0-5]\d))?")
_ELAPSED = re.compile(r"(?:after\s+)?((?:\d+(?:\.\d+)?\s*(?:h|min|s)\s*)+)")
_PART = re.compile(r"(\d+(?:\.\d+)?)\s*(h|min|s)")


def happened(evaluation: Evaluation, trace: TraceShown) -> Iterator[tuple[float, int]]:
    """The incidents of a trace's own pass: seconds from its first sample, and the caveat's number."""
    for caveat in evaluation.caveats:
        if caveat.sort == "incident" and caveat.when and trace.key in caveat.touches:
            at = seconds_of(caveat.when, trace)
            if at is not None:
                yield at, caveat.number


def seconds_of(when: str, trace: TraceShown) -> float | None:
    """`22:08:15` or `after 12 min 5 s` on a trace; None where it is neither, or lies outside of what was logged."""
    at = None
    if (clock := _CLOCK.fullmatch(when.strip())) and trace.clock is not None:
        of_day = sum(float(clock[unit] or 0) * size for unit, size in SIZE.items())
        at = (of_day - trace.clock) % DAY
    elif elapsed := _ELAPSED.fullmatch(when.strip()):
        at = sum(float(n) * SIZE[unit] for n, unit in _PART.findall(elapsed[1]))
    return at if at is not None and at <= trace.ends else None
