"""Rules on calibrations: what a slip of the pen would look like."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress

from reportgen.audit.case import Case, Seen
from reportgen.campaign.declared import Amount, Calibration, Constant, Instrument
from reportgen.evaluation.instruments_known import is_share
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import convert, parse_unit

LARGE = 0.1  # of the range, or of the stretch of calibrated points: far more than any certificate finds
LARGEST_FACTOR = 4.0  # common practice, no source: k is about 2, some certificates 3


def large_corrections(case: Case) -> Iterable[Seen]:
    """Corrections of more than a tenth of what the instrument reaches over, or of its reading."""
    for instrument in case.declared.campaign.instruments.values():
        found = instrument.calibration
        if found is None:
            continue
        reach = _reach(instrument, found)
        for add in (found.correction, *(add for _, add in found.points)):
            if add and _is_large(add, reach, instrument):
                at = case.declared.at(f"instrument/{instrument.id}/correction")
                of = "reading" if is_share(add, instrument) else "range"
                says = f"A correction of {instrument.id}, {add.text}, is more than a tenth of its {of}."
                yield Seen(at, says)
                break


def unusual_factors(case: Case) -> Iterable[Seen]:
    """Coverage factors far from those of certificates."""
    campaign = case.declared.campaign
    stated: list[tuple[str, Instrument | Constant, Calibration | Constant]] = [
        ("instrument", i, i.calibration) for i in campaign.instruments.values() if i.calibration
    ]
    stated += [("constant", c, c) for c in campaign.constants.values()]
    for what, whose, has in stated:
        if float(has.k) > LARGEST_FACTOR:
            at = case.declared.at(f"{what}/{whose.id}/k")
            yield Seen(at, f"The uncertainty of {whose.id} stands with a coverage factor of {has.k}.")


def _reach(instrument: Instrument, calibration: Calibration) -> tuple[Amount | None, Amount | None]:
    """The ends it reads between; those of its calibrated points where they aren't stated."""
    if instrument.high:
        return instrument.low, instrument.high
    ends = [at for at, _ in calibration.points]
    return (ends[0], ends[-1]) if ends else (None, None)


def _is_large(add: Amount, reach: tuple[Amount | None, Amount | None], instrument: Instrument) -> bool:
    if is_share(add, instrument):
        return abs(float(add.value)) > 100 * LARGE
    low, high = reach
    if high is None:
        return False
    with suppress(UnitError):  # told by itself
        unit = parse_unit(high.unit)
        bottom = convert(float(low.value), parse_unit(low.unit), unit) if low else 0.0
        size = convert(float(add.value), parse_unit(add.unit), unit, difference=True)
        return abs(size) > LARGE * (float(high.value) - bottom)
    return False
