"""What a value is worth: nothing at the author's worst, one at the author's best, straight on beyond both.

The anchors mean something in use and are set before the data. Taken from the contenders' own smallest and largest
values, they would move when a contender joins, and turn the others round.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import log
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]


FURTHEST = 300.0  # of a logarithm: with one or two degrees of freedom a draw may lie where no float reaches


@dataclass(frozen=True)
class ValueFunction:
    """`worst` and `best` in the quantity's unit; `ratio`: equal ratios are worth alike, so logarithms count.

    >>> ValueFunction(25.0, 10.0).of(16.0)
    0.6
    >>> ValueFunction(400.0, 100.0, ratio=True).of(200.0)
    0.5
    >>> ValueFunction(25.0, 10.0).of(28.0)
    -0.2

    Raises ValueError where the anchors are equal, or a ratio has one that isn't above zero.
    """

    worst: float
    best: float
    ratio: bool = False

    def __post_init__(self) -> None:
        if self.worst == self.best:
            raise ValueError("worst and best are the same value")
        if self.ratio and min(self.worst, self.best) <= 0.0:
            raise ValueError("ratios need anchors above zero")

    def of(self, value: float) -> float:
        """The worth of a value, below 0 and above 1 beyond the anchors; of a ratio the value is above zero."""
        if self.ratio:
            return log(value / self.worst) / log(self.best / self.worst)
        return (value - self.worst) / (self.best - self.worst)

    def of_draws(self, value: float, off: Numbers, relative: bool) -> Numbers:
        """The worth of every draw: `off` is how far each lies from `value`, as its logarithm where `relative`."""
        import numpy as np

        if relative:
            off = np.clip(off, -FURTHEST, FURTHEST)
        if self.ratio:
            return self.of(value) + (off if relative else off / value) / log(self.best / self.worst)
        return self.of(value) + (value * np.expm1(off) if relative else off) / (self.best - self.worst)

    def is_past(self, value: float) -> bool:
        """Whether a value lies beyond the anchors."""
        return not min(self.worst, self.best) <= value <= max(self.worst, self.best)
