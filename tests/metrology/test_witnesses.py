"""Two independent libraries on the same random formulas of the same correlated inputs: value, u, correlation, degrees.

`uncertainties` and GTC propagate as exactly as ours, each in its own way; all three must agree to 1e-9.
"""

import math
from collections.abc import Callable, Sequence
from typing import Any

import GTC
import pytest
import uncertainties
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from uncertainties import umath

from reportgen.metrology import (
    NoValue,
    Uncertain,
    combined_standard_uncertainty,
    correlated,
    correlation_coefficient,
    effective_degrees_of_freedom,
    energy_mean,
    energy_sum,
    input_quantity,
    mean_of,
    output_estimate,
    sensitivity_coefficients,
    sum_of,
    type_b,
)

NAMES = "abcdef"
AGREE = 1e-9
_FUNCTIONS = {
    "uncertainties": {"log": umath.log, "exp": umath.exp, "sqrt": umath.sqrt},
    "gtc": {"log": GTC.log, "exp": GTC.exp, "sqrt": GTC.sqrt},
}


@st.composite
def formulas(draw: st.DrawFn, names: Sequence[str]) -> str:
    """A formula of our grammar over these names."""
    leaves = st.one_of(st.sampled_from(names), st.sampled_from(["2.5", "0.75"]))
    return draw(
        st.recursive(
            leaves,
            lambda inner: st.one_of(
                st.tuples(inner, st.sampled_from("+-*/"), inner).map(lambda t: f"({t[0]}{t[1]}{t[2]})"),
                st.tuples(inner, st.sampled_from(["2", "3", "0.5", "1.5", "(-1)"])).map(lambda t: f"({t[0]})^{t[1]}"),
                inner.map(lambda t: f"sqrt({t})"),
                inner.map(lambda t: f"log({t})"),
                inner.map(lambda t: f"exp(0.1*{t})"),
                inner.map(lambda t: f"(-{t})"),
            ),
            max_leaves=7,
        )
    )


@st.composite
def inputs(draw: st.DrawFn) -> tuple[list[float], list[list[float]]]:
    """One to six estimates and the lower triangle that their covariance is made of."""
    n = draw(st.integers(1, 6))
    at = draw(st.lists(st.floats(0.5, 4.0), min_size=n, max_size=n))
    triangle = [[draw(st.floats(-0.3, 0.3)) for _ in range(i)] + [draw(st.floats(0.1, 0.4))] for i in range(n)]
    return at, triangle


def covariance_of(triangle: list[list[float]]) -> list[list[float]]:
    return [[math.fsum(x * y for x, y in zip(row, other, strict=False)) for other in triangle] for row in triangle]


def in_ours(at: list[float], covariance: list[list[float]]) -> dict[str, Uncertain]:
    found = correlated(at, covariance, [""] * len(at), name="fit")
    return dict(zip(NAMES, found, strict=False))


def in_uncertainties(at: list[float], triangle: list[list[float]]) -> dict[str, Any]:
    normals = [uncertainties.ufloat(0.0, 1.0) for _ in at]
    return {
        name: value + sum(c * z for c, z in zip(row, normals, strict=False))
        for name, value, row in zip(NAMES, at, triangle, strict=False)
    }


def in_gtc(at: list[float], covariance: list[list[float]]) -> dict[str, Any]:
    sizes = [math.sqrt(covariance[i][i]) for i in range(len(at))]
    found = [GTC.ureal(value, size, independent=False) for value, size in zip(at, sizes, strict=True)]
    for i in range(len(at)):
        for j in range(i):
            GTC.set_correlation(covariance[i][j] / (sizes[i] * sizes[j]), found[i], found[j])
    return dict(zip(NAMES, found, strict=False))


def worked_out(formula: str, witness: str, names: dict[str, Any]) -> Any:
    return eval(formula.replace("^", "**"), {**names, **_FUNCTIONS[witness]})


def ours(formula: str, names: dict[str, Uncertain]) -> Uncertain:
    try:
        found = output_estimate(formula, names)
    except NoValue:
        assume(False)
        raise
    assert found.value is not None
    assume(abs(found.value) < 1e9)
    return found


def slack(x: Uncertain) -> float:
    """A u that nearly cancels is compared with what cancelled."""
    return AGREE * (1 + max((abs(size) for size in x.contributions.values()), default=0.0))


@settings(max_examples=100, derandomize=True)
@given(data=st.data(), of=inputs())
def test_any_formula_of_correlated_inputs_agrees_with_two_other_libraries(
    data: st.DataObject, of: tuple[list[float], list[list[float]]]
) -> None:
    at, triangle = of
    covariance = covariance_of(triangle)
    formula = data.draw(formulas(NAMES[: len(at)]))
    found = ours(formula, in_ours(at, covariance))
    try:
        second = worked_out(formula, "uncertainties", in_uncertainties(at, triangle))
        third = worked_out(formula, "gtc", in_gtc(at, covariance))
    except ZeroDivisionError:  # a root of an exact nought, where the witnesses have no slope
        assume(False)
    assert found.value == pytest.approx(float(getattr(second, "nominal_value", second)), rel=AGREE, abs=AGREE)
    assert found.value == pytest.approx(float(GTC.value(third)), rel=AGREE, abs=AGREE)
    u = combined_standard_uncertainty(found)
    assert u == pytest.approx(float(getattr(second, "std_dev", 0.0)), rel=AGREE, abs=slack(found))
    assert u == pytest.approx(float(GTC.uncertainty(third)), rel=AGREE, abs=slack(found))


@settings(max_examples=50, derandomize=True)
@given(data=st.data(), of=inputs())
def test_two_results_of_the_same_inputs_go_together_as_both_libraries_say(
    data: st.DataObject, of: tuple[list[float], list[list[float]]]
) -> None:
    at, triangle = of
    covariance = covariance_of(triangle)
    names = NAMES[: len(at)]
    pair = [f"{names[0]} + 0.5*{data.draw(formulas(names))}" for _ in range(2)]
    found = [ours(formula, in_ours(at, covariance)) for formula in pair]
    assume(all(combined_standard_uncertainty(x) > 1e-3 for x in found))
    assume(all(max(map(abs, x.contributions.values())) < 1e3 for x in found))
    try:
        there = in_uncertainties(at, triangle)
        second = [worked_out(formula, "uncertainties", there) for formula in pair]
        there = in_gtc(at, covariance)
        third = [worked_out(formula, "gtc", there) for formula in pair]
    except ZeroDivisionError:
        assume(False)
    r = correlation_coefficient(*found)
    assert r == pytest.approx(float(uncertainties.correlation_matrix(second)[0][1]), rel=AGREE, abs=AGREE)
    assert r == pytest.approx(float(GTC.get_correlation(*third)), rel=AGREE, abs=AGREE)


JOINED: dict[str, tuple[Callable[[Sequence[Uncertain]], Uncertain], Callable[[list[Any], Any], Any], str]] = {
    "mean": (mean_of, lambda xs, m: sum(xs) / len(xs), "g"),
    "sum": (sum_of, lambda xs, m: sum(xs), "g"),
    "energy mean": (energy_mean, lambda xs, m: 10 * m.log10(sum(10 ** (x / 10) for x in xs) / len(xs)), "dB"),
    "energy sum": (energy_sum, lambda xs, m: 10 * m.log10(sum(10 ** (x / 10) for x in xs)), "dB"),
}


@pytest.mark.parametrize("join", JOINED)
@settings(max_examples=20, derandomize=True)
@given(of=inputs())
def test_means_and_sums_of_correlated_values_agree_with_two_other_libraries(
    join: str, of: tuple[list[float], list[list[float]]]
) -> None:
    work, in_words, unit = JOINED[join]
    at, triangle = of
    levels = [60 + 10 * value for value in at]
    covariance = covariance_of(triangle)
    found = work(correlated(levels, covariance, [unit] * len(at), name="fit"))
    second = in_words(list(in_uncertainties(levels, triangle).values()), umath)
    third = in_words(list(in_gtc(levels, covariance).values()), GTC)
    assert found.value == pytest.approx(second.nominal_value, rel=AGREE)
    assert combined_standard_uncertainty(found) == pytest.approx(second.std_dev, rel=AGREE)
    assert combined_standard_uncertainty(found) == pytest.approx(GTC.uncertainty(third), rel=AGREE)


@settings(max_examples=50, derandomize=True)
@given(
    data=st.data(),
    at=st.lists(st.floats(0.5, 4.0), min_size=1, max_size=6),
    sizes=st.lists(st.floats(0.05, 0.4), min_size=6, max_size=6),
    degrees=st.lists(st.one_of(st.integers(1, 60), st.just(math.inf)), min_size=6, max_size=6),
)
def test_effective_degrees_of_freedom_agree_with_gtcs(
    data: st.DataObject, at: list[float], sizes: list[float], degrees: list[float]
) -> None:
    formula = data.draw(formulas(NAMES[: len(at)]))
    stated = list(zip(NAMES, at, sizes, degrees, strict=False))
    found = ours(formula, {n: input_quantity(x, "", u, degrees=nu, name=n) for n, x, u, nu in stated})
    assume(combined_standard_uncertainty(found) > 1e-6)
    try:
        witness = worked_out(formula, "gtc", {n: GTC.ureal(x, u, nu) for n, x, u, nu in stated})
    except ZeroDivisionError:
        assume(False)
    theirs = GTC.dof(witness)
    nu = effective_degrees_of_freedom(found)
    assert nu == pytest.approx(theirs, rel=AGREE) or min(nu, theirs) > 1e6  # GTC calls a great many infinite


@settings(max_examples=40, derandomize=True)
@given(data=st.data(), at=st.lists(st.floats(0.5, 4.0), min_size=1, max_size=6))
def test_sensitivity_coefficients_agree_with_gtcs(data: st.DataObject, at: list[float]) -> None:
    formula = data.draw(formulas(NAMES[: len(at)]))
    names = {n: input_quantity(x, u=1.0, name=n) for n, x in zip(NAMES, at, strict=False)}
    ours(formula, names)
    coefficients = sensitivity_coefficients(formula, names)
    there = {n: GTC.ureal(x, 1.0) for n, x in zip(NAMES, at, strict=False)}
    try:
        witness = worked_out(formula, "gtc", there)
    except ZeroDivisionError:
        assume(False)
    for name, c in coefficients.items():
        theirs = GTC.rp.u_component(witness, there[name]) if hasattr(witness, "x") else 0.0
        largest = max(abs(x.value or 0.0) for x in coefficients.values())
        assert c.value == pytest.approx(theirs, rel=AGREE, abs=AGREE * (1 + largest))


def test_the_shapes_of_type_b_are_gtcs() -> None:
    """GTC's own type B functions, in its module of that name, which give standard uncertainties as well."""
    assert type_b.rectangular(0.3).size == pytest.approx(GTC.tb.uniform(0.3), rel=1e-15)
    assert type_b.triangular(0.3).size == pytest.approx(GTC.tb.triangular(0.3), rel=1e-15)
    assert type_b.arcsine(0.3).size == pytest.approx(GTC.tb.arcsine(0.3), rel=1e-15)
