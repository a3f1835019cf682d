"""How often intervals hold the truth: campaigns drawn from a known truth, judged by the program's own functions.

A corner is one way of measuring. The truth of each contender is a number nobody reads exactly: the meter is off by an offset
drawn once a campaign, by a gain drawn once a campaign (its maker states it of the reading: truth = reading · (1 + gain)),
every pass scatters, and the display shows whole steps. One standard deviation of a pass is the unit. Where three factors
are read, each by a meter with a gain of its own, a pass is their product.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from math import exp, floor, hypot, log, sqrt
from unittest.mock import patch

import numpy as np
from numpy.typing import NDArray

from reportgen.judgement.drawn.beyond import Beyond
from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Judged, Measured, Rules
from reportgen.judgement.reach.convolution import quantile
from reportgen.judgement.reach.parts import Parts, sd_of
from reportgen.judgement.scale import in_logarithms
from reportgen.judgement.scatter import find_scatter
from reportgen.judgement.single import interval_of
from reportgen.metrology.draws import BLOCK
from reportgen.metrology.uncertain import Source

Numbers = NDArray[np.float64]
OFFSET, GAIN = Source("offset", "meter", "1"), Source("gain", "meter", "1")


@dataclass(frozen=True)
class Corner:
    """`step`, `offset` (standard uncertainty) and `level` in sd of a pass; `gain` relative; `scatter` as of `Rules`.
    Every contender has `apart` times the level of the one before.
    `factors`: relative standard uncertainty of each of three factors, 0 where the value is read itself."""

    passes: int
    step: float = 0.0
    scatter: str = "common"
    offset: float = 0.0
    gain: float = 0.0
    contenders: int = 2
    level: float = 20.0
    factors: float = 0.0
    apart: float = 1.0

    @property
    def rules(self) -> Rules:
        return Rules("lower", scatter=self.scatter)  # type: ignore[arg-type]


@dataclass(frozen=True)
class Campaign:
    truths: tuple[float, ...]
    measured: tuple[Measured, ...]


@dataclass(frozen=True)
class Covered:
    """Share of intervals that hold the truth, its standard error (campaign by campaign), and of how many intervals; the
    share of those that are called `at least 95 %`, and their mean length in sd."""

    share: float
    error: float
    intervals: int
    at_least: float
    length: float


def campaigns(corner: Corner, runs: int, seed: int) -> Iterator[Campaign]:
    """So many campaigns from one corner."""
    draw = np.random.default_rng(seed)
    k, n, step = corner.contenders, corner.passes, corner.step
    truths = (corner.level + draw.uniform(0.0, max(1.0, step), (runs, k))) * corner.apart ** np.arange(k)
    off = draw.uniform(-sqrt(3), sqrt(3), (runs, 1, 1)) * corner.offset
    gain = draw.uniform(-sqrt(3), sqrt(3), (runs, 1, 1)) * corner.gain
    scattered = draw.standard_normal((runs, k, n))
    if (
        corner.scatter == "relative"
    ):  # one sd at the level, in proportion elsewhere; the truth is what passes average to
        sigma = 1.0 / corner.level
        passes = truths[:, :, None] * np.exp(sigma * scattered - sigma**2 / 2) + off
    else:
        passes = truths[:, :, None] + scattered + off
    passes = passes / (1.0 + gain)
    if corner.factors:
        passes = truths[:, :, None] * _read(draw, (runs, k, n), corner)
    if step:
        passes = np.round(passes / step) * step
    names, steps = [str(i) for i in range(k)], (step,) if step else ()
    for of_run, readings in zip(truths.tolist(), passes.tolist(), strict=True):
        yield Campaign(tuple(of_run), tuple(_result(*x, steps, corner) for x in zip(names, readings, strict=True)))


def _read(draw: np.random.Generator, shape: tuple[int, int, int], corner: Corner) -> Numbers:
    """What is read of the product of three factors of 1, each scattering so that a product does by one sd."""
    product = np.ones(shape)
    for _ in range(3):
        gain = draw.uniform(-sqrt(3), sqrt(3), (shape[0], 1, 1)) * corner.factors
        product *= (1.0 + draw.standard_normal(shape) / (sqrt(3) * corner.level)) / (1.0 + gain)
    return product


FACTORS = tuple(Source("gain", f"meter {i}", "1") for i in range(3))


def _off(value: float, relative: float) -> Beyond:
    """How far a product of `value` is off by its factors' gains, to first order and as it is, in joint draws."""

    def block(number: int, repeat: bool) -> tuple[Numbers, Numbers]:
        straight, full = _of_three(number, relative)
        return value * straight, value * full

    return Beyond(lambda repeat: 3.0 * value * relative**2, block)


@lru_cache(maxsize=64)
def _of_three(number: int, relative: float) -> tuple[Numbers, Numbers]:
    z = relative * np.random.default_rng(number).uniform(-sqrt(3), sqrt(3), (3, BLOCK))
    return z.sum(axis=0), np.prod(1.0 + z, axis=0) - 1.0


def _result(name: str, readings: list[float], steps: tuple[float, ...], corner: Corner) -> Measured:
    value = sum(readings) / len(readings)
    contributions = {}
    if corner.offset:
        contributions[OFFSET] = corner.offset
    if corner.gain:
        contributions[GAIN] = corner.gain * value
    if corner.factors:
        contributions = dict.fromkeys(FACTORS, corner.factors * value)
    beyond = _off(value, corner.factors) if corner.factors else None
    return Measured(name, value, tuple(readings), contributions, steps, beyond=beyond)


def singles(campaign: Campaign, rules: Rules) -> Iterator[tuple[float, float, bool]]:
    """Each result's interval, and whether it is called `at least 95 %`, as `judge` has it, without its pairs."""
    relative = rules.scatter == "relative"
    working = [in_logarithms(m) if relative else m for m in campaign.measured]
    scatter = find_scatter(working, rules)
    for one, m in zip(working, campaign.measured, strict=True):
        found = interval_of(one, m, scatter, rules)
        assert found.low is not None
        assert found.high is not None
        yield found.low, found.high, found.at_least


def of_singles(corner: Corner, runs: int, seed: int) -> Covered:
    """How often the intervals of single results hold the truth."""
    held, at_least, length = [], 0, 0.0
    with remembered_quantiles():
        for campaign in campaigns(corner, runs, seed):
            found = list(singles(campaign, corner.rules))
            held.append(sum(low <= t <= high for t, (low, high, _) in zip(campaign.truths, found, strict=True)))
            at_least += sum(coarse for _, _, coarse in found)
            length += sum(high - low for low, high, _ in found)
    return _covered(held, corner.contenders, at_least, length)


def of_differences(corner: Corner, runs: int, seed: int) -> Covered:
    """How often the interval of a difference holds the true one, through the whole `judge`; two contenders, so that no
    interval is widened for being one of several."""
    held, length = [], 0.0
    with remembered_quantiles():
        for campaign in campaigns(replace(corner, contenders=2), runs, seed):
            (pair,) = judge(campaign.measured, corner.rules).pairs
            first, second = campaign.truths
            if pair.low is None or pair.high is None:
                raise AssertionError(pair.reason)
            held.append(int(pair.low <= first - second <= pair.high))
            length += pair.high - pair.low
    return _covered(held, 1, 0, length)


def whole(campaign: Campaign, rules: Rules) -> Judged:
    """All of it by `judge`."""
    return judge(campaign.measured, rules)


def _covered(held: list[int], each: int, at_least: int, length: float) -> Covered:
    shares = np.array(held) / each
    total = len(held) * each
    error = max(float(shares.std()), 1.0 / sqrt(len(held))) / sqrt(len(held))
    return Covered(float(shares.mean()), error, total, at_least / total, length / total)


@contextmanager
def remembered_quantiles() -> Iterator[None]:
    """Half-widths read from tables of the program's own, one for each mixture of parts: within 1e-3 of them."""
    tables: dict[object, Callable[[float], float]] = {}

    def looked_up(level: float, root: float, degrees: float, parts: Parts) -> float:
        if not parts or root <= 0.0:
            return quantile(level, root, degrees, parts)
        sd = sd_of(parts)
        mixture = _roughly(parts, sd)
        key = (level, degrees, mixture)
        if key not in tables:
            tables[key] = _table(level, degrees, mixture)
        return tables[key](sd / root) * hypot(root, sd)

    with (
        patch("reportgen.judgement.single.quantile", looked_up),
        patch("reportgen.judgement.half_width.quantile", looked_up),
    ):
        yield


def _roughly(parts: Parts, sd: float) -> Parts:
    """What share each part has, to a hundredth, so that results of nearly one size have one table."""
    rough = Parts(tuple(round(a / sd * 100) / 100 for a in parts.uniform), round(parts.normal / sd * 100) / 100)
    return rough.divided(sd_of(rough))


BETWEEN = 0.2  # of the logarithm of sd/√A, between two points of a table


def _table(level: float, degrees: float, parts: Parts) -> Callable[[float], float]:
    """Half-width in combined standard uncertainties by how many √A the parts amount to: a cubic through four points."""

    @cache
    def at_point(i: int) -> float:
        root = exp(-i * BETWEEN)
        return quantile(level, root, degrees, parts) / hypot(root, 1.0)

    def at(ratio: float) -> float:
        where = max(-40.0, min(log(ratio) / BETWEEN, 40.0))
        i = floor(where)
        t = where - i
        a, b, c, d = (at_point(i + j) for j in (-1, 0, 1, 2))
        return (
            -t * (t - 1) * (t - 2) / 6 * a
            + (t + 1) * (t - 1) * (t - 2) / 2 * b
            - (t + 1) * t * (t - 2) / 2 * c
            + (t + 1) * t * (t - 1) / 6 * d
        )

    return at
