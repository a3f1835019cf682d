"""Water in formulas, held against IAPWS-IF97 (as the library iapws works it out) and the air of ISO 2533.

Constants here are those of the demonstration: the mean heat capacity of liquid water between 15 °C and 99.3 °C at 99 kPa,
and the boiling point at 210 m above the sea.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from iapws import IAPWS97

from tests.campaigns import result_of, results_of

CAPACITY, WITHIN = 4.19, 0.01  # J/(g K)
BOILS = 99.3  # °C
HEIGHT = 210.0  # m
RUNS = {
    "corvane": (500.0, 15.0, 99.3),
    "ostler": (1000.0, 15.0, 99.3),
    "tamsin": (750.0, 20.0, 90.0),
    "brindle": (1000.0, 10.0, 60.0),
}
YAML = f"""\
title: Which stove heats water with the least gas?
contenders: {{corvane: Corvane Sol, ostler: Ostler Mk II, tamsin: Tamsin, brindle: Brindle}}
constants:
  heat capacity of water:
    value: {CAPACITY} J/(g K)
    within: {WITHIN} J/(g K)
    source: IAPWS-IF97, mean between 15 °C and 99.3 °C at 99 kPa
tests: [heat]
"""
HEAT = """\
title: Heat into the water
readings:
  file: readings.csv
  columns: {mass: "water, g, scale", start: "start, °C, probe", end: "end, °C, probe"}
quantities:
  heat: {formula: mass * heat_capacity_of_water * (end - start), unit: kJ, better: higher}
"""
# A scale and a thermometer of which the step alone is known: what is left of the uncertainty is that of the constant
EXACT = {"instruments.yaml": "scale: 0.1 g, accuracy unknown\nprobe: 0.1 °C, accuracy unknown\n"}


def pressure(height: float) -> float:
    """Pa, ISO 2533:1975, 2.7: p = p0·(1 − βH/T0)^(g/(βR)) in the layer below 11 km; its constants, table 1."""
    p0, t0, beta, g, r = 101325.0, 288.15, 0.0065, 9.80665, 287.05287
    return p0 * float((1 - beta * height / t0) ** (g / (beta * r)))


def enthalpy(celsius: float) -> float:
    """kJ/kg, which are J/g, of liquid water at the pressure of 210 m."""
    return float(IAPWS97(T=celsius + 273.15, P=pressure(HEIGHT) / 1e6).h)


def test_the_formula_for_pressure_meets_the_table_of_the_standard() -> None:
    """ISO 2533, table 5: 954.61 hPa at 500 m and 898.75 hPa at 1000 m (from memory)."""
    assert pressure(0) == 101325
    assert pressure(500) == pytest.approx(95461, abs=1)
    assert pressure(1000) == pytest.approx(89875, abs=1)


def test_water_boils_at_99_3_degrees_210_m_above_the_sea() -> None:
    assert pressure(HEIGHT) == pytest.approx(98.8e3, abs=50)
    assert pytest.approx(BOILS, abs=0.05) == IAPWS97(P=pressure(HEIGHT) / 1e6, x=0).T - 273.15


def test_heat_worked_out_with_a_constant_capacity_is_the_difference_of_enthalpies(tmp_path: Path) -> None:
    """Each run's heat agrees with the steam tables within what the constant's own width allows, and says that width."""
    rows = "".join(f"{who},{mass},{start},{end}\n" for who, (mass, start, end) in RUNS.items())
    told = results_of(
        tmp_path, YAML, readings="contender,water,start,end\n" + rows, **{"tests/heat.yaml": HEAT, **EXACT}
    )
    for who, (mass, start, end) in RUNS.items():
        found = result_of(told, "heat", who)
        assert found["unit"] == "kJ"
        tables = mass * (enthalpy(min(end, 99.2)) - enthalpy(start)) / 1000  # 99.3 °C is at the point of boiling
        tables += mass * CAPACITY * (end - min(end, 99.2)) / 1000
        assert found["value"] == pytest.approx(tables, rel=WITHIN / CAPACITY)
        own = mass * (end - start) * WITHIN / 1000 / math.sqrt(3)  # uniform: JCGM 100, 4.3.7
        (constant,) = [b for b in found["budget"] if b["of"] == "heat-capacity-of-water"]
        assert constant["size"] == pytest.approx(own, rel=1e-9)


def test_a_mean_capacity_is_no_capacity_near_boiling() -> None:
    """Why the source names both temperatures: between 85 °C and boiling the constant is too low by more than its width."""
    assert (enthalpy(99.2) - enthalpy(85)) / 14.2 > CAPACITY + WITHIN
    assert (enthalpy(99.2) - enthalpy(15)) / 84.2 == pytest.approx(CAPACITY, abs=WITHIN)
