"""What a method says of a scatter must be in the unit of something its test measures, or it would count for nothing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.campaign.declared import Declared, Method
from reportgen.finding import Finding
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import Unit, alike, parse_unit


def method_misfits(declared: Declared, units: Mapping[str, Unit]) -> Iterable[Finding]:
    """`between sessions` and `between specimens` in a unit nobody knows, or of nothing that is measured by the method.

    Where the scatter is relative, both are told in percent, and anything else is refused where it is used.
    """
    tests = declared.campaign.tests
    for id, method in declared.campaign.methods.items():
        measured = [t for t in tests if f"{t.method}.{t.method_version}" == id and t.scatter != "relative"]
        of = [units[q.id] for t in measured for q in t.quantities if q.id in units]
        if of:
            yield from _of_nothing(declared, id, method, of)


def _of_nothing(declared: Declared, id: str, method: Method, of: list[Unit]) -> Iterable[Finding]:
    for key, amount in (("between sessions", method.between_sessions), ("between specimens", method.between_specimens)):
        if amount is None:
            continue
        place, subject = declared.at(f"method/{id}"), f"method/{method.id}"
        try:
            unit = parse_unit(amount.unit)
        except UnitError as wrong:
            yield Finding("error", "unit", place, f"`{key}`: {wrong.says}", do=wrong.do, subject=subject)
            continue
        if not any(alike(unit, other, difference=True) for other in of):
            says = f"`{key}: {amount.value} {amount.unit}` is in the unit of nothing that is measured by {method.id}."
            do = "Give it in the unit of a quantity of the test."
            yield Finding("error", "unit", place, says, "It would count nowhere.", do, subject)
