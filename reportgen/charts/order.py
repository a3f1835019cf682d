"""Which contender stands above which in a table or chart: as far as readings say, and no further."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import Result


def in_order(quantity: Quantity, results: Sequence[Result]) -> list[Result]:
    """By the places they may hold, never by value: those with the same places stand as given, in the campaign's order.

    Then those not ranked, then those without a value. Without a direction, and where nothing is ranked, as given.
    """
    if any(r.kind == "order" for r in results):
        return by_level(results)
    if quantity.better == "neither":
        return sorted(results, key=_empty)
    return sorted(results, key=lambda r: (_empty(r), r.rank is None and bool(r.blocked), *(r.rank or (0, 0))))


def _empty(r: Result) -> bool:
    """Is there neither a value nor a bound, nor a word?"""
    known = r.estimate is not None and (r.estimate.value is not None or r.estimate.limit is not None)
    return not known and share(r) is None and not r.grade


def by_level(results: Sequence[Result]) -> list[Result]:
    """Of an order that was only seen: least first, as given on one level; those never compared last."""
    return sorted(results, key=lambda r: (r.level is None, r.level or 0))


def share(result: Result) -> float | None:
    """How many of the passes said yes, from 0 to 1; None where there is no such thing."""
    known = result.kind == "yes/no" and result.yes is not None and result.of
    return (result.yes or 0) / (result.of or 1) if known else None
