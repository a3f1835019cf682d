"""Passes that were read in full and still give no value, as their formula has none for those readings."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.evaluation.evaluated import PassValue, Result
from reportgen.evaluation.lookup import NO_READING
from reportgen.intake.reading import Reading, ReadingKey


def without_a_value(result: Result, readings: Mapping[ReadingKey, Reading]) -> tuple[PassValue, ...]:
    """Those of a result that other passes give; a reading that wasn't taken, or was left out, has its own reason."""
    if result.missing or result.kind != "measured":
        return ()
    return tuple(
        p
        for p in result.by_pass
        if p.value is None
        and not p.limit
        and not p.excluded
        and p.keys
        and p.absent_because not in ("", NO_READING)
        and all(not readings[k].absent_because for k in p.keys)
    )


def nothing_read(one: PassValue, readings: Mapping[ReadingKey, Reading]) -> Reading | None:
    """The first reading behind it that is 0, which a formula may not be able to divide by; None where there is none."""
    found = (readings[k] for k in one.keys)
    return next((r for r in found if r.value is not None and not r.value and not r.limit), None)
