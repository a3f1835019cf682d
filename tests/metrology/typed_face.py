"""Types of the measuring library as its users see them: read by mypy alone (`test_types.py`), never run."""

from collections.abc import Mapping
from typing import assert_type

from reportgen.metrology import (
    Budget,
    Expression,
    Line,
    Propagated,
    Source,
    Uncertain,
    Unit,
    combined_standard_uncertainty,
    convert,
    correlated,
    correlation_coefficient,
    covariance,
    coverage_factor,
    effective_degrees_of_freedom,
    expanded_uncertainty,
    from_limits,
    from_observations,
    input_quantity,
    multiply,
    names_in,
    output_estimate,
    parse,
    parse_unit,
    propagate_distributions,
    sensitivity_coefficients,
    type_a,
    type_b,
    uncertainty_budget,
)

assert_type(parse_unit("g"), Unit)
assert_type(convert(1.0, parse_unit("lb"), parse_unit("kg")), float)
assert_type(type_b.rectangular(0.5), type_b.StandardUncertainty)
assert_type(type_b.degrees_from_reliability(0.25), float)
assert_type(type_a.standard_deviation([1.0, 2.0]), float | None)
assert_type(type_a.pooled([[1.0, 2.0]]), type_a.Scatter | None)

x = input_quantity(20.0, "°C", u=type_b.rectangular(0.5), name="bath")
assert_type(x, Uncertain)
assert_type(x.value, float | None)
assert_type(x.unit, Unit)
assert_type(x.contributions, Mapping[Source, float])
assert_type(
    input_quantity(215, parse_unit("nm"), {"repeats": type_b.normal(5.8, 24), "display": 0.3}, name="d"), Uncertain
)
assert_type(from_limits(96, 104, "°C", name="bath"), Uncertain)
assert_type(from_observations([1.0, 2.0], "g", name="weighing"), Uncertain)
assert_type(correlated([1.0, 2.0], [[1.0, 0.5], [0.5, 1.0]], ["g", "s"], name="fit"), tuple[Uncertain, ...])

assert_type(parse("a / b"), Expression)
assert_type(names_in(parse("a / b")), frozenset[str])
y = output_estimate("a * 2", {"a": x})
assert_type(y, Uncertain)
assert_type(output_estimate(parse("a * 2"), {"a": x}), Uncertain)
assert_type(multiply(x, y), Uncertain)
assert_type(sensitivity_coefficients("a * 2", {"a": x}), dict[str, Uncertain])
assert_type(combined_standard_uncertainty(y), float)
assert_type(covariance(x, y), float)
assert_type(correlation_coefficient(x, y), float)
assert_type(effective_degrees_of_freedom(y), float)
assert_type(coverage_factor(0.95, 19), float)
assert_type(expanded_uncertainty(y, 0.95), float)
assert_type(propagate_distributions("a ^ 2", {"a": x}), Propagated)

budget = uncertainty_budget(y)
assert_type(budget, Budget)
assert_type(budget.lines, tuple[Line, ...])
assert_type(budget.degrees, int | None)

input_quantity("20", "°C")  # type: ignore[arg-type]  # held by warn_unused_ignores: a text is no estimate
from_limits(96, 104, 5)  # type: ignore[arg-type]  # as above: a number is no unit
x.value = 3.0  # type: ignore[misc]  # as above: what was found is frozen
