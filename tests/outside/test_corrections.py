"""Results put right for where and how they were measured: altitude, efficiency from heat and fuel.

Water from IAPWS-IF97 (the library iapws), air from ISO 2533 (the library ambiance); propagation held against the library
uncertainties. The handbook's worked correction is read from its page.
"""

from __future__ import annotations

import math
import re
from pathlib import Path
from typing import Any

import pytest
from ambiance import Atmosphere
from iapws import IAPWS97
from uncertainties import ufloat, umath

from tests.campaigns import result_of, results_of
from tests.outside.test_water import pressure

HANDBOOK = Path(__file__).parents[2] / "content/handbook/kinds-and-formulas.md"
PLACES = {"shore": 0.0, "hill": 480.0, "pass": 1210.0, "hut": 1930.0}


def boils(kilopascals: float) -> float:
    """°C, by IAPWS-IF97."""
    return float(IAPWS97(P=kilopascals / 1000, x=0).T) - 273.15


@pytest.mark.parametrize("height", PLACES.values())
def test_the_pressure_of_the_standard_atmosphere_is_that_of_another_library(height: float) -> None:
    """Ours takes a geopotential height, that library a geometric one: H = r·h/(r + h), r = 6 356 766 m (ISO 2533, 2.3)."""
    geometric = 6356766 * height / (6356766 - height)
    assert pressure(height) == pytest.approx(float(Atmosphere(geometric).pressure[0]), rel=1e-6)


def first_order(found: dict[str, Any]) -> float:
    """The combined uncertainty of the budget, whether or not draws say that it leaves out a little."""
    return math.hypot(*(line["size"] for line in found["budget"]))


def example() -> dict[str, str]:
    """The files of the handbook's worked correction."""
    section = HANDBOOK.read_text(encoding="utf-8").split("## A correction with a constant that isn't exact")[1]
    return dict(re.findall(r"^```\w+ (\S+)\n(.*?)^```$", section, re.M | re.S)[:4])


def test_the_handbook_s_boiling_point_is_that_of_the_steam_tables_within_its_uncertainty(tmp_path: Path) -> None:
    """At the pressures of ISO 2533 from the shore to 1930 m, each boiling point lies inside its own interval."""
    files = example()
    rows = "place,air,start,gas before,gas after\n".replace("place", "contender")
    contenders = "".join(f"  {place}: At {place}\n" for place in PLACES)
    yaml = re.sub(r"contenders:\n(  .*\n)+", f"contenders:\n{contenders}", files["campaign.yaml"])
    for n, (place, height) in enumerate(PLACES.items()):
        rows += f"{place},{pressure(height) / 100:.1f},15.0,{230.1 + n},{215.2 + n}\n"
    told = results_of(
        tmp_path,
        yaml,
        **{"readings": rows, **{n: t for n, t in files.items() if n not in ("campaign.yaml", "readings.csv")}},
    )
    for place, height in PLACES.items():
        found = result_of(told, "boiling-point", place)
        assert found["low"] <= boils(pressure(height) / 1000) <= found["high"]
        assert found["high"] - found["low"] < 1.0  # °C: narrow enough to mean something


def test_the_handbook_s_correction_is_the_ratio_of_the_rises(tmp_path: Path) -> None:
    """Gas for the rise to the boil where it was burned, put on the rise to the boil at the sea: with u by uncertainties."""
    files = example()
    told = results_of(tmp_path, files["campaign.yaml"], **{k: v for k, v in files.items() if k != "campaign.yaml"})
    air = {"corvane": 948.3, "ostler": 948.1}
    sea, fold = ufloat(99.97, 0.01 / math.sqrt(3)), ufloat(27.7, 0.3 / math.sqrt(3))
    standard = 1013.25
    scale, barometer, probe = 0.3 / math.sqrt(3), 1 / math.sqrt(3), 1.0 / math.sqrt(3)
    for who, (before, after, start) in {"corvane": (231.4, 217.1, 15.2), "ostler": (240.2, 223.9, 14.8)}.items():
        offset = ufloat(0, scale)
        burned = (ufloat(before, 0.1 / math.sqrt(12)) + offset) - (ufloat(after, 0.1 / math.sqrt(12)) + offset)
        read = ufloat(air[who], math.hypot(barometer, 0.1 / math.sqrt(12)))
        begun = ufloat(start, math.hypot(probe, 0.1 / math.sqrt(12)))
        boiling = sea + fold * umath.log(read / standard)
        expected = burned * (sea - begun) / (boiling - begun)
        found = result_of(told, "gas-at-sea-level", who)
        assert found["value"] == pytest.approx(expected.nominal_value, rel=1e-9)
        assert first_order(found) == pytest.approx(expected.std_dev, rel=1e-6)


def test_thermal_efficiency_of_the_water_boiling_test(tmp_path: Path) -> None:
    """Water Boiling Test 4.2.3 (from memory): h = (m·c·ΔT + m_evaporated·L)/(fuel·LHV), c = 4.186 J/(g K), L = 2260 J/g.

    Value by hand, u by the library uncertainties; the readings are invented.
    """
    yaml = """\
title: T
who pays: Readers.
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
constants:
  heat capacity: {value: 4.186 J/(g K), within: 0.01 J/(g K), source: Water Boiling Test 4.2.3}
  heat of vaporisation: {value: 2260 J/g, within: 10 J/g, source: Water Boiling Test 4.2.3}
  lower heating value: {value: 18.7 kJ/g, u: 0.2 kJ/g, source: of the fuel}
tests: [boil]
"""
    boil = """\
title: Boil
readings:
  file: readings.csv
  columns:
    water: water, g, scale
    left: left, g, scale
    start: start, °C, probe
    end: end, °C, probe
    fuel: fuel, g, scale
quantities:
  efficiency:
    formula: (water * heat_capacity * (end - start) + (water - left) * heat_of_vaporisation) / (fuel * lower_heating_value)
    unit: "%"
    better: higher
"""
    rows = "contender,water,left,start,end,fuel\ncorvane,2501,2387,21.3,97.1,311\nostler,2499,2402,20.9,97.2,288\n"
    instruments = {"instruments.yaml": "scale: 1 g, accuracy ±2 g\nprobe: 0.1 °C, accuracy ±0.5 °C\n"}
    told = results_of(tmp_path, yaml, readings=rows, **{"tests/boil.yaml": boil, **instruments})
    step, zero, offset = 1 / math.sqrt(12), ufloat(0, 2 / math.sqrt(3)), ufloat(0, 0.5 / math.sqrt(3))
    water, left, fuel = (ufloat(x, step) + zero for x in (2501, 2387, 311))
    start, end = (ufloat(x, 0.1 / math.sqrt(12)) + offset for x in (21.3, 97.1))
    capacity, vapour = ufloat(4.186, 0.01 / math.sqrt(3)), ufloat(2260, 10 / math.sqrt(3))
    value = ufloat(18.7, 0.2) * 1000
    expected = 100 * (water * capacity * (end - start) + (water - left) * vapour) / (fuel * value)
    found = result_of(told, "efficiency", "corvane")
    assert found["value"] == pytest.approx(expected.nominal_value, rel=1e-12)
    assert first_order(found) == pytest.approx(expected.std_dev, rel=1e-9)
