"""Incidents counted: one total a contender, from 0 on for whoever was tested."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import Step
from reportgen.evaluation.working import PassKey, Working
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import NUMBER

TOTAL = PassKey("1", "1", "")  # all passes of a contender together


def counted_working(
    quantity: Quantity,
    contender: str,
    readings: Mapping[ReadingKey, Reading],
    counted_for: Mapping[str, tuple[str, ...]],
) -> tuple[Working, ...]:
    """The one total of a contender, resting on the incidents counted; nothing where it wasn't tested yet.

    Incidents of a pass that is left out happened all the same, and count.
    """
    if contender not in counted_for.get(quantity.id, ()):
        return ()
    mine = [r for k, r in readings.items() if r.incident and (k.test, k.contender) == (quantity.test, contender)]
    mine = [r for r in mine if r.key.name.startswith(f"{quantity.count_of.replace('-', ' ')} ")]
    mine.sort(key=lambda r: r.order)
    times = [float(r.value) for r in mine if r.value is not None]
    steps = tuple(Step(r.key.name, t, "", None, (r.key,)) for r, t in zip(mine, times, strict=True))
    return (Working(TOTAL, Uncertain(sum(times), NUMBER), tuple(r.key for r in mine), steps=steps),)
