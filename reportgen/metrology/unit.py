"""Units: our own frozen type, how a written one is read, and how a value changes from one to another."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from reportgen.metrology.errors import UnitError, did_you_mean
from reportgen.metrology.unit_table import (
    COMMON_WITH_PREFIX,
    CURRENCIES,
    FORCE,
    FREQUENCY,
    KINDS_OF_DIMENSION,
    MASS,
    PREFIX_WORDS,
    PREFIXES,
    REFUSED,
    ROTATION,
    SPELLINGS,
    STEPS_OF_TEMPERATURE,
    TEMPERATURE,
    TIME,
    VOLUME,
    Dimension,
    Known,
)
from reportgen.metrology.unit_text import EXAMPLES, Atoms, read_atoms, write_atoms

UnitKind = Literal["plain", "absolute", "difference", "level"]


@dataclass(frozen=True)
class Unit:
    """A unit: x of it is x·`factor` + `offset` in the coherent SI unit of its `dimension`.

    `kind`: absolute, a point on a scale (a temperature); difference, a step on it or between two levels; level, a
    logarithm of an energy, in decibels; plain, everything else. Factors are exact fractions wherever their
    definitions are.
    """

    symbol: str
    factor: Fraction
    offset: Fraction
    dimension: Dimension
    kind: UnitKind

    def __hash__(self) -> int:  # equal units have equal symbols, and fractions are slow to hash
        return hash((self.symbol, self.kind))


@lru_cache(maxsize=1024)
def parse_unit(text: str) -> Unit:
    """A unit as people write it (°F, mm/s², lbf, %, fl oz, EUR/g) or in Pint's spelling; "" is a plain number.

    °C, °F and K alone are absolute, and steps inside a product (J/(kg·K)); Δ°C, Δ°F and ΔK are steps. Raises UnitError.

    >>> parse_unit("mm/s^2").symbol, parse_unit("°C").kind, parse_unit("J/(kg·K)").kind
    ('mm/s²', 'absolute', 'plain')
    """
    if not text.strip():
        return NUMBER
    atoms = read_atoms(text)
    if len(atoms) == 1 and " " in atoms[0][0] and atoms[0][1] == 1:
        raise UnitError(f"“{text}” is an amount where a unit is wanted", "write the unit alone")
    return unit_of(atoms, text)


def unit_of(atoms: Atoms, text: str = "") -> Unit:
    """The unit of a product of atoms. Raises UnitError for an atom nobody knows."""
    known = [(known_unit(atom, text.strip() or atom), power) for atom, power in atoms]
    if len(known) == 1 and known[0][1] == 1:
        return _single(atoms[0][0], known[0][0])
    factor = Fraction(1)
    powers: dict[str, Fraction] = {}
    for unit, power in known:
        factor *= power_of(unit.factor, power)
        for base, exponent in unit.dimension:
            powers[base] = powers.get(base, Fraction(0)) + exponent * power
    dimension = tuple(sorted((base, exponent) for base, exponent in powers.items() if exponent))
    symbol = write_atoms(tuple((unit.symbol, power) for unit, power in known))
    return Unit(symbol, factor, Fraction(0), dimension, kind_of_product(dimension))


def power_of(factor: Fraction, power: Fraction) -> Fraction:
    """`factor` to a power: exact for whole powers, to a float's precision for others."""
    return factor**power.numerator if power.denominator == 1 else Fraction(float(factor) ** float(power))


def kind_of_product(dimension: Dimension) -> UnitKind:
    """What a product is: one that comes to a temperature or to decibels is a step, never a point on the scale."""
    return "difference" if dimension == TEMPERATURE or is_decibel(dimension) else "plain"


def is_decibel(dimension: Dimension) -> bool:
    """Whether this is a level, whatever its frequency weighting."""
    return len(dimension) == 1 and dimension[0][0].startswith("level") and dimension[0][1] == 1


def _single(atom: str, known: Known) -> Unit:
    kind: UnitKind = "plain"
    if atom in STEPS_OF_TEMPERATURE:
        kind = "difference"
    elif known.dimension == TEMPERATURE:
        prefixed = known.symbol.endswith("K") and known.symbol != "K"
        kind = "difference" if prefixed else "absolute"  # mK is never read off a thermometer
    elif is_decibel(known.dimension):
        kind = "level"
    return Unit(known.symbol, known.factor, known.offset if kind == "absolute" else Fraction(0), known.dimension, kind)


@lru_cache(maxsize=1024)
def known_unit(atom: str, text: str) -> Known:
    """One atom, from our table, with an SI prefix, or from Pint; `text` is the unit it stands in, for the message."""
    if atom in REFUSED:
        raise UnitError(*REFUSED[atom])
    counted = re.match(r"(\d+(?:\.\d+)?) (.+)", atom)
    if counted:
        inner = known_unit(counted[2], text)
        return replace(inner, symbol=f"{counted[1]} {inner.symbol}", factor=inner.factor * Fraction(counted[1]))
    atom = STEPS_OF_TEMPERATURE.get(atom, atom)
    found = SPELLINGS.get(atom) or _prefixed(atom) or _plural(atom)
    if found:
        return found
    words = [word for word in (*SPELLINGS, *COMMON_WITH_PREFIX) if word not in CURRENCIES]
    near = did_you_mean(atom, words)
    if atom.isascii() and atom.casefold() not in {word.casefold() for word in words}:
        from reportgen.metrology.pint_units import from_pint

        foreign = from_pint(atom)
        if foreign:
            return foreign
    whole = "" if atom == text else f" in “{text}”"
    together = _run_together(atom, text)
    near = near or together if atom == text else together or near
    raise UnitError(f"“{atom}”{whole} is no unit we know", near or EXAMPLES)


def _run_together(atom: str, text: str) -> str:
    """`did you mean J/(g·K)?` for `J/gK`: two units written as one word."""
    for at in range(1, len(atom)):
        one, other = atom[:at], atom[at:]
        if all(SPELLINGS.get(half) or _prefixed(half) for half in (one, other)):
            both = f"({one}·{other})" if re.search(rf"[/÷]\s*{re.escape(atom)}", text) else f"{one}·{other}"
            return f"did you mean {text.replace(atom, both, 1)}?"
    return ""


def _prefixed(atom: str) -> Known | None:
    for length in (1, 2):
        unit = SPELLINGS.get(atom[length:])
        factor = PREFIXES.get(atom[:length])
        if unit and factor and unit.prefixes and (atom[length:] == unit.symbol or atom[length:] == "l"):
            prefix = "µ" if atom[:length] == "u" else atom[:length]
            return replace(unit, symbol=prefix + unit.symbol, factor=unit.factor * factor, offset=Fraction(0))
    for word, prefix in PREFIX_WORDS.items():
        rest = SPELLINGS.get(atom.removeprefix(word).removesuffix("s")) if atom.startswith(word) else None
        if rest and rest.prefixes and atom.removeprefix(word).removesuffix("s") != rest.symbol:
            return replace(rest, symbol=prefix + rest.symbol, factor=rest.factor * PREFIXES[prefix])
    return None


def _plural(atom: str) -> Known | None:
    return SPELLINGS.get(atom[:-1]) if len(atom) > 3 and atom.endswith("s") else None


def convert(value: float, from_: Unit, to: Unit, difference: bool = False) -> float:
    """`value` from one unit to another, rounded once. Raises UnitError where they don't go together.

    A step on a scale (kind difference, or `difference=True` for an accuracy or a width written in °C) is only
    scaled: 90 °F of difference is 50 K.

    >>> convert(1.0, parse_unit("lb"), parse_unit("kg")), convert(68.0, parse_unit("°F"), parse_unit("°C"))
    (0.45359237, 20.0)
    >>> convert(90.0, parse_unit("°F"), parse_unit("K"), difference=True)
    50.0
    """
    check_alike(from_, to, difference or from_.kind == "difference")
    if from_ == to:
        return value
    ratio = from_.factor / to.factor
    if difference or "difference" in (from_.kind, to.kind):
        return float(Fraction(value) * ratio)
    return float(Fraction(value) * ratio + (from_.offset - to.offset) / to.factor)


def scale(from_: Unit, to: Unit) -> float:
    """How much one step of `from_` is in steps of `to` (the two alike, `check_alike`)."""
    return 1.0 if from_.factor == to.factor else float(from_.factor / to.factor)


def alike(one: Unit, other: Unit, difference: bool = False) -> bool:
    """Whether values of the two can be put in one unit.

    Radians may appear or vanish (N·m·rad/s are watts), except between turns and cycles or lumens and candelas, where
    2π would be lost in silence. Steps between levels have no frequency weighting; levels do.
    """
    if one.dimension == other.dimension:
        return True
    if difference and is_decibel(one.dimension) and is_decibel(other.dimension):
        return True
    left, right = (tuple(p for p in unit.dimension if p[0] != "angle") for unit in (one, other))
    return left == right and left != FREQUENCY and all(base != "luminosity" for base, _ in left)


def check_alike(one: Unit, other: Unit, difference: bool = False) -> None:
    """Raises UnitError with a message that knows the usual mistakes, unless the two are alike."""
    if not alike(one, other, difference):
        raise UnitError(*_mistake(one, other))
    if one.kind == "absolute" and other.kind == "difference" and not difference:
        raise UnitError(f"a temperature in {named(one)} can't become a difference", "subtract another temperature")


def named(unit: Unit) -> str:
    """The symbol, or words where there is none."""
    return unit.symbol or "a plain number"


def has_true_zero(unit: Unit) -> bool:
    """Whether nothing of it is nothing, so that one value may be a percentage of another (a ratio scale).

    Not so temperatures, levels and differences of levels; nor plain numbers, of which nobody says what they count, and
    shares, whose percent would be taken for percentage points.
    """
    return bool(unit.dimension) and unit.kind in ("plain", "difference") and not is_decibel(unit.dimension)


def what_of(unit: Unit) -> str:
    """What sort of thing a unit measures: a mass, a force; its symbol again where there is no short name."""
    if is_decibel(unit.dimension):
        return "a level"
    if unit.dimension and len(unit.dimension) == 1 and unit.dimension[0][0].isupper():
        return "an amount of money"
    return KINDS_OF_DIMENSION.get(unit.dimension, f"measured in {unit.symbol}")


def _mistake(one: Unit, other: Unit) -> tuple[str, str]:
    pair = (one.dimension, other.dimension)
    is_and_is = ", ".join(f"{u.symbol} is {what_of(u)}" if u.symbol else "there is no unit" for u in (one, other))
    if "frames" in (one.symbol, other.symbol) and (TIME in pair):
        return "frames are pictures of a film, and no time by themselves", (
            "name the camera that took them, with its frame rate: `camera: 60000/1001 frames a second` under "
            "instruments (they are then seconds)"
        )
    if set(pair) == {MASS, FORCE}:
        mass = one if one.dimension == MASS else other
        force = f"{mass.symbol}f" if mass.symbol in ("kg", "g", "lb", "oz") else "kgf"
        return is_and_is, f"a pull scale that shows {mass.symbol} reads {force}: write {force} for its unit"
    if set(pair) == {MASS, VOLUME} and "oz" in (one.symbol, other.symbol):
        return is_and_is, "ounces of liquid by volume are fl oz"
    if set(pair) == {FREQUENCY, ROTATION}:
        return is_and_is, "one turn is 2π radians: say in the formula which is meant, per turn or per radian"
    if all(is_decibel(d) for d in pair):
        return f"{one.symbol} and {other.symbol} are weighted differently", "write the same weighting in both places"
    if all(len(d) == 1 and d[0][0].isupper() for d in pair):
        return f"no rate of exchange turns {one.symbol} into {other.symbol}", "add one as a constant with its date"
    return is_and_is, "check the unit, or the formula that leads to it"


NUMBER = Unit("", Fraction(1), Fraction(0), (), "plain")
