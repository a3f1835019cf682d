"""Looking closer along an axis: twice, four times, eight times as close, each with its own printed ticks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.charts.layer import Layer
from reportgen.charts.scale import Axis, finer
from reportgen.charts.side import fitting
from reportgen.wording import number

LEAST = 24  # samples that a line keeps in the window; with fewer, only its corners would grow
MOST = 4  # doublings


@dataclass(frozen=True)
class Closer:
    """The axis that one looks closer along, its unit, and how many doublings its lines bear."""

    axis: Axis
    unit: str
    doublings: int

    def ticks(self, length: float) -> list[list[list[object]]]:
        """For each doubling from none on, [px on the undoubled axis, printed number] of every tick."""
        made: list[list[list[object]]] = []
        for n in range(self.doublings + 1):
            cut = finer(self.axis, 2**n)
            shown = fitting(cut, length * 2**n)
            made.append([[round(cut.at(t, length), 2), number.fixed(t, cut.decimals)] for t in shown])
        return made


def doublings(lines: Sequence[int]) -> int:
    """How often the scale may double for lines of so many samples: until the longest has too few in the window."""
    longest = max(lines, default=0)
    return next((n for n in range(MOST, 0, -1) if longest / 2**n >= LEAST), 0)


def moving(layers: Sequence[Layer]) -> list[str]:
    """The layers whose marks have their place along the axis by value; all others stay where they are."""
    return [layer["name"] for layer in layers if "field" in layer["encoding"]["x"]]
