"""A bound stays a bound through every calculation, or nothing is said."""

import operator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.metrology import arithmetic
from reportgen.metrology.combine import energy_mean, mean_of, sum_of
from reportgen.metrology.errors import NoValue
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.uncertain import Uncertain
from tests.metrology.formula_bench import Bench, value

ABOVE, BELOW = value(999.0, "", "above"), value(1.0, "", "below")
UNKNOWN = value(None, "", "above")


@pytest.mark.parametrize(
    ("formula", "number", "limit"),
    [
        ("above + 1", 1000, "above"), ("1 - above", -998, "below"), ("above - below", 998, "above"),
        ("-above", -999, "below"), ("above * 2", 1998, "above"), ("above * (0 - 2)", -1998, "below"),
        ("above * above", 998001, "above"), ("above / 3", 333, "above"), ("999 / above", 1, "below"),
        ("below + below", 2, "below"), ("above ^ 2", 998001, "above"), ("below ^ 3", 1, "below"),
        ("sqrt(below)", 1, "below"), ("log(below)", 0, "below"), ("0 * above", 0, None), ("(0 - above) ^ 2", 998001, "above"),
        ("unknown + 1", None, "above"), ("5 - unknown", None, "below"), ("unknown * (0 - 3)", None, "below"),
        ("unknown / 4", None, "above"), ("log(unknown)", None, "above"), ("0 * unknown", 0, None), ("above * (below - 5)", -3996, "below"),
    ],
)  # fmt: skip
def test_a_bound_turns_with_the_sign_and_keeps_its_size(formula: str, number: float | None, limit: str | None) -> None:
    found = evaluate(parse(formula), Bench(above=ABOVE, below=BELOW, unknown=UNKNOWN))
    assert found.value == (None if number is None else pytest.approx(number))
    assert found.limit == limit


@pytest.mark.parametrize(
    "formula",
    ["above + below", "above - above", "below * below", "1 / below", "below ^ 2", "1 / unknown", "unknown * above",
     "above / unknown", "unknown ^ 2"],
)  # fmt: skip
def test_what_could_be_anything_has_no_value(formula: str) -> None:
    with pytest.raises(NoValue):
        evaluate(parse(formula), Bench(above=ABOVE, below=BELOW, unknown=UNKNOWN))


def test_joined_values_are_a_bound_as_soon_as_one_is() -> None:
    some = value(0.0, "", "above")  # some was added and nobody weighed it
    assert (sum_of([value(12.0), some]).value, sum_of([value(12.0), some]).limit) == (12.0, "above")
    assert mean_of([value(3.0), BELOW]).limit == "below"
    assert mean_of([value(3.0), UNKNOWN]) == Uncertain(None, value(3.0).unit, {}, "above")
    with pytest.raises(NoValue):
        mean_of([ABOVE, BELOW])
    quiet = energy_mean([value(40.0, "dB"), value(30.0, "dB", "below")])
    assert quiet.limit == "below"


NUMBERS = st.floats(-9, 9).map(lambda x: round(x, 2))
LIMITS = st.sampled_from([None, "above", "below"])
OPERATIONS = {"add": operator.add, "subtract": operator.sub, "multiply": operator.mul, "divide": operator.truediv}


@settings(max_examples=200, derandomize=True)
@given(st.sampled_from(sorted(OPERATIONS)), NUMBERS, NUMBERS, LIMITS, LIMITS, st.floats(0, 50), st.floats(0, 50))
def test_no_truth_that_fits_the_readings_lies_outside_the_bound(
    name: str, x: float, y: float, x_limit: str | None, y_limit: str | None, x_off: float, y_off: float
) -> None:
    """Truths are picked on the side each reading leaves open; the result must leave them open too."""
    away = {None: 0.0, "above": 1.0, "below": -1.0}
    truth = (x + away[x_limit] * x_off, y + away[y_limit] * y_off)
    try:
        found = getattr(arithmetic, name)(value(x, "", x_limit), value(y, "", y_limit))
    except NoValue:
        assert x_limit or y_limit or y == 0
        return
    assert found.value is not None
    if name == "divide" and truth[1] == 0:
        return
    true = OPERATIONS[name](*truth)
    slack = 1e-9 * (1 + abs(true))
    if found.limit is None:
        assert true == pytest.approx(found.value, abs=slack)
    elif found.limit == "above":
        assert true >= found.value - slack
    else:
        assert true <= found.value + slack
