"""Two results set against each other: who is ahead, by how much, and what stands beside the lead.

A result off the scale is a bound. Its lead is what the bound alone guarantees; where the bound guarantees nothing
there is no lead.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from math import exp, hypot, inf, sqrt
from typing import Literal

from reportgen.judgement.blocks import NOISE
from reportgen.judgement.drawn.beyond import Beyond
from reportgen.judgement.drawn.beyond import apart as difference_of_draws
from reportgen.judgement.drawn.draws import ByDraws, by_draws
from reportgen.judgement.drawn.quantile_of_draws import INSTRUMENT_ALONE, Scattered
from reportgen.judgement.half_width import Rounding, combined, exceeds, half_width, holds_steps, rounding, unshared
from reportgen.judgement.measured import Better, Measured, Rules
from reportgen.judgement.middle import Middle, middle_of
from reportgen.judgement.reach.parts import Parts, with_part
from reportgen.judgement.scale import difference_from_logarithm, ends_from_logarithm
from reportgen.judgement.scatter import Scatter, Spread, difference_of, with_readings_stood_on

ALPHA_OF_INSTRUMENT = 0.05


@dataclass(frozen=True)
class Weighed:
    """A pair on the working scale. `d` is first minus second, None where either is only a bound.

    `freed`: `d` is not the difference of the two values, but what shared rounds or sessions make of it.
    `ahead` leads by `lead` ≥ 0 (None: no lead can be told). `spread` None: the scatter isn't known. `apart`: no ranking
    between their sessions. `level` is the size of the numbers, for what binary fractions can feign. `centre`: on a
    scale of logarithms, the geometric mean of the two results in the quantity's unit; None on a plain scale. `middle`:
    how well its logarithm is known. `beyond`: joint draws of the difference, None where first order holds for both;
    `asked` keeps what they said.
    """

    first: Measured
    second: Measured
    d: float | None
    ahead: str | None
    lead: float
    spread: Spread | None
    parts: Parts
    steps: Rounding
    apart: bool
    level: float
    freed: bool = False
    centre: float | None = None
    middle: Middle | None = None
    beyond: Beyond | None = None
    asked: dict[float | Literal["instrument"], ByDraws | None] = field(default_factory=dict, compare=False)

    def in_unit(self, d: float) -> float:
        """A difference on the working scale in the quantity's unit."""
        return d if self.centre is None else difference_from_logarithm(self.centre, d)

    def width_in_unit(self, half: float) -> float:
        """Half of an interval reaching `half` either way of the difference, or of the lead where there is none."""
        at = self.lead if self.d is None else self.d
        return (self.in_unit(at + half) - self.in_unit(at - half)) / 2.0

    def ends(self, reach: tuple[float, float], alpha: float | Literal["instrument"]) -> tuple[float, float]:
        """Ends of the difference in the quantity's unit, at two-sided `alpha` or of the instrument alone."""
        assert self.d is not None
        if self.centre is None or self.middle is None:
            return self.d - reach[0], self.d + reach[1]
        of_middle = self.middle.half_of_instrument() if alpha == "instrument" else self.middle.half(self.steps, alpha)
        return ends_from_logarithm(self.centre, self.d, reach, of_middle)

    @property
    def off_scale(self) -> bool:
        """Both are known from one side only, and neither bound puts its own ahead: no scatter could tell more."""
        return bool(self.first.limit and self.second.limit) and self.ahead is None

    @property
    def comparable(self) -> bool:
        return self.spread is not None and not self.apart


def weigh(first: Measured, second: Measured, scatter: Scatter, rules: Rules) -> Weighed:
    """Everything a decision about two ranked results needs, on the working scale."""
    level = max((abs(m.value) for m in (first, second) if m.value is not None), default=0.0)
    freed, spread = difference_of(scatter, first, second)
    if spread is not None:
        spread = with_readings_stood_on(spread, first, second)
    low, high = (freed, freed) if freed is not None else _range_of_difference(first, second)
    d = low if first.limit is None and second.limit is None and low == high else None
    if d is not None and abs(d) <= NOISE * level:
        d = low = high = 0.0
    ahead, lead = _lead(first, second, low, high, rules.better)
    steps = rounding(first, second)
    if spread is not None and spread.variance == 0.0 and steps.step == 0.0:
        spread = None  # equal passes on a scale whose step nobody knows show that there is a step, not that all repeats
    seen = sqrt(spread.variance) if spread is not None else inf
    parts = unshared(first.contributions, second.contributions, repeat=True, scatter=seen)
    apart = freed is None and first.sessions.isdisjoint(second.sessions) and rules.between_sessions is None
    if rules.between_sessions:
        parts = with_sessions(parts, first, second, rules.between_sessions)
    centre = _centre(first, second, rules)
    return Weighed(
        first,
        second,
        d,
        ahead,
        lead,
        spread,
        parts,
        steps,
        apart,
        level,
        freed is not None,
        centre,
        middle_of(scatter, first, second, spread, rules.between_sessions or 0.0) if centre and d is not None else None,
        difference_of_draws(first.beyond, second.beyond) if d is not None else None,
    )


def half_at(weighed: Weighed, alpha: float) -> float:
    """How far the interval at two-sided `alpha` reaches from the difference towards zero, which is what a lead must
    exceed; half of it, unless draws have it uneven. Only where the pair is comparable."""
    below, above = reach(weighed, alpha)
    return below if weighed.d is None or weighed.d >= 0.0 else above


def reach(weighed: Weighed, alpha: float) -> tuple[float, float]:
    """How far the interval reaches below and above the difference; never less than the steps ask for."""
    assert weighed.spread is not None
    half = half_width(weighed.spread, weighed.parts, weighed.steps, alpha)
    draws = draws_at(weighed, alpha)
    if draws is None or not draws.needed:
        return half, half
    floor = weighed.steps.floor if half <= weighed.steps.floor else 0.0
    return max(-draws.low, floor), max(draws.high, floor)


def draws_at(weighed: Weighed, alpha: float) -> ByDraws | None:
    """What joint draws say of the difference; None where there is nothing to ask."""
    if weighed.beyond is None or weighed.spread is None:
        return None
    if alpha not in weighed.asked:
        spread, steps = weighed.spread, weighed.steps
        added = 0.0 if holds_steps(spread.sd, steps.step) else steps.variance
        scattered = Scattered(sqrt(spread.variance + added), spread.degrees, repeat=True)
        half = half_width(spread, weighed.parts, steps, alpha)
        weighed.asked[alpha] = by_draws(weighed.beyond, half, combined(spread, weighed.parts, steps), scattered, alpha)
    return weighed.asked[alpha]


def instrument_reach(weighed: Weighed, half: float) -> tuple[float, float]:
    """The same of the instrument alone, `half` being how far it reaches to first order."""
    u = half / 1.96  # near enough to tell which digits count; it is printed nowhere
    draws = weighed.asked["instrument"] = by_draws(weighed.beyond, half, u, INSTRUMENT_ALONE, ALPHA_OF_INSTRUMENT)
    if draws is None or not draws.needed:
        return half, half
    floor = weighed.steps.floor
    return max(-draws.low, floor), max(draws.high, floor)


def u_of(weighed: Weighed) -> float:
    """Combined standard uncertainty of the difference; only where the pair is comparable."""
    assert weighed.spread is not None
    needed = [draws for of, draws in weighed.asked.items() if of != "instrument" and draws and draws.needed]
    if needed:
        return needed[0].combined
    return combined(weighed.spread, weighed.parts, weighed.steps)


def u_in_unit(weighed: Weighed) -> float:
    """The same in the quantity's unit: on a scale of logarithms, with that of the middle of both."""
    u = weighed.width_in_unit(u_of(weighed))
    if weighed.middle is None or weighed.d is None:
        return u
    return hypot(u, weighed.in_unit(weighed.d) * weighed.middle.u(weighed.steps))


def beats(weighed: Weighed, alpha: float) -> str | None:
    """The one whose lead exceeds the half-width at `alpha`, or None."""
    if weighed.ahead is None or not weighed.comparable:
        return None
    return weighed.ahead if exceeds(weighed.lead, half_at(weighed, alpha), weighed.level) else None


def _centre(first: Measured, second: Measured, rules: Rules) -> float | None:
    if rules.scatter != "relative" or first.value is None or second.value is None:
        return None
    return exp((first.value + second.value) / 2.0)


def _range_of_difference(first: Measured, second: Measured) -> tuple[float, float]:
    (a, b), (c, d) = _range(first), _range(second)
    return a - d, b - c


def _range(one: Measured) -> tuple[float, float]:
    low = -inf if one.value is None or one.limit == "below" else one.value
    high = inf if one.value is None or one.limit == "above" else one.value
    return low, high


def _lead(first: Measured, second: Measured, low: float, high: float, better: Better) -> tuple[str | None, float]:
    lower, higher = (first.name, second.name), (second.name, first.name)
    at = 0 if better == "lower" else 1
    if high < 0.0:
        return lower[at], -high
    if low > 0.0:
        return higher[at], low
    return None, 0.0


def with_sessions(parts: Parts, first: Measured, second: Measured, sd: float, times: float = 1.0) -> Parts:
    """Add the declared scatter between sessions: 2σ² for one session each, less for those they share.

    `times`: how many times over the second is taken.
    """
    shares = [
        (name in first.sessions) / len(first.sessions) - times * (name in second.sessions) / len(second.sessions)
        for name in sorted(first.sessions | second.sessions)
    ]
    added = sd * sqrt(sum(w * w for w in shares))
    return with_part(parts, added)
