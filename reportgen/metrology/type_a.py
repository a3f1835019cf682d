"""Type A evaluation: what repeats say (JCGM 100, 4.2).

Passes of one contender give a scatter; those of several alike ones give a pooled scatter with more degrees of
freedom. Where every round runs every contender once, what a round does to all of them is taken out first.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from reportgen.metrology.errors import MetrologyError


@dataclass(frozen=True)
class Scatter:
    """The standard deviation of one pass, in the values' unit, and the degrees of freedom it rests on."""

    sd: float
    degrees: int


def mean(values: Sequence[float]) -> float:
    """The arithmetic mean of at least one value (JCGM 100, 4.2.1).

    >>> mean([10.0, 12.0, 14.0])
    12.0
    """
    if not values:
        raise MetrologyError("a mean of no values", "")
    return math.fsum(values) / len(values)


def standard_deviation(values: Sequence[float]) -> float | None:
    """The experimental standard deviation s, n − 1 below (JCGM 100, 4.2.2); None for fewer than two values.

    >>> standard_deviation([10.0, 12.0, 14.0])
    2.0
    """
    if len(values) < 2:
        return None
    middle = mean(values)
    off = [value - middle for value in values]
    power = math.frexp(max(map(abs, off)))[1]  # of two, so that squares of tiny ones are still numbers
    squares = math.fsum(math.ldexp(x, -power) ** 2 for x in off)
    return math.ldexp(math.sqrt(squares / (len(values) - 1)), power)


def uncertainty_of_mean(values: Sequence[float]) -> float | None:
    """s/√n of the mean of the values (JCGM 100, 4.2.3); None for fewer than two.

    >>> round(uncertainty_of_mean([10.0, 12.0, 14.0]), 3)
    1.155
    """
    deviation = standard_deviation(values)
    return None if deviation is None else deviation / math.sqrt(len(values))


def relative_uncertainty_of_sd(observations: int) -> float:
    """How well n observations show their own scatter: the standard deviation of s over its expectation, √(1 − c₄²)/c₄.

    For normal observations (JCGM 100, E.4.3 and table E.1); c₄ = √(2/(n − 1))·Γ(n/2)/Γ((n − 1)/2). Three observations
    show it to about a half:

    >>> round(relative_uncertainty_of_sd(3), 2)
    0.52

    Raises MetrologyError for fewer than two.
    """
    if observations < 2:
        raise MetrologyError("fewer than two observations show no scatter", "repeat the measurement")
    n = observations
    c4 = math.sqrt(2 / (n - 1)) * math.exp(math.lgamma(n / 2) - math.lgamma((n - 1) / 2))
    return math.sqrt(1 - c4 * c4) / c4


def pooled(groups: Iterable[Sequence[float]]) -> Scatter | None:
    """s_p² = Σ(nᵢ−1)sᵢ²/ν with ν = Σ(nᵢ−1) (JCGM 100, 4.2.4; H.3.6 note); None where no group has two values.

    >>> pooled([[10.0, 12.0, 14.0], [31.0, 33.0]])  # (2·2² + 1·2)/3
    Scatter(sd=1.8257418583505538, degrees=3)
    """
    groups = [group for group in groups if len(group) > 1]
    degrees = sum(len(group) - 1 for group in groups)
    if not degrees:
        return None
    squares = math.fsum((value - mean(group)) ** 2 for group in groups for value in group)
    return Scatter(math.sqrt(squares / degrees), degrees)


def rounds_scatter(values: Mapping[str, Mapping[str, float]]) -> Scatter | None:
    """The scatter left once contenders and rounds are taken out; `values` is contender → round → value.

    Complete rounds: residuals x_ij − x̄_i. − x̄_.j + x̄_.. with (k−1)(n−1) degrees of freedom (the two-way layout
    without interaction). With gaps: least squares on contender and round. None where no degree of freedom is left.
    """
    rounds = sorted({round_ for of in values.values() for round_ in of})
    rows = [name for name in values if values[name]]
    if all(len(values[name]) == len(rounds) for name in rows):
        return _complete([[values[name][round_] for round_ in rounds] for name in rows])
    return _with_gaps(values, rows, rounds)


def _complete(table: Sequence[Sequence[float]]) -> Scatter | None:
    degrees = (len(table) - 1) * (len(table[0]) - 1) if table else 0
    if degrees < 1:
        return None
    of_row = [mean(row) for row in table]
    of_column = [mean(column) for column in zip(*table, strict=True)]
    overall = mean(of_row)
    squares = math.fsum(
        (value - of_row[i] - of_column[j] + overall) ** 2 for i, row in enumerate(table) for j, value in enumerate(row)
    )
    return Scatter(math.sqrt(squares / degrees), degrees)


def _with_gaps(values: Mapping[str, Mapping[str, float]], rows: list[str], rounds: list[str]) -> Scatter | None:
    import numpy as np

    cells = [
        (i, j, values[name][of]) for i, name in enumerate(rows) for j, of in enumerate(rounds) if of in values[name]
    ]
    design = np.zeros((len(cells), len(rows) + len(rounds)))
    for line, (i, j, _) in enumerate(cells):
        design[line, i] = design[line, len(rows) + j] = 1
    found = np.array([value for _, _, value in cells])
    found -= found.mean()  # so that large readings with a small scatter lose no digits
    solution, _, rank, _ = np.linalg.lstsq(design, found, rcond=None)
    degrees = len(cells) - int(rank)
    if degrees < 1:
        return None
    left = found - design @ solution
    return Scatter(math.sqrt(math.fsum(float(x) ** 2 for x in left) / degrees), degrees)


def student(probability: float, degrees: float) -> float:
    """The t that a share `probability` lies below, for `degrees` of freedom (math.inf: the normal distribution).

    `student(0.975, ν)` is the two-sided 95 % factor of JCGM 100, G.3.2 and table G.2.

    >>> round(student(0.975, 5), 2), round(student(0.975, math.inf), 3)
    (2.57, 1.96)
    """
    from scipy.special import ndtri, stdtrit

    if not 0 < probability < 1 or not degrees > 0:
        raise MetrologyError(f"no t value for a probability of {probability:g} and {degrees:g} degrees of freedom", "")
    return float(ndtri(probability) if math.isinf(degrees) else stdtrit(degrees, probability))
