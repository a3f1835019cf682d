"""Passes that climb or fall steadily: trend told from scatter, which no ranking takes out."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import fsum, inf

from reportgen.judgement.blocks import without_noise
from reportgen.judgement.passes.stood_apart import with_steps

FROM_PASSES = 3  # of two, one is always above the other


@dataclass(frozen=True)
class Trend:
    """From each pass to the next all contenders move by `slope`, in the unit of the values. `f` has 1 and `degrees`
    degrees of freedom; without a trend, one as large comes up with a chance of `p`."""

    slope: float
    degrees: int
    f: float
    p: float


def common_trend(passes: Iterable[Sequence[float]], rounding: float = 0.0) -> Trend | None:
    """One slope over passes for all contenders, each with its own level, told from what is left about these lines.

    The analysis of covariance with the number of the pass beside the value (Scheffé, The Analysis of Variance, 1959,
    6.1): F = b·Sxy / (what is left / ν), ν = Σ(nᵢ − 1) − 1. Some contender is monotone by luck in most campaigns; all
    of them along one slope are not. Contenders with fewer than three passes say nothing; None where none has more.
    `rounding`: the variance that steps give one pass.

    >>> common_trend([(10.0, 11.0, 12.5), (20.0, 21.5, 22.0)]).slope
    1.125
    """
    from scipy.special import fdtrc

    many = [values for values in passes if len(values) >= FROM_PASSES]
    degrees = sum(len(values) - 1 for values in many) - 1
    if not many or degrees < 1:
        return None
    centred = [_centred(values) for values in many]
    sxx = fsum(x * x for lines in centred for x, _ in lines)
    sxy = fsum(x * y for lines in centred for x, y in lines)
    slope = sxy / sxx
    sizes = [abs(v) for values in many for v in values]
    if without_noise(abs(slope), sizes) == 0.0:
        return Trend(0.0, degrees, 0.0, 1.0)
    left = fsum((y - slope * x) ** 2 for lines in centred for x, y in lines) / degrees
    left = with_steps(without_noise(left**0.5, sizes) ** 2, rounding)
    f = slope * sxy / left if left > 0.0 else inf
    return Trend(slope, degrees, f, float(fdtrc(1.0, float(degrees), f)) if f < inf else 0.0)


def _centred(values: Sequence[float]) -> list[tuple[float, float]]:
    middle, mean = (len(values) - 1) / 2.0, fsum(values) / len(values)
    return [(n - middle, value - mean) for n, value in enumerate(values)]
