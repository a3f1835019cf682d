"""Random formulas over readings that are only bounds: no truth that fits the readings may lie outside what is said.

The other way is brute force: many truths are drawn on the side each reading leaves open, near its limit and far from it,
and the formula is worked out for each in plain arithmetic.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.uncertain import Uncertain
from tests.metrology.formula_bench import Bench, value

NAMES = ("a", "b", "c", "d")
LEAVES = st.one_of(st.sampled_from(NAMES), st.integers(1, 9).map(str))
FORMULAS = st.recursive(
    LEAVES,
    lambda inner: st.one_of(
        st.tuples(inner, st.sampled_from("+-*/"), inner).map(lambda x: f"({x[0]} {x[1]} {x[2]})"),
        inner.map(lambda x: f"(0 - {x})"),
        st.tuples(inner, st.sampled_from(("2", "3", "0.5", "1.5"))).map(lambda x: f"({x[0]} ^ {x[1]})"),
        st.tuples(st.sampled_from(("log", "exp", "sqrt")), inner).map(lambda x: f"{x[0]}({x[1]})"),
    ),
    max_leaves=6,
)
READINGS = st.tuples(
    st.floats(-9, 9).map(lambda x: round(x, 1)), st.sampled_from((None, "above", "below", "above", "below"))
)
LIMITED = st.tuples(st.floats(-9, 9).map(lambda x: round(x, 1)), st.sampled_from(("above", "below")))
KNOWN = {"log": np.log, "exp": np.exp, "sqrt": np.sqrt}


def truths(reading: tuple[float, str | None], draw: np.random.Generator) -> NDArray[np.float64]:
    """400 true values that fit a reading: its own, near its limit, and up to a million away."""
    number, limit = reading
    if limit is None:
        return np.full(400, number)
    away = np.concatenate([[0.0, 1e6], draw.exponential(1.0, 199), 10 ** draw.uniform(-3, 6, 199)])
    return number + draw.permutation(away) * (1 if limit == "above" else -1)


def brute(formula: str, of: Mapping[str, NDArray[np.float64]]) -> NDArray[np.float64]:
    """The formula for each truth; truths it has no answer for are left out, as nothing real can be there."""
    with np.errstate(all="ignore"):
        found = eval(formula.replace("^", "**"), {**KNOWN, **of})
    found = np.broadcast_to(np.asarray(found, dtype=np.float64), (400,))
    return found[np.isfinite(found) & (np.abs(found) < 1e60)]


@settings(max_examples=600, derandomize=True)
@given(FORMULAS, st.tuples(READINGS, READINGS, READINGS, READINGS), st.integers(0, 2**16))
def test_no_truth_that_fits_the_readings_lies_outside_the_bound(
    formula: str, readings: tuple[tuple[float, str | None], ...], seed: int
) -> None:
    of = dict(zip(NAMES, readings, strict=True))
    used = [name for name in NAMES if name in formula.replace("exp", "").replace("sqrt", "")]
    assume(any(of[name][1] for name in used))
    try:
        found = evaluate(parse(formula), Bench(**{n: value(x, "", limit) for n, (x, limit) in of.items()}))
    except MetrologyError:
        return  # no value, or a power too large
    assert found.value is not None
    assert math.isfinite(found.value)
    draw = np.random.default_rng(seed)
    true = brute(formula, {name: truths(reading, draw) for name, reading in of.items()})
    slack = 1e-9 * (1 + np.abs(true))
    if found.limit == "above":
        assert np.all(true >= found.value - slack)
    elif found.limit == "below":
        assert np.all(true <= found.value + slack)
    else:
        assert np.all(np.abs(true - found.value) <= slack)


@settings(max_examples=300, derandomize=True)
@given(FORMULAS.filter(lambda f: "a" in f), st.tuples(LIMITED, READINGS, READINGS, READINGS))
def test_a_bound_of_unknown_size_is_at_least_as_careful_as_one_of_any_size(
    formula: str, readings: tuple[tuple[float, str | None], ...]
) -> None:
    """What is said of `over unknown` must hold of every limit it may have stood for."""
    of = dict(zip(NAMES, readings, strict=True))
    known = {n: value(x, "", limit) for n, (x, limit) in of.items()}
    unknown: dict[str, Uncertain] = {**known, "a": value(None, "", of["a"][1])}
    try:
        vague = evaluate(parse(formula), Bench(**unknown))
    except MetrologyError:
        return
    try:
        sharp = evaluate(parse(formula), Bench(**known))
    except MetrologyError:
        return  # at this size the formula has no answer
    assert vague.value is None or (vague.value, vague.limit) == (pytest.approx(sharp.value), sharp.limit)
    assert vague.limit == sharp.limit


@pytest.mark.parametrize("size", [0.0, 0.3, 5.0])
def test_a_bound_says_nothing_of_how_far_the_truth_is(size: float) -> None:
    """The contributions of a bound are those of its limit: judgement takes them off the lead, no interval is made."""
    found = evaluate(parse("2 * a + b"), Bench(a=value(9.0, "", "above", scale=size), b=value(1.0)))
    assert (found.value, found.limit) == (19.0, "above")
    assert [round(s, 9) for s in found.contributions.values()] == ([2 * size] if size else [])


@pytest.mark.parametrize("formula", ["1 / a", "log(a)", "b / a"])
def test_a_limit_that_may_itself_be_nothing_bounds_no_quotient_and_no_logarithm(formula: str) -> None:
    """Above 0.1 ± 0.4: the truth may be a hair above nothing, or below it, and one over it anything."""
    wide, narrow = value(0.1, "", "above", meter=0.2), value(0.1, "", "above", meter=0.01)
    with pytest.raises(NoValue):
        evaluate(parse(formula), Bench(a=wide, b=value(2.0)))
    assert evaluate(parse(formula), Bench(a=narrow, b=value(2.0))).limit == ("above" if "log" in formula else "below")
