"""Type A evaluation against printed tables, open data and independent libraries."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.type_a import (
    mean,
    pooled,
    rounds_scatter,
    standard_deviation,
    student,
    uncertainty_of_mean,
)

# JCGM 100:2008, table G.2, p = 95 %
TABLE_G2 = [(1, "12.71"), (2, "4.30"), (3, "3.18"), (4, "2.78"), (5, "2.57"), (10, "2.23"), (20, "2.09"), (50, "2.01")]


@pytest.mark.parametrize(("degrees", "t95"), TABLE_G2)
def test_t_values_are_those_of_the_gum(degrees: int, t95: str) -> None:
    assert f"{student(0.975, degrees):.2f}" == t95


def test_t_of_infinitely_many_degrees_is_the_normal_distributions() -> None:
    assert f"{student(0.975, math.inf):.3f}" == "1.960"  # JCGM 100, table G.2, last line
    with pytest.raises(MetrologyError):
        student(0.975, 0)


# JCGM 100:2008, table 1 (4.4.3): twenty temperatures in °C
TEMPERATURES = [
    96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
    100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72,
]  # fmt: skip


def test_the_twenty_temperatures_of_the_gum_have_its_mean_and_scatter() -> None:
    # 4.4.3: mean 100.145 ≈ 100.14, s = 1.489 ≈ 1.49, s/√20 = 0.333 ≈ 0.33
    assert f"{mean(TEMPERATURES):.3f}" == "100.145"
    assert f"{standard_deviation(TEMPERATURES):.3f}" == "1.489"
    assert f"{uncertainty_of_mean(TEMPERATURES):.3f}" == "0.333"


def test_one_value_has_no_scatter() -> None:
    assert standard_deviation([5.0]) is None
    assert uncertainty_of_mean([5.0]) is None
    assert pooled([[5.0], [6.0], []]) is None
    with pytest.raises(MetrologyError):
        mean([])


# Montgomery, Design and Analysis of Experiments: hardwood concentration and tensile strength, from memory
HARDWOOD = {
    "5 %": [7, 8, 15, 11, 9, 10],
    "10 %": [12, 17, 13, 18, 19, 15],
    "15 %": [14, 18, 19, 17, 16, 18],
    "20 %": [19, 25, 22, 23, 18, 20],
}


def test_pooled_scatter_is_the_root_of_the_mean_square_within() -> None:
    scatter = pooled(HARDWOOD.values())
    assert scatter is not None
    assert (f"{scatter.sd:.3f}", scatter.degrees) == ("2.551", 20)
    assert [f"{mean(group):.3f}" for group in HARDWOOD.values()] == ["10.000", "15.667", "17.000", "21.167"]


def test_large_readings_with_a_small_scatter_lose_no_digits() -> None:
    # the deviations of 1, 2, 3 on a base of a thousand million (the idea of the NIST StRD's hard data sets)
    assert standard_deviation([1e9 + 1, 1e9 + 2, 1e9 + 3]) == 1.0


# R, data set `sleep` (Student 1908): hours gained on two drugs by the same ten people
SLEEP = {
    "1": [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0],
    "2": [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4],
}


def by_round(values: list[float]) -> dict[str, float]:
    return {f"round {i}": value for i, value in enumerate(values)}


def test_two_contenders_in_complete_rounds_are_a_paired_comparison() -> None:
    # R: t.test(extra ~ group, paired) gives t = −4.0621 with 9 degrees of freedom
    scatter = rounds_scatter({name: by_round(values) for name, values in SLEEP.items()})
    assert scatter is not None
    t = (mean(SLEEP["1"]) - mean(SLEEP["2"])) / (scatter.sd * math.sqrt(2 / 10))
    assert (f"{t:.4f}", scatter.degrees) == ("-4.0621", 9)


ROUND = st.lists(st.lists(st.floats(-50, 50), min_size=3, max_size=3), min_size=2, max_size=5)


@settings(max_examples=30, derandomize=True)
@given(ROUND, st.floats(-1000, 1000), st.floats(-1000, 1000))
def test_what_a_round_does_to_all_and_what_a_contender_is_leave_no_scatter(
    table: list[list[float]], to_round: float, to_contender: float
) -> None:
    plain = rounds_scatter({str(i): by_round(row) for i, row in enumerate(table)})
    moved = [[value + to_round * (j == 1) + to_contender * (i == 0) for j, value in enumerate(row)]
             for i, row in enumerate(table)]  # fmt: skip
    after = rounds_scatter({str(i): by_round(row) for i, row in enumerate(moved)})
    assert plain is not None
    assert after is not None
    assert after.sd == pytest.approx(plain.sd, abs=1e-9)
    assert after.degrees == (len(table) - 1) * 2


def test_rounds_with_gaps_are_fitted_by_least_squares() -> None:
    """Beside a projection with the first contender and round as reference: another coding, another algorithm."""
    values = {"a": [5.1, 6.3, 4.9, 7.0], "b": [6.0, 7.4, 5.5, 8.2], "c": [4.0, 5.2, 4.4, 5.8]}
    table = {name: by_round(row) for name, row in values.items()}
    del table["a"]["round 1"], table["c"]["round 3"]
    rows = [(name, of, value) for name, row in table.items() for of, value in row.items()]
    design = np.array(
        [[1.0, name == "b", name == "c", *(of == f"round {i}" for i in (1, 2, 3))] for name, of, _ in rows]
    )
    found = np.array([value for *_, value in rows])
    orthogonal, _ = np.linalg.qr(design)
    left = found - orthogonal @ (orthogonal.T @ found)
    scatter = rounds_scatter(table)
    assert scatter is not None
    assert scatter.degrees == len(rows) - 6
    assert scatter.sd == pytest.approx(math.sqrt(float(left @ left) / 4), rel=1e-9)


def test_a_gap_costs_the_round_nothing_but_its_own_degree_of_freedom() -> None:
    exact = {"a": {"1": 1.0, "2": 3.0, "3": 7.0}, "b": {"1": 11.0, "3": 17.0}, "c": {"1": 5.0, "2": 7.0, "3": 11.0}}
    scatter = rounds_scatter(exact)  # contender + round, exactly: nothing is left over
    assert scatter is not None
    assert scatter.sd == pytest.approx(0.0, abs=1e-12)
    assert scatter.degrees == 3


def test_rounds_that_leave_nothing_to_compare_have_no_scatter() -> None:
    assert rounds_scatter({"a": {"1": 3.0, "2": 4.0}}) is None
    assert rounds_scatter({"a": {"1": 3.0}, "b": {"2": 4.0}}) is None
    assert rounds_scatter({}) is None


@settings(max_examples=40, derandomize=True)
@given(st.lists(st.lists(st.floats(-100, 100), min_size=2, max_size=5), min_size=2, max_size=4))
def test_pooled_scatter_agrees_with_an_analysis_of_variance(groups: list[list[float]]) -> None:
    scatter = pooled(groups)
    assert scatter is not None
    within = sum(float(np.var(group, ddof=1)) * (len(group) - 1) for group in groups)
    assert scatter.sd == pytest.approx(math.sqrt(within / scatter.degrees), rel=1e-9, abs=1e-12)
    assert student(0.975, scatter.degrees) == pytest.approx(stats.t.ppf(0.975, scatter.degrees), rel=1e-10)
