"""Decisions about pairs: better, no difference that matters, too close to call, or not enough to say.

One printed interval decides both whether a difference is resolved (it excludes 0) and whether it matters (two one-sided
tests; Schuirmann 1987, Journal of Pharmacokinetics and Biopharmaceutics 15:657).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import isinf

from reportgen.judgement.blocks import NOISE
from reportgen.judgement.differed import instrument_half_width
from reportgen.judgement.drawn.draws import ByDraws
from reportgen.judgement.equivalence import matters_beyond
from reportgen.judgement.half_width import exceeds, holds_steps
from reportgen.judgement.lead import Weighed, draws_at, half_at, instrument_reach, reach, u_in_unit
from reportgen.judgement.measured import Decision, Measured, Pair, Reason, Rules, Settle, Within
from reportgen.judgement.percent import percent_of_second
from reportgen.judgement.scatter import Scatter, degrees_after
from reportgen.judgement.settle import Asked, settle


@dataclass(frozen=True)
class Level:
    """Two-sided level of a pair's interval, and whether it is adjusted so that all pairs hold together."""

    alpha: float
    adjusted: bool


def decide(weighed: Weighed, first: Measured, second: Measured, level: Level, scatter: Scatter, rules: Rules) -> Pair:
    """The pair as it is reported. `first`, `second` are in the quantity's unit; `weighed` may be in logarithms."""
    if weighed.off_scale and not weighed.apart:
        nothing = _nothing_said(first, second, None, Reason("off-scale-both"), None, None, None)
        return replace(nothing, decision="too close to call")
    if not weighed.comparable:
        undecidable = _undecidable(weighed, first, second)
        percent = percent_of_second(weighed, scatter, level.alpha) if rules.ratio else None
        return replace(undecidable, percent=percent)
    half = half_at(weighed, level.alpha)
    if isinf(half):
        return _nothing_said(first, second, difference(first, second), Reason("no-answer"), None, None, None)
    below, above = reach(weighed, level.alpha)
    resolved = weighed.ahead is not None and exceeds(weighed.lead, half, weighed.level)
    favours = weighed.ahead if resolved else None
    differed, _, _ = instrument_interval(weighed)
    if weighed.d is None:
        return _bounded(weighed, half, favours, level, differed, rules)
    low, high = weighed.ends((below, above), level.alpha)
    inside, beyond = matters_beyond(low, high, resolved, rules.matters)
    decision: Decision = "no difference that matters" if inside else "better" if resolved else "too close to call"
    return Pair(
        first.name,
        second.name,
        difference=_shown(weighed, first, second),
        u=u_in_unit(weighed),
        low=low,
        high=high,
        decision=decision,
        resolved=resolved,
        differed=differed,
        differed_low=None,
        differed_high=None,
        favours=favours,
        reason=_why(weighed, half, resolved, inside, low, high, rules),
        adjusted=level.adjusted,
        beyond=beyond,
        settle=None if decision != "too close to call" else _settle(weighed, first, second, scatter, rules),
        within=_within(weighed, first, second, rules),
        percent=percent_of_second(weighed, scatter, level.alpha, rules.between_sessions) if rules.ratio else None,
        draws=_in_unit(weighed, draws_at(weighed, level.alpha)),
    )


def _in_unit(weighed: Weighed, draws: ByDraws | None) -> ByDraws | None:
    """On a scale of logarithms, near enough for telling how far off first order is."""
    return draws if draws is None or weighed.centre is None else draws.scaled(weighed.centre)


def set_aside(first: Measured, second: Measured, code: str) -> Pair:
    """A pair of which one is not ranked: its difference is shown, nothing is decided."""
    return _nothing_said(first, second, difference(first, second), Reason(code), None, None, None)


def difference(first: Measured, second: Measured) -> float | None:
    """First minus second, None where either is missing or only a bound."""
    if first.value is None or second.value is None or first.limit or second.limit:
        return None
    return first.value - second.value


def _shown(weighed: Weighed, first: Measured, second: Measured) -> float | None:
    """What the interval stands around: the plain difference, unless blocks or ratios make it another."""
    plain = difference(first, second)
    if weighed.d is None or plain is None:
        return plain
    found = weighed.in_unit(weighed.d)
    turned = weighed.centre is not None and found * plain < 0.0  # means of logarithms and of values order them apart
    return found if weighed.freed or turned else plain


def _within(weighed: Weighed, first: Measured, second: Measured, rules: Rules) -> Within:
    """Which blocks the difference was freed from, where that made it another than the difference of the results."""
    shown, plain = _shown(weighed, first, second), difference(first, second)
    if shown is None or plain is None or abs(shown - plain) <= NOISE * weighed.level:
        return ""
    if not weighed.freed:
        return "ratios"
    return "rounds" if rules.rounds and first.rounds else "sessions"


def _settle(weighed: Weighed, first: Measured, second: Measured, scatter: Scatter, rules: Rules) -> Settle | None:
    """What would settle it: at the margin that matters where one is set, else at the difference seen."""
    if weighed.d is None or weighed.spread is None:
        return None
    seen = abs(_shown(weighed, first, second) or 0.0)
    asked = Asked(abs(weighed.d), seen, matters=False)
    if rules.matters is not None:
        unit = weighed.in_unit(1e-6) / 1e-6  # what one on the working scale is in the quantity's unit
        asked = Asked(rules.matters / unit, rules.matters, matters=True)
    now = min(len(first.values), len(second.values))
    degrees = degrees_after(scatter, weighed.spread, now)
    return settle(weighed, asked, degrees, scatter.contenders, rules.between_sessions or 0.0)


def instrument_interval(weighed: Weighed) -> tuple[bool | None, float | None, float | None]:
    """Whether they differed in these runs, and the instrument's interval of the difference (None: not known)."""
    half = instrument_half_width(weighed.first, weighed.second, weighed.steps)
    if half is None:
        return None, None, None
    below, above = instrument_reach(weighed, half)
    if weighed.d is None:
        certain = weighed.ahead is not None and exceeds(weighed.lead, half, weighed.level)
        return (True if certain else None), None, None
    if isinf(below + above):
        return None, None, None
    low, high = weighed.ends((below, above), "instrument")
    return exceeds(abs(weighed.d), below if weighed.d >= 0.0 else above, weighed.level), low, high


def _undecidable(weighed: Weighed, first: Measured, second: Measured) -> Pair:
    code = "sessions-apart" if weighed.apart else "no-scatter-known"
    found = instrument_interval(weighed)
    said = _nothing_said(first, second, difference(first, second), Reason(code), *found)
    return replace(said, draws=_in_unit(weighed, weighed.asked.get("instrument")))


def _nothing_said(
    first: Measured,
    second: Measured,
    d: float | None,
    reason: Reason,
    differed: bool | None,
    low: float | None,
    high: float | None,
) -> Pair:
    return Pair(
        first.name,
        second.name,
        difference=d,
        u=None,
        low=None,
        high=None,
        decision="not enough to say",
        resolved=False,
        differed=differed,
        differed_low=low,
        differed_high=high,
        favours=None,
        reason=reason,
    )


def _bounded(
    weighed: Weighed, half: float, favours: str | None, level: Level, differed: bool | None, rules: Rules
) -> Pair:
    first, second = weighed.first, weighed.second
    code = "bound-decides" if favours else "bound-too-close"
    if not favours and first.limit and second.limit:
        code = "off-scale-both"
    least = weighed.in_unit(weighed.lead - half)  # what the bound guarantees, less what a repeat may take away
    matters = favours is not None and rules.matters is not None and least > rules.matters
    return Pair(
        first.name,
        second.name,
        difference=None,
        u=None,
        low=None,
        high=None,
        decision="better" if favours else "too close to call",
        resolved=favours is not None,
        differed=differed,
        differed_low=None,
        differed_high=None,
        favours=favours,
        reason=Reason(code, {"lead": weighed.in_unit(weighed.lead), "half_width": weighed.width_in_unit(half)}),
        adjusted=level.adjusted,
        beyond=True if matters else None,
    )


def _why(weighed: Weighed, half: float, resolved: bool, inside: bool, low: float, high: float, rules: Rules) -> Reason:
    if inside and rules.matters is not None:
        return Reason("inside-matters", {"low": low, "high": high, "matters": rules.matters})
    numbers = {"lead": weighed.in_unit(weighed.lead), "half_width": weighed.width_in_unit(half)}
    if resolved:
        return Reason("lead-exceeds", numbers)
    steps = weighed.steps
    assert weighed.spread is not None
    by_step = steps.floor > 0.0 and half <= steps.floor and not holds_steps(weighed.spread.sd, steps.step)
    if by_step:
        return Reason(
            "step-decides",
            {
                **numbers,
                "least_lead": weighed.in_unit(steps.floor + steps.step),
                "step": weighed.in_unit(steps.step),
            },
        )
    return Reason("lead-within", numbers)
