"""Propagation on the inputs of the GUM's end gauge, budgets, and formulas that give no value."""

import math

import pytest

from reportgen.metrology.arithmetic import subtract
from reportgen.metrology.budget import shares
from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.uncertain import combined_standard_uncertainty
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
    assert f"{combined_standard_uncertainty(length):.0f}" == "32"  # H.1.3.4: 32 nm
    sizes = {source.of: abs(size) for source, size in length.contributions.items()}
    # table H.1, column |c|u(x): the sensitivity to θ and to α_s is nought to first order
    assert {name: float(f"{size:.2g}") for name, size in sizes.items()} == {
        "standard": 25.0, "repeats": 5.8, "comparator_random": 3.9, "comparator_systematic": 6.7,
        "expansion_difference": 2.9, "temperature_difference": 17.0,
    }  # fmt: skip
    assert f"{sizes['temperature_difference']:.1f}" in ("16.6", "16.7")  # H.1.4.4 prints 16.6 from 0.0289


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
