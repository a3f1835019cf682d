"""Student's t beside type B parts of stated shape: probabilities and quantiles of T·a + B, by convolution.

B is a sum of independent centred uniform and normal parts (JCGM 101:2008, 5.1 propagates such sums as distributions).
The sum is worked out on a grid, without random draws, so equal input gives equal output.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from math import fsum, hypot, sqrt

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr, ndtri, stdtr, stdtrit

from reportgen.judgement.zero import zero_of_rising

CELLS = 2048
FEWER_CELLS = ((8.0, 128), (32.0, 512))  # where the parts reach so many √A: Student's t smooths the cells away
SHAPELESS = 0.02  # of the whole: the shape of a part as narrow as this shows nowhere
EXACT_UNIFORM = 16  # so many of the widest uniform parts keep their shape; the rest together are all but normal


@dataclass(frozen=True)
class Parts:
    """Independent centred parts: half-widths of the uniform ones (widest first), one sd for all normal ones."""

    uniform: tuple[float, ...] = ()
    normal: float = 0.0

    def __bool__(self) -> bool:
        return bool(self.uniform) or self.normal > 0.0


NOTHING = Parts()


def parts_of(uniform_sds: Iterable[float], normal_sds: Iterable[float]) -> Parts:
    """Parts from standard uncertainties, whatever their sign; zeros fall out, and of many the small join the normal."""
    normal_sds = tuple(normal_sds)
    wide = sorted((abs(u) for u in uniform_sds if u), reverse=True)
    least = SHAPELESS * sqrt(fsum(u * u for u in (*normal_sds, *wide)))
    kept = sum(1 for u in wide[:EXACT_UNIFORM] if u > least)
    normal = sqrt(fsum(u * u for u in (*normal_sds, *wide[kept:])))
    return Parts(tuple(u * sqrt(3.0) for u in wide[:kept]), normal)


def with_part(parts: Parts, normal_sd: float) -> Parts:
    """The parts and one more normal one."""
    return parts_of((a / sqrt(3.0) for a in parts.uniform), (parts.normal, normal_sd)) if normal_sd else parts


def sd_of(parts: Parts) -> float:
    """Standard deviation of the sum."""
    return hypot(*(a / sqrt(3.0) for a in parts.uniform), parts.normal)  # squares of tiny parts would vanish


def quantile(level: float, root: float, degrees: float, parts: Parts) -> float:
    """h with P(|T·root + B| ≤ h) = `level`; T is Student's with `degrees`, `root` ≥ 0 in the unit of the parts."""
    if not parts:
        return root * _student(level, degrees) if root > 0.0 else 0.0
    if root <= 0.0:
        scale = sd_of(parts)
        return scale * _of_parts(level, _scaled(parts, scale))
    return root * _of_both(level, degrees, _scaled(parts, root))


def probability_below(x: float, root: float, degrees: float, parts: Parts) -> float:
    """P(T·root + B ≤ x); with neither scatter nor parts a step from 0 to 1 at 0."""
    if not parts:
        return float(stdtr(degrees, x / root)) if root > 0.0 else float(x >= 0.0)
    if root <= 0.0:
        scale = sd_of(parts)
        nodes, weights = _grid(_scaled(parts, scale), CELLS)
        half = (nodes[1] - nodes[0]) / 2.0
        return float(np.interp(x / scale, nodes + half, np.cumsum(weights)))
    nodes, weights = _grid(_scaled(parts, root), CELLS)
    return float(np.sum(weights * stdtr(degrees, x / root - nodes)))


def _scaled(parts: Parts, unit: float) -> Parts:
    # Ten digits: values that differ by rounding of the last place share one stored answer.
    return Parts(tuple(float(f"{a / unit:.10g}") for a in parts.uniform), float(f"{parts.normal / unit:.10g}"))


@lru_cache(maxsize=4096)
def _student(level: float, degrees: float) -> float:
    return float(stdtrit(degrees, (1.0 + level) / 2.0))


@lru_cache(maxsize=4096)
def _of_parts(level: float, parts: Parts) -> float:
    if not parts.uniform:
        return parts.normal * float(ndtri((1.0 + level) / 2.0))
    nodes, weights = _grid(parts, CELLS)
    half = (nodes[1] - nodes[0]) / 2.0
    return float(np.interp((1.0 + level) / 2.0, np.cumsum(weights), nodes + half))


@lru_cache(maxsize=16384)
def _of_both(level: float, degrees: float, parts: Parts) -> float:
    """Half-width in units of `root`: between Student's alone and that plus all the parts reach."""
    reach = fsum(parts.uniform) + 9.0 * parts.normal
    cells = next((cells for limit, cells in FEWER_CELLS if reach < limit), CELLS)
    nodes, weights = _grid(parts, cells)
    kept = weights > 1e-15
    nodes, weights = nodes[kept], weights[kept]

    def excess(h: float) -> float:
        return 2.0 * float(np.sum(weights * stdtr(degrees, h - nodes))) - 1.0 - level

    low = _student(level, degrees)
    return zero_of_rising(excess, low, low + reach, close=1e-9)


@lru_cache(maxsize=512)
def _grid(parts: Parts, cells: int) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Middles of `cells` equal cells around 0 and the probability of each; wide enough that nothing wraps round."""
    reach = (fsum(parts.uniform) + 9.0 * parts.normal) * 1.01
    width = 2.0 * reach / cells
    nodes: NDArray[np.float64] = np.arange(-(cells // 2), cells - cells // 2, dtype=np.float64) * width
    edges = np.append(nodes - width / 2.0, nodes[-1] + width / 2.0)
    spectrum = np.ones(cells // 2 + 1, dtype=np.complex128)
    for half in parts.uniform:
        spectrum *= _transform(np.clip((edges + half) / (2.0 * half), 0.0, 1.0))
    if parts.normal > 0.0:
        spectrum *= _transform(ndtr(edges / parts.normal))
    weights: NDArray[np.float64] = np.fft.fftshift(np.fft.irfft(spectrum, cells)).clip(0.0)
    weights /= weights.sum()
    return nodes, weights


def _transform(cumulated: NDArray[np.float64]) -> NDArray[np.complex128]:
    return np.fft.rfft(np.fft.ifftshift(np.diff(cumulated)))
