"""Values that lie beyond what the author called worst and best: they count below nothing or above all, unclipped."""

from __future__ import annotations

from collections.abc import Collection
from typing import Literal

from reportgen.campaign.declared import Criterion
from reportgen.evaluation.evaluated import Evaluation
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import convert, parse_unit

End = Literal["worst", "best"]


def beyond_anchors(evaluation: Evaluation, criterion: Criterion, past: Collection[str]) -> tuple[tuple[str, End], ...]:
    """Of the contenders that lie beyond an anchor (`past`), which anchor that is."""
    found: list[tuple[str, End]] = []
    for result in evaluation.results:
        estimate = result.estimate
        mine = result.quantity == criterion.quantity and not result.part and result.contender in past
        if not mine or estimate is None or estimate.value is None:
            continue
        try:
            unit = parse_unit(estimate.unit)
            worst, best = (
                convert(float(a.value), parse_unit(a.unit), unit, difference=unit.kind == "difference")
                for a in (criterion.worst, criterion.best)
            )
        except UnitError:
            continue  # refused elsewhere, with its place
        nearer_best = abs(estimate.value - best) < abs(estimate.value - worst)
        found.append((result.contender, "best" if nearer_best else "worst"))
    return tuple(found)
