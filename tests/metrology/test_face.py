"""The measuring library by itself: units in and out, errors that are one, and what it refuses."""

import itertools
import math
from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.metrology import (
    FormulaError,
    MetrologyError,
    NoValue,
    Source,
    Uncertain,
    UnitError,
    add,
    combined_standard_uncertainty,
    correlated,
    correlation_coefficient,
    covariance,
    coverage_factor,
    effective_degrees_of_freedom,
    energy_mean,
    expanded_uncertainty,
    from_limits,
    from_observations,
    in_unit,
    input_quantity,
    mean_of,
    multiply,
    output_estimate,
    parse_unit,
    propagate_distributions,
    sensitivity_coefficients,
    subtract,
    sum_of,
    type_a,
    type_b,
    uncertainty_budget,
)

POSITIVE = st.floats(0.1, 1000.0)
SMALL = st.floats(0.001, 0.2)


def same(one: Uncertain, other: Uncertain) -> bool:
    """Value and every contribution alike once both are in one unit."""
    other = in_unit(other, one.unit)
    assert one.value is not None
    scale = max([abs(one.value), *map(abs, one.contributions.values())])
    return one.value == pytest.approx(other.value, rel=1e-12, abs=1e-12 * scale) and all(
        one.contributions.get(s, 0.0) == pytest.approx(other.contributions.get(s, 0.0), rel=1e-12, abs=1e-12 * scale)
        for s in {*one.contributions, *other.contributions}
    )


FORMULAS = (
    "a + b",
    "a - b",
    "2 * a - b / 3",
    "a * b",
    "a / b",
    "a ^ 2 / b",
    "sqrt(a * b)",
    "log(a / b) * a",
    "a / (a + b)",
)
MASSES = ("g", "kg", "oz", "lb", "mg")


@settings(max_examples=60, derandomize=True)
@given(
    formula=st.sampled_from(FORMULAS),
    sizes=st.tuples(POSITIVE, POSITIVE, SMALL, SMALL, SMALL),
    units=st.tuples(st.sampled_from(MASSES), st.sampled_from(MASSES)),
)
def test_it_makes_no_difference_in_which_unit_an_input_comes(
    formula: str, sizes: tuple[float, ...], units: tuple[str, str]
) -> None:
    a, b, own_a, own_b, shared = sizes
    scale = Source("offset", "scale", "day 1")
    inputs = {
        "a": Uncertain(a, parse_unit("g"), {Source("step", "scale", "a"): own_a, scale: shared}),
        "b": Uncertain(b, parse_unit("g"), {Source("step", "scale", "b"): own_b, scale: shared}),
    }
    elsewhere = {name: in_unit(x, parse_unit(unit)) for (name, x), unit in zip(inputs.items(), units, strict=True)}
    assert same(output_estimate(formula, inputs), output_estimate(formula, elsewhere))


@settings(max_examples=40, derandomize=True)
@given(value=st.floats(-40, 200), u=SMALL)
def test_a_temperature_is_as_well_known_in_fahrenheit_as_in_celsius(value: float, u: float) -> None:
    x = input_quantity(value, "°C", u=u, name="thermometer")
    there = in_unit(x, parse_unit("°F"))
    assert combined_standard_uncertainty(there) == pytest.approx(u * 1.8, rel=1e-12)
    back = in_unit(there, parse_unit("°C"))
    assert (back.value, combined_standard_uncertainty(back)) == (pytest.approx(value, abs=1e-12), pytest.approx(u))


@settings(max_examples=60, derandomize=True)
@given(
    values=st.lists(st.tuples(POSITIVE, SMALL, st.floats(-0.2, 0.2)), min_size=2, max_size=6),
    order=st.randoms(use_true_random=False),
    join=st.sampled_from([mean_of, sum_of]),
)
def test_the_order_of_what_is_joined_changes_nothing(
    values: list[tuple[float, float, float]], order: object, join: Callable[[list[Uncertain]], Uncertain]
) -> None:
    shared = Source("gain", "scale")
    parts = [
        Uncertain(x, parse_unit("g"), {Source("step", "scale", str(n)): own, shared: gain})
        for n, (x, own, gain) in enumerate(values)
    ]
    turned = parts[:]
    order.shuffle(turned)  # type: ignore[attr-defined]  # a Random, which hypothesis hands over untyped
    one, other = join(parts), join(turned)
    assert (one.value, dict(one.contributions)) == (other.value, dict(other.contributions))  # to the last bit


@settings(max_examples=60, derandomize=True)
@given(x=POSITIVE, y=POSITIVE, own=SMALL, offset=SMALL)
def test_an_error_that_two_readings_share_is_gone_from_their_difference_wholly(
    x: float, y: float, own: float, offset: float
) -> None:
    shared = Source("offset", "scale", "day 1")
    one = Uncertain(x, parse_unit("g"), {shared: offset, Source("step", "scale", "1"): own})
    other = Uncertain(y, parse_unit("g"), {shared: offset, Source("step", "scale", "2"): own})
    assert set(subtract(one, other).contributions) == {Source("step", "scale", "1"), Source("step", "scale", "2")}
    assert subtract(add(one, other), other).contributions.get(Source("step", "scale", "2")) is None
    assert subtract(multiply(one, other), multiply(other, one)).contributions == {}
    assert output_estimate("x - x + y - y", {"x": one, "y": other}).contributions == {}


def test_equal_names_are_one_error_and_others_are_not() -> None:
    one, again, other = (input_quantity(1.0, "g", u=0.1, name=name) for name in ("weight", "weight", "second weight"))
    assert combined_standard_uncertainty(add(one, again)) == pytest.approx(0.2)
    assert combined_standard_uncertainty(add(one, other)) == pytest.approx(0.1 * math.sqrt(2))
    assert (correlation_coefficient(one, again), correlation_coefficient(one, other)) == (pytest.approx(1.0), 0.0)


COVARIANCE = [[0.09, 0.06, -0.02], [0.06, 0.16, 0.01], [-0.02, 0.01, 0.25]]


def test_a_covariance_matrix_comes_back_from_what_it_made() -> None:
    found = correlated([1.0, 2.0, 3.0], COVARIANCE, ["g", "mL", "s"], name="fit", degrees=9)
    for i, j in itertools.product(range(3), range(3)):
        assert covariance(found[i], found[j]) == pytest.approx(COVARIANCE[i][j], rel=1e-12)
    assert [x.unit.symbol for x in found] == ["g", "mL", "s"]
    assert effective_degrees_of_freedom(found[0]) == effective_degrees_of_freedom(found[2]) == pytest.approx(9)
    both = output_estimate("x / y", {"x": found[0], "y": found[1]})
    assert effective_degrees_of_freedom(both) == pytest.approx(9), "one fit is one estimate of a variance"


def test_errors_that_are_one_make_a_matrix_that_can_be_taken_apart_too() -> None:
    one, other = correlated([1.0, 2.0], [[0.04, -0.06], [-0.06, 0.09]], ["g", "g"], name="fit")
    assert correlation_coefficient(one, other) == pytest.approx(-1.0)
    assert combined_standard_uncertainty(output_estimate("1.5*a + b", {"a": one, "b": other})) == pytest.approx(
        0, abs=1e-12
    )
    exact, known = correlated([1.0, 2.0], [[0.0, 0.0], [0.0, 0.09]], ["g", "g"], name="fit")
    assert exact.contributions == {}
    assert combined_standard_uncertainty(known) == pytest.approx(0.3)


@pytest.mark.parametrize(
    ("matrix", "says"),
    [
        ([[1.0, 1.1], [1.1, 1.0]], "no errors can go together"),
        ([[1.0, 0.9, -0.9], [0.9, 1.0, 0.9], [-0.9, 0.9, 1.0]], "no errors can go together"),
        ([[1.0, 0.5], [0.4, 1.0]], "isn't symmetric"),
        ([[1.0, 0.5]], "covariance of 2 by 2"),
        ([[-1.0, 0.0], [0.0, 1.0]], "variance below nought"),
        ([[0.0, 0.1], [0.1, 1.0]], "exact can't go together"),
        ([[math.nan, 0.0], [0.0, 1.0]], "no number"),
    ],
)
def test_a_covariance_that_no_errors_can_have_is_refused(matrix: list[list[float]], says: str) -> None:
    with pytest.raises(MetrologyError, match=says):
        correlated([1.0, 2.0, 3.0][: max(2, len(matrix))], matrix, ["g"] * max(2, len(matrix)), name="fit")


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (lambda: input_quantity(1.0, "g", u=0.1), "without a name"),
        (lambda: input_quantity(1.0, "g", u=-0.1, name="x"), "uncertainty of -0.1"),
        (lambda: input_quantity(1.0, "g", u=math.nan, name="x"), "uncertainty of nan"),
        (lambda: input_quantity(math.inf, "g"), "estimate of inf"),
        (lambda: input_quantity(1.0, "g", u=0.1, degrees=0.4, name="x"), "degrees of freedom"),
        (lambda: type_b.normal(0.1, math.nan), "degrees of freedom"),
        (lambda: type_b.from_expanded(1.0, k=0.0), "coverage factor of 0"),
        (lambda: type_b.from_interval(1.0, 95), "probability of 95"),
        (lambda: type_b.degrees_from_reliability(-0.1), "reliability of -0.1"),
        (lambda: from_limits(2.0, 1.0), "lower one first"),
        (lambda: from_observations([5.0], "g", name="x"), "one observation"),
        (lambda: from_observations([], "g", name="x"), "no values"),
        (lambda: from_observations([1.0, 2.0], "g"), "without a name"),
        (lambda: type_a.relative_uncertainty_of_sd(1), "fewer than two"),
        (lambda: coverage_factor(95, 10), "level of confidence of 95"),
        (lambda: coverage_factor(0.95, 0.9), "less than one degree of freedom"),
        (lambda: expanded_uncertainty(Uncertain(1.0, parse_unit("g"), {}, "above")), "a bound"),
    ],
)  # fmt: skip
def test_what_makes_no_sense_is_refused_in_words(asked: Callable[[], object], says: str) -> None:
    with pytest.raises(MetrologyError) as refusal:
        asked()
    assert says in refusal.value.says + refusal.value.do


def test_names_and_units_that_do_not_fit_are_refused_at_their_column() -> None:
    inputs = {"mass": input_quantity(1.0, "g"), "time": input_quantity(1.0, "s")}
    with pytest.raises(FormulaError, match="did you mean mass") as unknown:
        output_estimate("2 * mas", inputs)
    assert unknown.value.column == 5
    with pytest.raises(FormulaError, match="g is a mass, s is a time"):
        output_estimate("mass + time", inputs)
    with pytest.raises(FormulaError, match="no passes"):
        output_estimate("mean_of_passes(mass)", inputs)
    with pytest.raises(UnitError):
        input_quantity(1.0, "no such unit")
    with pytest.raises(UnitError):
        energy_mean([inputs["mass"]])
    with pytest.raises(NoValue, match="only a bound"):
        sensitivity_coefficients("a * 2", {"a": Uncertain(1.0, parse_unit("g"), {}, "below")})


def test_several_parts_of_one_uncertainty_have_names_of_their_own() -> None:
    d = input_quantity(215, "nm", {"repeats": type_b.normal(5.8, 24), "display": type_b.resolution(1.0)}, name="d")
    lines = uncertainty_budget(d).lines
    assert [(line.source.of, line.source.shape, line.degrees) for line in lines] == [
        ("d, repeats", "normal", 24), ("d, display", "uniform", None),
    ]  # fmt: skip
    assert input_quantity(1.0, "g", u=0.0, name="x").contributions == {}


def test_a_scatter_known_from_elsewhere_serves_a_single_observation() -> None:
    """JCGM 100, 4.2.4: s_p/√n with the degrees of freedom of s_p."""
    found = from_observations([215.0], "nm", name="d", scatter=type_a.Scatter(13.0, 24))
    assert (combined_standard_uncertainty(found), effective_degrees_of_freedom(found)) == (13.0, 24)
    four = from_observations([214.0, 216.0, 215.0, 215.0], "nm", name="d", scatter=type_a.Scatter(13.0, 24))
    assert combined_standard_uncertainty(four) == 6.5


def test_sensitivity_has_the_units_of_the_result_over_the_input() -> None:
    c = sensitivity_coefficients(
        "heat / rise", {"heat": input_quantity(84.0, "kJ"), "rise": input_quantity(20.0, "ΔK")}
    )
    assert [(x.value, x.unit.symbol) for x in c.values()] == [(0.05, "1/K"), (pytest.approx(-0.21), "kJ/K²")]
    warm = sensitivity_coefficients("end - start", {"end": input_quantity(90, "°C"), "start": input_quantity(20, "°C")})
    assert [(x.value, x.unit.dimension) for x in warm.values()] == [(1.0, ()), (-1.0, ())]


def test_first_order_and_draws_agree_where_the_formula_is_straight() -> None:
    """JCGM 101, 9.2.2: four normal inputs of u = 1 add up to u = 2 and ±3.92."""
    inputs = {name: input_quantity(0.0, u=1.0, name=name) for name in "abcd"}
    first, drawn = output_estimate("a + b + c + d", inputs), propagate_distributions("a + b + c + d", inputs)
    assert combined_standard_uncertainty(first) == 2.0
    assert drawn.u == pytest.approx(2.0, abs=0.05)
    assert expanded_uncertainty(first) == pytest.approx(3.92, abs=0.005)
    assert (drawn.high - drawn.low) / 2 == pytest.approx(3.92, abs=0.05)
