"""The judging library by itself, given what is no number or no rule: refused, never decided."""

from math import inf, nan

import pytest

from reportgen.judgement import DeclaredScatter, Measured, Rules, from_passes, judge

FINE = from_passes("b", 3.0, 3.1)


@pytest.mark.parametrize("odd", [nan, inf, -inf])
def test_a_pass_that_is_no_number_is_refused(odd):
    with pytest.raises(ValueError, match="a holds what is no number"):
        judge([Measured("a", 1.0, (1.0, odd)), FINE], Rules("lower"))
    with pytest.raises(ValueError, match="a holds what is no number"):
        judge([Measured("a", odd, (1.0, 1.1)), FINE], Rules("lower"))


@pytest.mark.parametrize("step", [-1.0, nan])
def test_a_step_that_is_none_is_refused(step):
    with pytest.raises(ValueError, match="a step below zero"):
        judge([from_passes("a", 1.0, 1.1, step=step), FINE], Rules("lower"))


def test_two_of_one_name_are_refused():
    with pytest.raises(ValueError, match="one name"):
        judge([FINE, from_passes("b", 1.0, 1.1)], Rules("lower"))


@pytest.mark.parametrize(
    "rules",
    [
        {"better": "up"},
        {"better": "lower", "scatter": "wide"},
        {"better": "lower", "matters": -1.0},
        {"better": "lower", "between_sessions": nan},
    ],
)
def test_a_rule_there_is_none_of_is_refused(rules):
    with pytest.raises(ValueError, match=r"nothing is judged by|are sizes"):
        Rules(**rules)


@pytest.mark.parametrize(("sd", "degrees"), [(nan, 20), (-0.1, 20), (inf, 20), (0.1, 0), (0.1, -3)])
def test_a_declared_scatter_that_says_nothing_is_refused(sd, degrees):
    with pytest.raises(ValueError, match="is no scatter"):
        DeclaredScatter(sd, degrees)
