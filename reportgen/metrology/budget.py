"""An uncertainty budget: which source brings what share of the variance, largest first (JCGM 100, 5.1.2 and G.4)."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from reportgen.metrology.coverage import estimates, truncated, welch_satterthwaite
from reportgen.metrology.uncertain import Source, Uncertain

SCATTER = Source("scatter", "passes", "", "normal")


@dataclass(frozen=True)
class Line:
    """One source: `size` is its signed standard uncertainty in the result, `share` its part of the variance, 0 to 1.

    `degrees` is None where the size is taken as known (most of type B).
    """

    source: Source
    size: float
    share: float
    degrees: float | None = None


@dataclass(frozen=True)
class Budget:
    """All lines, largest first; `u` combined. `degrees` are effective and truncated, None for infinite: to be shown."""

    lines: tuple[Line, ...]
    u: float
    degrees: int | None


def uncertainty_budget(x: Uncertain) -> Budget:
    """The budget of any result of this library, in x's unit.

    >>> from reportgen.metrology.unit import parse_unit
    >>> x = Uncertain(14.3, parse_unit("g"), {Source("step", "scale"): 0.03, Source("offset", "scale"): -0.04})
    >>> [(line.source.sort, line.size, round(line.share, 2)) for line in uncertainty_budget(x).lines]
    [('offset', -0.04, 0.64), ('step', 0.03, 0.36)]
    """
    return shares(x.contributions)


def shares(
    contributions: Mapping[Source, float], scatter_u: float | None = None, degrees: float | None = None
) -> Budget:
    """The budget of a result with its contributions and the scatter of its mean, s/√n with its degrees."""
    of_passes = [] if scatter_u is None else [(scatter_u, math.inf if degrees is None else degrees)]
    parts = [(source, size, source.degrees) for source, size in contributions.items()]
    parts += [(SCATTER, size, of) for size, of in of_passes]
    variance = math.fsum(size * size for _, size, _ in parts)
    lines = [
        Line(source, size, size * size / variance if variance else 0.0, None if math.isinf(of) else of)
        for source, size, of in parts
    ]
    lines.sort(key=lambda line: (-abs(line.size), line.source))
    effective = welch_satterthwaite([*estimates(contributions.items()), *of_passes])
    return Budget(tuple(lines), math.sqrt(variance), truncated(effective))
