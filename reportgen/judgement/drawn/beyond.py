"""What first order leaves out of a result, a difference or a logarithm: how far it bends, and its joint draws."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import inf
from typing import TYPE_CHECKING

from reportgen.judgement.drawn.found import Found, of_difference, of_logarithm
from reportgen.judgement.drawn.quantile_of_draws import Scattered

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]
    Block = Callable[[int, bool], tuple[Numbers, Numbers]]

LARGE = 1e6  # degrees of freedom, as good as none counted


@dataclass(frozen=True)
class Beyond:
    """What first order leaves out of one result.

    `bend(repeat)`: a guess from above of the second order (`formulas.bending`), in the result's unit; `degrees`: the
    fewest that any of its sources has; `found`: where what its draws tell is kept. `block(number, repeat)` gives how
    far each draw lies from the value: to first order, and as the formula has it (no number where it has no answer).
    With `repeat`, what the scatter between passes holds already is not drawn: steps, and how an instrument repeats
    itself; without, the scatter of quantities behind.
    """

    bend: Callable[[bool], float]
    block: Block
    degrees: float = inf
    found: Found | None = None

    def most(self, alpha: float, u: float, scattered: Scattered) -> float:
        """How far second order may move an end at two-sided `alpha`, at most: one bend with the middle, and z² of them
        as far as it is what is drawn, rather than scatter, that makes the end (their shares of u²)."""
        from scipy.special import stdtrit

        z = float(stdtrit(min(self.degrees, LARGE), 1.0 - alpha / 2.0))
        drawn = max(0.0, 1.0 - (scattered.root / u) ** 2) if u > 0.0 else 1.0
        return self.bend(scattered.repeat) * (1.0 + z * z * drawn)


def apart(first: Beyond | None, second: Beyond | None) -> Beyond | None:
    """Of first minus second: the draws of both are joint, so what they share falls out. None where either is."""
    if first is None or second is None:
        return None
    one, other = first.block, second.block

    def block(number: int, repeat: bool) -> tuple[Numbers, Numbers]:
        a, b = one(number, repeat), other(number, repeat)
        return a[0] - b[0], a[1] - b[1]

    one_bend, other_bend = first.bend, second.bend
    degrees, found = min(first.degrees, second.degrees), of_difference(first.found, second.found)
    return Beyond(lambda repeat: one_bend(repeat) + other_bend(repeat), block, degrees, found)


def in_logarithms(beyond: Beyond | None, value: float, u: float) -> Beyond | None:
    """The same of the natural logarithm of a result; `u`: the combined standard uncertainty of what is drawn."""
    if beyond is None:
        return None
    plain = beyond.block

    def block(number: int, repeat: bool) -> tuple[Numbers, Numbers]:
        import numpy as np

        straight, full = plain(number, repeat)
        with np.errstate(all="ignore"):
            logs = np.log1p(full / value)
        return straight / value, np.where(np.isfinite(logs), logs, np.nan)

    bend = beyond.bend
    found = of_logarithm(beyond.found, value)
    return Beyond(lambda repeat: bend(repeat) / value + (u / value) ** 2 / 2.0, block, beyond.degrees, found)
