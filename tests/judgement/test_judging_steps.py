"""Coarse scales: what rounding alone can do, and what it may not decide."""

from math import sqrt

import pytest

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Rules
from reportgen.judgement.reach.convolution import quantile
from reportgen.judgement.reach.parts import Parts
from reportgen.judgement.rounding_alone import chance_of_lead, floor_of_lead, least_lead
from reportgen.metrology.uncertain import Source
from tests.judgement.bench import LOWER, judged, result

# The B-spline of order 2m at whole numbers (Feller II, I.9); the cases m = 2 and 3 by hand: 1/3, 54/120 and 2/120.
TABLE = {
    2: (0.33, 0.0, 2),
    3: (0.45, 0.017, 2),
    4: (0.52, 0.048, 2),
    5: (0.57, 0.083, 3),
    6: (0.61, 0.118, 3),
    8: (0.66, 0.18, 3),
    10: (0.69, 0.24, 3),
    12: (0.72, 0.28, 4),
}


@pytest.mark.parametrize("m", TABLE)
def test_rounding_alone_parts_equal_totals_as_the_spline_says(m):
    one, two, least = TABLE[m]
    assert chance_of_lead(1, 2 * m) == pytest.approx(one, abs=0.005)
    assert chance_of_lead(2, 2 * m) == pytest.approx(two, abs=0.005 if m >= 8 else 0.0006)
    assert least_lead(m) == least


def test_two_totals_of_two_readings_differ_by_a_step_in_exactly_one_case_of_three():
    assert chance_of_lead(1, 4) == pytest.approx(1 / 3, abs=1e-15)
    assert chance_of_lead(2, 8) == pytest.approx(0.0480, abs=0.0001)  # exact combinatorics: 242/5040


def test_the_spline_is_what_rounding_does_to_simulated_totals():
    # Two evenings weighed before and after on a scale of step 1: equal true totals, parted differently, rounded one by one
    import numpy as np

    draw = np.random.default_rng(5)
    first_evening, starts = draw.uniform(3, 10, (2, 40_000)), draw.uniform(0, 1, (2, 2, 40_000))
    burned = first_evening, draw.uniform(13, 14, 40_000) - first_evening
    totals = sum(np.round(starts[:, i] + burned[i]) - np.round(starts[:, i]) for i in range(2))
    apart = np.abs(totals[0] - totals[1])
    assert (apart >= 1).mean() == pytest.approx(chance_of_lead(1, 8), abs=0.01)
    assert (apart >= 2).mean() == pytest.approx(chance_of_lead(2, 8), abs=0.005)


def test_many_readings_go_over_to_the_normal_density_without_a_jump():
    assert chance_of_lead(6, 120) == pytest.approx(chance_of_lead(6, 121), abs=0.003)


def test_one_reading_each_needs_two_steps():
    assert floor_of_lead((0.5,), (0.5,)) == 0.5


def test_a_lead_of_one_step_over_passes_that_never_vary_is_a_tie():
    found = judged({"a": (14, 14, 14), "b": (15, 15, 15)}, LOWER, steps=(1.0,))
    assert found.pairs[0].decision == "too close to call"
    assert found.pairs[0].settle.finer
    assert found.first.winner is None


def test_a_lead_of_many_steps_over_passes_that_never_vary_counts():
    assert judged({"a": (14, 14, 14), "b": (19, 19, 19)}, LOWER, steps=(1.0,)).first.winner == "a"


def test_resolution_is_not_added_twice_where_the_scatter_shows_it():
    passes = {"a": (1, 2, 3), "b": (4, 5, 6)}
    with_step, without = (judged(passes, LOWER, steps=s).pairs[0] for s in ((1.0,), ()))
    assert (with_step.low, with_step.u) == (without.low, without.u)


def test_resolution_joins_a_scatter_under_half_a_step():
    # JCGM 100, H.6: resolution enters beside scatter; R = δ²/12 for each result, whatever the number of passes
    found = judged({"a": (10.0, 10.2, 10.0), "b": (20.0, 20.2, 20.0)}, LOWER, steps=(1.0,)).pairs[0]
    s2 = 0.2**2 / 3
    assert found.u == pytest.approx(sqrt(2 * s2 / 3 + 2 / 12))


def test_a_single_result_on_a_coarse_scale_says_at_least():
    # JCGM 100, F.2.2.1: u = δ/(2√3) for a reading that a step of δ hides
    found = judged({"a": (14, 14, 14), "b": (19, 19, 19)}, LOWER, steps=(1.0,)).singles["a"]
    assert found.at_least
    assert found.u == pytest.approx(1 / sqrt(12))
    assert found.low < 13.5
    assert found.high > 14.5


def test_passes_on_two_neighbouring_steps_scatter_by_the_step_alone():
    # Sheppard 1898: rounding adds δ²/12 to a variance. Three passes on 14, 14, 15: s² = 1/3 = 1/12 + (1/2)²
    found = judged({"a": (14, 14, 15), "b": (19, 19, 20)}, LOWER, steps=(1.0,)).singles["a"]
    assert found.at_least
    wider = judged({"a": (14, 14, 16), "b": (19, 19, 20)}, LOWER, steps=(1.0,)).singles["a"]
    assert not wider.at_least


def test_one_step_between_two_single_readings_is_not_a_difference_in_this_run():
    found = judged({"a": (14,), "b": (15,), "c": (16,)}, LOWER, steps=(1.0,))
    assert [p.differed for p in found.pairs] == [False, True, False]


def test_the_table_decides_single_totals_of_five_readings():
    steps = (1.0,) * 5
    found = judged({"a": (20,), "b": (22,), "c": (23,)}, LOWER, steps=steps)
    assert [p.differed for p in found.pairs] == [False, True, False]


def test_other_parts_widen_the_interval_of_this_run():
    unshared = {Source("accuracy", "scale", "1"): 1.0}, {Source("accuracy", "scale", "2"): 1.0}
    found = judge(
        [result(n, x, steps=(1.0,), contributions=c) for n, x, c in zip("ab", (14, 16), unshared, strict=True)], LOWER
    ).pairs[0]
    assert found.differed is False
    assert found.differed_low < 14 - 16 - 1.96


def test_sums_of_uniform_parts_have_the_quantiles_of_the_supplement():
    # JCGM 101:2008, 9.2.3: four rectangular inputs of unit variance, shortest 95 % interval ±3.88
    four = Parts((sqrt(3.0),) * 4)
    assert quantile(0.95, 0.0, 1.0, four) == pytest.approx(3.879, abs=0.001)
    # 9.2.4: one of them ten times wider, ±17.0
    assert quantile(0.95, 0.0, 1.0, Parts((10 * sqrt(3.0), *(sqrt(3.0),) * 3))) == pytest.approx(17.0, abs=0.05)


@pytest.mark.parametrize(("degrees", "width"), [(2, 0.5), (8, 3.0), (8, 20.0), (20, 200.0)])
def test_student_beside_a_uniform_part_agrees_with_direct_integration(degrees, width):
    from scipy.integrate import quad
    from scipy.special import stdtr

    h = quantile(0.95, 1.0, degrees, Parts((width,)))
    inside = quad(lambda b: 2 * stdtr(degrees, h - b) - 1, -width, width, points=[h] if h < width else None, limit=200)
    assert inside[0] / (2 * width) == pytest.approx(0.95, abs=2e-5)


def test_an_unshared_accuracy_is_convolved_and_not_multiplied_by_t():
    parts = {"a": {Source("accuracy", "x", "1"): 1.0}, "b": {Source("accuracy", "x", "2"): 1.0}}
    passes = {"a": (0.0, 1.0), "b": (5.0, 6.0)}
    found = judge([result(n, *v, contributions=parts[n]) for n, v in passes.items()], Rules("lower")).pairs[0]
    half = (found.high - found.low) / 2
    t = 4.302653  # t(2)
    assert t * sqrt(0.5) < half < t * found.u
    assert half == pytest.approx(quantile(0.95, sqrt(0.5), 2, Parts((sqrt(3), sqrt(3)))))
