"""Type B evaluation: a standard uncertainty from what is known without repeats (JCGM 100, 4.3).

A certificate, a maker's limits, the step of a display, a judgement: each leads to the standard deviation of the
distribution that says as much, with that distribution's shape. In and out: plain numbers in the quantity's own unit.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.uncertain import Shape


@dataclass(frozen=True)
class StandardUncertainty:
    """A standard uncertainty as evaluated: `size` in the quantity's unit, the `shape` of what is behind it.

    `degrees` of freedom say how well the size itself is known; infinite: taken as known (JCGM 100, G.4.2 and G.4.3).
    Raises MetrologyError for a size that is no number or below nought, and for degrees of freedom below one.
    """

    size: float
    shape: Shape = "normal"
    degrees: float = math.inf

    def __post_init__(self) -> None:
        if not (math.isfinite(self.size) and self.size >= 0):
            raise MetrologyError(f"an uncertainty of {self.size}", "write a size, nought or above")
        if not self.degrees >= 1:
            raise MetrologyError(
                f"{self.degrees} degrees of freedom: a size known so badly carries no uncertainty",
                "take a larger size that is known better",
            )


def normal(u: float, degrees: float = math.inf) -> StandardUncertainty:
    """A standard uncertainty stated as such (JCGM 100, 4.3.2); with finite degrees, Student's t (JCGM 101, 6.4.9).

    >>> normal(25.0, degrees=18)
    StandardUncertainty(size=25.0, shape='normal', degrees=18)
    """
    return StandardUncertainty(u, "normal", degrees)


def from_expanded(expanded: float, k: float = 2.0, degrees: float = math.inf) -> StandardUncertainty:
    """U/k: an expanded uncertainty and the factor it was multiplied by (JCGM 100, 4.3.3).

    A mass standard, certified to 240 µg “at the three standard deviation level”:

    >>> from_expanded(240.0, k=3).size
    80.0
    """
    if not 0 < k < math.inf:
        raise MetrologyError(f"a coverage factor of {k}", "certificates mostly say k = 2; write theirs")
    return StandardUncertainty(expanded / k, "normal", degrees)


def from_interval(half_width: float, probability: float = 0.95, degrees: float = math.inf) -> StandardUncertainty:
    """Half an interval said to hold the value with this probability, normal (JCGM 100, 4.3.4 to 4.3.6).

    A resistor within 129 µΩ at 99 %; a length as likely as not within 0.04 mm; an even bet of two to one:

    >>> round(from_interval(129.0, 0.99).size)
    50
    >>> round(from_interval(0.04, 0.5).size, 2)
    0.06
    >>> round(from_interval(1.0, 2 / 3).size)
    1

    With degrees of freedom the interval was Student's: 0.01 µm at 95 % from six replicates (JCGM 100, H.1.3.2).

    >>> round(from_interval(10.0, 0.95, degrees=5).size, 1)
    3.9
    """
    if not 0 < probability < 1:
        raise MetrologyError(f"a probability of {probability}", "write 0.95 for 95 %")
    below = (1 + probability) / 2
    if math.isinf(degrees):
        from statistics import NormalDist

        factor = NormalDist().inv_cdf(below)
    else:
        from reportgen.metrology.type_a import student

        factor = student(below, degrees)
    if not factor > 0:
        raise MetrologyError(f"a probability of {probability}", "write 0.95 for 95 %")
    return StandardUncertainty(half_width / factor, "normal", degrees)


def rectangular(half_width: float, degrees: float = math.inf) -> StandardUncertainty:
    """a/√3: anywhere within ±a alike, and nowhere else (JCGM 100, 4.3.7 and 4.4.5).

    Copper's expansion, 16.52 within ±0.40 (10⁻⁶/°C); a temperature between 96 °C and 104 °C:

    >>> round(rectangular(0.40).size, 2)
    0.23
    >>> round(rectangular(4.0).size, 1)
    2.3
    """
    return StandardUncertainty(half_width / math.sqrt(3), "uniform", degrees)


def triangular(half_width: float, degrees: float = math.inf) -> StandardUncertainty:
    """a/√6: within ±a, values near the middle likelier than those at the ends (JCGM 100, 4.3.9 and 4.4.6).

    >>> round(triangular(4.0).size, 1)
    1.6
    """
    return StandardUncertainty(half_width / math.sqrt(6), "triangular", degrees)


def arcsine(half_width: float, degrees: float = math.inf) -> StandardUncertainty:
    """a/√2: something that swings to and fro by ±a, met at any moment (JCGM 101, 6.4.6; JCGM 100, H.1.3.4).

    A bath that cycles by 0.5 °C:

    >>> round(arcsine(0.5).size, 2)
    0.35
    """
    return StandardUncertainty(half_width / math.sqrt(2), "arcsine", degrees)


def resolution(step: float) -> StandardUncertainty:
    """δ/√12: a display that moves in steps of δ (JCGM 100, F.2.2.1).

    >>> round(resolution(1.0).size, 2)
    0.29
    """
    return rectangular(step / 2)


def degrees_from_reliability(relative: float) -> float:
    """ν ≈ ½(Δu/u)⁻²: how well an uncertainty is known, as degrees of freedom (JCGM 100, G.4.2, equation G.3).

    One judged reliable to about 25 %, to about 10 %, to about 50 %:

    >>> degrees_from_reliability(0.25)
    8.0
    >>> round(degrees_from_reliability(0.10)), round(degrees_from_reliability(0.50))
    (50, 2)
    """
    if relative < 0 or math.isnan(relative):
        raise MetrologyError(f"a reliability of {relative}", "write 0.25 for one known to a quarter")
    return 0.5 / relative**2 if relative else math.inf
