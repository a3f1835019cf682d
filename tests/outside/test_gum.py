"""The GUM's own examples, through compiled campaigns wherever one can hold them; else on the library alone.

Source of everything expected here: JCGM 100:2008, the clause beside each check; "from memory" where a figure was recalled.
Readings that the GUM doesn't print are made so that their mean and scatter are what it does print; they are never expected.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from reportgen.metrology import (
    Source,
    Uncertain,
    combined_standard_uncertainty,
    correlation_coefficient,
    coverage_factor,
    effective_degrees_of_freedom,
    expanded_uncertainty,
    from_limits,
    from_observations,
    input_quantity,
    output_estimate,
    parse_unit,
    propagate_distributions,
    sensitivity_coefficients,
    sum_of,
    type_a,
    type_b,
    uncertainty_budget,
    welch_satterthwaite,
)
from tests.campaigns import result_of, results_of

END_GAUGE = """\
title: The length of an end gauge
contenders:
  gauge: The gauge
constants:
  l s: {value: 50000623 nm, uncertainty: 75 nm, k: 3, degrees: 18, source: "H.1.3.1: certificate, 0.075 µm at three standard deviations"}
  random: {value: 0 nm, u: 3.9 nm, degrees: 5, source: "H.1.3.2: 0.01 µm at 95 %, six replicates"}
  systematic: {value: 0 nm, uncertainty: 20 nm, k: 3, degrees: 8, source: "H.1.3.2: 0.02 µm at the three-sigma level, reliable to 25 %"}
  alpha s: {value: 11.5 ppm/K, within: 2 ppm/K, source: H.1.3.3}
  theta: {value: -0.1 ΔK, u: 0.41 ΔK, source: H.1.3.4}
  d alpha: {value: 0 ppm/K, within: 1 ppm/K, degrees: 50, source: "H.1.3.5, reliable to 10 %"}
  d theta: {value: 0 ΔK, within: 0.05 ΔK, degrees: 2, source: "H.1.3.6, reliable to 50 %"}
measure:
  d:
    kind: one reading
    unit: nm
    method: as-said
  length:
    formula: l_s + d + random + systematic - l_s * (d_alpha * theta + alpha_s * d_theta)
    unit: nm
    method: as-said
readings: readings.csv
"""
POOLED_13_NM = """\
title: Five comparisons
repeatability:
  passes: 25
  products: 1
  source: "H.1.3.2: 13 nm from 25 earlier comparisons"
  d: 13 nm
  length: 13 nm
"""
# mean 215 nm as in H.1.5, scatter 13 nm as the pooled one of H.1.3.2
COMPARISONS = "contender,pass,d\ngauge,1,198\ngauge,2,207\ngauge,3,216\ngauge,4,223\ngauge,5,231\n"


def test_the_end_gauge_comes_out_of_a_campaign_with_its_budget(tmp_path: Path) -> None:
    told = results_of(tmp_path, END_GAUGE, readings=COMPARISONS, **{"methods/as-said.1.yaml": POOLED_13_NM})
    length = result_of(told, "length", "gauge")
    assert f"{length['value']:.0f}" == "50000838"  # H.1.5: 50.000 838 mm
    sizes = {line["of"]: abs(line["size"]) for line in length["budget"]}
    assert f"{math.hypot(*sizes.values()):.0f}" == "32"  # H.1.4: 32 nm
    assert f"{length['u']:.0f}" == "32"  # H.1.4, and so adds up by hand
    assert f"{length['draws']['u']:.0f}" == "34"  # H.1.7: with the terms of next higher order, which draws take in
    assert (length["draws"]["used"], length["draws"]["u_used"]) == (True, False)
    # table H.1; the sensitivity to θ and to α_s is nought to first order
    assert {name: float(f"{size:.1f}") for name, size in sizes.items()} == {
        "l-s": 25.0, "passes": 5.8, "random": 3.9, "systematic": 6.7, "d-alpha": 2.9, "d-theta": 16.6,
    }  # fmt: skip
    assert length["effective_degrees"] == 16  # H.1.6
    degrees = {line["of"]: line["degrees"] for line in length["budget"]}
    assert degrees["d-theta"] == type_b.degrees_from_reliability(0.5)  # G.4.2: 50 % is 2, and so on
    assert degrees["systematic"] == type_b.degrees_from_reliability(0.25)
    assert degrees["d-alpha"] == pytest.approx(type_b.degrees_from_reliability(0.1))


INPUTS = {
    "l_s": input_quantity(50_000_623, "nm", type_b.from_expanded(75, k=3, degrees=18), name="standard"),
    "d": input_quantity(215, "nm", name="d", u={
        "repeats": type_b.normal(13 / math.sqrt(5), degrees=24),
        "random": type_b.from_interval(10, 0.95, degrees=5),
        "systematic": type_b.from_expanded(20, k=3, degrees=8),
    }),
    "alpha_s": input_quantity(11.5e-6, "1/K", type_b.rectangular(2e-6), name="expansion"),
    "theta": input_quantity(-0.1, "ΔK", {"mean": 0.2, "cycle": type_b.arcsine(0.5)}, name="temperature"),
    "d_alpha": input_quantity(0, "1/K", type_b.rectangular(1e-6, degrees=50), name="difference of expansion"),
    "d_theta": input_quantity(0, "ΔK", type_b.rectangular(0.05, degrees=2), name="difference of temperature"),
}  # fmt: skip
LENGTH = "l_s + d - l_s * (d_alpha * theta + alpha_s * d_theta)"


def test_the_end_gauge_in_the_gums_own_words() -> None:
    length = output_estimate(LENGTH, INPUTS)
    assert f"{combined_standard_uncertainty(INPUTS['theta']):.2f}" == "0.41"  # H.1.3.4
    assert f"{combined_standard_uncertainty(INPUTS['d']):.1f}" == "9.7"  # H.1.3.2
    assert f"{effective_degrees_of_freedom(length):.1f}" == "16.7"  # H.1.6
    assert f"{coverage_factor(0.99, effective_degrees_of_freedom(length)):.2f}" == "2.92"
    assert f"{expanded_uncertainty(length, 0.99) / combined_standard_uncertainty(length) * 32:.0f}" == "93"  # H.1.6
    assert uncertainty_budget(length).degrees == 16
    c = sensitivity_coefficients(LENGTH, INPUTS)
    assert c["l_s"].value == c["d"].value == 1.0  # table H.1
    assert c["alpha_s"].value == c["theta"].value == 0.0
    assert c["d_alpha"].value == pytest.approx(50_000_623 * 0.1)  # −l_s·θ
    assert c["d_theta"].value == pytest.approx(-50_000_623 * 11.5e-6)  # −l_s·α_s
    assert (c["d_theta"].unit.symbol, c["l_s"].unit.symbol) == ("nm/K", "")


def test_the_next_terms_of_the_end_gauge_come_out_of_draws() -> None:
    """H.1.7: l_s·u(δα)·u(θ) = 11.7 nm and l_s·u(α_s)·u(δθ) = 1.7 nm raise u_c from 32 nm to 34 nm."""
    known = {  # the standard uncertainties of table H.1, taken as known: the terms of H.1.7 know no degrees of freedom
        name: input_quantity(x.value or 0.0, x.unit, u=combined_standard_uncertainty(x), name=name)
        for name, x in INPUTS.items()
    }
    l_s, u = known["l_s"].value or 0.0, {name: combined_standard_uncertainty(x) for name, x in known.items()}
    assert f"{l_s * u['d_alpha'] * u['theta']:.1f}" in ("11.6", "11.7")  # 0.58 and 0.41 there are rounded
    assert f"{l_s * u['alpha_s'] * u['d_theta']:.1f}" == "1.7"
    assert f"{propagate_distributions(LENGTH, known).u:.0f}" == "34"


HARDNESS = """\
title: Hardness of a block on the scale Rockwell C
contenders:
  block: The block
instruments:
  depth gauge: {resolution: 0.0002 mm, accuracy: unknown}
constants:
  scale unit: {value: 0.002 mm, source: H.6.1}
  machine: {value: 0 mm, u: 0.00022 mm, source: "H.6.6: unevenness of the block that carried the scale, 0.11 scale units"}
  national scale: {value: 0 mm, u: 0.001 mm, source: "H.6.6: 0.5 scale units"}
measure:
  depth:
    kind: one reading
    unit: mm
    instrument: depth gauge
  hardness:
    formula: 100 - (depth + machine + national_scale) / scale_unit
    unit: points
readings: readings.csv
"""
# five indentations of mean 36.0 scale units and scatter 0.45, on the 0.1 of the display (H.6.6)
INDENTATIONS = "contender,pass,depth\nblock,1,0.0708\nblock,2,0.0730\nblock,3,0.0728\nblock,4,0.0716\nblock,5,0.0718\n"


def test_the_hardness_of_a_block_comes_out_of_a_campaign(tmp_path: Path) -> None:
    """H.6.6: 64.0 HRC, u_c 0.55; most of it the national scale (0.5), then repeatability (0.20), then the block (0.11)."""
    told = results_of(tmp_path, HARDNESS, readings=INDENTATIONS)
    hardness = result_of(told, "hardness", "block")
    assert f"{hardness['value']:.1f}" == "64.0"
    assert f"{hardness['u']:.2f}" == "0.55"
    sizes = [(line["of"], f"{abs(line['size']):.2f}") for line in hardness["budget"]]
    assert sizes == [("national-scale", "0.50"), ("passes", "0.20"), ("machine", "0.11")]


def test_the_display_of_a_hardness_machine_enters_beside_the_scatter_where_it_hides_it(tmp_path: Path) -> None:
    """H.6.3.1: u²(d) = s²/n + δ²/12, the second not divided. Five like readings on the same display leave just it."""
    alike = "contender,pass,depth\n" + "".join(f"block,{n},0.0720\n" for n in range(1, 6))
    hardness = result_of(results_of(tmp_path, HARDNESS, readings=alike), "hardness", "block")
    (step,) = [line for line in hardness["budget"] if line["sort"] == "step"]
    assert abs(step["size"]) == pytest.approx(0.1 / math.sqrt(12), rel=1e-9)
    assert hardness["u"] == pytest.approx(math.sqrt(0.5**2 + 0.11**2 + 0.1**2 / 12), rel=1e-9)


PRODUCT = """\
title: A product of three
contenders:
  it: The one thing
instruments:
  fine: {resolution: 0.000001, accuracy: unknown}
constants:
  x 1: {value: 100 points, u: 0.25 points, degrees: 9, source: "G.4.1: ten readings"}
  x 2: {value: 100 points, u: 0.57 points, degrees: 4, source: "G.4.1: five"}
  x 3: {value: 100 points, u: 0.82 points, degrees: 14, source: "G.4.1: fifteen"}
measure:
  b:
    kind: one reading
    unit: points
    instrument: fine
  y:
    formula: b * x_1 * x_2 * x_3
    unit: points
readings: readings.csv
"""


def test_a_product_of_three_has_nineteen_effective_degrees_of_freedom(tmp_path: Path) -> None:
    """G.4.1, example: u_c(y)/y 1.03 %, ν_eff 19.0, t95 2.09."""
    told = results_of(tmp_path, PRODUCT, readings="contender,pass,b\nit,1,1.000000\n")
    y = result_of(told, "y", "it")
    assert f"{100 * y['u'] / y['value']:.2f}" == "1.03"
    assert y["effective_degrees"] == 19
    found = welch_satterthwaite([(0.25, 9), (0.57, 4), (0.82, 14)])
    assert f"{found:.1f}" == "19.0"
    assert f"{coverage_factor(0.95, found):.2f}" == "2.09"


@pytest.mark.parametrize(("n", "percent"), [(2, 76), (3, 52), (4, 42), (5, 36), (10, 24), (20, 16), (30, 13), (50, 10)])
def test_few_observations_show_their_scatter_badly(n: int, percent: int) -> None:
    """Table E.1; its figures from memory."""
    assert round(100 * type_a.relative_uncertainty_of_sd(n)) == percent


def test_a_size_known_to_a_quarter_has_eight_degrees_of_freedom() -> None:
    """G.4.2, example: 25 % is eight; and H.1.6: 10 % is fifty, 50 % two."""
    assert [round(type_b.degrees_from_reliability(r)) for r in (0.25, 0.10, 0.50)] == [8, 50, 2]


@pytest.mark.parametrize(
    ("stated", "u"),
    [
        pytest.param(type_b.from_expanded(240.0, k=3), "80", id="4.3.3: a mass, 240 µg at three standard deviations"),
        pytest.param(type_b.from_interval(129.0, 0.99), "50", id="4.3.4: a resistor, 129 µΩ at 99 %"),
        pytest.param(type_b.from_interval(0.04, 0.50), "0.06", id="4.3.5: a length, fifty-fifty within 0.04 mm"),
        pytest.param(type_b.rectangular(0.40), "0.23", id="4.3.7: copper, ±0.40·10⁻⁶/°C"),
        pytest.param(type_b.rectangular(4.0), "2.3", id="4.4.5: 96 °C to 104 °C alike"),
        pytest.param(type_b.triangular(4.0), "1.6", id="4.4.6: 96 °C to 104 °C, the middle likelier"),
        pytest.param(type_b.resolution(1.0), "0.29", id="F.2.2.1: a step of δ"),
    ],
)
def test_a_stated_width_becomes_the_standard_uncertainty_that_the_gum_prints(
    stated: type_b.StandardUncertainty, u: str
) -> None:
    assert f"{stated.size:.{len(u.partition('.')[2])}f}" == u


def test_two_chances_in_three_are_one_standard_uncertainty() -> None:
    """4.3.6: u ≈ a; the exact factor for two thirds, 0.967, is printed there."""
    assert f"{1 / type_b.from_interval(1.0, 2 / 3).size:.3f}" == "0.967"


def test_limits_lead_to_their_middle() -> None:
    """4.4.5: best estimate 100 °C, u 2.3 °C."""
    bath = from_limits(96, 104, "°C", name="bath")
    assert (bath.value, f"{combined_standard_uncertainty(bath):.1f}") == (100.0, "2.3")


# table 1 (4.4.3): twenty temperatures in °C
TEMPERATURES = [
    96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
    100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72,
]  # fmt: skip


def test_twenty_temperatures_are_one_input_quantity() -> None:
    """4.4.3: 100.14 °C with u = s/√20 = 0.33 °C (100.145 and 0.333 before rounding); 4.2.6: 19 degrees of freedom."""
    found = from_observations(TEMPERATURES, "°C", name="bath")
    assert f"{found.value:.3f}" == "100.145"
    assert f"{combined_standard_uncertainty(found):.3f}" == "0.333"
    assert effective_degrees_of_freedom(found) == 19


def test_ten_resistors_calibrated_by_one_standard_add_their_uncertainties() -> None:
    """5.2.2, example: ten of 1000 Ω, each known to 0.10 Ω by the one standard, in series: 1 Ω, not the 0.32 Ω of independent ones."""
    standard = input_quantity(1000, "Ω", 0.10, name="standard")
    alike = sum_of([standard] * 10)
    assert f"{combined_standard_uncertainty(alike):.1f}" == "1.0"
    apart = sum_of([input_quantity(1000, "Ω", 0.10, name=f"standard {n}") for n in range(10)])
    assert f"{combined_standard_uncertainty(apart):.2f}" == "0.32"


def test_resistors_compared_with_one_standard_go_together() -> None:
    """F.1.2.3, example 2: Rᵢ = αᵢ·R_S; r = 1/(1 + (u(α)/(u(R_S)/R_S))²) for ratios all known to u(α) about 1."""
    relative, of_ratio = 1e-4, 0.5e-4
    standard = input_quantity(1000, "Ω", 1000 * relative, name="standard")
    one, other = (
        output_estimate("ratio * standard", {"ratio": input_quantity(1, "", of_ratio, name=name), "standard": standard})
        for name in ("first ratio", "second ratio")
    )
    assert correlation_coefficient(one, other) == pytest.approx(1 / (1 + (of_ratio / relative) ** 2), rel=1e-12)


def test_a_correction_of_nought_still_brings_its_uncertainty() -> None:
    """H.1.3.5 and 3.2.4: δα is estimated as nought and adds 2.9 nm all the same."""
    x = Uncertain(0.0, parse_unit("1/K"), {Source("constant", "d alpha"): 0.58e-6})
    found = output_estimate("l * d_alpha * theta", {
        "l": input_quantity(50_000_623, "nm"), "d_alpha": x, "theta": input_quantity(-0.1, "ΔK"),
    })  # fmt: skip
    assert (found.value, f"{combined_standard_uncertainty(found):.1f}") == (0.0, "2.9")
