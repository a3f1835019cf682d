"""What a calibration adds to a reading: the correction, how well it is known, and the drift since.

Each is one variable for all readings of the instrument, whatever the session: it cancels in differences, or leaves the
share by which it differs between two readings (JCGM 100, F.1.2.3 and F.2.4.3). The uncertainty stated counts as common
to the whole scale. A line fitted to the points errs in two ways that don't depend on each other, its height amid the
points and its slope; both rest on one estimate of the scatter about the line, with points less two degrees of freedom
(JCGM 100, H.3.5).
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING

from reportgen.metrology import fit
from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.specification import Calibration, Instrument, Points, Relative, Size
from reportgen.metrology.stated import of_reading
from reportgen.metrology.uncertain import Source, combined_standard_uncertainty
from reportgen.metrology.unit import Unit, convert, is_decibel

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


_ROUNDING = 2.0**-50  # of a number as it is held
HEIGHT, SLOPE = "height of the line", "slope of the line"


@dataclass(frozen=True)
class Line:
    """A straight line through points about their middle: `height` + `slope`·(x − `middle`).

    `u_height` and `u_slope` are standard uncertainties that don't depend on each other, of `degrees` of freedom.
    """

    middle: float
    height: float
    slope: float
    u_height: float
    u_slope: float
    degrees: int


def correction(instrument: Instrument, value: float, unit: Unit) -> float:
    """What is added to a reading of `value`, in steps of `unit`; 0 where there is none. Raises UnitError."""
    found = instrument.calibration.correction if instrument.calibration else None
    if found is None:
        return 0.0
    if not isinstance(found, Points):
        return _amount(found, value, unit, instrument)
    x = as_read(value, unit, found.unit)
    return convert(_of_points(found)(x), found.unit, unit, difference=True)


def corrections(instrument: Instrument, values: Floats, unit: Unit) -> Floats:
    """`correction` for many readings at once. Raises UnitError."""
    import numpy as np

    found = instrument.calibration.correction if instrument.calibration else None
    if isinstance(found, Points) and not found.line:
        nought = as_read(0.0, unit, found.unit)
        x = nought + (as_read(1.0, unit, found.unit) - nought) * values
        return np.asarray(np.interp(x, found.at, found.add) * convert(1.0, found.unit, unit, difference=True))
    start = correction(instrument, 0.0, unit)  # every other correction is straight in the reading
    return start + (correction(instrument, 1.0, unit) - start) * values


def falls(correction: Size | Relative | Points | None) -> tuple[str, str] | None:
    """Where a higher reading, corrected, would be no higher: what to say of it and what to do; None where all rise.

    Such an instrument can't tell more from less, and what it read can't be found again from what is printed.
    """
    do = "look for a sign or a decimal point that is wrong"
    if isinstance(correction, Relative) and correction.percent <= -100.0:
        return f"a correction of {correction.percent} % leaves nothing of a reading", do
    if not isinstance(correction, Points):
        return None
    add = _of_points(correction)
    symbol = correction.unit.symbol
    for low, high in pairwise(correction.at):
        if not high + add(high) > low + add(low):
            return f"corrected, a reading of {high} {symbol} would be no more than one of {low} {symbol}", do
    return None


def as_shown(instrument: Instrument, value: float, unit: Unit) -> float:
    """What an instrument showed where `value` is what it read, corrected: to the first order of the correction."""
    return value - correction(instrument, value, unit)


def of_calibration(instrument: Instrument, value: float, unit: Unit, years: float | None) -> dict[Source, float]:
    """How well the correction is known at a reading of `value` (as shown), and the drift in `years` since.

    Raises UnitError, and MetrologyError where there is a drift and nothing says how long it had.
    """
    calibration = instrument.calibration
    if calibration is None:
        return {}
    found = _of_line(instrument, calibration, value, unit)
    if calibration.u:
        source = Source("calibration", instrument.id, "", "normal", calibration.degrees)
        found[source] = _amount(calibration.u, value, unit, instrument)
    if calibration.drift:
        if years is None:
            says = f"{instrument.id} drifts, and nothing says how long after its calibration this was read"
            raise MetrologyError(says, "say when it was calibrated and when the readings were taken")
        found[Source("drift", instrument.id)] = _amount(calibration.drift, value, unit, instrument) * years / 3**0.5
    return {source: size for source, size in found.items() if size}


def fitted(points: Points) -> Line:
    """The least-squares line of the points, told about the mean of their readings, where its two errors part (JCGM 100,
    H.3.2 and H.3.3).

    Raises MetrologyError where there are fewer than three points, or all at one reading.
    """
    n = len(points.at)
    try:
        found = fit.line(points.at, points.add, name="calibration")
    except NoValue as reason:
        says = f"a line with its scatter can't be fitted to {n} points: {reason.says}"
        raise MetrologyError(says, "give three or more, apart") from None
    middle = math.fsum(points.at) / n
    height, slope = found.at(middle).value, found.slope
    assert height is not None
    assert slope.value is not None
    u_height, u_slope = found.residual_sd / math.sqrt(n), combined_standard_uncertainty(slope)
    if found.residual_sd <= _ROUNDING * (max(map(abs, points.add)) + abs(slope.value) * max(map(abs, points.at))):
        u_height = u_slope = 0.0  # decimals that lie on one line do so to the last bit but one
    return Line(middle, height, slope.value, u_height, u_slope, found.degrees)


def as_read(value: float, unit: Unit, other: Unit) -> float:
    """A reading in another unit; on a meter with several weightings figures are written in plain dB."""
    if is_decibel(unit.dimension) and is_decibel(other.dimension):
        return value
    return convert(value, unit, other)


def _of_line(instrument: Instrument, calibration: Calibration, value: float, unit: Unit) -> dict[Source, float]:
    points = calibration.correction
    if not isinstance(points, Points) or not points.line:
        return {}
    line = _line(points)
    away = as_read(value, unit, points.unit) - line.middle
    return {
        Source("calibration", instrument.id, where, "normal", line.degrees): convert(
            size, points.unit, unit, difference=True
        )
        for where, size in ((HEIGHT, line.u_height), (SLOPE, line.u_slope * away))
    }


def _amount(amount: Size | Relative, value: float, unit: Unit, instrument: Instrument) -> float:
    if isinstance(amount, Relative):
        return of_reading(amount.percent, value, unit, instrument)
    return convert(amount.value, amount.unit, unit, difference=True)


def _of_points(points: Points) -> Callable[[float], float]:
    if points.line:
        line = _line(points)
        return lambda x: line.height + line.slope * (x - line.middle)
    return lambda x: _between(points, x)


@lru_cache(maxsize=256)
def _line(points: Points) -> Line:
    return fitted(points)


def _between(points: Points, x: float) -> float:
    """Straight between the two points beside `x`; beyond the ends the last one's holds."""
    if x <= points.at[0]:
        return points.add[0]
    if x >= points.at[-1]:
        return points.add[-1]
    i = bisect_right(points.at, x)
    share = (x - points.at[i - 1]) / (points.at[i] - points.at[i - 1])
    return points.add[i - 1] + share * (points.add[i] - points.add[i - 1])
