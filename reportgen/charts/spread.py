"""Room for words in a drawing: labels moved apart, and the place where a line of text covers least."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

Spot = tuple[float, float]  # px from the left and the top of the field


@dataclass(frozen=True)
class Box:
    """A line of text: its left end, its middle's height, its width, in px; 12 px high."""

    x: float
    y: float
    wide: float

    def near(self, spot: Spot) -> bool:
        """Whether a point lies under it, or so close that they would be taken for one."""
        return self.x - 2 <= spot[0] <= self.x + self.wide + 2 and abs(self.y - spot[1]) <= 8


def spread(wanted: Sequence[Spot], height: float, apart: float = 13.0, beside: float = 28.0) -> tuple[float, ...]:
    """Heights for labels that want to stand at `wanted`: those closer than `beside` px from left to right are moved
    until `apart` px lie between any two, all within `height` as far as they fit. In the order given."""
    found = [y for _, y in wanted]
    for together in _columns(wanted, beside):
        order = sorted(together, key=lambda i: (wanted[i][1], i))
        middle = sum(wanted[i][1] for i in order) / len(order)
        at = -apart
        for i in order:
            at = max(at + apart, wanted[i][1])
            found[i] = at
        over = max(found[order[-1]] - height, sum(found[i] for i in order) / len(order) - middle, 0.0)
        floor = height if found[order[-1]] - over > height else found[order[-1]] - over
        for i in reversed(order):
            found[i] = min(found[i], floor)
            floor = found[i] - apart
    return tuple(found)


def _columns(wanted: Sequence[Spot], beside: float) -> Iterable[list[int]]:
    """Labels that stand in one another's way from left to right."""
    order = sorted(range(len(wanted)), key=lambda i: wanted[i][0])
    column: list[int] = []
    for i in order:
        if column and wanted[i][0] - wanted[column[-1]][0] > beside:
            yield column
            column = []
        column.append(i)
    if column:
        yield column


def freest(places: Sequence[Box], lines: Iterable[Sequence[Spot]]) -> Box:
    """The first of the places that covers the fewest points of the lines."""
    points = [spot for line in lines for spot in _close(line)]
    return min(places, key=lambda box: sum(box.near(spot) for spot in points))


def _close(line: Sequence[Spot]) -> Iterable[Spot]:
    """Points no further than 4 px apart along a line."""
    for (x, y), (x2, y2) in pairwise(line):
        steps = int(max(abs(x2 - x), abs(y2 - y)) // 4) + 1
        yield from ((x + (x2 - x) * n / steps, y + (y2 - y) * n / steps) for n in range(steps))
    yield from line[-1:]
