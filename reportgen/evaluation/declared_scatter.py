"""How far passes scatter by what a method declares or past campaigns found; and sessions, and specimens.

In a quantity's unit, or as a part of the value where the test's scatter is relative; then a declared one in the
quantity's unit raises `UnitError`.
"""

from __future__ import annotations

from typing import Literal

from reportgen.campaign.declared import Amount, Campaign, Quantity, Test
from reportgen.judgement.measured import DeclaredScatter
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import NUMBER, Unit, alike, convert, parse_unit


def of_passes(campaign: Campaign, test: Test, quantity: Quantity, unit: Unit) -> DeclaredScatter | None:
    """The repeatability of one pass; None where the method declares none of this quantity."""
    method = campaign.methods.get(f"{test.method}.{test.method_version}")
    if not method or quantity.id not in method.repeatability:
        return None
    found = method.repeatability[quantity.id]
    origin: Literal["method", "past campaigns"] = "past campaigns" if found.past else "method"
    return DeclaredScatter(_size(test, found.sd, unit), found.degrees, found.source, origin)


def between_sessions(campaign: Campaign, test: Test, unit: Unit) -> float | None:
    """The scatter between sessions; None where none is declared for such a quantity."""
    method = campaign.methods.get(f"{test.method}.{test.method_version}")
    return _between(test, method.between_sessions if method else None, unit) or None


def between_specimens(campaign: Campaign, test: Test, unit: Unit) -> float:
    """The scatter between specimens; 0 where none is declared for such a quantity."""
    method = campaign.methods.get(f"{test.method}.{test.method_version}")
    return _between(test, method.between_specimens if method else None, unit)


def _between(test: Test, declared: Amount | None, unit: Unit) -> float:
    if declared is None:
        return 0.0
    if test.scatter != "relative" and not alike(parse_unit(declared.unit), unit, difference=True):
        return 0.0  # it was stated for another quantity of the test
    return _size(test, declared, unit)


def _size(test: Test, declared: Amount, unit: Unit) -> float:
    stated = parse_unit(declared.unit)
    if test.scatter != "relative":
        return convert(float(declared.value), stated, unit, difference=True)
    if not alike(stated, NUMBER):
        raise UnitError(
            "the method's scatter is relative, but one of its repeatability, sessions or specimens is in "
            f"{declared.unit}",
            "state it in percent",
        )
    return convert(float(declared.value), stated, NUMBER, difference=True)
