"""The GUM's examples with several parameters at once and with groups: H.2, H.3 and H.5.

Source of everything expected: JCGM 100:2008, annex H, the clause or table beside each check. The observations of tables
H.2, H.6 and H.9 were typed from memory; what is worked out from them meets the tables' other columns.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from decimal import Decimal
from importlib.resources import files
from pathlib import Path

import pytest

from reportgen.metrology import (
    Uncertain,
    combined_standard_uncertainty,
    correlation_coefficient,
    covariance,
    divide,
    fit,
    from_simultaneous_observations,
    in_unit,
    nested,
    parse_unit,
)
from tests.campaigns import result_of, results_of

# table H.2: five simultaneous sets
VOLTS = [5.007, 4.994, 5.005, 4.990, 4.999]
MILLIAMPERES = [19.663, 19.639, 19.640, 19.685, 19.678]
RADIANS = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]
V, CURRENT, PHI = from_simultaneous_observations([VOLTS, MILLIAMPERES, RADIANS], ["V", "mA", "rad"], name="bridge")
u, r = combined_standard_uncertainty, correlation_coefficient


def test_means_of_simultaneous_observations_carry_their_correlation() -> None:
    """Table H.2: means, their standard uncertainties, and the correlation coefficients of the means."""
    assert [f"{x.value:.{d}f}" for x, d in ((V, 4), (CURRENT, 4), (PHI, 5))] == ["4.9990", "19.6610", "1.04446"]
    assert [f"{u(x):.{d}f}" for x, d in ((V, 4), (CURRENT, 4), (PHI, 5))] == ["0.0032", "0.0095", "0.00075"]
    assert [f"{x:.2f}" for x in (r(V, CURRENT), r(V, PHI), r(CURRENT, PHI))] == ["-0.36", "0.86", "-0.65"]
    assert {s.degrees for x in (V, CURRENT, PHI) for s in x.contributions} == {4}


def straight(value: float, *terms: tuple[float, Uncertain]) -> Uncertain:
    """A value in ohms with its derivatives by V (in V), I (in A) and φ: H.2.3, equation 16 of 5.2.2."""
    sources = {s for _, x in terms for s in x.contributions}
    return Uncertain(value, parse_unit("Ω"), {
        s: math.fsum(c * x.contributions.get(s, 0.0) for c, x in terms) for s in sources
    })  # fmt: skip


def test_resistance_reactance_and_impedance_come_out_together() -> None:
    """Table H.3 (and H.4 by the other way): values, uncertainties and their correlations."""
    amperes = in_unit(CURRENT, parse_unit("A"))
    v, i, phi = V.value or 0.0, amperes.value or 0.0, PHI.value or 0.0
    z = v / i
    resistance = straight(
        z * math.cos(phi), (math.cos(phi) / i, V), (-z * math.cos(phi) / i, amperes), (-z * math.sin(phi), PHI)
    )
    reactance = straight(
        z * math.sin(phi), (math.sin(phi) / i, V), (-z * math.sin(phi) / i, amperes), (z * math.cos(phi), PHI)
    )
    impedance = in_unit(divide(V, CURRENT), parse_unit("Ω"))
    found = (resistance, reactance, impedance)
    assert [f"{x.value:.3f}" for x in found] == ["127.732", "219.847", "254.260"]
    # the table's 0.295 was worked out from means already rounded, and the observations give 0.2956
    assert [u(x) for x in found] == pytest.approx([0.071, 0.295, 0.236], abs=0.001)
    pairs = ((resistance, reactance), (resistance, impedance), (reactance, impedance))
    assert [f"{r(a, b):.3f}" for a, b in pairs] == ["-0.588", "-0.485", "0.993"]


IMPEDANCE = """\
title: Resistance, reactance and impedance of one element
contenders:
  element: The element
instruments:
  bridge: {accuracy: unknown}
tests: [bridge]
"""
BRIDGE = """\
title: Bridge
readings:
  file: sets.csv
  columns: {voltage: "voltage, V, bridge", current: "current, mA, bridge", phase: "phase, rad, bridge"}
quantities:
  resistance: {formula: voltage / current * cos(phase), unit: Ω}
  reactance: {formula: voltage / current * sin(phase), unit: Ω}
  impedance: {formula: voltage / current, unit: Ω}
headline: impedance
"""


def test_all_three_come_out_of_a_campaign(tmp_path: Path) -> None:
    """Table H.4, H.2.4: each of the five sets gives values of its own, and correlation is taken in by that."""
    sets = enumerate(zip(VOLTS, MILLIAMPERES, RADIANS, strict=True), 1)
    rows = "".join(f"element,{n},{v:.3f},{i:.3f},{phi:.4f}\n" for n, (v, i, phi) in sets)
    told = results_of(
        tmp_path, IMPEDANCE,
        **{"tests/bridge.yaml": BRIDGE, "sets.csv": "contender,pass,voltage,current,phase\n" + rows},
    )  # fmt: skip
    found = [result_of(told, quantity, "element") for quantity in ("resistance", "reactance", "impedance")]
    assert [f"{x['value']:.3f}" for x in found] == ["127.732", "219.847", "254.260"]
    assert [f"{x['u']:.3f}" for x in found] == ["0.071", "0.295", "0.236"]
    assert {x["effective_degrees"] for x in found} == {4}


# table H.6: eleven readings of a thermometer and the corrections observed there
TEMPERATURES = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511]
CORRECTIONS = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160]


def test_the_line_of_a_thermometer() -> None:
    """H.3.3 and H.3.4: y₁, y₂, their uncertainties and correlation, s, and the correction at 30 °C."""
    found = fit.line([t - 20 for t in TEMPERATURES], CORRECTIONS, "Δ°C", "Δ°C", name="thermometer")
    assert (f"{found.intercept.value:.4f}", f"{u(found.intercept):.4f}") == ("-0.1712", "0.0029")
    assert (f"{found.slope.value:.5f}", f"{u(found.slope):.5f}") == ("0.00218", "0.00067")
    assert f"{r(found.intercept, found.slope):.3f}" == "-0.930"
    assert (f"{found.residual_sd:.4f}", found.degrees) == ("0.0035", 9)
    assert f"{covariance(found.intercept, found.slope):.1e}" == "-1.8e-06"  # −0.930·0.0029·0.00067
    at_30 = found.at(10.0)
    assert (f"{at_30.value:.4f}", f"{u(at_30):.4f}") == ("-0.1494", "0.0041")


def test_the_line_about_the_middle_of_the_points_has_parts_that_go_apart() -> None:
    """H.3.5: with t₀ the mean temperature, 24.0085 °C, the correlation is nought; y₁ −0.1625 (u 0.0011)."""
    middle = math.fsum(TEMPERATURES) / len(TEMPERATURES)
    found = fit.line([t - middle for t in TEMPERATURES], CORRECTIONS, name="thermometer")
    assert f"{middle:.4f}" == "24.0085"
    assert (f"{found.intercept.value:.4f}", f"{u(found.intercept):.4f}") == ("-0.1625", "0.0011")
    assert r(found.intercept, found.slope) == pytest.approx(0.0, abs=1e-12)


# table H.9 (through a campaign: tests/products/test_contenders.py): means of five readings on each of ten days, µV above 10 V, and the scatter within each day
DAY_MEANS = [172, 116, 13, 144, 106, 31, 60, 125, 163, 41]
DAY_SDS = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86]
OFF = [-2, -1, 0, 1, 2]  # five readings of a day, made so that their mean and scatter are the day's


def days() -> list[list[float]]:
    return [
        [mean + sd * off / math.sqrt(2.5) for off in OFF] for mean, sd in zip(DAY_MEANS, DAY_SDS, strict=True)
    ]  # Σoff²/4 = 2.5


def test_days_with_readings_within() -> None:
    """H.5.2.1 to H.5.2.5: the two estimates of the variance, their ratio, and the day's own part."""
    found = nested(days())
    assert (f"{found.mean:.0f}", f"{found.sd_of_means:.0f}", f"{found.u:.0f}") == ("97", "57", "18")
    assert (found.degrees, found.degrees_within) == (9, 40)
    assert (f"{found.s_between:.0f}", f"{found.s_within:.0f}") == ("128", "85")
    assert found.f == pytest.approx(2.25, abs=0.02)  # (128/85)²; 57 and 85 are printed to half a unit
    assert f"{found.between:.0f}" == "43"


def of_file(name: str) -> tuple[list[list[str]], Callable[[str], list[str]]]:
    lines = (files("scipy") / "stats/tests/data/nist_anova" / name).read_text().splitlines()
    groups: dict[str, list[str]] = {}
    for line in lines[60:]:
        if line.strip():
            group, value = line.split()
            groups.setdefault(group, []).append(value)
    return list(groups.values()), lambda begins: next(line.split() for line in lines if line.startswith(begins))


@pytest.mark.parametrize("name", ["AtmWtAg", "SiRstv", "SmLs01", "SmLs04", "SmLs07"])
def test_the_ratio_of_two_scatters_has_the_digits_that_nist_certifies(name: str) -> None:
    """NIST StRD, one-way analysis of variance: F and both mean squares; the SmLs sets lose all digits in plain sums."""
    groups, row = of_file(f"{name}.dat")
    found = nested([[Decimal(value) for value in group] for group in groups])
    square, f = map(float, row("Between")[-2:])
    assert found.f == pytest.approx(f, rel=2e-14)
    assert found.s_between**2 == pytest.approx(square, rel=2e-14)
    assert found.s_within is not None
    assert found.s_within**2 == pytest.approx(float(row("Within")[-1]), rel=2e-14)
