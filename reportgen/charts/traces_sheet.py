"""What a drawing of traces is made on: its lines, and where seconds and values lie."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.charts.plate import Plate, Row
from reportgen.charts.scale import Axis
from reportgen.charts.spread import Spot
from reportgen.charts.words import words
from reportgen.evaluation.evaluated import TraceShown
from reportgen.marks import ContenderMark, mark_of
from reportgen.wording import number
from reportgen.wording.traces import time_of
from reportgen.wording.unit import joined

HEIGHT = 200.0
Happened = tuple[tuple[float, int], ...]  # seconds, number of the caveat


@dataclass(frozen=True)
class Line:
    """One trace of the contender at `index`. `name` stands at its end: A, or A2 where there are several passes; `who`
    is the same in words."""

    shown: TraceShown
    index: int
    name: str
    who: str
    happened: Happened = ()

    @property
    def mark(self) -> ContenderMark:
        return mark_of(self.index)

    @property
    def whose(self) -> Row:
        """Of a mark along this trace: whose it is."""
        return {"of": self.index}

    @property
    def passed(self) -> tuple[str, ...]:
        """When it passed each limit, in words."""
        return tuple(time_of(c.at) for c in self.shown.crossings if not c.past)

    def met(self, seconds: float, value: float) -> str:
        """A sample in words."""
        said = joined(number.plain(value), self.shown.unit)
        return words("met.sample", name=self.who, at=time_of(seconds), said=said)


@dataclass(frozen=True)
class Sheet:
    """The plate, and the size of its unit of time in s."""

    plate: Plate
    up: Axis
    second: float

    def spot(self, seconds: float, value: float) -> Spot:
        across, up = self.plate.x, self.up
        return across.at(seconds / self.second, self.plate.width), HEIGHT - up.at(value, HEIGHT)
