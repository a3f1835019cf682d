"""Units as people write them."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.metrology.unit import UnitError, parse_unit

SAME = [
    ("l", "L"), ("litres", "L"), ("ml", "mL"), ("mm/s^2", "mm/s²"), ("mm/s**2", "mm/s²"), ("mm/s2", "mm/s²"),
    ("mm s-2", "mm/s²"), ("m/s/s", "m/s²"), ("J/(kg K)", "J/(kg·K)"), ("fl. oz.", "fl oz"), ("US fl oz", "fl oz"),
    ("floz", "fl oz"), ("deg C", "°C"), ("degC", "°C"), ("degF", "°F"), ("℉", "°F"), ("dBA", "dB(A)"), ("Nm", "N·m"),
    ("N m", "N·m"), ("lbs", "lb"), ("sec", "s"), ("hrs", "h"), ("minutes", "min"), ("km per h", "km/h"), ("€", "EUR"),
    ("μg", "µg"), ("ug", "µg"), ("kilogram / meter ** 3", "kg/m³"), ("cc", "cm³"), ("sq ft", "ft²"), ("pcs", "pieces"),
    ("L/100km", "L/(100 km)"), ("in Hg", "inHg"),
    ("% RH", "%"), ("dB SPL", "dB"), ("in.", "in"), ("US gal", "gal"), ("µS/cm", "µS/cm"), ("kWh", "kWh"), ("EUR/kWh", "EUR/kWh"), (" % ", "%"),
]  # fmt: skip


@pytest.mark.parametrize(("written", "symbol"), SAME)
def test_one_unit_has_one_symbol_however_it_is_written(written: str, symbol: str) -> None:
    assert parse_unit(written).symbol == symbol
    assert parse_unit(symbol) == parse_unit(written)


def test_no_unit_is_a_plain_number() -> None:
    assert parse_unit("").dimension == ()
    assert parse_unit("pieces").dimension == ()


def test_a_unit_of_pints_spelling_alone_is_known_by_pint() -> None:
    assert float(parse_unit("stone").factor) == pytest.approx(6.35029318, rel=1e-12)  # NIST SP 811 has no stone: Pint's
    assert parse_unit("imperial_gallon/hour").dimension == parse_unit("L/s").dimension


def test_degrees_are_points_on_a_scale_alone_and_steps_in_a_product() -> None:
    assert parse_unit("°C").kind == "absolute"
    assert parse_unit("Δ°C").kind == "difference"
    assert parse_unit("J/°C").kind == "plain"
    assert parse_unit("J/°C").offset == 0
    assert parse_unit("dB").kind == "level"


REFUSED = [
    ("litre boiled", "boiled", ""),
    ("J/kg·K", "two ways", "brackets"),
    ("J/kg K", "two ways", "brackets"),
    ("C", "degrees", "°C"),
    ("ton", "three tons", "t for 1000 kg"),
    ("fps", "frames or feet", "frames/s"),
    ("Kg", "Kg", "did you mean kg?"),
    ("KWH", "KWH", "did you mean kWh?"),
    ("MM", "MM", "did you mean mm?"),
    ("secnds", "secnds", "did you mean"),
    ("RH", "RH", ""),  # to Pint, a ronnahenry
    ("mass", "mass", ""),  # to Pint, milliarcseconds
    ("SPL", "SPL", ""),  # to Pint, 20 µPa
    ("pH", "pH is a number", "empty"),
    ("ppm CO", "CO", ""),
    ("dBm", "dBm", ""),  # Pint's logarithm of a power; not a level we can subtract from
    ("$", "money of many countries", "USD"),
    ("m/", "stops", "take the last sign out"),
    ("(m", "never closes", "close it"),
    ("m)", "never opened", "take it out"),
    ("m^99", "power", "12"),
    ("5 m", "an amount", "unit alone"),
    ("5", "number", "units and whole powers alone"),
    ("0 m/s", "number", "plain unit"),
    ("g/(100 m²)", "number", "L/(100 km)"),
    ("m;s", "';'", ""),
    ("__class__", "no unit", ""),
    ("x" * 200, "200 characters", "80"),
    ("(" * 30 + "m" + ")" * 30, "brackets", "fewer"),
]


@pytest.mark.parametrize(("written", "says", "do"), REFUSED)
def test_what_is_no_unit_is_refused_with_what_to_do(written: str, says: str, do: str) -> None:
    with pytest.raises(UnitError) as refusal:
        parse_unit(written)
    assert says in refusal.value.says
    assert do in refusal.value.do


@settings(max_examples=150, derandomize=True)
@given(st.text(alphabet="gmskLNWh°CFKdBA%/·*^()²⁻0123 -._", max_size=12) | st.text(max_size=12))
def test_no_text_at_all_gets_anything_but_a_unit_or_a_unit_error(text: str) -> None:
    try:
        unit = parse_unit(text)
    except UnitError as wrong:
        said = wrong.says and wrong.do
    else:
        assert unit.factor > 0
        assert parse_unit(unit.symbol).factor == unit.factor
        return
    assert said
