"""The least, the most or the middle of several passes, some of which may be known only to lie beyond a limit.

All three rise, or stay, with every value. So the truth lies between what comes out with every bound at one end of where
it can be and what comes out with every bound at the other.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from reportgen.metrology.combine import mean_of
from reportgen.metrology.errors import NoValue
from reportgen.metrology.uncertain import Limit, Uncertain

_ANYTHING = "some passes are only known to lie above a limit and others below one: the one asked for can be anything"


def picked(how: str, values: Sequence[Uncertain]) -> Uncertain:
    """`how` is least, most or middle (of an even count the mean of the two). Raises `NoValue` where it can be anything.

    A bound beyond an unknown limit leaves only its direction.
    """
    if any(v.value is None for v in values):
        return mean_of(values)
    at = [v.value or 0.0 for v in values]
    low = places(how, [-math.inf if v.limit == "below" else x for v, x in zip(values, at, strict=True)])
    high = places(how, [math.inf if v.limit == "above" else x for v, x in zip(values, at, strict=True)])
    open_below = any(values[i].limit == "below" for i in low)
    open_above = any(values[i].limit == "above" for i in high)
    if open_below and open_above:
        raise NoValue(_ANYTHING)
    if open_below:
        return _together([values[i] for i in high], "below")
    least, most = _together([values[i] for i in low], None), _together([values[i] for i in high], None)
    return least if not open_above and least.value == most.value else replace(least, limit="above")


def _together(chosen: Sequence[Uncertain], limit: Limit | None) -> Uncertain:
    return replace(mean_of([replace(v, limit=None) for v in chosen]), limit=limit)


def places(how: str, numbers: Sequence[float]) -> Sequence[int]:
    """Which of the numbers `how` picks: one, or the two in the middle of an even count."""
    order = sorted(range(len(numbers)), key=numbers.__getitem__)
    if how == "least":
        return order[:1]
    if how == "most":
        return order[-1:]
    return order[(len(order) - 1) // 2 : len(order) // 2 + 1]
