"""From a combined standard uncertainty to an interval, the GUM's way: effective degrees of freedom, t, expanded.

The GUM's own recipe (JCGM 100, annex G) is approximate where scatter and limits mix. This program shows effective
degrees in budgets and takes its intervals from distributions instead (`judgement`, JCGM 101); the recipe stands here
for whoever works by it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.type_a import student
from reportgen.metrology.uncertain import Source, Uncertain, combined_standard_uncertainty, estimate_of


def welch_satterthwaite(parts: Iterable[tuple[float, float]]) -> float:
    """ν_eff = u⁴ / Σ(uᵢ⁴/νᵢ), not rounded (JCGM 100, G.4.1, equation G.2b); infinite where every part is known.

    `parts` are each independent part's standard uncertainty in the result and its degrees of freedom.
    A product of three, known to 0.25, 0.57 and 0.82 % from 10, 5 and 15 readings:

    >>> round(welch_satterthwaite([(0.25, 9), (0.57, 4), (0.82, 14)]), 1)
    19.0
    """
    parts = list(parts)
    for u, degrees in parts:
        if not (math.isfinite(u) and degrees > 0):
            raise MetrologyError(f"a part of {u} with {degrees} degrees of freedom", "write numbers above nought")
    largest = max((abs(u) for u, _ in parts), default=0.0)
    if not largest:
        return math.inf
    scaled = [(u / largest, degrees) for u, degrees in parts]  # so that tiny units don't underflow
    below = math.fsum(u**4 / degrees for u, degrees in scaled)
    return math.fsum(u * u for u, _ in scaled) ** 2 / below if below else math.inf


def effective_degrees_of_freedom(x: Uncertain) -> float:
    """Those of x's combined standard uncertainty (JCGM 100, G.4.1); infinite where all its parts are known.

    Parts that rest on one estimate of a variance, the parameters of one fit, count as one.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> effective_degrees_of_freedom(input_quantity(100.0, "g", u=0.3, degrees=8, name="weight"))
    8.0
    """
    return welch_satterthwaite(estimates(x.contributions.items()))


def estimates(contributions: Iterable[tuple[Source, float]]) -> list[tuple[float, float]]:
    """Standard uncertainties with degrees of freedom, those that rest on one estimate of a variance joined."""
    joined: dict[Source, list[float]] = {}
    for source, size in contributions:
        together = source.shape == "normal" and math.isfinite(source.degrees)
        joined.setdefault(estimate_of(source) if together else source, []).append(size)
    return [(math.hypot(*sizes), source.degrees) for source, sizes in joined.items()]


def truncated(degrees: float) -> int | None:
    """Effective degrees as a table of t is entered with them: to one decimal, then cut to whole; None for infinite.

    JCGM 100, G.4.1 and G.6.4. The GUM prints one decimal before it cuts (19.0 in G.4.1, where three digits of each
    part give 18.998; 16.7 in H.1.6, used as 16): what stands behind that decimal is rounding of the parts.

    >>> truncated(18.998), truncated(16.7), truncated(math.inf)
    (19, 16, None)
    """
    return None if math.isinf(degrees) else math.floor(round(degrees, 1))


def coverage_factor(probability: float = 0.95, degrees: float = math.inf) -> float:
    """k_p = t_p(ν_eff), the degrees of freedom truncated to whole (JCGM 100, G.6.4 and table G.2).

    >>> round(coverage_factor(0.95, 19.0), 2), round(coverage_factor(0.99, 16.7), 2), round(coverage_factor(0.95), 2)
    (2.09, 2.92, 1.96)

    Raises MetrologyError for a probability that isn't between 0 and 1 and for less than one degree of freedom.
    """
    if not 0 < probability < 1:
        raise MetrologyError(f"a level of confidence of {probability}", "write 0.95 for 95 %")
    whole = truncated(degrees)
    if whole is not None and whole < 1:
        raise MetrologyError("less than one degree of freedom: no interval can be given", "repeat the measurement")
    return student((1 + probability) / 2, math.inf if whole is None else whole)


def expanded_uncertainty(x: Uncertain, probability: float = 0.95) -> float:
    """U_p = k_p·u_c(y) in x's unit (JCGM 100, 6.2.1 and G.6.4). Raises as `coverage_factor`; for a bound as well.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> round(expanded_uncertainty(input_quantity(100.0, "g", u=0.3, degrees=8, name="weight"), 0.95), 2)  # 2.31 · 0.3
    0.69
    """
    if x.limit is not None:
        raise MetrologyError("a bound has no expanded uncertainty", "say “over” or “under” it instead")
    return coverage_factor(probability, effective_degrees_of_freedom(x)) * combined_standard_uncertainty(x)
