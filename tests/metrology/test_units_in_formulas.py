"""Temperatures, levels, forces and money through a formula."""

import pytest

from reportgen.metrology.arithmetic import add, divide, in_unit, multiply, negate, power, subtract
from reportgen.metrology.combine import mean_of, sum_of
from reportgen.metrology.errors import UnitError
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.uncertain import Uncertain, combined_standard_uncertainty
from reportgen.metrology.unit import parse_unit
from tests.metrology.formula_bench import Bench, value


def test_two_temperatures_leave_a_difference_that_is_only_scaled() -> None:
    # NIST SP 811, B.8: 1 °F of difference is 5/9 K
    rise = subtract(value(162.0, "°F", meter=0.9), value(72.0, "°F"))
    assert (rise.value, rise.unit.kind) == (90.0, "difference")
    for unit in ("K", "ΔK", "°C", "Δ°C"):
        found = in_unit(rise, parse_unit(unit))
        assert found.value == 50.0
        assert combined_standard_uncertainty(found) == pytest.approx(0.5)
        assert found.unit.kind == "difference"


def test_a_difference_kept_in_degrees_still_heats_and_still_scales() -> None:
    # c_p of water 4.184 kJ/(kg·K): the thermochemical calorie, NIST SP 811
    rise = in_unit(subtract(value(100.0, "°C"), value(20.0, "°C")), parse_unit("°C"))
    heat = multiply(multiply(value(1.0, "kg"), value(4.184, "kJ/(kg·K)")), rise)
    assert in_unit(heat, parse_unit("kJ")).value == pytest.approx(4.184 * 80, rel=1e-15)
    assert in_unit(rise, parse_unit("°F")).value == 144.0


def test_a_temperature_and_a_difference_make_a_temperature() -> None:
    warmer = add(value(20.0, "°C", meter=0.5), value(18.0, "Δ°F"))
    assert (warmer.value, warmer.unit.kind, warmer.unit.symbol) == (30.0, "absolute", "°C")
    assert subtract(value(20.0, "°C"), value(18.0, "Δ°F")).value == 10.0
    assert add(value(10.0, "ΔK"), value(20.0, "°C")).value == 30.0


def test_a_mean_of_temperatures_is_a_temperature() -> None:
    middle = mean_of([value(20.0, "°C"), value(86.0, "°F")])
    assert middle.value == pytest.approx(25.0, rel=1e-15)
    assert middle.unit.kind == "absolute"


REFUSED = [
    (add, "20 °C", "30 °C", "can't be added"),
    (multiply, "20 °C", "2", "zero is only a mark"),
    (divide, "20 °C", "30 °C", "zero is only a mark"),
    (subtract, "20 °C", "5 K", "could be a temperature or a difference"),
    (add, "5 Δ°C", "20 K", "could be a temperature or a difference"),
    (add, "300 K", "5 Δ°C", "could be a temperature or a difference"),
    (subtract, "300 K", "5 ΔK", "could be a temperature or a difference"),
    (subtract, "5 Δ°C", "20 °C", "can't be taken from a difference"),
    (subtract, "5 Δ°C", "20 K", "can't be taken from a difference"),
    (add, "90 dB", "80 dB", "two levels"),
    (multiply, "90 dB", "2", "a level in dB can't be multiplied"),
    (subtract, "90 dB(A)", "80 dB(C)", "weighted differently"),
    (subtract, "3 EUR", "2 USD", "rate of exchange"),
    (add, "3 kg", "2 N", "a mass"),
]


@pytest.mark.parametrize(("operation", "one", "other", "says"), REFUSED)
def test_sums_and_products_without_a_meaning_are_refused(operation, one, other, says) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(UnitError) as refusal:
        operation(*(_typed(text) for text in (one, other)))
    assert says in refusal.value.says
    assert refusal.value.do


def _typed(text: str) -> Uncertain:
    number, _, unit = text.partition(" ")
    return value(float(number), unit)


def test_kelvin_has_a_true_zero_and_may_be_multiplied() -> None:
    doubled = multiply(value(150.0, "K"), value(2.0))
    assert in_unit(doubled, parse_unit("°C")).value == pytest.approx(26.85, abs=1e-12)
    assert divide(value(300.0, "K"), value(150.0, "K")).value == 2.0


def test_two_levels_leave_decibels_without_weighting() -> None:
    quieter = subtract(value(71.2, "dB(A)", meter=1.5), value(69.5, "dB(A)", meter=1.5))
    assert quieter.value == pytest.approx(1.7)
    assert (quieter.unit.symbol, quieter.unit.kind) == ("dB", "difference")
    assert combined_standard_uncertainty(quieter) == 0.0
    assert in_unit(quieter, parse_unit("dB")).unit.kind == "difference"
    assert add(value(70.0, "dB(A)"), quieter).unit == parse_unit("dB(A)")


def test_units_cancel_by_name_and_scale_by_factor() -> None:
    bench = Bench(
        burned=value(14.3, "g"), heating=value(46.1, "kJ/g"), time=value(3.5, "min"), price=value(0.026, "EUR/g")
    )
    heat = evaluate(parse("burned * heating"), bench)
    assert heat.unit == parse_unit("kJ")
    power_ = in_unit(evaluate(parse("burned * heating / time"), bench), parse_unit("W"))
    assert power_.value == pytest.approx(14.3 * 46.1 * 1000 / 210, rel=1e-14)
    assert evaluate(parse("burned * price"), bench).unit.symbol == "EUR"
    share = in_unit(divide(value(1.0, "g"), value(1.0, "kg")), parse_unit("%"))
    assert share.value == 0.1
    assert divide(value(1.0), value(2.0, "min")).unit.symbol == "1/min"
    assert multiply(value(2.0, "fl oz"), value(3.0, "1/min")).unit == parse_unit("fl oz/min")


def test_powers_and_roots_take_the_unit_along() -> None:
    assert power(value(3.0, "cm"), 2).unit == parse_unit("cm²")
    assert power(power(value(3.0, "cm"), 3), 1 / 3).unit.symbol == "cm"
    root = power(value(4.0, "m/s²"), 0.5)
    assert power(root, 2).unit == parse_unit("m/s²")
    assert power(value(7.0, "L/100km"), 2).unit == parse_unit("L²/(100 km)²")
    assert power(value(50.0, "%"), 2).value == 0.25  # a percentage is a number before it is squared


def test_minus_keeps_a_difference_and_refuses_a_scale() -> None:
    assert negate(value(5.0, "Δ°C")).unit.kind == "difference"
    with pytest.raises(UnitError):
        negate(value(5.0, "°C"))


def test_a_sum_is_in_the_unit_of_its_first_part() -> None:
    whole = sum_of([value(1.0, "kg", a=0.001), value(250.0, "g", b=2.0)])
    assert (whole.value, whole.unit.symbol) == (1.25, "kg")
    assert combined_standard_uncertainty(whole) == pytest.approx((0.001**2 + 0.002**2) ** 0.5, rel=1e-14)
