"""What would settle a pair: passes each for 80 % power, by the rule in use for one pair (two-sided 5 %).

Power of Student's t from the noncentral t distribution (Cohen 1988, Statistical Power Analysis, 2.3); type B parts and
rounding stay as they are however many passes are run.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import ceil, hypot, isfinite, sqrt

from scipy.special import nctdtr, ndtr

from reportgen.judgement.convolution import quantile
from reportgen.judgement.half_width import Rounding, holds_steps
from reportgen.judgement.lead import Weighed
from reportgen.judgement.measured import Settle
from reportgen.judgement.parts import NOTHING, sd_of
from reportgen.judgement.scatter import hidden
from reportgen.judgement.simultaneous import ALPHA

POWER = 0.80
GUESS = 15.7  # 2(1.96 + 0.84)²: passes for one sd, were the scatter known exactly
MOST = 10_000  # passes each; nobody runs more, and the answer is "no number of passes"

Degrees = Callable[[int], float]  # degrees of freedom, were so many passes run of each


@dataclass(frozen=True)
class Asked:
    """The difference to tell: on the working scale, and in the quantity's unit as it is reported."""

    difference: float
    in_unit: float
    matters: bool


def settle(weighed: Weighed, asked: Asked, degrees: Degrees) -> Settle | None:
    """Passes each that would tell `asked`; None where there is nothing to tell or no scatter to reckon with.

    Where the step dominates a finer instrument is the answer: no number of passes would do, or with finer steps the
    present passes would have done.
    """
    if weighed.spread is None or weighed.d is None or asked.difference <= 0.0:
        return None
    now = max(len(weighed.first.values), len(weighed.second.values), 1)
    coarse = not holds_steps(weighed.spread.sd, weighed.steps.step)
    fine = replace(weighed, steps=Rounding())
    guess = ceil(min(GUESS * (weighed.spread.sd / asked.difference) ** 2, float(MOST))) + 1
    passes = _fewest(lambda n: power(asked.difference, n, degrees(n), weighed) >= POWER, now + 1, guess)
    finer = coarse and power(asked.difference, now if passes else MOST, degrees(now if passes else MOST), fine) >= POWER
    return Settle(asked.in_unit, None if finer else passes, finer, "matters" if asked.matters else "seen")


def power(difference: float, passes: int, degrees: float, weighed: Weighed) -> float:
    """Chance that a true `difference` is resolved by so many passes each, beside the pair's parts and steps.

    Beside scatter, parts enter the half-width as the root of the sum of squares of their own and Student's: right at
    either end, close between, and enough to plan by. Decisions never use it.
    """
    assert weighed.spread is not None
    steps, sd = weighed.steps, weighed.spread.sd
    coarse = not holds_steps(sd, steps.step)
    a = (2.0 / passes + hidden(weighed.first, weighed.second)) * sd * sd + (steps.variance if coarse else 0.0)
    half = hypot(quantile(1.0 - ALPHA, sqrt(a), degrees, NOTHING), quantile(1.0 - ALPHA, 0.0, 1.0, weighed.parts))
    half = max(half, steps.floor if coarse else 0.0)
    root = sqrt(a + sd_of(weighed.parts) ** 2)
    if root == 0.0:
        return float(difference > half)
    chance = 1.0 - float(nctdtr(degrees, difference / root, half / root))
    return chance if isfinite(chance) else float(ndtr((difference - half) / root))


def _fewest(enough: Callable[[int], bool], start: int, guess: int) -> int | None:
    """Fewest passes from `start` on that are enough, looked for around a guess. None beyond `MOST`."""
    low, high = start - 1, max(start, min(guess, MOST))  # `low` is not enough, `high` is once the loop ends
    stride = 1
    while not enough(high):
        if high >= MOST:
            return None
        low, high, stride = high, min(high + stride, MOST), stride * 2
    stride = 1
    while high - low > 1:
        middle = max(high - stride, (low + high) // 2)
        low, high = (low, middle) if enough(middle) else (middle, high)
        stride *= 2
    return high
