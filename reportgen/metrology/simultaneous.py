"""Quantities observed together, several times: their means with the correlation that the observations show.

Voltage, current and phase read at one moment go up and down together; taken one by one, each mean has its s/√n and
their covariance is lost (JCGM 100, 5.2.3 and H.2).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from reportgen.metrology.correlated import correlated
from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.orthogonal import Number, as_float, as_fraction, dot
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import Unit


def from_simultaneous_observations(
    observations: Sequence[Sequence[Number]], units: Sequence[str | Unit], name: str
) -> tuple[Uncertain, ...]:
    """The means of several quantities observed together; `observations[i]` are those of quantity i, in `units[i]`.

    The covariance of two means is Σ(qₖ − q̄)(rₖ − r̄)/(n(n − 1)) (JCGM 100, 5.2.3, equation 17), with n − 1 degrees of
    freedom. What moves both alike cancels in their ratio:

    >>> from reportgen.metrology.arithmetic import divide
    >>> from reportgen.metrology.uncertain import combined_standard_uncertainty
    >>> volts, amperes = from_simultaneous_observations([[10, 20, 30], [1, 2, 3]], ["V", "A"], name="bench")
    >>> volts.value, round(combined_standard_uncertainty(volts), 2)
    (20.0, 5.77)
    >>> round(combined_standard_uncertainty(divide(volts, amperes)), 9)
    0.0

    Raises MetrologyError where quantities weren't observed equally often, or only once.
    """
    counts = {len(column) for column in observations}
    if len(counts) > 1:
        raise MetrologyError("quantities observed together, and not equally often", "give one of each at every moment")
    n = counts.pop() if counts else 0
    if n < 2:
        raise MetrologyError("one observation says nothing of its scatter", "repeat all of them, together")
    columns = [[as_fraction(x) for x in column] for column in observations]
    means = [sum(column, Fraction(0)) / n for column in columns]
    off = [[x - mean for x in column] for column, mean in zip(columns, means, strict=True)]
    covariance = [[as_float(dot(one, other) / (n * (n - 1))) for other in off] for one in off]
    return correlated([as_float(mean) for mean in means], covariance, units, name, degrees=n - 1)
