"""Does what the maker says hold? Probability of conformity and the outcome that follows from it (JCGM 106:2012, 7)."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from math import fsum, hypot, inf, isinf, sqrt
from typing import Literal

from reportgen.judgement.differed import with_rounding
from reportgen.judgement.drawn import draws
from reportgen.judgement.drawn.beyond import Beyond
from reportgen.judgement.drawn.quantile_of_draws import INSTRUMENT_ALONE, Scattered
from reportgen.judgement.half_width import holds_steps, unshared
from reportgen.judgement.measured import Limit, Measured, Reason, Single
from reportgen.judgement.reach.convolution import probability_below
from reportgen.judgement.reach.parts import Parts, with_part

Outcome = Literal["supported", "contradicted", "undecided", "not tested"]
Scope = Literal["repeat", "this run", ""]
SUPPORTED_FROM = 0.95
CONTRADICTED_TO = 0.05
HALVINGS = 40  # of the way to an acceptance limit


@dataclass(frozen=True)
class Conformance:
    """`probability` that the claim holds, None where it can't be told; `scope`: for a repeat, or for this run alone.

    `accept`: from where to where (None: no end) a value as uncertain as this one would count as shown; None where there
    is no such value, or none can be told.
    """

    outcome: Outcome
    probability: float | None
    scope: Scope
    reason: Reason
    accept: tuple[float | None, float | None] | None = None


def conformance(
    measured: Measured,
    single: Single,
    *,
    at_least: float | None = None,
    at_most: float | None = None,
    relative: bool = False,
) -> Conformance:
    """Supported at P ≥ .95, contradicted at P ≤ .05, else undecided; not tested without a result or a bound.

    `relative`: the error is taken to grow with the value. A result beyond a limit that isn't known (`over unknown`) was
    tested and decides nothing.

    `measured` is the result and `single` what `judge` said of it; `at_least` and `at_most`, one or both, are the claim
    in the result's unit. Reason codes: conforms (numbers: probability, value, at_least, at_most), no-result,
    limit-unknown, bound-decides, bound-too-close, no-uncertainty-known, nothing-claimed.

    A mean of 95.5 with u = 1.5 taken as known conforms to at least 93 with a chance of Φ(2.5/1.5) = 95.2 % (JCGM
    106:2012, 7.2.2, a normal distribution and one limit):

    >>> from reportgen.judgement import DeclaredScatter, Measured, Rules, judge
    >>> one = Measured("a", 95.5, (95.5,))
    >>> known = judge([one, Measured("b", 90.0, (90.0,))], Rules("higher", declared=DeclaredScatter(1.5, 10**9)))
    >>> found = conformance(one, known.singles["a"], at_least=93.0)
    >>> found.outcome, round(found.probability, 3), found.scope
    ('supported', 0.952, 'repeat')
    """
    if measured.value is None:
        missing = Conformance("not tested", None, "", Reason("no-result"))
        return Conformance("undecided", None, "", Reason("limit-unknown")) if measured.limit else missing
    if at_least is None and at_most is None:
        return Conformance("not tested", None, "", Reason("nothing-claimed"))
    low, high = -inf if at_least is None else at_least, inf if at_most is None else at_most
    error = _error_of(measured, single)
    scope: Scope = "this run" if single.sd_of_mean is None else "repeat"
    numbers = {k: x for k, x in (("value", measured.value), ("at_least", low), ("at_most", high)) if not isinf(x)}
    if measured.limit is not None:
        return _of_bound(measured.value, measured.limit, (low, high), error, scope, numbers)
    if not error.parts and error.root == 0.0:
        return Conformance("undecided", None, "", Reason("no-uncertainty-known", numbers))
    probability = min(max(error.below(high - measured.value) - error.below(low - measured.value), 0.0), 1.0)
    reason = Reason("conforms", {**numbers, "probability": probability})
    accept = acceptance(error.below, low, high, measured.value if relative else None)
    return Conformance(_outcome(probability), probability, scope, reason, accept)


def acceptance(
    below: Callable[[float], float], low: float, high: float, relative_at: float | None = None
) -> tuple[float | None, float | None] | None:
    """The acceptance interval inside a tolerance interval: values as uncertain as this one that conform with P ≥ .95
    (JCGM 106:2012, 8.3, guarded acceptance). None where none does: the tolerance is too narrow for the measurement.

    `below(x)`: the probability that the error is at most x; `low` and `high` are the tolerance limits, ±∞ for none.
    `relative_at`: the value at which the error is so large, where it grows with the value. Of a normal error with u = 1
    the guard band is 1.645 wide:

    >>> from math import inf
    >>> from statistics import NormalDist
    >>> [None if x is None else round(x, 3) for x in acceptance(NormalDist().cdf, -inf, 10.0)]
    [None, 8.355]
    """
    if isinf(low) and isinf(high):
        return None

    def holds(value: float) -> float:
        grown = value / relative_at if relative_at else 1.0
        if grown <= 0.0:
            return 0.0
        most = 1.0 if isinf(high) else below((high - value) / grown)
        return most - (0.0 if isinf(low) else below((low - value) / grown))

    reach = _reach(below)
    if isinf(low):
        return None, _last(holds, high - 2.0 * reach, high)
    if isinf(high):
        return _last(holds, low + 2.0 * reach, low), None
    middle = (low + high) / 2.0
    if holds(middle) < SUPPORTED_FROM:
        return None
    return _last(holds, middle, low), _last(holds, middle, high)


def _reach(below: Callable[[float], float]) -> float:
    """How far the error may go, doubled until nearly nothing lies beyond."""
    reach = 1e-9
    while below(reach) - below(-reach) < 0.999 and reach < 1e300:
        reach *= 2.0
    return reach


def _last(holds: Callable[[float], float], inside: float, outside: float) -> float | None:
    """The last value from `inside` towards `outside` that conforms with P ≥ .95; None where not even `inside` does."""
    if holds(inside) < SUPPORTED_FROM:
        return None
    for _ in range(HALVINGS):
        middle = (inside + outside) / 2.0
        if holds(middle) >= SUPPORTED_FROM:
            inside = middle
        else:
            outside = middle
    return inside


@dataclass(frozen=True)
class _Error:
    """What may be wrong with a result: √(variance of the mean) with its degrees of freedom, and type B parts."""

    root: float
    degrees: float
    parts: Parts
    drawn: Callable[[float], float] | None = None  # the same by joint draws, where first order leaves out too much

    def below(self, x: float) -> float:
        if isinf(x):
            return float(x > 0.0)
        if self.drawn is not None:
            return self.drawn(x)
        return probability_below(x, self.root, self.degrees, self.parts)


def _error_of(measured: Measured, single: Single) -> _Error:
    """Steps are parts of their own wherever the scatter doesn't hold them already."""
    parts = unshared(measured.contributions, {})
    if single.draws is not None and single.draws.needed and measured.beyond is not None:
        return _Error(single.u or 1.0, 1.0, parts, _drawn(measured.beyond, measured, single))
    if single.sd_of_mean is None or single.degrees is None or single.scatter is None:
        return _Error(0.0, 1.0, with_rounding(parts, measured.steps))
    parts = with_part(unshared(measured.contributions, {}, repeat=True, scatter=single.sd_of_mean), single.between)
    if not holds_steps(single.scatter, max(measured.steps, default=0.0)):
        parts = with_rounding(parts, measured.steps)
    return _Error(single.sd_of_mean, single.degrees, parts)


def _drawn(beyond: Beyond, measured: Measured, single: Single) -> Callable[[float], float]:
    if single.sd_of_mean is None or single.degrees is None or single.scatter is None:
        return partial(draws.probability_below, beyond, scattered=INSTRUMENT_ALONE)
    holds = holds_steps(single.scatter, max(measured.steps, default=0.0))
    rounding = 0.0 if holds else fsum(s * s for s in measured.steps) / 12.0
    root = hypot(single.sd_of_mean, single.between, sqrt(rounding))
    scattered = Scattered(root, single.degrees, repeat=True)
    return partial(draws.probability_below, beyond, scattered=scattered)


def _of_bound(
    value: float,
    limit: Limit,
    claimed: tuple[float, float],
    error: _Error,
    scope: Scope,
    numbers: Mapping[str, float],
) -> Conformance:
    """What the bound alone decides. P is then a bound too: at most so much (contradicted), at least (supported)."""
    low, high = (x - value for x in claimed)
    if limit == "above":
        most, least = error.below(high), 1.0 - error.below(low) if isinf(high) else 0.0
    else:
        most, least = 1.0 - error.below(low), error.below(high) if isinf(low) else 0.0
    if most <= CONTRADICTED_TO:
        return Conformance("contradicted", most, scope, Reason("bound-decides", numbers))
    if least >= SUPPORTED_FROM:
        return Conformance("supported", least, scope, Reason("bound-decides", numbers))
    return Conformance("undecided", None, scope, Reason("bound-too-close", numbers))


def _outcome(probability: float) -> Outcome:
    if probability >= SUPPORTED_FROM:
        return "supported"
    return "contradicted" if probability <= CONTRADICTED_TO else "undecided"
