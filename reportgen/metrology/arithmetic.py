"""Arithmetic on uncertain values: exact first derivatives, contribution by contribution (JCGM 100, 5.1.2 and 5.1.3).

Every function returns a new `Uncertain`; units and bounds follow their own rules (`unit_algebra`, `limits`).
Raises UnitError where units don't go together and NoValue where the readings leave nothing to say.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from fractions import Fraction

from reportgen.metrology.errors import MetrologyError, NoValue, UnitError
from reportgen.metrology.limits import (
    joint,
    limit_of_power,
    limit_of_product,
    limit_of_reciprocal,
    opposite,
)
from reportgen.metrology.uncertain import Limit, Source, Uncertain, combined_standard_uncertainty
from reportgen.metrology.unit import NUMBER, Unit, alike, convert, named, scale
from reportgen.metrology.unit_algebra import step_of, unit_of_power, unit_of_product, unit_of_sum

HIGHEST_POWER = 100
_RESIDUE = 1e-12  # what is left of two contributions that cancel, in parts of either, is rounding
LARGEST = 1e75  # of values and contributions
SMALLEST = 1e-150  # of an uncertainty and the value it is of: the square of less may be nothing
REACH = 1.96  # standard uncertainties to either side: 95 % of a normal distribution, all of a uniform one


def exact(value: float, unit: Unit = NUMBER) -> Uncertain:
    """A value taken as known.

    >>> exact(2.0).contributions
    {}
    """
    return Uncertain(value, unit)


def in_unit(x: Uncertain, unit: Unit) -> Uncertain:
    """The same in another unit; a bound stays a bound, and a difference asked for in °C or dB stays a difference.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> from reportgen.metrology.unit import parse_unit
    >>> warm = in_unit(input_quantity(20.0, "°C", u=0.5, name="thermometer"), parse_unit("°F"))
    >>> round(warm.value, 9), [round(size, 9) for size in warm.contributions.values()]
    (68.0, [0.9])

    Raises UnitError where the two don't go together.
    """
    if x.unit == unit:
        return x
    if x.unit.kind == "difference":
        unit = step_of(unit)
    factor = scale(x.unit, unit)
    value = convert(x.value or 0.0, x.unit, unit)
    return Uncertain(None if x.value is None else value, unit, weighted([(factor, x)]), x.limit)


def weighted(terms: Iterable[tuple[float, Uncertain]]) -> dict[Source, float]:
    """Contributions to Σ cᵢxᵢ: those of one source added with their signs, those that cancel left out."""
    sizes: dict[Source, list[float]] = {}
    for coefficient, x in terms:
        for source, size in x.contributions.items():
            sizes.setdefault(source, []).append(coefficient * size)
    totals: dict[Source, float] = {}
    for source, parts in sizes.items():
        total = math.fsum(parts)
        if abs(total) > _RESIDUE * max(map(abs, parts)):
            totals[source] = total
    return totals


def add(x: Uncertain, y: Uncertain) -> Uncertain:
    """x + y in x's unit.

    >>> from reportgen.metrology.unit import parse_unit
    >>> found = add(exact(1.0, parse_unit("kg")), exact(250.0, parse_unit("g")))
    >>> found.value, found.unit.symbol
    (1.25, 'kg')
    """
    unit, for_x, for_y = unit_of_sum(x.unit, y.unit, "+")
    x, y = in_unit(x, for_x), in_unit(y, for_y)
    limit = joint(x.limit, y.limit)
    value = None if x.value is None or y.value is None else x.value + y.value
    return _found(value, unit, limit, [(1.0, x), (1.0, y)])


def subtract(x: Uncertain, y: Uncertain) -> Uncertain:
    """x − y in x's unit; two temperatures or two levels leave a difference.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> bath = input_quantity(20.0, "°C", u=0.3, name="thermometer")
    >>> rise = subtract(input_quantity(95.0, "°C", u=0.3, name="thermometer"), bath)
    >>> rise.value, rise.unit.kind, rise.contributions  # one thermometer: its error is in both, and gone
    (75.0, 'difference', {})
    """
    unit, for_x, for_y = unit_of_sum(x.unit, y.unit, "-")
    x, y = in_unit(x, for_x), in_unit(y, for_y)
    limit = joint(x.limit, opposite(y.limit))
    value = None if x.value is None or y.value is None else x.value - y.value
    return _found(value, unit, limit, [(1.0, x), (-1.0, y)])


def negate(x: Uncertain) -> Uncertain:
    """−x.

    >>> negate(exact(2.0)).value
    -2.0
    """
    unit = unit_of_product(NUMBER, x.unit, "*")
    return _found(None if x.value is None else -x.value, unit, opposite(x.limit), [(-1.0, x)])


def multiply(x: Uncertain, y: Uncertain) -> Uncertain:
    """x·y in the product of the units.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> from reportgen.metrology.uncertain import combined_standard_uncertainty
    >>> work = multiply(input_quantity(3.0, "N", u=0.3, name="pull"), input_quantity(4.0, "m", u=0.3, name="way"))
    >>> work.value, work.unit.symbol, combined_standard_uncertainty(work)  # √((4·0.3)² + (3·0.3)²): JCGM 100, 5.1.2
    (12.0, 'N·m', 1.5)
    """
    unit = unit_of_product(x.unit, y.unit, "*")
    value, limit = limit_of_product((x.value, x.limit), (y.value, y.limit))
    if value == 0.0 and x.value and y.value:
        raise _too_small()
    return _found(value, unit, limit, [(y.value or 0.0, x), (x.value or 0.0, y)])


def divide(x: Uncertain, y: Uncertain) -> Uncertain:
    """x/y in the quotient of the units. Raises NoValue where y is, or could be, nothing.

    >>> from reportgen.metrology.unit import parse_unit
    >>> divide(exact(90.0, parse_unit("m")), exact(60.0, parse_unit("s"))).unit.symbol
    'm/s'
    """
    unit = unit_of_product(x.unit, y.unit, "/")
    if y.value == 0 and y.limit is None:
        raise NoValue("a division by zero", "look at the reading below the stroke: it came out as nothing")
    if _limit_reaches_nothing(y):
        raise NoValue("a division by a value that could be nothing", "its limit is too near to nothing to divide by")
    bounded = x.limit or y.limit
    value, limit = limit_of_product((x.value, x.limit), limit_of_reciprocal((y.value, y.limit)))
    if not bounded and x.value is not None and y.value is not None:
        value = x.value / y.value  # one rounding, not two
    if value == 0.0 and x.value:
        raise _too_small()
    if not y.value or x.value is None:
        return _found(value, unit, limit, [])
    return _found(value, unit, limit, [(1.0 / y.value, x), (-x.value / y.value / y.value, y)])


def power(x: Uncertain, exponent: float) -> Uncertain:
    """x to an exactly known power, at most ±100. Raises NoValue for a root of a negative value or 0 to less than 0.

    The exponent is the sensitivity of the relative uncertainty (JCGM 100, 5.1.6): 1 % of a side is 3 % of its cube.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> cube = power(input_quantity(10.0, "cm", u=0.1, name="side"), 3)
    >>> cube.value, cube.unit.symbol, [round(c, 9) for c in cube.contributions.values()]
    (1000.0, 'cm³', [30.0])
    """
    if not abs(exponent) <= HIGHEST_POWER:
        raise MetrologyError(f"a power of {exponent:g}", f"powers go up to {HIGHEST_POWER}")
    if exponent < 0:
        return divide(exact(1.0), power(x, -exponent))
    if exponent == 0:
        return exact(1.0)
    simple = Fraction(exponent).limit_denominator(12)
    if not x.unit.dimension:
        x, unit = in_unit(x, NUMBER), NUMBER
    elif abs(float(simple) - exponent) > 1e-12:
        raise UnitError(f"{named(x.unit)} to the power {exponent:g} is no unit", "use a whole power or a simple root")
    else:
        unit = unit_of_power(x.unit, simple)
    limit = limit_of_power((x.value, x.limit), exponent)
    if x.value is None:
        return Uncertain(None, unit, {}, limit)
    if x.value < 0 and exponent % 1:
        raise NoValue("a root of a negative value", "look at the reading under the root")
    base = x.value
    value = _within(lambda: float(base**exponent))
    if value == 0.0 and base:
        raise _too_small()
    if exponent >= 1:
        slope = exponent * _within(lambda: float(base ** (exponent - 1)))
    elif x.value or not x.contributions:
        slope = exponent * value / x.value if x.value else 0.0
    else:
        raise NoValue("a root of zero has no uncertainty of first order", "this reading is too near to nothing")
    return _found(value, unit, limit, [(slope, x)])


def sqrt(x: Uncertain) -> Uncertain:
    """The square root. Raises NoValue for a negative value.

    >>> sqrt(exact(2.25)).value
    1.5
    """
    return power(x, 0.5)


def exp(x: Uncertain) -> Uncertain:
    """e to the power x, a plain number.

    >>> exp(exact(0.0)).value
    1.0
    """
    plain = _number(x, "exp")
    if plain.value is None:
        return plain
    value = _within(lambda: math.exp(plain.value or 0.0))
    if value == 0.0:
        raise _too_small()
    return _found(value, NUMBER, x.limit, [(value, plain)])


def log(x: Uncertain) -> Uncertain:
    """The natural logarithm of a plain number. Raises NoValue for what isn't above zero.

    >>> log(exact(1.0)).value
    0.0
    """
    plain = _number(x, "log")
    if plain.value is None:
        return plain
    if plain.value <= 0 or _limit_reaches_nothing(plain):
        raise NoValue("a logarithm of a value that isn't above zero", "look at the reading inside log(…)")
    return _found(math.log(plain.value), NUMBER, x.limit, [(1.0 / plain.value, plain)])


def _limit_reaches_nothing(x: Uncertain) -> bool:
    """Whether the limit of what is known from one side only may itself be nothing, by its 95 % interval."""
    return (
        x.limit is not None and x.value is not None and 0.0 < abs(x.value) <= REACH * combined_standard_uncertainty(x)
    )


def _number(x: Uncertain, function: str) -> Uncertain:
    if not alike(x.unit, NUMBER):
        raise UnitError(
            f"{function}(…) takes a plain number, not {named(x.unit)}", "divide by a reference in the same unit first"
        )
    return in_unit(x, NUMBER)


def _found(value: float | None, unit: Unit, limit: Limit | None, terms: Iterable[tuple[float, Uncertain]]) -> Uncertain:
    if value is None:
        return Uncertain(None, unit, {}, limit)
    terms = tuple(terms)
    contributions: Mapping[Source, float] = weighted(terms)
    if not all(map(_holdable, (value, *contributions.values()))):
        raise NoValue("a number too large to hold", "look for a unit that is wrong by many powers of ten")
    if any(x.contributions for _, x in terms):
        largest = max(map(abs, contributions.values()), default=0.0)
        if largest < SMALLEST and (largest or 0.0 < abs(value) < SMALLEST):
            raise _too_small()
    return Uncertain(value, unit, contributions, limit)


def _too_small() -> NoValue:
    return NoValue("a number too small to hold", "look for a unit that is wrong by many powers of ten")


def _holdable(number: float) -> bool:
    """Whether its fourth power, which degrees of freedom ask for (JCGM 100, G.4.1), is a number too."""
    return abs(number) < LARGEST  # false for what is no number


def _within(calculate: Callable[[], float]) -> float:
    try:
        return calculate()
    except OverflowError:
        raise NoValue("a number too large to hold", "look for a unit that is wrong by many powers of ten") from None
