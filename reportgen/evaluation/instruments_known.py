"""A declared instrument translated for metrology: amounts as floats with units, percentages by what they are of."""

from __future__ import annotations

import math
from typing import overload

from reportgen.campaign.declared import Amount
from reportgen.campaign.declared import Calibration as DeclaredCalibration
from reportgen.campaign.declared import Instrument as DeclaredInstrument
from reportgen.campaign.instrument_terms import OF_READING
from reportgen.metrology.instrument import Calibration, Instrument, Points, Relative, Size
from reportgen.metrology.unit import convert, parse_unit


def instrument_for_metrology(declared: DeclaredInstrument) -> Instrument:
    """Amounts as floats with units, accuracy by its parts. Raises `UnitError` for a unit nobody knows or a misfit."""
    accuracy, repeats = declared.accuracy, declared.repeatability
    return Instrument(
        id=declared.id,
        resolution=_size(declared.resolution),
        low=_size(declared.low),
        high=_size(declared.high),
        absolute=_size(accuracy.absolute),
        percent=float(accuracy.percent) if accuracy.percent is not None else None,
        digits=accuracy.digits,
        known=accuracy.known,
        by_hand=declared.by_hand,
        shared=declared.shared,
        of_range=float(accuracy.of_range) if accuracy.of_range is not None else None,
        repeatability=_size(repeats.sd) if repeats else None,
        repeatability_degrees=repeats.degrees if repeats and repeats.degrees else math.inf,
        reaction=_size(declared.reaction),
        calibration=_calibration(declared),
        clock=float(declared.clock.value) if declared.clock else None,
    )


def is_share(amount: Amount, instrument: DeclaredInstrument) -> bool:
    """Whether an amount is a part of the reading: in percent, on an instrument that doesn't itself read in percent."""
    return amount.unit == OF_READING or (amount.unit == "%" and "%" not in read_in(instrument))


def read_in(instrument: DeclaredInstrument) -> str:
    """The unit an instrument reads in, as far as its figures tell; "" where they don't."""
    points = instrument.calibration.points if instrument.calibration else ()
    figures = (instrument.resolution, instrument.high, instrument.low, instrument.accuracy.absolute)
    return next((figure.unit for figure in (*figures, *(at for at, _ in points)) if figure), "")


def _calibration(declared: DeclaredInstrument) -> Calibration | None:
    found = declared.calibration or DeclaredCalibration()
    if not (found.correction or found.points or found.uncertainty or declared.drift):
        return None
    u = _size_or_share(found.uncertainty, declared)
    k = float(found.k)
    return Calibration(
        correction=_points(found) if found.points else _size_or_share(found.correction, declared),
        u=Relative(u.percent / k) if isinstance(u, Relative) else Size(u.value / k, u.unit) if u else None,
        degrees=found.degrees or math.inf,
        drift=_size_or_share(declared.drift, declared),
    )


def _points(calibration: DeclaredCalibration) -> Points:
    unit = parse_unit(calibration.points[0][0].unit)
    return Points(
        unit,
        tuple(float(at.value) for at, _ in calibration.points),
        tuple(
            convert(float(add.value), parse_unit(add.unit), unit, difference=True) if add.value else 0.0
            for _, add in calibration.points
        ),
        calibration.line,
    )


@overload
def _size(amount: Amount) -> Size: ...
@overload
def _size(amount: Amount | None) -> Size | None: ...
def _size(amount: Amount | None) -> Size | None:
    return Size(float(amount.value), parse_unit(amount.unit)) if amount else None


def _size_or_share(amount: Amount | None, instrument: DeclaredInstrument) -> Size | Relative | None:
    if amount is None or not amount.value:
        return None
    return Relative(float(amount.value)) if is_share(amount, instrument) else _size(amount)
