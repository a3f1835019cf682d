"""Propagation against the GUM's worked example and two independent libraries."""

import math
from typing import Any

import GTC
import pytest
import uncertainties
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from uncertainties import umath

from reportgen.metrology.arithmetic import add, multiply, subtract
from reportgen.metrology.budget import effective_degrees, shares
from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.evaluate import evaluate
from reportgen.metrology.formula import parse
from reportgen.metrology.type_a import student
from reportgen.metrology.uncertain import Source, Uncertain, combined, correlation
from reportgen.metrology.unit import parse_unit
from tests.metrology.formula_bench import Bench, value

# JCGM 100:2008, H.1, table H.1: values and standard uncertainties of the inputs
END_GAUGE = Bench(
    l_s=value(50_000_623.0, "nm", standard=25.0),
    d=value(215.0, "nm", repeats=5.8, comparator_random=3.9, comparator_systematic=6.7),
    d_alpha=value(0.0, "1/K", expansion_difference=0.58e-6),
    theta=value(-0.1, "ΔK", mean_temperature=0.2, cycle=0.35),
    alpha_s=value(11.5e-6, "1/K", expansion_of_standard=1.2e-6),
    d_theta=value(0.0, "ΔK", temperature_difference=0.029),
)


def test_the_end_gauge_of_the_gum_comes_out_with_its_budget() -> None:
    length = evaluate(parse("l_s + d - l_s * (d_alpha * theta + alpha_s * d_theta)"), END_GAUGE)
    assert f"{length.value:.0f}" == "50000838"  # H.1.5: 50.000 838 mm
    assert f"{combined(length):.0f}" == "32"  # H.1.3.4: 32 nm
    sizes = {source.of: abs(size) for source, size in length.contributions.items()}
    # table H.1, column |c|u(x): the sensitivity to θ and to α_s is nought to first order
    assert {name: float(f"{size:.2g}") for name, size in sizes.items()} == {
        "standard": 25.0, "repeats": 5.8, "comparator_random": 3.9, "comparator_systematic": 6.7,
        "expansion_difference": 2.9, "temperature_difference": 17.0,
    }  # fmt: skip
    assert f"{sizes['temperature_difference']:.1f}" in ("16.6", "16.7")  # H.1.4.4 prints 16.6 from 0.0289


def test_the_end_gauge_has_sixteen_effective_degrees_of_freedom() -> None:
    # JCGM 100, H.1.6: 16.7, truncated to 16, t99 = 2.92
    assert effective_degrees([(25.0, 18), (9.7, 25.6), (2.9, 50), (16.6, 2)]) == 16
    assert f"{student(0.995, 16):.2f}" == "2.92"


def test_the_product_of_three_in_g41_has_nineteen() -> None:
    # JCGM 100, G.4.1, example: 0.25, 0.57, 0.82 % from 10, 5, 15 readings; u = 1.03 %, 19, t95 = 2.09
    parts = [(0.25, 9), (0.57, 4), (0.82, 14)]
    assert f"{math.hypot(*(u for u, _ in parts)):.2f}" == "1.03"
    assert effective_degrees(parts) == 19
    assert f"{student(0.975, 19):.2f}" == "2.09"


def test_a_budget_lists_the_largest_first_and_its_shares_make_a_whole() -> None:
    length = evaluate(parse("l_s + d"), END_GAUGE)
    budget = shares(length.contributions, 10.0, 4)
    assert [line.source.of for line in budget.lines] == [
        "standard", "passes", "comparator_systematic", "repeats", "comparator_random",
    ]  # fmt: skip
    assert math.fsum(line.share for line in budget.lines) == pytest.approx(1.0, rel=1e-15)
    assert budget.u == pytest.approx(math.sqrt(25**2 + 6.7**2 + 5.8**2 + 3.9**2 + 10**2))
    assert budget.degrees == math.floor(budget.u**4 / (10.0**4 / 4))
    assert shares({}).lines == ()
    assert shares(length.contributions).degrees is None


# formulas of three inputs that share sources, made at random and given to three engines at once
_LEAVES = st.sampled_from(["x", "y", "z", "2.5", "0.75"])
_FORMULAS = st.recursive(
    _LEAVES,
    lambda inner: st.one_of(
        st.tuples(inner, st.sampled_from("+-*/"), inner).map(lambda t: f"({t[0]}{t[1]}{t[2]})"),
        st.tuples(inner, st.sampled_from(["2", "3", "0.5"])).map(lambda t: f"({t[0]})^{t[1]}"),
        inner.map(lambda t: f"sqrt({t})"),
        inner.map(lambda t: f"log({t})"),
        inner.map(lambda t: f"exp(0.1*{t})"),
        inner.map(lambda t: f"(-{t})"),
    ),
    max_leaves=6,
)


def _inputs(at: tuple[float, ...], sizes: list[float], normals: list[Any]) -> dict[str, Any]:
    return {n: at[i] + sum(sizes[3 * i + j] * normals[j] for j in range(3)) for i, n in enumerate("xyz")}


_SIZES = st.lists(st.floats(-0.4, 0.4), min_size=9, max_size=9)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(formula=_FORMULAS, sizes=_SIZES, at=st.tuples(*[st.floats(0.5, 4.0)] * 3))
def test_any_formula_of_correlated_inputs_agrees_with_two_other_libraries(
    formula: str, sizes: list[float], at: tuple[float, float, float]
) -> None:
    ours = Bench(
        **{
            name: Uncertain(at[i], parse_unit(""), {Source("constant", str(j)): sizes[3 * i + j] for j in range(3)})
            for i, name in enumerate("xyz")
        }
    )
    try:
        found = evaluate(parse(formula), ours)
    except NoValue:
        assume(False)
        return
    assert found.value is not None
    assume(abs(found.value) < 1e12)
    in_python = formula.replace("^", "**")
    theirs = [uncertainties.ufloat(0.0, 1.0) for _ in range(3)]
    normals = [GTC.ureal(0.0, 1.0) for _ in range(3)]
    try:
        second = eval(in_python, {**_inputs(at, sizes, theirs), "log": umath.log, "exp": umath.exp, "sqrt": umath.sqrt})
        third = eval(in_python, {**_inputs(at, sizes, normals), "log": GTC.log, "exp": GTC.exp, "sqrt": GTC.sqrt})
    except ZeroDivisionError:  # a root of an exact nought, where the witnesses have no slope
        assume(False)
    u = combined(found)
    assert found.value == pytest.approx(float(getattr(second, "nominal_value", second)), rel=1e-9, abs=1e-9)
    # a u that nearly cancels is compared with what cancelled
    slack = 1e-9 * (1 + max((abs(size) for size in found.contributions.values()), default=0.0))
    assert u == pytest.approx(float(getattr(second, "std_dev", 0.0)), rel=1e-9, abs=slack)
    assert u == pytest.approx(float(GTC.uncertainty(third)), rel=1e-9, abs=slack)
    for j, normal in enumerate(normals):  # signs as well
        signed = GTC.rp.u_component(third, normal) if hasattr(third, "x") else 0.0
        mine = found.contributions.get(Source("constant", str(j)), 0.0)
        assert mine == pytest.approx(signed, rel=1e-9, abs=slack)


def test_correlation_of_results_that_share_a_source_agrees_with_gtc() -> None:
    x = value(3.0, "", shared=0.3, own=0.4)
    y = value(2.0, "", shared=-0.1, other=0.2)
    product, total = multiply(x, y), add(x, y)
    a, b, c = (GTC.ureal(0.0, 1.0) for _ in range(3))
    p, q = 3.0 + 0.3 * a + 0.4 * b, 2.0 - 0.1 * a + 0.2 * c
    assert correlation(x, y) == pytest.approx(GTC.get_correlation(p, q), rel=1e-12)
    assert correlation(product, total) == pytest.approx(GTC.get_correlation(p * q, p + q), rel=1e-12)
    assert correlation(x, value(1.0)) == 0.0


def test_what_is_taken_from_itself_leaves_nothing_uncertain() -> None:
    x = value(3.1, "g", scale=0.3)
    assert subtract(x, x).contributions == {}
    assert evaluate(parse("x * 3 - x - x - x"), Bench(x=x)).contributions == {}


@pytest.mark.parametrize(
    ("formula", "says", "column"),
    [
        ("x / (y - y)", "division by zero", 3),
        ("2 + log(0 * x)", "logarithm", 5),
        ("sqrt(0 - 4)", "root of a negative", 1),
        ("exp(1000)", "too large", 1),
        ("(x - x + 1e70) * 1e70", "too large", 16),
    ],
)
def test_readings_that_give_no_value_say_so_at_their_column(formula: str, says: str, column: int) -> None:
    with pytest.raises(NoValue) as nothing:
        evaluate(parse(formula), Bench(x=value(1.0), y=value(2.0, "", a=0.1)))
    assert says in nothing.value.says
    assert nothing.value.column == column


@pytest.mark.parametrize(
    ("formula", "says", "column"),
    [
        ("mass + time", "g is a mass, s is a time", 6),
        ("log(mass)", "plain number", 1),
        ("2 ^ mass", "the power is g", 3),
        ("2 ^ unsure", "uncertain", 3),
        ("mass ^ 0.1234", "no unit", 6),
        ("cold * 2", "can't be multiplied", 6),
        ("cold + hot", "can't be added", 6),
        ("sum_of_parts(x) + 1", "x", 14),
    ],
)
def test_units_that_do_not_fit_a_formula_are_refused_at_their_column(formula: str, says: str, column: int) -> None:
    bench = Bench(
        mass=value(1.0, "g"), time=value(1.0, "s"), unsure=value(2.0, "", a=0.1), cold=value(5.0, "°C"),
        hot=value(90.0, "°F"),
    )  # fmt: skip
    with pytest.raises(MetrologyError) as refusal:
        evaluate(parse(formula), bench)
    assert says in refusal.value.says
    assert refusal.value.column == column  # type: ignore[attr-defined]
