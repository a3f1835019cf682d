"""Which contender stands above which in a chart."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import Result


def in_order(quantity: Quantity, results: Sequence[Result]) -> list[Result]:
    """Best first as far as values say; then those not ranked; then those without a value.

    Without a direction, the order given: the campaign's. A value known only as a bound stands on the side of its limit.
    """

    if any(r.kind == "order" for r in results):
        return by_level(results)

    def key(pair: tuple[int, Result]) -> tuple[float, ...]:
        place, r = pair
        limit = r.estimate.limit if r.estimate else None
        value = r.estimate.value if r.estimate else share(r)
        if value is None and limit is None:
            return (3, place)
        if r.blocked:
            return (2, place)
        if quantity.better == "neither":
            return (0, place)
        sign = 1 if quantity.better == "lower" else -1
        side = {"above": 1, "below": -1, None: 0}[limit] * sign
        if value is None:
            return (side, 0, 0, place)
        return (0, sign * value, side, place)

    return [r for _, r in sorted(enumerate(results), key=key)]


def by_level(results: Sequence[Result]) -> list[Result]:
    """Of an order that was only seen: least first, as given on one level; those never compared last."""
    return sorted(results, key=lambda r: (r.level is None, r.level or 0))


def share(result: Result) -> float | None:
    """How many of the passes said yes, from 0 to 1; None where there is no such thing."""
    return result.yes / result.of if result.yes is not None and result.of else None
