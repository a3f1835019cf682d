"""Lines and curves through points: what their parameters carry, and what can't be fitted."""

from __future__ import annotations

import math
import random
from dataclasses import replace
from decimal import Decimal

import pytest

from reportgen.metrology import (
    Instrument,
    NoValue,
    Size,
    Source,
    Uncertain,
    UnitError,
    combined_standard_uncertainty,
    correlation_coefficient,
    covariance,
    fit,
    from_simultaneous_observations,
    input_quantity,
    nested,
    observed,
    parse_unit,
    subtract,
)
from reportgen.metrology.errors import MetrologyError

MM, NEWTON = parse_unit("mm"), parse_unit("N")


def test_a_line_agrees_with_the_formulas_of_the_gum() -> None:
    """JCGM 100, H.3.2 and H.3.3, equations H.13a to H.13g, worked out beside it by their plain sums."""
    xs, ys = [1.0, 2.5, 3.0, 4.5, 7.0], [2.1, 4.8, 6.3, 8.9, 14.2]
    n, d = len(xs), len(xs) * sum(x * x for x in xs) - sum(xs) ** 2
    slope = (n * sum(x * y for x, y in zip(xs, ys, strict=True)) - sum(xs) * sum(ys)) / d
    start = (sum(ys) - slope * sum(xs)) / n
    s2 = sum((y - start - slope * x) ** 2 for x, y in zip(xs, ys, strict=True)) / (n - 2)
    found = fit.line(xs, ys, name="line")
    assert (found.intercept.value, found.slope.value) == pytest.approx((start, slope), rel=1e-12)
    assert combined_standard_uncertainty(found.intercept) == pytest.approx(
        math.sqrt(s2 * sum(x * x for x in xs) / d), rel=1e-12
    )
    assert combined_standard_uncertainty(found.slope) == pytest.approx(math.sqrt(n * s2 / d), rel=1e-12)
    r = -sum(xs) / math.sqrt(n * sum(x * x for x in xs))
    assert correlation_coefficient(found.intercept, found.slope) == pytest.approx(r, rel=1e-12)


def test_the_errors_of_a_fit_are_one_t_of_its_degrees() -> None:
    found = fit.polynomial(range(7), [1, 3, 2, 5, 4, 8, 9], 2, name="curve")
    sources = {source for c in found.coefficients for source in c.contributions}
    assert {(s.sort, s.of, s.shape, s.degrees) for s in sources} == {("fit", "curve", "normal", 4)}
    assert len(sources) == 3


def test_a_curve_far_from_nought_is_known_as_well_as_the_same_curve_near_it() -> None:
    """Shifting x by what a float holds exactly changes no value of the curve, nor how well it is known."""
    ys = [0.11, 0.19, 0.32, 0.41, 0.49]
    near = fit.line(range(5), ys, name="near").at(2.25)
    far = fit.line([2.0**40 + x for x in range(5)], ys, name="far").at(2.0**40 + 2.25)
    assert far.value == near.value
    assert combined_standard_uncertainty(far) == combined_standard_uncertainty(near)


def test_a_shared_offset_moves_the_height_and_leaves_the_slope() -> None:
    offset = Source("offset", "ruler")
    ys = [Uncertain(y, MM, {offset: 0.5}) for y in (10.1, 20.0, 29.8, 40.1)]
    found = fit.line([1, 2, 3, 4], ys, "N", name="spring")
    assert found.slope.contributions.get(offset) is None
    assert found.intercept.contributions[offset] == pytest.approx(0.5)


def test_a_shared_gain_scales_the_slope() -> None:
    gain = Source("gain", "balance")
    ys = [Uncertain(y, MM, {gain: 0.01 * y}) for y in (10.1, 20.0, 29.8, 40.1)]
    found = fit.line([1, 2, 3, 4], ys, "N", name="spring")
    assert found.slope.contributions[gain] == pytest.approx(0.01 * (found.slope.value or 0.0))


def test_derivatives_by_every_x_and_y_are_exact() -> None:
    """Against differences of two fits with one point moved, the definition of a derivative."""
    xs, ys, size = [1.0, 2.0, 3.5, 5.0, 6.0], [2.0, 3.9, 7.4, 10.0, 12.4], 1e-6

    def fitted(moved: int | None, by: float) -> fit.Fitted:
        all_of = [*xs, *ys]
        if moved is not None:
            all_of[moved] += by
        return fit.polynomial(all_of[:5], all_of[5:], 2, name="curve")

    named = [Source("calibration", str(i)) for i in range(10)]
    carried = [Uncertain(value, parse_unit(""), {named[i]: 1.0}) for i, value in enumerate([*xs, *ys])]
    found = fit.polynomial(carried[:5], carried[5:], 2, name="curve")
    for i, source in enumerate(named):
        for k in range(3):
            up, down = fitted(i, size).coefficients[k].value, fitted(i, -size).coefficients[k].value
            slope = ((up or 0.0) - (down or 0.0)) / (2 * size)
            assert found.coefficients[k].contributions.get(source, 0.0) == pytest.approx(slope, rel=1e-6, abs=1e-7)


def test_a_line_covers_its_slope_as_often_as_it_says() -> None:
    """Simulation of the frequentist statement (JCGM 100, G.3.2): t of n − 2 times u, 95 in 100, seeded."""
    from scipy.stats import t

    draws, hits, runs = random.Random(4), 0, 800
    factor = float(t.ppf(0.975, 4))
    for _ in range(runs):
        ys = [1.0 + 2.0 * x + draws.gauss(0.0, 0.3) for x in range(6)]
        slope = fit.line(range(6), ys, name="line").slope
        hits += abs((slope.value or 0.0) - 2.0) <= factor * combined_standard_uncertainty(slope)
    assert hits / runs == pytest.approx(0.95, abs=3 * math.sqrt(0.95 * 0.05 / runs))


RULER = Instrument("ruler", resolution=Size(1.0, MM), absolute=Size(0.5, MM))


def read(*heights: float) -> list[Uncertain]:
    return [observed(y, MM, RULER, session="day 1", reading=str(i)) for i, y in enumerate(heights)]


def sorts(x: Uncertain) -> set[str]:
    return {source.sort for source in x.contributions}


def test_the_steps_of_points_are_in_the_scatter_that_shows_them() -> None:
    """JCGM 100, F.2.2.1 and H.6.3: what resolution adds to a scatter of half a step or more is in it already."""
    scattered = fit.line([1, 2, 3, 4, 5], read(10, 21, 29, 42, 49), "N", name="spring")
    assert scattered.residual_sd > 0.5
    assert sorts(scattered.slope) == {"fit"}


def test_the_steps_of_points_count_where_they_hide_the_scatter() -> None:
    """Five readings on one line: the slope is known to u(step)/√Σ(x − x̄)², never exactly."""
    hidden = fit.line([1, 2, 3, 4, 5], read(10, 20, 30, 40, 50), "N", name="spring")
    assert hidden.residual_sd == 0.0
    assert sorts(hidden.slope) == {"step"}
    assert combined_standard_uncertainty(hidden.slope) == pytest.approx(1 / math.sqrt(12) / math.sqrt(10))


def test_the_height_keeps_the_offset_that_no_scatter_shows() -> None:
    assert "offset" in sorts(fit.line([1, 2, 3, 4, 5], read(10, 21, 29, 42, 49), "N", name="spring").at(3))


def test_two_fits_by_different_names_share_no_scatter() -> None:
    one = fit.line(range(4), [0, 1, 3, 4], name="one").slope
    other = fit.line(range(4), [0, 1, 3, 4], name="other").slope
    assert covariance(one, other) == 0.0
    assert combined_standard_uncertainty(subtract(one, other)) > 0


def test_a_value_of_the_curve_carries_the_error_of_its_x() -> None:
    line = fit.line([0, 1, 2, 3], [0, 2, 4, 6], "s", "mm", name="exact")
    at = line.at(input_quantity(1.5, "s", u=0.1, name="watch"))
    assert (at.value, combined_standard_uncertainty(at), at.unit.symbol) == pytest.approx((3.0, 0.2, "mm"))


def test_temperatures_have_a_slope_in_steps_and_an_intercept_on_the_scale() -> None:
    found = fit.line([0, 1, 2], [20.0, 20.6, 20.9], "min", "°C", name="warming")
    assert found.slope.unit.symbol == "°C/min"
    assert (found.intercept.unit.kind, found.intercept.unit.symbol) == ("absolute", "°C")


def test_minutes_and_seconds_among_the_points_are_one_unit() -> None:
    xs = [input_quantity(x, unit) for x, unit in ((1.0, "min"), (120.0, "s"), (3.0, "min"))]
    assert fit.line(xs, [1, 2, 4], name="mixed").slope.value == pytest.approx(1.5)


def test_decimals_are_taken_as_written() -> None:
    found = fit.line(
        [Decimal("0.1"), Decimal("0.2"), Decimal("0.3")], [Decimal("1.1"), Decimal("1.2"), Decimal("1.3")], name="d"
    )
    assert (found.intercept.value, found.slope.value, found.residual_sd) == (1.0, 1.0, 0.0)


@pytest.mark.parametrize(
    ("xs", "ys", "says"),
    [
        pytest.param([2, 2, 2, 2], [1, 2, 3, 4], "too few apart", id="all at one x"),
        pytest.param([1, 2], [1, 2], "2 points and 2 parameters", id="no degree of freedom"),
        pytest.param([1], [1], "1 points and 2 parameters", id="one point"),
        pytest.param([], [], "0 points", id="none"),
    ],
)
def test_points_that_leave_no_line_are_told(xs: list[int], ys: list[int], says: str) -> None:
    with pytest.raises(NoValue, match=says):
        fit.line(xs, ys, name="line")


def test_a_bound_among_the_points_is_told() -> None:
    with pytest.raises(NoValue, match="only a bound"):
        fit.line([1, 2, 3], [*read(10, 20), replace(read(30)[0], limit="above")], "N", name="line")


def test_points_that_are_no_numbers_are_told() -> None:
    with pytest.raises(MetrologyError, match="nan"):
        fit.line([1, 2, math.nan], [1, 2, 3], name="line")


def test_lists_of_two_lengths_are_told() -> None:
    with pytest.raises(MetrologyError, match="3 values of x beside 2 of y"):
        fit.line([1, 2, 3], [1, 2], name="line")


def test_units_that_differ_are_told() -> None:
    with pytest.raises(UnitError):
        fit.line([1, 2, 3], [input_quantity(1, "g"), input_quantity(2, "s"), input_quantity(3, "g")], name="line")


@pytest.mark.parametrize("unit", ["°C", "dB"])
def test_what_has_no_true_zero_has_no_line_through_it(unit: str) -> None:
    with pytest.raises(UnitError, match="zero there isn't nothing"):
        fit.line_through_origin([1, 2, 3], [1, 2, 3], "s", unit, name="line")


def test_a_power_beyond_reason_is_told() -> None:
    with pytest.raises(MetrologyError, match="power 21"):
        fit.polynomial(range(40), range(40), 21, name="curve")


def test_groups_of_unlike_size_are_one_value_each() -> None:
    """By hand: means 10 and 16, so 13 ± 3; the mean of all six would be 14."""
    found = nested([[9, 11], [15, 16, 16, 17]])
    assert (found.mean, found.u, found.degrees, found.degrees_within) == (13.0, 3.0, 1, 4)
    assert found.s_within == pytest.approx(1.0)  # (2 + 2)/4
    assert found.f == pytest.approx(48.0)  # 2·4² + 4·2² = 48


def test_groups_that_differ_less_than_their_repeats_show_no_part_of_their_own() -> None:
    assert nested([[1, 9], [2, 8], [0, 10]]).between == 0.0


def test_groups_of_one_have_no_scatter_within() -> None:
    found = nested([[1.0], [2.0], [3.0]])
    assert found.u == pytest.approx(1 / math.sqrt(3))
    assert (found.s_within, found.f, found.between) == (None, None, None)


@pytest.mark.parametrize("groups", [[], [[1, 2, 3]], [[1, 2], []]])
def test_one_group_or_an_empty_one_is_told(groups: list[list[int]]) -> None:
    with pytest.raises(MetrologyError, match="one group"):
        nested(groups)


@pytest.mark.parametrize(
    ("observations", "says"), [([[1, 2, 3], [1, 2]], "not equally often"), ([[1], [2]], "one observation"), ([], "one")]
)
def test_observations_not_made_together_are_told(observations: list[list[int]], says: str) -> None:
    with pytest.raises(MetrologyError, match=says):
        from_simultaneous_observations(observations, ["V"] * len(observations), name="bench")


def test_what_is_observed_together_agrees_with_numpy() -> None:
    import numpy as np

    columns = [[5.1, 4.9, 5.3, 5.0], [1.2, 1.1, 1.4, 1.0], [0.3, 0.9, 0.1, 0.4]]
    found = from_simultaneous_observations(columns, ["V", "A", "s"], name="bench")
    expected = np.cov(columns) / 4
    got = [[covariance(a, b) for b in found] for a in found]
    assert np.allclose(got, expected, rtol=1e-12, atol=1e-15)
