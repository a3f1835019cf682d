"""Axes: where they begin and end, and which round numbers they name."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import TypeGuard


@dataclass(frozen=True)
class Axis:
    """`low` to `high` in the quantity's unit, with `ticks` inside, each printed with `decimals` digits."""

    low: float
    high: float
    ticks: tuple[float, ...]
    decimals: int

    def at(self, value: float, length: float) -> float:
        """Where `value` falls on an axis `length` pixels long, from its low end."""
        return (value - self.low) / (self.high - self.low) * length

    def holds(self, value: float) -> bool:
        """Whether `value` lies on it."""
        return self.low <= value <= self.high


def _step(span: float, at_most: int) -> Decimal:
    """The least of 1, 2, 5 times a power of ten that cuts `span` into no more than `at_most` pieces."""
    power = math.floor(math.log10(span / at_most))
    for times in (1, 2, 5, 10, 20):
        step = Decimal(times).scaleb(power)
        if span / float(step) <= at_most:
            return step
    return Decimal(50).scaleb(power)


def axis(values: Iterable[float], *, from_zero: bool = False, at_most: int = 5, margin: float = 0.06) -> Axis:
    """An axis that holds all finite `values`, with at most `at_most` + 1 ticks.

    It begins at zero where length from zero is the point (`from_zero`) or where zero is near anyway; else a little
    before the least value, so that values use the width. Equal values get an axis around them; none gives 0 to 1.
    """
    numbers = [v for v in values if math.isfinite(v)] or [0.0, 1.0]
    low, high = min(numbers), max(numbers)
    if from_zero or 0 < low < 0.4 * (high - low):
        low, high = min(low, 0.0), max(high, 0.0)
    if high - low <= 1e-9 * max(abs(low), abs(high)):
        middle, half = (low + high) / 2, abs(high) * 0.05 or 1.0
        low, high = (0.0, 2 * half) if from_zero and high == 0 else (middle - half, middle + half)
    span = high - low
    low = low if low == 0 else low - margin * span
    high = high if high == 0 else high + margin * span
    step = _step(high - low, at_most)
    first = math.ceil(Decimal(low) / step)
    last = math.floor(Decimal(high) / step)
    decimals = max(0, -int(step.normalize().as_tuple().exponent))
    return Axis(low, high, tuple(float(step * n) for n in range(first, last + 1)), decimals)


def finer(of: Axis, times: int) -> Axis:
    """The same axis with ticks `times` as close, for who looks that much closer."""
    step = _step((of.high - of.low) / times, 6)
    first = math.ceil(Decimal(of.low) / step)
    last = math.floor(Decimal(of.high) / step)
    decimals = max(0, -int(step.normalize().as_tuple().exponent))
    return Axis(of.low, of.high, tuple(float(step * n) for n in range(first, last + 1)), decimals)


def known(value: float | None) -> TypeGuard[float]:
    """Whether there is a finite number."""
    return value is not None and math.isfinite(value)
