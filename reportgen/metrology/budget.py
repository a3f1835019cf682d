"""An uncertainty budget: which source brings what share of the variance, largest first (JCGM 100, 5.1.2 and G.4)."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from reportgen.metrology.uncertain import Source

SCATTER = Source("scatter", "passes", "", "normal")


@dataclass(frozen=True)
class Line:
    """One source: `size` is its signed standard uncertainty in the result, `share` its part of the variance, 0 to 1.

    `degrees` is None where the size is taken as known (type B).
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


def shares(
    contributions: Mapping[Source, float], scatter_u: float | None = None, degrees: float | None = None
) -> Budget:
    """The budget of a result with its type B contributions and the scatter of its mean, s/√n with its degrees."""
    parts: list[tuple[Source, float, float | None]] = [(source, size, None) for source, size in contributions.items()]
    if scatter_u is not None:
        parts.append((SCATTER, scatter_u, degrees))
    variance = math.fsum(size * size for _, size, _ in parts)
    lines = [Line(source, size, size * size / variance if variance else 0.0, dof) for source, size, dof in parts]
    lines.sort(key=lambda line: (-abs(line.size), line.source))
    return Budget(tuple(lines), math.sqrt(variance), effective_degrees((size, dof) for _, size, dof in parts))


def effective_degrees(parts: Iterable[tuple[float, float | None]]) -> int | None:
    """ν_eff = u⁴ / Σ(uᵢ⁴/νᵢ), truncated to whole (Welch–Satterthwaite; JCGM 100, G.4.1); None where infinite.

    `parts` are each part's standard uncertainty in the result and its degrees of freedom, None for infinite.
    """
    parts = list(parts)
    largest = max((abs(u) for u, _ in parts), default=0.0)
    if not largest:
        return None
    scaled = [(u / largest, degrees) for u, degrees in parts]  # so that tiny units don't underflow
    below = math.fsum(u**4 / degrees for u, degrees in scaled if degrees is not None)
    if not below:
        return None
    found = math.fsum(u * u for u, _ in scaled) ** 2 / below
    return math.floor(found * 1.001)  # the GUM's own example takes 18.998 for 19
