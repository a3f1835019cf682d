"""Intervals from joint draws, where first order leaves out too much (JCGM 101:2008, 7.7, 7.9 and clause 8).

Scatter between passes is added to what a formula makes of its inputs, so it needs no draws: an end is a quantile of
T·√A + B, averaged over the draws of B. On the same draws stands what first order makes of them. Both ends are those of
first order, which are known without draws, moved by how far apart the two quantiles lie: what both have of the luck of
the draws falls out.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot, inf, isfinite, sqrt
from typing import TYPE_CHECKING

from reportgen.judgement.drawn.beyond import Beyond
from reportgen.judgement.drawn.quantile_of_draws import Scattered, quantile, quantile_of, share_below
from reportgen.metrology.draws import BLOCK
from reportgen.metrology.monte_carlo import Settled, tolerance, until_settled

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

QUARTER = 0.25
MIDDLE = (0.15865525, 0.84134475)  # one standard deviation to either side, were they normal
U_STANDS = 0.05  # of itself; where the standard deviation of draws doesn't settle so far, it has no meaning
U_KEPT = 0.1  # of u to first order: as far as that of the draws may lie from it for a budget to be taken at its word
CLAIM_BLOCKS = 10  # 100 000 draws: a probability to within 0.003


@dataclass(frozen=True)
class ByDraws:
    """What draws say. `low` and `high` are ends relative to the value, `u` beside them; `mean` is how far the average
    of all draws lies from the value.

    `first_u`, `first_low`, `first_high`: u and the ends to first order. The ends are good enough where both lie within
    `tolerance` (JCGM 101, 8.2): then `needed` is False. `within`: how far the ends may still be off; `settled`: that is
    within the tolerance too. `middle`: u is half of what holds the middle 68 % of the draws, as their standard
    deviation doesn't settle. `combined` is the one to print.
    """

    low: float
    high: float
    u: float
    mean: float
    first_u: float
    first_low: float
    first_high: float
    tolerance: float
    within: float
    draws: int
    settled: bool
    needed: bool
    middle: bool = False

    @property
    def ends(self) -> bool:
        """Whether there is an interval: in too many draws the formula has no answer otherwise."""
        return isfinite(self.low) and isfinite(self.high)

    @property
    def u_counts(self) -> bool:
        """Whether u to first order, which a budget adds up to, is too far off to be printed for that of the draws."""
        return self.needed and not abs(self.u - self.first_u) <= U_KEPT * self.first_u

    @property
    def combined(self) -> float:
        """The standard uncertainty to print: first order (JCGM 100, 5.1.2) as long as it will do."""
        return self.u if self.u_counts else self.first_u

    def scaled(self, value: float) -> ByDraws:
        """The same in the unit of `value`, where all of it is relative to that."""
        return replace(
            self,
            low=value * self.low,
            high=value * self.high,
            u=value * self.u,
            mean=value * self.mean,
            first_u=value * self.first_u,
            first_low=value * self.first_low,
            first_high=value * self.first_high,
            tolerance=value * self.tolerance,
            within=value * self.within,
        )


def by_draws(beyond: Beyond | None, half: float, u: float, scattered: Scattered, alpha: float) -> ByDraws | None:
    """The interval at two-sided `alpha` from draws, None where second order is too small to be seen beside `u`.

    `half`, `u`: half-width and combined standard uncertainty to first order.
    """
    delta = tolerance(u)
    if beyond is None or beyond.most(alpha, u, scattered) <= delta:
        return None
    tails = (alpha / 2.0, 1.0 - alpha / 2.0)

    def block(number: int) -> Sequence[float]:
        straight, full = beyond.block(number, scattered.repeat)
        return _figures(straight, full, scattered, tails)

    def tolerances(averages: Sequence[float]) -> Sequence[float]:
        delta = tolerance(hypot((averages[5] - averages[4]) / 2.0, scattered.root))
        return (delta, delta, inf, inf, inf, inf)

    def draw() -> Settled:
        first = block(0)
        if _plainly_straight(beyond, first, delta, scattered.repeat):
            return Settled(tuple(first), (QUARTER * delta,) * 2 + (0.0,) * 4, 1, True)
        return until_settled(block, tolerances)

    settled = draw() if beyond.found is None else beyond.found.settled((delta, scattered, alpha), draw)
    return _told(settled, half, u, scattered)


def _plainly_straight(beyond: Beyond, figures: Sequence[float], delta: float, repeat: bool) -> bool:
    """Whether one block is enough to keep first order: neither end moves by a quarter of δ, nor do draws on average.

    How far an end moves is then known to √(E|r|/(n·f)) ≤ 0.2 δ, r being what first order leaves out of a draw, n the
    draws and f ≥ 0.058/u their density at the end; f is what is known of a quantile's standard deviation.
    """
    import numpy as np

    straight, full = beyond.block(0, repeat)
    left_out = float(np.abs(full - straight).mean())  # no number where a draw has no answer, and then not less
    return left_out <= QUARTER * delta and max(map(abs, figures[:2])) <= QUARTER * delta


def _figures(straight: Numbers, full: Numbers, scattered: Scattered, tails: Sequence[float]) -> Sequence[float]:
    """How far either end moves, how far the mean does, how much the variance grows; the ends of the middle 68 %."""
    import numpy as np

    known = np.sort(full[np.isfinite(full)])
    lost = 1.0 - len(known) / len(full)
    if not len(known):
        return (-inf, inf, inf, inf, -inf, inf)
    flat = np.sort(straight)
    shares = [(p - lost) / (1.0 - lost) if p < 0.5 else p / (1.0 - lost) for p in (*tails, *MIDDLE)]
    moved = [
        quantile(known, p, scattered) - quantile(flat, tail, scattered)
        for p, tail in zip(shares[:2], tails, strict=True)
    ]
    middle = [quantile_of(known, p) for p in shares[2:]]
    added = np.where(np.isfinite(full), full - straight, 0.0)
    return (*moved, float(added.mean()), float(known.var(ddof=1) - straight.var(ddof=1)), *middle)


def _told(settled: Settled, half: float, first_u: float, scattered: Scattered) -> ByDraws:
    low, high, mean, added, begins, ends = settled.averages
    variance = first_u * first_u + added
    middle = not (variance >= 0.0 and settled.within[3] <= 2.0 * U_STANDS * variance)  # so too of what is no number
    u = hypot((ends - begins) / 2.0, scattered.root) if middle else sqrt(variance)
    delta = tolerance(u)
    return ByDraws(
        low=low - half,
        high=high + half,
        u=u,
        mean=mean,
        first_u=first_u,
        first_low=-half,
        first_high=half,
        tolerance=delta,
        within=max(settled.within[:2]),
        draws=settled.blocks * BLOCK,
        settled=settled.stands,
        needed=not (abs(low) <= delta and abs(high) <= delta),
        middle=middle,
    )


def probability_below(beyond: Beyond, x: float, scattered: Scattered) -> float:
    """P(T·√A + B ≤ x) over draws of B. Those without an answer count as on neither side."""

    def count() -> float:
        return _share_below(beyond, x, scattered)

    return count() if beyond.found is None else beyond.found.probability((x, scattered), count)


def _share_below(beyond: Beyond, x: float, scattered: Scattered) -> float:
    shares = [share_below(beyond.block(number, scattered.repeat)[1], x, scattered) for number in range(CLAIM_BLOCKS)]
    return sum(shares) / len(shares)
