"""Which charts stand on one axis: the parts of a quantity, and the quantities of a test that are in one unit.

Two values of one unit that stand under each other are compared whether or not anybody meant it, so they lie on one
axis; unless that would press the values of one chart together until nothing is left to see.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

LEAST = 1 / 3  # of the axis: a chart that would have less of it for itself keeps its own


@dataclass(frozen=True)
class Reach:
    """What a chart of `quantity` needs: from `low` to `high` in `unit`, and `right` px beside its field."""

    quantity: str
    title: str
    unit: str
    low: float
    high: float
    right: float


@dataclass(frozen=True)
class Beside:
    """What a chart takes over from those it shares its axis with; `titles` are theirs."""

    low: float
    high: float
    right: float
    titles: tuple[str, ...]


def shared(reaches: Mapping[str, Reach]) -> Mapping[str, Beside]:
    """For each chart (by address) of one test that shares its axis, what it shares.

    First all of one unit are tried, then the parts of each quantity among themselves.
    """
    found: dict[str, Beside] = {}
    for unit in dict.fromkeys(r.unit for r in reaches.values()):
        alike = {address: r for address, r in reaches.items() if r.unit == unit}
        if together := _together(alike):
            found |= together
            continue
        for quantity in dict.fromkeys(r.quantity for r in alike.values()):
            found |= _together({address: r for address, r in alike.items() if r.quantity == quantity})
    return found


def _together(alike: Mapping[str, Reach]) -> dict[str, Beside]:
    """Nothing where there is but one, or where one would have too little of the axis."""
    if len(alike) < 2:
        return {}
    low, high = min(r.low for r in alike.values()), max(r.high for r in alike.values())
    if any(r.high - r.low < LEAST * (high - low) for r in alike.values()):
        return {}
    right = max(r.right for r in alike.values())
    return {
        address: Beside(low, high, right, tuple(other.title for other in alike.values() if other is not r))
        for address, r in alike.items()
    }
