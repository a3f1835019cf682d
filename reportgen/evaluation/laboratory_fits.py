"""A laboratory's limits and uncertainty beside the quantity they are of, and values against limits in another unit."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.campaign.declared import Amount, Declared, Laboratory, Quantity, Test
from reportgen.finding import Finding
from reportgen.intake.reading import Reading, Readings
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import Unit, check_alike, convert, parse_unit

NAMES = {
    "detection limit": "detection_limit",
    "report limit": "report_limit",
    "uncertainty": "uncertainty",
}


def laboratory_misfits(declared: Declared, readings: Readings, units: Mapping[str, Unit]) -> Iterable[Finding]:
    """What doesn't fit, each told once at the key or cell that is wrong."""
    for test in declared.campaign.tests:
        laboratory = test.laboratory
        for quantity in test.quantities:
            if laboratory is None or quantity.kind != "laboratory" or quantity.id not in units:
                continue
            wrong = tuple(_units(declared, test, quantity, laboratory, units[quantity.id]))
            yield from wrong
            if not wrong:
                yield from _upside_down(declared, test, laboratory)
                mine = (r for r in readings.readings.values() if r.key.test == test.id and r.key.name in quantity.reads)
                yield from (f for r in mine if (f := _below(r, laboratory)) is not None)


def _units(declared: Declared, test: Test, quantity: Quantity, laboratory: Laboratory, unit: Unit) -> Iterable[Finding]:
    for key, field in NAMES.items():
        amount: Amount | None = getattr(laboratory, field)
        if amount is None or (key == "uncertainty" and amount.unit == "%"):
            continue
        try:
            check_alike(parse_unit(amount.unit), unit, difference=key == "uncertainty")
        except UnitError as wrong:
            place = declared.at(f"laboratory/{test.id}/{key.replace(' ', '-')}")
            says = f"The {key} of {quantity.id}, {amount.text}: {wrong.says}"
            yield Finding("error", "unit", place, says, do=wrong.do, subject=f"quantity/{quantity.id}")


def _upside_down(declared: Declared, test: Test, laboratory: Laboratory) -> Iterable[Finding]:
    low, high = laboratory.detection_limit, laboratory.report_limit
    if low and high and low.unit != high.unit and _in(low, high.unit) > float(high.value):
        says = f"the detection limit ({low.text}) lies above the limit from which values are stated ({high.text})"
        place = declared.at(f"laboratory/{test.id}/detection-limit")
        yield Finding("error", "limits-upside-down", place, says, do="Exchange the two, or correct one.")


def _below(reading: Reading, laboratory: Laboratory) -> Finding | None:
    """A plain number below a limit that is declared in another unit; in one unit it was refused as it was read."""
    if reading.value is None or reading.limit or reading.width is not None or reading.beside:
        return None
    for limit, word in ((laboratory.detection_limit, "not found"), (laboratory.report_limit, "found")):
        if limit is None or limit.unit == reading.unit:
            continue
        try:
            bound = _in(limit, reading.unit)
        except UnitError:
            return None  # told of the reading itself
        if float(reading.value) < bound:
            return Finding(
                "error",
                "below-the-limit",
                reading.at,
                f"“{reading.text}” is typed as a number, and lies below {limit.text}.",
                "A number there would be read as if it were known.",
                f"Write `{word}` or `under {limit.text}`; if the report does state this number, correct the limit.",
                f"test/{reading.key.test}",
            )
    return None


def _in(amount: Amount, unit: str) -> float:
    return convert(float(amount.value), parse_unit(amount.unit), parse_unit(unit))
