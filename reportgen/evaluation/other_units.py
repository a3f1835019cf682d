"""A result in the other units its author wants shown (`show: [g, oz]`)."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.evaluation.evaluated import InUnit
from reportgen.judgement.measured import Single
from reportgen.metrology.errors import UnitError
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import Unit, convert, parse_unit


def in_other_units(mean: Uncertain, single: Single, show: Sequence[str]) -> tuple[InUnit, ...]:
    """The result in every unit of `show` that fits its own and isn't it. A rise in °C stays a rise in °F.

    Raises UnitError for a unit that nobody knows.
    """
    found = []
    for text in show:
        unit = parse_unit(text)
        if unit.symbol != mean.unit.symbol and _fits(mean.unit, unit):
            found.append(_put(mean, single, unit, text))
    return tuple(found)


def _fits(own: Unit, other: Unit) -> bool:
    try:
        convert(0.0, own, other)
    except UnitError:
        return False
    return True


def _put(mean: Uncertain, single: Single, unit: Unit, text: str) -> InUnit:
    def put(value: float | None, difference: bool = False) -> float | None:
        return None if value is None else convert(value, mean.unit, unit, difference=difference)

    return InUnit(text, put(mean.value), put(single.u, difference=True), put(single.low), put(single.high))
