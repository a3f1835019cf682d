"""Where a choice of weights lies in the picture: on a line between two groups, in a triangle between three.

Each corner is one group counting alone; the nearer a place lies to a corner, the more that group counts (barycentric
coordinates). All in px of the drawing, from its upper left corner.
"""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.charts.plate import WIDE

Point = tuple[float, float]

SIDE, ACROSS = 22.0, WIDE - 44.0  # px: margin at the sides, length of a side
TOP, HIGH = 34.0, 0.75**0.5 * ACROSS  # of the triangle: above it, its height
LINE = 96.0  # of the line between two groups: how far down it lies
MOST = 20  # steps drawn along a side; of a finer map every second one, and so on


def corners(groups: int) -> tuple[Point, ...]:
    """The corners in the order of the groups: left and right; top, lower left, lower right. Raises for other counts."""
    if groups == 2:
        return (SIDE, LINE), (SIDE + ACROSS, LINE)
    if groups == 3:
        return (SIDE + ACROSS / 2, TOP), (SIDE, TOP + HIGH), (SIDE + ACROSS, TOP + HIGH)
    raise ValueError(f"no picture of the weights of {groups} groups")


def place(weights: Sequence[float]) -> Point:
    """Where these weights lie: the mean of the corners, weighted by them."""
    of = corners(len(weights))
    return sum(w * x for w, (x, _) in zip(weights, of, strict=True)), sum(
        w * y for w, (_, y) in zip(weights, of, strict=True)
    )


def counts(weights: Sequence[float], steps: int) -> tuple[int, ...]:
    """The weights as whole steps."""
    return tuple(int(w * steps + 0.5) for w in weights)


def drawn(weights: Sequence[float], steps: int) -> bool:
    """Whether a cell of a map so fine is drawn: each of its weights is a whole number of the steps drawn."""
    every = -(-steps // MOST)
    return all(n % every == 0 for n in counts(weights, steps))
