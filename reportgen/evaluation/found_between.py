"""What a laboratory found without giving a number: two limits are known of it, and no value."""

from __future__ import annotations

from decimal import Decimal

from reportgen.evaluation.evaluated import Result
from reportgen.wording.unit import spelled

_NOISE = 1e-9  # of the middle: binary noise


def found_between(result: Result) -> tuple[Decimal, Decimal] | None:
    """The two limits of a laboratory that found something and no number for it, in the result's unit; else None."""
    e, lab = result.estimate, result.laboratory
    if e is None or e.value is None or lab is None or result.passes != 1 or result.part or e.limit:
        return None
    low, high = lab.detection_limit, lab.report_limit
    if low is None or high is None or low.unit != high.unit or any(c.source.sort != "rough" for c in e.contributions):
        return None
    middle, same = float(low.value + high.value) / 2, not e.unit or spelled(e.unit) == spelled(low.unit)
    return (low.value, high.value) if same and abs(e.value - middle) <= middle * _NOISE else None
