"""Where a rising function passes zero."""

from __future__ import annotations

from collections.abc import Callable


def zero_of_rising(rising: Callable[[float], float], low: float, high: float, close: float = 1e-12) -> float:
    """Where a function rising from `low` to `high` is within `close` of zero: false position (Illinois)."""
    at_low, at_high, last = rising(low), rising(high), 0
    for _ in range(100):
        if at_low >= 0.0:
            return low
        if at_high <= 0.0 or high - low <= 1e-10 * high:
            return high
        middle = (low * at_high - high * at_low) / (at_high - at_low)
        value = rising(middle)
        if abs(value) < close:
            return middle
        if value > 0.0:
            high, at_high, at_low, last = middle, value, at_low / 2.0 if last > 0 else at_low, 1
        else:
            low, at_low, at_high, last = middle, value, at_high / 2.0 if last < 0 else at_high, -1
    return (low + high) / 2.0
