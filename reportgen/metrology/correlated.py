"""Input quantities known together: estimates with a covariance matrix (JCGM 100, 5.2).

A covariance is taken apart into independent causes that the quantities share (Cholesky), so that correlation needs no
bookkeeping afterwards: contributions of one cause add with their signs.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import Unit, parse_unit

_ROUNDING = 1e-13  # of a correlation matrix: what is nearer to nought is nought


def correlated(
    estimates: Sequence[float],
    covariance: Sequence[Sequence[float]],
    units: Sequence[str | Unit],
    name: str,
    degrees: float = math.inf,
) -> tuple[Uncertain, ...]:
    """Quantities whose errors go together; `covariance[i][j]` in the units of i and j, `degrees` those of their fit.

    Mass and volume found together (u 0.3 g and 0.4 mL, r = 0.5: u(x, y) = r·u(x)·u(y), 5.2.2):

    >>> from reportgen.metrology.arithmetic import divide
    >>> from reportgen.metrology.uncertain import combined_standard_uncertainty, correlation_coefficient
    >>> mass, volume = correlated([100.0, 100.0], [[0.09, 0.06], [0.06, 0.16]], ["g", "mL"], name="fit")
    >>> round(correlation_coefficient(mass, volume), 9)
    0.5
    >>> round(combined_standard_uncertainty(divide(mass, volume)), 7)  # √(0.09 + 0.16 − 2·0.06)/100
    0.0036056

    Raises MetrologyError for a matrix that no errors can have: not square, not symmetric, not positive semidefinite.
    """
    if not name:
        raise MetrologyError("a covariance without a name", "name its cause: equal names are one and the same error")
    if not degrees >= 1:
        says = f"{degrees} degrees of freedom: a covariance known so badly carries no uncertainty"
        raise MetrologyError(says, "take larger variances that are known better")
    sizes = _checked(estimates, covariance, units)
    factor = _factor([[_coefficient(covariance[i][j], sizes[i], sizes[j]) for j in range(len(sizes))]
                      for i in range(len(sizes))])  # fmt: skip
    return tuple(
        Uncertain(
            estimate,
            parse_unit(unit) if isinstance(unit, str) else unit,
            {Source("fit", name, str(k + 1), "normal", degrees): size * c for k, c in enumerate(row) if size * c},
        )
        for estimate, unit, size, row in zip(estimates, units, sizes, factor, strict=True)
    )


def _checked(
    estimates: Sequence[float], covariance: Sequence[Sequence[float]], units: Sequence[str | Unit]
) -> list[float]:
    n = len(estimates)
    if len(units) != n or len(covariance) != n or any(len(row) != n for row in covariance):
        raise MetrologyError(f"{n} estimates need {n} units and a covariance of {n} by {n}", "")
    if not all(math.isfinite(x) for row in [estimates, *covariance] for x in row):
        raise MetrologyError("an estimate or a covariance that is no number", "")
    if any(covariance[i][i] < 0 for i in range(n)):
        raise MetrologyError("a variance below nought", "variances stand on the diagonal, squares of uncertainties")
    sizes = [math.sqrt(covariance[i][i]) for i in range(n)]
    for i in range(n):
        for j in range(i):
            if abs(covariance[i][j] - covariance[j][i]) > 1e-9 * sizes[i] * sizes[j]:
                raise MetrologyError("a covariance that isn't symmetric", f"look at rows {j + 1} and {i + 1}")
            if covariance[i][j] and not sizes[i] * sizes[j]:
                raise MetrologyError("something exact can't go together with anything", f"look at row {i + 1}")
    return sizes


def _coefficient(covariance: float, one: float, other: float) -> float:
    return covariance / (one * other) if one and other else 0.0


def _factor(matrix: list[list[float]]) -> list[list[float]]:
    """L with L·Lᵀ = `matrix`, a correlation matrix: Cholesky, largest pivot first, so that it may be singular."""
    n = len(matrix)
    left = [row[:] for row in matrix]
    factor: list[list[float]] = [[0.0] * n for _ in range(n)]
    remaining = list(range(n))
    for column in range(n):
        pivot = max(remaining, key=lambda i: left[i][i])
        if left[pivot][pivot] <= _ROUNDING:
            break
        remaining.remove(pivot)
        root = math.sqrt(left[pivot][pivot])
        for i in (pivot, *remaining):
            factor[i][column] = left[i][pivot] / root
        for i in remaining:
            for j in remaining:
                left[i][j] -= factor[i][column] * factor[j][column]
    if any(abs(left[i][j]) > 10 * n * _ROUNDING for i in remaining for j in remaining):
        raise MetrologyError(
            "no errors can go together like this (the covariance isn't positive semidefinite)",
            "coefficients rounded to few digits can do that: give more of them",
        )
    return factor
