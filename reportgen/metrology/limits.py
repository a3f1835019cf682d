"""What becomes of a bound: a value known only to lie above or below something (off the scale, below detection).

Ordinary interval arithmetic on half-lines; what no longer has one finite side raises NoValue rather than guess. A
bound may be of unknown size (value None): then only its direction is carried, while the signs it meets are known.
"""

from __future__ import annotations

import math

from reportgen.metrology.errors import NoValue
from reportgen.metrology.uncertain import Limit

Bounded = tuple[float | None, Limit | None]  # value (or bound, None: unknown), which side the truth lies on

_PULL_APART = "one value is only known to lie above a limit and another below one: together they can be anything"
_CHECK = "the result can't be told from these readings; leave the pass out with its reason"


def opposite(limit: Limit | None) -> Limit | None:
    """Where the truth lies once the sign is turned."""
    if limit is None:
        return None
    return "below" if limit == "above" else "above"


def joint(*limits: Limit | None) -> Limit | None:
    """The limit of anything that rises with every part (a sum, a mean, an energy mean). Raises NoValue."""
    found = {limit for limit in limits if limit}
    if len(found) > 1:
        raise NoValue(_PULL_APART, _CHECK)
    return next(iter(found), None)


def limit_of_product(one: Bounded, other: Bounded) -> Bounded:
    """`one * other` where either may be a bound. Raises NoValue where the product could be anything."""
    for exact, bound in ((one, other), (other, one)):
        if exact[1] is None and bound[0] is None:
            if not exact[0]:
                return 0.0, None
            return None, bound[1] if exact[0] > 0 else opposite(bound[1])
    if one[0] is None or other[0] is None:
        raise NoValue("two bounds, one of unknown size, can't be multiplied", _CHECK)
    corners = [0.0 if 0.0 in (a, b) else a * b for a in _ends(one) for b in _ends(other)]
    return _one_sided(min(corners), max(corners))


def limit_of_reciprocal(value: Bounded) -> Bounded:
    """`1 / value` where value may be a bound. Raises NoValue where zero can't be excluded."""
    bound, limit = value
    if bound is not None and limit is None and bound != 0:
        return 1 / bound, None
    if bound is None or bound == 0 or (bound < 0) == (limit == "above"):
        raise NoValue("a division by a value that could be nothing", _CHECK)
    return 1 / bound, opposite(limit)


def limit_of_power(value: Bounded, power: float) -> Limit | None:
    """The limit of `value ** power`, `power` > 0. Raises NoValue where the two signs would fold together."""
    bound, limit = value
    rises_throughout = power % 2 == 1 or power % 1 != 0  # odd, or a root, which no negative number has
    if limit is None or rises_throughout:
        return limit
    if bound is None or (limit == "above" and bound < 0) or (limit == "below" and bound > 0):
        raise NoValue("an even power of a bound that could have either sign", _CHECK)
    return "above"


def _ends(value: Bounded) -> tuple[float, float]:
    bound, limit = value[0] or 0.0, value[1]  # never None here
    return (-math.inf if limit == "below" else bound, math.inf if limit == "above" else bound)


def _one_sided(low: float, high: float) -> Bounded:
    if math.isinf(low) == math.isinf(high) and low != high:
        raise NoValue(_PULL_APART, _CHECK)
    if low == high:
        return low, None
    return (low, "above") if math.isinf(high) else (high, "below")
