"""Over how much a count was taken: a quantity that the author names, else runs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.campaign.declared import Declared, Quantity
from reportgen.evaluation.observing import ReadingRefused
from reportgen.evaluation.working import Working
from reportgen.evaluation.workings import Workings
from reportgen.finding import Finding
from reportgen.intake.reading import Reading, ReadingKey


def counted_over(
    declared: Declared, workings: Workings, quantity: Quantity, contender: str, used: Sequence[Working]
) -> tuple[float, ...]:
    """Over how much each of a count's passes was taken; () where that isn't known.

    `counted over:` names a quantity: pass by pass where its passes are those of the count, else all of it together.
    Without one each run is one; of counted incidents, each run of the tests they are counted in. Raises
    `ReadingRefused` for a quantity that comes to nothing.
    """
    if not quantity.counted_over:
        return runs_counted_in(quantity, contender, used, workings.readings)
    found = workings.counted(quantity.counted_over, contender)
    over = {w.key: w.value.value for w in found if w.value and not w.value.limit and w.value.value is not None}
    for pass_, amount in over.items():
        if amount <= 0.0:
            raise ReadingRefused(nothing_counted_over(declared, quantity, contender, pass_.pass_), "")
    if used and all(w.key in over for w in used):
        return tuple(over[w.key] for w in used)
    if len(over) < len(found) or not over:
        return ()
    return spread_evenly(sum(over.values()), used)


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
