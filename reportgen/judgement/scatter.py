"""How far passes of one contender scatter, and what that makes of a difference.

common: one standard deviation for all, pooled (JCGM 100, H.3 and 4.2.4); own: each its own, degrees of freedom after
Welch and Satterthwaite, truncated (JCGM 100, G.4.1); rounds: what is left after contender and round.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from math import floor, fsum, sqrt

from reportgen.judgement.measured import DeclaredScatter, Measured, Rules, ScatterFound

JOINS_FROM = 20  # degrees of freedom from which a declared repeatability joins the passes
NOISE = 1e-12  # of the largest value: smaller scatter is the rounding of binary fractions


@dataclass(frozen=True)
class Spread:
    """Variance of a difference or of a result, degrees of freedom, and the scatter `sd` of one pass behind it."""

    variance: float
    degrees: float
    sd: float


@dataclass(frozen=True)
class Scatter:
    """The scatter in use for all ranked contenders. `by_pair` holds paired spreads where rounds are kept under own."""

    found: ScatterFound
    own: bool
    declared: DeclaredScatter | None = None
    by_pair: Mapping[frozenset[str], Spread] = field(default_factory=dict)


NONE_KNOWN = ScatterFound(None, None, "none")


def standard_deviation(values: Sequence[float]) -> tuple[float, int]:
    """Experimental standard deviation and its degrees of freedom (JCGM 100, 4.2.2); exact 0 for equal values."""
    if len(values) < 2:
        return 0.0, 0
    mean = fsum(values) / len(values)
    sd = sqrt(fsum((x - mean) ** 2 for x in values) / (len(values) - 1))
    return (sd if sd > NOISE * max(map(abs, values)) else 0.0), len(values) - 1


def find_scatter(ranked: Sequence[Measured], rules: Rules) -> Scatter:
    """The scatter in use, from complete contenders (no limit, a value) and from what the method declares."""
    complete = [m for m in ranked if m.limit is None and m.value is not None]
    if rules.scatter == "own":
        return _own(complete, rules)
    sd, degrees = pooled([m.values for m in complete])
    return Scatter(_joined(sd, degrees, rules.declared), own=False)


def pooled(groups: Sequence[Sequence[float]]) -> tuple[float, int]:
    """Root of the pooled variance Σ(n−1)s²/Σ(n−1), and Σ(n−1)."""
    found = [standard_deviation(group) for group in groups]
    degrees = sum(n for _, n in found)
    return (sqrt(fsum(n * s * s for s, n in found) / degrees) if degrees else 0.0), degrees


def _joined(sd: float, degrees: int, declared: DeclaredScatter | None) -> ScatterFound:
    if declared is None or (degrees and declared.degrees < JOINS_FROM):
        return ScatterFound(sd, degrees, "passes") if degrees else NONE_KNOWN
    if not degrees:
        return ScatterFound(declared.sd, declared.degrees, "declared")
    both = declared.degrees + degrees
    return ScatterFound(sqrt((declared.degrees * declared.sd**2 + degrees * sd**2) / both), both, "both")


def _own(complete: Sequence[Measured], rules: Rules) -> Scatter:
    by_name: dict[str, tuple[float, float]] = {}
    origins = set()
    for m in complete:
        found = _joined(*standard_deviation(m.values), rules.declared)
        if found.sd is not None and found.degrees is not None:
            by_name[m.name] = (found.sd, found.degrees)
            origins.add(found.origin)
    if not by_name:
        return Scatter(NONE_KNOWN, own=True)
    degrees = fsum(n for _, n in by_name.values())
    sd = sqrt(fsum(n * s * s for s, n in by_name.values()) / degrees)
    origin = origins.pop() if len(origins) == 1 else "both"
    return Scatter(ScatterFound(sd, degrees, origin, by_name), own=True, declared=rules.declared)


def of_difference(scatter: Scatter, first: Measured, second: Measured) -> Spread | None:
    """Spread of the difference of two results; None where the scatter of either isn't known.

    A result that is only a limit takes the scatter of the complete contenders.
    """
    found = scatter.found
    if found.sd is None or found.degrees is None:
        return None
    n, m = max(1, len(first.values)), max(1, len(second.values))
    if not scatter.own:
        return Spread(found.sd**2 * (1.0 / n + 1.0 / m), found.degrees, found.sd)
    pair = scatter.by_pair.get(frozenset((first.name, second.name)))
    if pair is not None:
        return pair
    one, other = _own_of(scatter, first), _own_of(scatter, second)
    if one is None or other is None:
        return None
    (s, v), (t, w) = one, other
    a, b = s * s / n, t * t / m
    shares_declared = scatter.declared is not None and found.origin != "passes"
    if n == m and not shares_declared and a + b > 0.0:
        degrees = float(floor((a + b) ** 2 / (a * a / v + b * b / w) + 1e-9))
    else:
        degrees = min(v, w)
    return Spread(a + b, degrees, sqrt((s * s + t * t) / 2.0))


def of_result(scatter: Scatter, one: Measured) -> Spread | None:
    """Spread of one result: the pooled scatter under common, its own under own."""
    found = scatter.found
    if found.sd is None or found.degrees is None:
        return None
    if scatter.own:
        known = scatter.found.by_name.get(one.name)
        if known is None:
            return None
        return Spread(known[0] ** 2 / max(1, len(one.values)), known[1], known[0])
    return Spread(found.sd**2 / max(1, len(one.values)), found.degrees, found.sd)


def _own_of(scatter: Scatter, one: Measured) -> tuple[float, float] | None:
    known = scatter.found.by_name.get(one.name)
    if known is None and one.limit is not None and scatter.found.by_name:
        return max(scatter.found.by_name.values())  # the widest of the complete ones: nothing better is known
    return known
