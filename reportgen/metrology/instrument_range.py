"""Whether an instrument can have shown what was written: its range, the ends of it, its step."""

from __future__ import annotations

from reportgen.metrology.calibration import as_read
from reportgen.metrology.specification import Instrument, Points
from reportgen.metrology.unit import Unit, alike


def outside(value: float, unit: Unit, instrument: Instrument) -> bool:
    """Whether a reading lies beyond the instrument's stated range, ends included in the range. Raises UnitError."""
    low, high = instrument.low, instrument.high
    if low and (below := as_read(value, unit, low.unit)) < low.value:
        return not _meets(below, low.value)
    if high is None:
        return False
    read = as_read(value, unit, high.unit)
    return read > high.value and not _meets(read, high.value)


def off_step(value: float, unit: Unit, instrument: Instrument) -> bool:
    """Whether a reading is finer than the instrument shows: no whole number of steps of its resolution.

    A reading written in another unit than the resolution was converted by someone; nothing is said about it.
    """
    resolution = instrument.resolution
    if resolution is None or not resolution.value:
        return False
    if resolution.unit.factor != unit.factor or not alike(unit, resolution.unit, difference=True):
        return False
    steps = value / resolution.value
    return abs(steps - round(steps)) > 1e-6


def at_the_top(value: float, unit: Unit, instrument: Instrument) -> bool:
    """Whether a reading is the highest the instrument can show: the truth may lie beyond. Raises UnitError."""
    high = instrument.high
    return high is not None and _meets(as_read(value, unit, high.unit), high.value)


def at_the_bottom(value: float, unit: Unit, instrument: Instrument) -> bool:
    """Whether it is the lowest it can show, but for 0, where nothing is a reading like any other. Raises UnitError."""
    low = instrument.low
    return low is not None and low.value != 0 and _meets(as_read(value, unit, low.unit), low.value)


def _meets(one: float, other: float) -> bool:
    return abs(one - other) <= 1e-9 * abs(other)


def outside_points(value: float, unit: Unit, instrument: Instrument) -> bool:
    """Whether a reading lies beyond the points its instrument was calibrated at. Raises UnitError."""
    points = instrument.calibration.correction if instrument.calibration else None
    if not isinstance(points, Points):
        return False
    x = as_read(value, unit, points.unit)
    return x < points.at[0] or x > points.at[-1]
