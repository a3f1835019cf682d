"""Intervals from joint draws, where first order leaves out too much (JCGM 101:2008, 7.7, 7.9 and clause 8).

Scatter between passes is added to what a formula makes of its inputs, so it needs no draws: an end is a quantile of
T·√A + B, averaged over the draws of B. On the same draws stands what first order makes of them. Both ends are those of
first order, which are known without draws, moved by how far apart the two quantiles lie: what both have of the luck of
the draws falls out.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import hypot, inf, isfinite, sqrt
from typing import TYPE_CHECKING

from reportgen.judgement.found import Found, of_difference, of_logarithm
from reportgen.judgement.zero import zero_of_rising
from reportgen.metrology.draws import BLOCK
from reportgen.metrology.monte_carlo import Settled, tolerance, until_settled

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]
    Block = Callable[[int, bool], tuple[Numbers, Numbers]]

QUARTER = 0.25
LARGE = 1e6  # degrees of freedom, as good as none counted
GROUPS = 250  # of neighbouring draws, each taken as one beside Student's t, which smooths more than that
MIDDLE = (0.15865525, 0.84134475)  # one standard deviation to either side, were they normal
U_STANDS = 0.05  # of itself; where the standard deviation of draws doesn't settle so far, it has no meaning
U_KEPT = 0.1  # of u to first order: as far as that of the draws may lie from it for a budget to be taken at its word
CLAIM_BLOCKS = 10  # 100 000 draws: a probability to within 0.003


@dataclass(frozen=True)
class Scattered:
    """The scatter beside the draws: √A with its degrees of freedom; `repeat` as of `Beyond.block`."""

    root: float
    degrees: float
    repeat: bool


INSTRUMENT_ALONE = Scattered(0.0, 1.0, repeat=False)


@dataclass(frozen=True)
class Beyond:
    """What first order leaves out of one result.

    `bend(repeat)`: a guess from above of the second order (`metrology.bending`), in the result's unit; `degrees`: the
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
    middle = [_quantile_of(known, p) for p in shares[2:]]
    added = np.where(np.isfinite(full), full - straight, 0.0)
    return (*moved, float(added.mean()), float(known.var(ddof=1) - straight.var(ddof=1)), *middle)


def quantile(ordered: Numbers, share: float, scattered: Scattered) -> float:
    """h with P(T·√A + B ≤ h) = `share`, B among draws in order; infinite where the share isn't between 0 and 1."""
    from scipy.special import stdtr, stdtrit

    if not 0.0 < share < 1.0:
        return inf if share >= 1.0 else -inf
    if scattered.root <= 0.0:
        return _quantile_of(ordered, share)
    groups = _grouped(ordered) / scattered.root
    alone = float(stdtrit(scattered.degrees, share))

    def excess(h: float) -> float:
        return float(stdtr(scattered.degrees, h - groups).mean()) - share

    return scattered.root * zero_of_rising(excess, float(groups[0]) + alone, float(groups[-1]) + alone, close=1e-9)


def _grouped(ordered: Numbers) -> Numbers:
    import numpy as np

    if len(ordered) <= GROUPS:
        return ordered
    begins = np.linspace(0, len(ordered), GROUPS, endpoint=False).astype(np.intp)
    counts = np.diff(np.append(begins, len(ordered)))
    means: Numbers = np.add.reduceat(ordered, begins) / counts
    return means


def _quantile_of(ordered: Numbers, share: float) -> float:
    """Between the two draws it lies between (JCGM 101, 7.5 and 7.7, of draws in order)."""
    if not 0.0 < share < 1.0:
        return inf if share >= 1.0 else -inf
    at = share * (len(ordered) - 1)
    below = int(at)
    above = min(below + 1, len(ordered) - 1)
    return float(ordered[below] + (at - below) * (ordered[above] - ordered[below]))


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
    import numpy as np
    from scipy.special import stdtr

    found = []
    for number in range(CLAIM_BLOCKS):
        _, full = beyond.block(number, scattered.repeat)
        known = full[np.isfinite(full)]
        if scattered.root > 0.0:
            groups = _grouped(np.sort(known))
            share = float(stdtr(scattered.degrees, (x - groups) / scattered.root).mean())
        else:
            share = float((known <= x).mean())
        found.append(share * len(known) / len(full))
    return sum(found) / len(found)


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
