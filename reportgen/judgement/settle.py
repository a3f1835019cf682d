"""What would settle a pair: passes each for 80 % power, by the rule in use for one pair (two-sided 5 %).

Power of Student's t from the noncentral t distribution (Cohen 1988, Statistical Power Analysis, 2.3); type B parts and
rounding stay as they are however many passes are run.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import ceil, hypot, isfinite, sqrt

from scipy.special import nctdtr, ndtr

from reportgen.judgement.half_width import Rounding, holds_steps, unshared
from reportgen.judgement.lead import Weighed, with_sessions
from reportgen.judgement.measured import Settle
from reportgen.judgement.reach.convolution import quantile
from reportgen.judgement.reach.parts import NOTHING, Parts, sd_of
from reportgen.judgement.scatter import hidden
from reportgen.judgement.simultaneous import ALPHA
from reportgen.metrology.uncertain import Source

POWER = 0.80
GUESS = 15.7  # 2(1.96 + 0.84)²: passes for one sd, were the scatter known exactly
MOST = 10_000  # passes each; nobody runs more, and the answer is "no number of passes"

INSTRUMENTS = frozenset({"offset", "gain", "accuracy", "calibration", "drift", "clock", "laboratory"})
SPECIMENS = "specimens"  # what the scatter between them is called as a source

Degrees = Callable[[int], float]  # degrees of freedom, were so many passes run of each


@dataclass(frozen=True)
class Asked:
    """The difference to tell: on the working scale, and in the quantity's unit as it is reported."""

    difference: float
    in_unit: float
    matters: bool


def settle(
    weighed: Weighed, asked: Asked, degrees: Degrees, contenders: int = 2, between_sessions: float = 0.0
) -> Settle | None:
    """Passes each that would tell `asked`; None where there is nothing to tell or no scatter to reckon with.

    Where the step dominates a finer instrument is the answer: no number of passes would do, or with finer steps the
    present passes would have done. Where neither is, what stands in the way whatever the passes: a declared scatter
    between specimens (then so many specimens of each of `contenders` would do), or errors of the instruments that the
    two don't share.
    """
    if weighed.spread is None or weighed.d is None or asked.difference <= 0.0:
        return None
    now = max(len(weighed.first.values), len(weighed.second.values), 1)
    coarse = not holds_steps(weighed.spread.sd, weighed.steps.step)
    fine = replace(weighed, steps=Rounding())
    guess = ceil(min(GUESS * (weighed.spread.sd / asked.difference) ** 2, float(MOST))) + 1
    passes = _fewest(lambda n: power(asked.difference, n, degrees(n), weighed) >= POWER, now + 1, guess)
    finer = coarse and power(asked.difference, now if passes else MOST, degrees(now if passes else MOST), fine) >= POWER
    told = Settle(asked.in_unit, None if finer else passes, finer, "matters" if asked.matters else "seen")
    if finer or passes is not None:
        return told
    specimens = _specimens(asked.difference, weighed, contenders, between_sessions)
    if specimens is not None:
        return replace(told, specimens=specimens)
    exact = replace(weighed, parts=_parts_without(weighed, INSTRUMENTS, between_sessions))
    return replace(told, calibration=power(asked.difference, MOST, degrees(MOST), exact) >= POWER)


def _specimens(difference: float, weighed: Weighed, contenders: int, between_sessions: float) -> int | None:
    """Specimens of each that would tell it, each of them run as often as now: their own scatter, of k(m − 1) degrees
    of freedom, then takes the place of the declared one. None where none is declared, or no number would do."""
    assert weighed.spread is not None
    sizes = [c for m in (weighed.first, weighed.second) for s, c in m.contributions.items() if _between(s)]
    if not sizes:
        return None
    now = max(min(len(weighed.first.values), len(weighed.second.values)), 1)
    sd = hypot(hypot(*sizes) / sqrt(2.0), weighed.spread.sd / sqrt(now))
    parts = _parts_without(weighed, SPECIMENS, between_sessions)
    nested = replace(weighed, spread=replace(weighed.spread, sd=sd), parts=parts)
    guess = ceil(min(GUESS * (sd / difference) ** 2, float(MOST))) + 1
    return _fewest(lambda m: power(difference, m, contenders * (m - 1.0), nested) >= POWER, 2, guess)


def _between(source: Source) -> bool:
    return source.sort == "scatter" and source.of == SPECIMENS


def _parts_without(weighed: Weighed, left_out: str | frozenset[str], between_sessions: float) -> Parts:
    """The pair's type B parts without those of some sorts, or without the scatter between specimens."""
    assert weighed.spread is not None
    kept = [
        {s: c for s, c in m.contributions.items() if not (_between(s) if left_out == SPECIMENS else s.sort in left_out)}
        for m in (weighed.first, weighed.second)
    ]
    parts = unshared(*kept, repeat=True, scatter=sqrt(weighed.spread.variance))
    return with_sessions(parts, weighed.first, weighed.second, between_sessions) if between_sessions else parts


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
