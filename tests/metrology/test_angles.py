"""Sine and cosine of an angle, in every engine: witnesses `uncertainties` and closed forms."""

from __future__ import annotations

import math

import pytest
from uncertainties import ufloat, umath

from reportgen.metrology import (
    FormulaError,
    combined_standard_uncertainty,
    input_quantity,
    output_estimate,
    propagate_distributions,
)
from reportgen.metrology.errors import NoValue
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import parse_unit


@pytest.mark.parametrize("degrees", [-200.0, -90.0, -10.0, 0.5, 37.0, 120.0, 359.0])
@pytest.mark.parametrize("name", ["sin", "cos"])
def test_both_agree_with_a_witness(name: str, degrees: float) -> None:
    found = output_estimate(f"{name}(tilt) * 3", {"tilt": input_quantity(degrees, "°", u=0.7, name="level")})
    x = ufloat(math.radians(degrees), math.radians(0.7))
    expected = 3 * (umath.sin(x) if name == "sin" else umath.cos(x))
    assert found.value == pytest.approx(expected.nominal_value, rel=1e-9, abs=1e-12)
    assert combined_standard_uncertainty(found) == pytest.approx(expected.std_dev, rel=1e-9, abs=1e-12)


def test_degrees_and_radians_are_one_angle() -> None:
    one = output_estimate("sin(a) - sin(b)", {
        "a": input_quantity(30.0, "°", u=1.0, name="level"),
        "b": input_quantity(math.pi / 6, "rad", u=math.pi / 180, name="level"),
    })  # fmt: skip
    assert one.value == pytest.approx(0.0, abs=1e-15)
    assert combined_standard_uncertainty(one) == pytest.approx(0.0, abs=1e-15)


def test_a_wide_angle_is_drawn_as_its_closed_form_says() -> None:
    """E cos X = cos μ·exp(−σ²/2) of a normal X (its characteristic function): 20° known to 15°, normally."""
    found = propagate_distributions("cos(tilt)", {"tilt": input_quantity(20.0, "°", u=15.0, name="level")})
    sigma, mean = math.radians(15.0), math.radians(20.0)
    middle = math.cos(mean) * math.exp(-(sigma**2) / 2)
    square = (1 + math.cos(2 * mean) * math.exp(-2 * sigma**2)) / 2
    assert found.estimate == pytest.approx(middle, abs=0.002)
    assert found.u == pytest.approx(math.sqrt(square - middle**2), abs=0.002)


@pytest.mark.parametrize(("unit", "says"), [("", "not a plain number"), ("mm", "not mm")])
def test_what_is_no_angle_is_told(unit: str, says: str) -> None:
    with pytest.raises(FormulaError, match=says):
        output_estimate("cos(x)", {"x": input_quantity(1.0, unit)})


def test_of_a_bound_nothing_is_known() -> None:
    with pytest.raises(NoValue, match="of a bound"):
        output_estimate("sin(x)", {"x": Uncertain(30.0, parse_unit("°"), {}, "above")})
