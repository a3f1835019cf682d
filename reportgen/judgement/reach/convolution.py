"""Student's t beside type B parts of stated shape: probabilities and quantiles of T·a + B, by convolution.

B is a sum of independent centred parts: uniform, triangular, arcsine, normal, or Student's t of their own degrees of
freedom (JCGM 101:2008, 5.1 propagates such sums as distributions; 6.4 has the shapes). Parts with ends, and normal
ones, are worked out on a grid; Student's t's, whose tails fit on none, stand apart as a mixture of normals. There are
no random draws, so equal input gives equal output.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from math import pi

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr, ndtri, stdtr, stdtrit

from reportgen.judgement.reach.parts import Parts, sd_of
from reportgen.judgement.reach.remembered import remembered
from reportgen.judgement.reach.student_sum import Student, reach_between, student_sum
from reportgen.judgement.reach.zero import zero_of_rising

Numbers = NDArray[np.float64]

CELLS = 2048
FEWER_CELLS = ((8.0, 128), (32.0, 512))  # where the parts reach so many √A: Student's t smooths the cells away
NARROW = 500.0  # where the parts reach so many times the widest Student's t, that is narrower than two cells


def quantile(level: float, root: float, degrees: float, parts: Parts) -> float:
    """h with P(|T·root + B| ≤ h) = `level`; T is Student's with `degrees`, `root` ≥ 0 in the unit of the parts."""
    if not parts:
        return root * _student(level, degrees) if root > 0.0 else 0.0
    if root <= 0.0:
        scale = sd_of(parts)
        return scale * _of_parts(level, parts.divided(scale))
    return root * _of_both(level, degrees, parts.divided(root))


def probability_below(x: float, root: float, degrees: float, parts: Parts) -> float:
    """P(T·root + B ≤ x); with neither scatter nor parts a step from 0 to 1 at 0."""
    if not parts:
        return float(stdtr(degrees, x / root)) if root > 0.0 else float(x >= 0.0)
    scale = root if root > 0.0 else sd_of(parts)
    parts = parts.divided(scale)
    student = _with_scatter(degrees, parts) if root > 0.0 else parts.student
    return _below(student, parts, CELLS)(x / scale)


@lru_cache(maxsize=4096)
def _student(level: float, degrees: float) -> float:
    return float(stdtrit(degrees, (1.0 + level) / 2.0))


@remembered
def _of_parts(level: float, parts: Parts) -> float:
    if parts.student:
        return _holding(level, parts.student, parts)
    if not parts.bounded:
        return parts.normal * float(ndtri((1.0 + level) / 2.0))
    nodes, weights = _grid(parts, CELLS)
    half = (nodes[1] - nodes[0]) / 2.0
    return float(np.interp((1.0 + level) / 2.0, np.cumsum(weights), nodes + half))


@remembered
def _of_both(level: float, degrees: float, parts: Parts) -> float:
    """Half-width in units of `root`."""
    return _holding(level, _with_scatter(degrees, parts), parts)


def _with_scatter(degrees: float, parts: Parts) -> Student:
    return ((1.0, degrees), *parts.student)


def _holding(level: float, student: Student, parts: Parts) -> float:
    """h that holds `level` of the sum of the Student's t's and of the other parts."""
    least, most = reach_between(level, student)
    reach, widest = _reach(parts), max(size for size, _ in student)
    below = _below(student, parts, next((cells for limit, cells in FEWER_CELLS if reach < limit * widest), CELLS))
    return zero_of_rising(lambda h: 2.0 * below(h) - 1.0 - level, least, most + reach, close=1e-9)


def _below(student: Student, parts: Parts, cells: int) -> Callable[[float], float]:
    """P(sum of all ≤ x). Whatever is wider is taken as it is, the other as points with their probabilities."""
    if not _reach(parts):
        alone = _of_students(student)
        return lambda x: float(alone(np.array([x]))[0])
    nodes, weights = _grid(parts, cells)
    if not student or _reach(parts) > NARROW * max(size for size, _ in student):
        edges, cumulated = nodes + (nodes[1] - nodes[0]) / 2.0, np.cumsum(weights)
        points, likely = student_sum(student).cells() if student else (np.zeros(1), np.ones(1))
        return lambda x: float(np.sum(likely * np.interp(x - points, edges, cumulated)))
    spread, kept = _of_students(student), weights > 1e-15
    nodes, weights = nodes[kept], weights[kept]
    return lambda x: float(np.sum(weights * spread(x - nodes)))


def _of_students(student: Student) -> Callable[[Numbers], Numbers]:
    if len(student) > 1:
        return student_sum(student).below
    ((size, degrees),) = student
    return lambda x: np.asarray(stdtr(degrees, x / size), dtype=np.float64)


def _reach(parts: Parts) -> float:
    return parts.bounded + 9.0 * parts.normal


@lru_cache(maxsize=512)
def _grid(parts: Parts, cells: int) -> tuple[Numbers, Numbers]:
    """Middles of `cells` equal cells around 0 and the probability of each; wide enough that nothing wraps round."""
    reach = _reach(parts) * 1.01
    width = 2.0 * reach / cells
    nodes: Numbers = np.arange(-(cells // 2), cells - cells // 2, dtype=np.float64) * width
    edges = np.append(nodes - width / 2.0, nodes[-1] + width / 2.0)
    spectrum = np.ones(cells // 2 + 1, dtype=np.complex128)
    for half in parts.uniform:
        spectrum *= _transform(np.clip((edges / half + 1.0) / 2.0, 0.0, 1.0))
    for half in parts.triangular:
        spectrum *= _transform(_of_triangle(np.clip(edges / half, -1.0, 1.0)))
    for half in parts.arcsine:
        spectrum *= _transform(0.5 + np.arcsin(np.clip(edges / half, -1.0, 1.0)) / pi)
    if parts.normal > 0.0:
        spectrum *= _transform(ndtr(edges / parts.normal))
    weights: Numbers = np.fft.fftshift(np.fft.irfft(spectrum, cells)).clip(0.0)
    weights /= weights.sum()
    return nodes, weights


def _of_triangle(x: Numbers) -> Numbers:
    return np.where(x < 0.0, np.square(1.0 + x) / 2.0, 1.0 - np.square(1.0 - x) / 2.0)


def _transform(cumulated: Numbers) -> NDArray[np.complex128]:
    return np.fft.rfft(np.fft.ifftshift(np.diff(cumulated)))
