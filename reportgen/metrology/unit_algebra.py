"""What unit a sum, a product or a power has, and which of them have no meaning.

Points on a scale (temperatures) subtract to a step and are never added or multiplied; levels subtract to a step in
decibels. Kelvin has a true zero, so a multiple of it is again a temperature.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import Literal

from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import (
    NUMBER,
    Unit,
    check_alike,
    kind_of_product,
    power_of,
)
from reportgen.metrology.unit_table import LEVEL, SPELLINGS, Dimension
from reportgen.metrology.unit_text import merged, read_atoms, write_atoms

Sign = Literal["+", "-"]


@lru_cache(maxsize=1024)
def unit_of_sum(one: Unit, other: Unit, sign: Sign) -> tuple[Unit, Unit, Unit]:
    """The unit of `one ± other`, and the units either has to be put in first. Raises UnitError."""
    check_alike(one, other, difference="difference" in (one.kind, other.kind))
    if one.kind == "level" or other.kind == "level":
        return _of_levels(one, other, sign)
    if one.kind == "absolute" or other.kind == "absolute":
        return _of_temperatures(one, other, sign)
    return one, one, one


def _of_temperatures(one: Unit, other: Unit, sign: Sign) -> tuple[Unit, Unit, Unit]:
    if one.kind == other.kind == "absolute":
        if sign == "+":
            raise UnitError(
                f"two temperatures ({one.symbol}, {other.symbol}) can't be added",
                f"take their mean, or write Δ{other.symbol} for the one that is a difference",
            )
        if (one.offset == 0) != (other.offset == 0):
            raise UnitError(
                f"{one.symbol} minus {other.symbol}: the second could be a temperature or a difference",
                f"write Δ{other.symbol} for a difference, or give both temperatures in one unit",
            )
        return step_of(one), one, one
    if sign == "-" and other.kind == "absolute":
        raise UnitError(
            f"a temperature in {other.symbol} can't be taken from a difference",
            f"write Δ{other.symbol} for its unit if it is a difference too",
        )
    point = one if one.kind == "absolute" else other
    if point.offset == 0:  # people write K for both: 5 K warmer, at 300 K
        raise UnitError(
            f"{point.symbol} beside a difference could be a temperature or a difference too",
            f"write Δ{point.symbol} for a difference, or give the temperature in °C",
        )
    if one.kind == "absolute":
        return one, one, step_of(one)
    return other, step_of(other), other


def _of_levels(one: Unit, other: Unit, sign: Sign) -> tuple[Unit, Unit, Unit]:
    if one.kind == other.kind == "level":
        if sign == "+":
            raise UnitError(
                "two levels in dB can't be added with +",
                "write energy_sum(a, b) for both together, or energy_mean(a, b)",
            )
        return step_of(one), one, one
    if one.kind == "level":
        return one, one, step_of(one)
    if sign == "+":
        return other, step_of(other), other
    raise UnitError("a level can't be taken from a difference of levels", "turn them round, or check the formula")


def step_of(unit: Unit) -> Unit:
    """One step on the unit's scale, as an accuracy or a difference has it; a plain unit is its own step."""
    if unit.kind == "level":
        return Unit("dB", unit.factor, Fraction(0), LEVEL, "difference")
    if unit.kind == "absolute":
        return Unit(unit.symbol, unit.factor, Fraction(0), unit.dimension, "difference")
    return unit


@lru_cache(maxsize=1024)
def unit_of_product(one: Unit, other: Unit, sign: Literal["*", "/"]) -> Unit:
    """The unit of `one * other` or `one / other`; values multiply as they stand. Raises UnitError."""
    if other == NUMBER and one.kind != "level" and one.offset == 0:
        return one
    if one == NUMBER and sign == "*" and other.kind != "level" and other.offset == 0:
        return other
    for unit in (one, other):
        _refuse_points(unit, "multiplied" if sign == "*" else "divided")
    power = Fraction(1 if sign == "*" else -1)
    dimension = _times(one.dimension, other.dimension, power)
    atoms = merged([*_atoms(one), *((atom, exponent * power) for atom, exponent in _atoms(other))])
    factor = one.factor * other.factor**power.numerator
    return Unit(write_atoms(atoms), factor, Fraction(0), dimension, kind_of_product(dimension))


@lru_cache(maxsize=1024)
def unit_of_power(base: Unit, power: Fraction) -> Unit:
    """The unit of `base ** power`. Raises UnitError."""
    if power == 1:
        return base
    _refuse_points(base, "raised to a power")
    dimension = _times((), base.dimension, power)
    atoms = merged((atom, exponent * power) for atom, exponent in _atoms(base))
    return Unit(write_atoms(atoms), power_of(base.factor, power), Fraction(0), dimension, kind_of_product(dimension))


def _refuse_points(unit: Unit, what: str) -> None:
    if unit.kind == "level":
        raise UnitError(
            f"a level in {unit.symbol} can't be {what}", "levels are logarithms: subtract them, or take energy_mean(…)"
        )
    if unit.kind == "absolute" and unit.offset:
        raise UnitError(
            f"a temperature in {unit.symbol} can't be {what}: its zero is only a mark on the scale",
            f"subtract another temperature first, give it in K, or write Δ{unit.symbol} if it is a difference",
        )


def _times(one: Dimension, other: Dimension, power: Fraction) -> Dimension:
    powers = dict(one)
    for base, exponent in other:
        powers[base] = powers.get(base, Fraction(0)) + exponent * power
    return tuple(sorted((base, exponent) for base, exponent in powers.items() if exponent))


def _atoms(unit: Unit) -> tuple[tuple[str, Fraction], ...]:
    found = read_atoms(unit.symbol) if unit.symbol else ()
    return tuple((SPELLINGS[atom].symbol if atom in SPELLINGS else atom, power) for atom, power in found)
