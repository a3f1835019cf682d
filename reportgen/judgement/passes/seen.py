"""What the passes of one quantity show by themselves: how far they scatter, and whether they look as was assumed.

Nothing here decides: rules are fixed before the data, and a rule chosen by a test of the same data names more false
winners. What is told at 1 % goes into findings and sentences; history takes the scatter.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import fsum, inf
from typing import TypeVar

from reportgen.judgement.measured import DeclaredScatter, Measured, Rules
from reportgen.judgement.passes.stood_apart import Apart, Uneven, pass_apart, uneven, with_steps
from reportgen.judgement.passes.trend import Trend, common_trend
from reportgen.judgement.pooling import pooled
from reportgen.judgement.scale import can_take_logarithms, in_logarithms
from reportgen.judgement.scatter import find_scatter

LEVEL = 0.01  # of every test here


@dataclass(frozen=True)
class AtOdds:
    """Passes scatter by `sd`, but `declared` was: F with both degrees of freedom, and its two-sided chance."""

    sd: float
    declared: float
    f: float
    p: float


Test = TypeVar("Test", Uneven, Apart, Trend, AtOdds)


@dataclass(frozen=True)
class PassesSeen:
    """On the working scale: the quantity's unit, or of logarithms where scatter is relative.

    `sd`, `degrees`: what differences scatter by, with what shared rounds do taken out; `within_sd`, `within_degrees`
    with it. 0 degrees: no contender has repeats. `rounding`: the variance that steps give one pass. The tests are
    there where they found something at 1 %.
    """

    sd: float
    degrees: float
    within_sd: float
    within_degrees: int
    rounding: float = 0.0
    uneven: Uneven | None = None
    apart: Apart | None = None
    trend: Trend | None = None
    at_odds: AtOdds | None = None


def passes_seen(measured: Sequence[Measured], rules: Rules) -> PassesSeen:
    """What the passes of the ranked, complete contenders show. Whoever ran in several sessions, or stands on a reading
    of another, says nothing of steadiness: those passes are not repeats of one thing.

    >>> from reportgen.judgement import Rules, from_passes
    >>> climbing = [from_passes("a", 1.0, 2.1, 3.0, 4.0), from_passes("b", 11.0, 12.0, 13.1, 14.0)]
    >>> passes_seen(climbing, Rules("lower")).trend is not None
    True
    """
    complete = [m for m in measured if not m.blocked and m.limit is None and m.value is not None and m.values]
    if rules.scatter == "relative":
        complete = [in_logarithms(m) for m in complete] if can_take_logarithms(complete) else []
    found = find_scatter(complete, replace(rules, declared=None)).found
    within_sd, within_degrees = pooled([m.values for m in complete])
    rounding = max((fsum(s * s for s in m.steps) / 12.0 for m in complete), default=0.0)
    plain: Mapping[str, Sequence[float]] = {
        m.name: m.values for m in complete if len(m.sessions) == 1 and not any(m.stands_on.values())
    }
    own = rules.scatter == "own"
    sd, degrees = found.sd or 0.0, found.degrees or 0.0
    return PassesSeen(
        sd,
        degrees,
        within_sd,
        within_degrees,
        rounding,
        uneven=_told(None if own else uneven(plain, rounding)),
        apart=_told(pass_apart(plain, rounding, own=own)),
        trend=_told(common_trend(plain.values(), rounding)),
        at_odds=_told(at_odds(sd, degrees, rules.declared, rounding)),
    )


def at_odds(sd: float, degrees: float, declared: DeclaredScatter | None, rounding: float = 0.0) -> AtOdds | None:
    """The scatter of passes against a declared one: F = s²/σ² with both degrees of freedom, two-sided.

    The F test of two variances (NIST/SEMATECH e-Handbook, 1.3.5.9). None where either is missing.

    >>> round(at_odds(3.85**0.5, 10, DeclaredScatter(1.0, 20)).p, 3)  # F tables: .995 lie below 3.85 for 10 and 20
    0.01
    """
    from scipy.special import fdtr, fdtrc

    if declared is None or not degrees:
        return None
    square = with_steps(sd * sd, rounding)
    if declared.sd <= 0.0:
        return AtOdds(sd, declared.sd, inf, 0.0 if square > 0.0 else 1.0)
    f = square / declared.sd**2
    below, above = (float(tail(float(degrees), float(declared.degrees), f)) for tail in (fdtr, fdtrc))
    return AtOdds(sd, declared.sd, f, min(1.0, 2.0 * min(below, above)))


def _told(test: Test | None) -> Test | None:
    return test if test is not None and test.p <= LEVEL else None
