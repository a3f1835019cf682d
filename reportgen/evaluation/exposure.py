"""Over how much a count was taken: runs, where the author names no quantity for it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.campaign.declared import Declared, Quantity
from reportgen.evaluation.working import Working
from reportgen.finding import Finding
from reportgen.intake.reading import Reading, ReadingKey


def runs_counted_in(
    quantity: Quantity, contender: str, used: Sequence[Working], readings: Mapping[ReadingKey, Reading]
) -> tuple[float, ...]:
    """Each pass of a count as one; of counted incidents all runs of the contender in the tests they are counted in."""
    if not quantity.count_of:
        return (1.0,) * len(used)
    runs = {
        (k.test, k.specimen, k.pass_)
        for k, r in readings.items()
        if k.test in quantity.count_in and k.contender == contender and not r.incident and not r.absent_because
    }
    return spread_evenly(float(len(runs)), used)


def spread_evenly(total: float, used: Sequence[Working]) -> tuple[float, ...]:
    """The same part of it for each pass; () where there is nothing."""
    return (total / len(used),) * len(used) if total > 0.0 and used else ()


def nothing_counted_over(declared: Declared, quantity: Quantity, contender: str, pass_: str) -> Finding:
    """The finding where what a count is taken over comes to nothing."""
    title = declared.campaign.contender(contender).title
    says = f"{quantity.title} of {title} is counted over {quantity.counted_over}, which is nothing in pass {pass_}."
    why = "Events over nothing have no rate."
    do = "Correct that reading, or write `none (reason)` where it wasn't read."
    place = declared.at(f"quantity/{quantity.id}")
    return Finding("error", "counted-over-nothing", place, says, why, do, subject=f"quantity/{quantity.id}")
