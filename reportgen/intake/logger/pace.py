"""How a logger's samples follow each other: their usual distance, gaps, changes of rate, and times that can't be."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

LONG = (
    3.0  # a distance between two samples of more than so many usual ones is a gap, of less than one in so many a change
)
ENOUGH = 5  # so many alike in a row are a new rate
LOOKED_AT = 200  # distances that the usual one is told from
NEAR = 0.1  # of the usual distance: one that differs by less is even
MOSTLY = 0.8  # of all distances: where fewer are even, samples don't come evenly
MOST = 1000  # gaps that are kept


@dataclass
class Pace:
    """Times in s from the first sample; `backwards` and `twice` are the first such sample (from 0), or None.

    `rates` are changes: where, the distance before and behind, in s. `dropped` counts samples that are missing singly
    or in pairs, where a distance is twice or thrice the usual one; `even` the distances that are the usual one, of
    `steps`.
    """

    samples: int = 0
    ends: float = 0.0
    interval: float = 0.0
    gaps: list[tuple[float, float]] = field(default_factory=list)
    rates: list[tuple[float, float, float]] = field(default_factory=list)
    backwards: int | None = None
    twice: int | None = None
    dropped: int = 0
    even: int = 0
    steps: int = 0

    @property
    def drops(self) -> bool:
        """Whether samples come evenly but for some that are missing."""
        return self.dropped > 0 and self.even >= MOSTLY * self.steps


def pace_of(times: Iterable[NDArray[np.float64]]) -> Pace:
    """One walk along a trace's times."""
    import numpy as np

    pace, usual, last = Pace(), 0.0, None
    for piece in times:
        joined = piece if last is None else np.concatenate(([last], piece))
        apart = np.diff(joined)
        if pace.backwards is None and (apart < 0).any():
            pace.backwards = pace.samples + int(np.flatnonzero(apart < 0)[0]) + (last is None)
        if pace.twice is None and (apart == 0).any():
            pace.twice = pace.samples + int(np.flatnonzero(apart == 0)[0]) + (last is None)
        usual = _follow(pace, joined, apart, usual)
        _count(pace, apart, usual)
        pace.samples += len(piece)
        last = float(piece[-1])
    pace.ends = last or 0.0
    pace.interval = usual
    return pace


def _count(pace: Pace, apart: NDArray[np.float64], usual: float) -> None:
    import numpy as np

    if usual <= 0:
        return
    times = apart / usual
    whole = np.round(times)
    near = np.abs(times - whole) <= NEAR
    pace.even += int(np.count_nonzero(near & (whole == 1)))
    pace.dropped += int((whole[near & (whole > 1) & (times <= LONG)] - 1).sum())
    pace.steps += len(apart)


def _follow(pace: Pace, times: NDArray[np.float64], apart: NDArray[np.float64], usual: float) -> float:
    """Gaps and changes of rate of one piece; the usual distance at its end."""
    import numpy as np

    at = 0
    if not usual and len(apart):
        usual = float(np.median(apart[:LOOKED_AT]))
    while at < len(apart):
        rest = apart[at:]
        odd = np.flatnonzero((rest > LONG * usual) | (rest < usual / LONG))
        if not len(odd):
            break
        i = at + int(odd[0])
        ahead = apart[i : i + ENOUGH]
        new = float(np.median(ahead))
        steady = len(ahead) == ENOUGH and bool((ahead < LONG * new).all() and (ahead > new / LONG).all())
        if steady and not usual / LONG <= new <= LONG * usual:
            pace.rates.append((float(times[i]), usual, new))
            usual, at = float(np.median(apart[i : i + LOOKED_AT])), i + ENOUGH
            if len(pace.rates) > MOST:
                break
            continue
        if apart[i] > LONG * usual and len(pace.gaps) < MOST:
            pace.gaps.append((float(times[i]), float(times[i + 1])))
        at = i + 1
    return usual
