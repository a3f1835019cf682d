"""Conversion factors against NIST SP 811 (2008), Appendix B.8, as printed there, and against Pint."""

import math
from fractions import Fraction

import pytest

from reportgen.metrology.unit import UnitError, convert, parse_unit
from reportgen.metrology.unit_table import SPELLINGS

NIST_B8 = [
    ("lb", "kg", 4.535924e-01), ("oz", "kg", 2.834952e-02), ("gr", "kg", 6.479891e-05), ("lbf", "N", 4.448222),
    ("kgf", "N", 9.80665), ("ozf", "N", 2.780139e-01), ("psi", "Pa", 6.894757e03), ("atm", "Pa", 1.01325e05),
    ("inHg", "Pa", 3.386389e03), ("mmHg", "Pa", 1.333224e02), ("bar", "Pa", 1.0e05), ("hp", "W", 7.456999e02),
    ("PS", "W", 7.354988e02), ("Btu", "J", 1.055056e03), ("cal", "J", 4.184), ("kWh", "J", 3.6e06),
    ("fl oz", "m³", 2.957353e-05), ("cup", "m³", 2.365882e-04), ("pt", "m³", 4.731765e-04),
    ("qt", "m³", 9.463529e-04), ("gal", "m³", 3.785412e-03), ("tbsp", "m³", 1.478676e-05),
    ("tsp", "m³", 4.928922e-06), ("cfm", "m³/s", 4.719474e-04), ("ft", "m", 3.048e-01), ("in", "m", 2.54e-02),
    ("mi", "m", 1.609344e03), ("mph", "m/s", 4.4704e-01), ("kn", "m/s", 5.144444e-01), ("rpm", "rad/s", 1.047198e-01),
    ("lbf·ft", "N·m", 1.355818), ("lb/ft³", "kg/m³", 1.601846e01), ("°", "rad", 1.745329e-02),
]  # fmt: skip


@pytest.mark.parametrize(("from_", "to", "factor"), NIST_B8)
def test_factors_agree_with_nist_to_every_digit_printed(from_: str, to: str, factor: float) -> None:
    half_of_the_last_digit = 0.5 * 10.0 ** (math.floor(math.log10(factor)) - 6)
    assert abs(convert(1.0, parse_unit(from_), parse_unit(to)) - factor) <= half_of_the_last_digit * (1 + 1e-9)


def test_exact_factors_are_exact() -> None:
    # IEEE/ASTM SI 10, exact values
    assert parse_unit("lbf").factor == Fraction("4.4482216152605")
    assert parse_unit("kgf").factor == Fraction("9.80665")
    assert parse_unit("oz").factor == Fraction("0.028349523125")
    assert parse_unit("lb").factor == Fraction("0.45359237")
    assert convert(1.0, parse_unit("Δ°F"), parse_unit("ΔK")) == 5 / 9


@pytest.mark.parametrize(("f", "c"), [(32.0, 0.0), (212.0, 100.0), (-40.0, -40.0), (98.6, 37.0)])
def test_temperatures_keep_their_fixed_points(f: float, c: float) -> None:
    # NIST SP 811, B.8: t/°C = (t/°F − 32)/1.8
    assert convert(f, parse_unit("°F"), parse_unit("°C")) == pytest.approx(c, abs=1e-13)
    assert convert(c, parse_unit("°C"), parse_unit("K")) == pytest.approx(c + 273.15, abs=1e-12)


def test_ninety_degrees_fahrenheit_of_difference_are_fifty_kelvin() -> None:
    # NIST SP 811, B.8: a step of 1 °F is 5/9 K; common practice, no source for the numbers
    assert convert(90.0, parse_unit("Δ°F"), parse_unit("K")) == 50.0
    assert convert(90.0, parse_unit("°F"), parse_unit("°C"), difference=True) == 50.0
    assert convert(90.0, parse_unit("°F"), parse_unit("°C")) == pytest.approx(32.2222, abs=1e-4)


@pytest.mark.parametrize(
    ("kgf", "lbf"), [(16.5, "36.38"), (17.5, "38.58"), (23.5, "51.81")]
)  # common practice, no source: just over 36, about 39, about 52 lbf
def test_pulls_in_kilograms_force_read_as_pounds_force(kgf: float, lbf: str) -> None:
    assert f"{convert(kgf, parse_unit('kgf'), parse_unit('lbf')):.2f}" == lbf


def test_178_grams_are_just_over_six_ounces() -> None:
    # common practice, no source
    assert 6 < convert(178.0, parse_unit("g"), parse_unit("oz")) < 6.3


PINTS_NAMES = {
    "lb": "pound", "oz": "ounce", "gr": "grain", "in": "inch", "d": "day", "h": "hour", "kgf": "force_kilogram",
    "gf": "force_gram", "lbf": "force_pound", "ozf": "force_ounce", "psi": "psi", "atm": "atm", "mmHg": "mmHg",
    "inHg": "inHg", "hp": "horsepower", "PS": "metric_horsepower", "Btu": "Btu_it", "fl oz": "fluid_ounce", "pt": "pint",
    "min": "minute", "kn": "knot", "t": "tonne", "°": "degree", "Ω": "ohm", "%": "percent", "nmi": "nautical_mile",
    "‰": "permille", "cfm": "cubic_foot/minute",
}  # fmt: skip
OWN_IDEA = {
    "frames",
    "points",
    "laps",
    "cycles",
    "pieces",
    "times",
    "ppb",
    "dB",
    "dB(A)",
    "dB(C)",
    "dB(Z)",
}  # Pint has none, or means another thing


def test_every_factor_of_our_table_agrees_with_pint() -> None:
    import pint

    registry = pint.UnitRegistry()
    compared = 0
    for known in set(SPELLINGS.values()):
        if known.symbol in OWN_IDEA or (known.symbol.isupper() and len(known.symbol) == 3):
            continue
        theirs = registry.Quantity(1.0, PINTS_NAMES.get(known.symbol, known.symbol.replace("°C", "delta_degC")
                                                        .replace("°F", "delta_degF"))).to_base_units()  # fmt: skip
        assert float(known.factor) == pytest.approx(theirs.magnitude, rel=2e-7 if "Hg" in known.symbol else 1e-12), (
            known
        )
        if known.symbol not in ("lm", "lx", "°", "turn", "rpm", "rad", "bit", "B", "KiB", "MiB", "GiB"):
            assert sum(abs(power) for _, power in known.dimension) == sum(map(abs, theirs.dimensionality.values())), (
                known
            )
        compared += 1
    assert compared > 60


MISTAKES = [
    ("kg", "N", "kg is a mass, N is a force", "reads kgf"),
    ("lb", "lbf", "a mass", "reads lbf"),
    ("oz", "mL", "a mass", "fl oz"),
    ("W", "Wh", "W is a power, Wh is an energy", ""),
    ("EUR", "USD", "rate of exchange", "constant"),
    ("rpm", "Hz", "speed of rotation", "2π"),
    ("lm", "cd", "luminous flux", ""),
    ("dB(A)", "dB(C)", "weighted differently", "same weighting"),
    ("°C", "Δ°C", "can't become a difference", "subtract"),
    ("s", "", "a time", ""),
]


@pytest.mark.parametrize(("from_", "to", "says", "do"), MISTAKES)
def test_units_that_do_not_go_together_say_why(from_: str, to: str, says: str, do: str) -> None:
    with pytest.raises(UnitError) as refusal:
        convert(1.0, parse_unit(from_), parse_unit(to))
    assert says in refusal.value.says
    assert do in refusal.value.do


def test_torque_times_speed_of_rotation_is_power() -> None:
    # P = M·ω; 1 hp at 5252 rpm is 1 lbf·ft (33 000/2π), common practice, no source
    torque_times_speed = parse_unit("lbf·ft·rpm")
    assert convert(5252.113, torque_times_speed, parse_unit("hp")) == pytest.approx(1.0, rel=1e-6)
