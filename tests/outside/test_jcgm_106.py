"""Conformity with tolerance limits: worked examples of JCGM 106:2012, put through compiled campaigns.

The examples are from memory: breakdown voltage of a Zener diode, bursting strength of a container, viscosity of an oil.
Instruments have a normal error with the standard uncertainty of the example, and steps too fine to matter.
"""

from __future__ import annotations

from pathlib import Path
from statistics import NormalDist
from typing import Any

import pytest

from tests.campaigns import results_of

YAML = """\
title: Conformity
contenders:
  one: {title: One, claims: [{says: as specified, quantity: q, CLAIM}]}
  other: Other
measure: {q: {kind: one reading, unit: UNIT, better: lower, instrument: meter}}
readings: readings.csv
"""
METER = "meter: {resolution: STEP UNIT, calibration: {correction: 0 UNIT, u: ERROR UNIT}}\n"


def held(place: Path, claim: str, value: float, u: float, unit: str) -> dict[str, Any]:
    """The claim's row where one reading has the value and the standard uncertainty."""
    step = f"{u / 1000:.7f}".rstrip("0")
    told = results_of(
        place,
        YAML.replace("CLAIM", claim).replace("UNIT", unit),
        readings=f"contender,q\none,{value}\nother,{value}\n",
        **{"instruments.yaml": METER.replace("STEP", step).replace("UNIT", unit).replace("ERROR", f"{u}")},
    )
    (row,) = told["claims"]
    assert isinstance(row, dict)
    assert row["scope"] == "this run"
    return row


def test_breakdown_voltage_of_a_diode_under_one_upper_limit(tmp_path: Path) -> None:
    """JCGM 106:2012, 7.3 (from memory): y = −5.47 V, u = 0.05 V, at most −5.40 V: p_c = Φ(1.40) = 92 %."""
    row = held(tmp_path, "at most: -5.40 V", -5.47, 0.05, "V")
    assert row["probability"] == pytest.approx(0.92, abs=0.005)
    assert row["outcome"] == "undecided"


def test_bursting_strength_of_a_container_over_one_lower_limit(tmp_path: Path) -> None:
    """JCGM 106:2012, 7.3 (from memory): y = 509.7 kPa, u = 8.6 kPa, at least 490 kPa: p_c = 99 %."""
    row = held(tmp_path, "at least: 490 kPa", 509.7, 8.6, "kPa")
    assert row["probability"] == pytest.approx(0.99, abs=0.005)
    assert row["outcome"] == "supported"


def test_viscosity_of_an_oil_within_two_limits(tmp_path: Path) -> None:
    """JCGM 106:2012, 7.4 (from memory): y = 13.6 mm²/s, u = 1.8 mm²/s, within 12.5 and 16.3: p_c = 66 %."""
    row = held(tmp_path, "at least: 12.5 mm²/s, at most: 16.3 mm²/s", 13.6, 1.8, "mm²/s")
    assert row["probability"] == pytest.approx(0.66, abs=0.005)
    assert row["accept"] is None  # 3.8 wide: not even its middle would conform with 95 %


def test_a_guard_band_of_the_expanded_uncertainty_leaves_at_most_2_3_percent(tmp_path: Path) -> None:
    """JCGM 106:2012, 8.3.2 (from memory): with w = U = 2u and a normal error the probability of a false acceptance is no
    more than 2.3 %; here of a value that lies at the acceptance limit itself."""
    row = held(tmp_path, "at most: 10 g", 10.0 - 2 * 0.1, 0.1, "g")
    assert 1 - row["probability"] == pytest.approx(0.023, abs=0.0005)


def test_the_acceptance_limit_for_95_percent_lies_1_645_u_inside(tmp_path: Path) -> None:
    """JCGM 106:2012, 8.3 and the quantile of the normal curve: w = 1.645 u. A value there has p_c = 95 %."""
    row = held(tmp_path / "a", "at most: 10 g", 9.9, 0.1, "g")
    assert row["accept"] == [None, pytest.approx(10 - NormalDist().inv_cdf(0.95) * 0.1, abs=2e-4)]
    at = row["accept"][1]
    assert held(tmp_path / "b", "at most: 10 g", round(at - 1e-3, 4), 0.1, "g")["outcome"] == "supported"
    assert held(tmp_path / "c", "at most: 10 g", round(at + 1e-3, 4), 0.1, "g")["outcome"] == "undecided"
