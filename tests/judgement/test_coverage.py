"""95 % intervals hold the truth about as often as they say: some corners of the bench's, small enough for every run.

The targets are the project's own (at least 94 %; at most 96.5 % where nothing coarse makes an interval wider); each check
allows three standard errors. All corners at full size: `tests/bench/coverage.py`.
"""

import numpy as np
import pytest

from reportgen.judgement.judging import judge
from reportgen.judgement.reach.convolution import quantile
from reportgen.judgement.reach.parts import Parts
from tests.judgement import coverage
from tests.judgement.coverage import Corner, campaigns, of_differences, of_singles, singles

RUNS = 2000
FINE = [
    Corner(2),
    Corner(3, 0.1),
    Corner(5, 0.5),
    Corner(3, 0.1, "own"),
    Corner(10, 0.01, "own"),
    Corner(3, scatter="relative"),
]


@pytest.mark.parametrize("corner", FINE, ids=str)
def test_intervals_of_results_on_a_fine_scale_hold_what_they_say(corner):
    found = of_singles(corner, RUNS, seed=1)
    assert found.intervals == 2 * RUNS
    assert 0.94 - 3 * found.error < found.share < 0.965 + 3 * found.error
    assert found.error < 0.006


@pytest.mark.parametrize(
    "corner",
    [
        Corner(2, 1.0),
        Corner(10, 1.0, "own"),
        Corner(3, 2.0, offset=2.0),
        Corner(2, 0.5, "own", offset=1.0, gain=0.05),
        Corner(5, 0.1, offset=2.0, gain=0.05),
    ],
    ids=str,
)
def test_intervals_of_results_are_never_too_short(corner):
    found = of_singles(corner, RUNS, seed=2)
    assert 0.94 - 3 * found.error < found.share


@pytest.mark.parametrize("scatter", ["common", "own"])
def test_a_step_of_five_sd_is_said_to_hold_at_least_that_much_and_does(scatter):
    # An interval that holds 95 % of such readings cannot be tight, as one step may never decide
    found = of_singles(Corner(3, 5.0, scatter), 500, seed=3)
    assert found.at_least > 0.9
    assert found.share > 0.99


def test_intervals_of_products_that_are_drawn_hold_what_they_say_and_reach_further_up():
    # three factors, each known to 20 %: far too bent for first order, whose ends lie alike on either side
    corner = Corner(3, factors=0.2)
    found = of_singles(corner, 60, seed=4)
    assert 0.94 - 3 * found.error < found.share
    (campaign,) = campaigns(corner, 1, seed=4)
    for one, (low, high, _) in zip(campaign.measured, singles(campaign, corner.rules), strict=True):
        assert high - one.value > 1.3 * (one.value - low)


@pytest.mark.parametrize(
    "corner",
    [
        Corner(3),
        Corner(2, 0.5),
        Corner(3, 1.0, "own", offset=2.0, gain=0.05),
        Corner(10, scatter="relative", apart=10.0),
        Corner(3, scatter="relative", apart=3.0, gain=0.05),
    ],
    ids=str,
)
def test_intervals_of_differences_hold_what_they_say(corner):
    # relative: a difference has the uncertainty of the level besides that of the ratio, else 1 : 10 is held in 87 % only
    found = of_differences(corner, 1200, seed=5)
    assert 0.94 - 3 * found.error < found.share


@pytest.mark.parametrize(
    "corner", [Corner(3, 0.5, offset=1.0), Corner(2, scatter="own"), Corner(4, scatter="relative")]
)
def test_what_is_simulated_is_what_judge_says(corner):
    for campaign in campaigns(corner, 20, seed=6):
        found = judge(campaign.measured, corner.rules).singles
        assert [(s.low, s.high, s.at_least) for s in found.values()] == list(singles(campaign, corner.rules))


def test_half_widths_looked_up_are_the_program_s_to_a_thousandth():
    draw = np.random.default_rng(7)
    with coverage.remembered_quantiles():
        from reportgen.judgement import single

        for _ in range(60):
            parts = Parts(uniform=tuple(sorted(draw.uniform(0.1, 2.0, draw.integers(1, 3)).tolist(), reverse=True)))
            root, degrees = float(10 ** draw.uniform(-2, 2)), int(draw.integers(1, 10))
            looked_up = single.quantile(0.95, root, degrees, parts)  # type: ignore[attr-defined]
            assert looked_up != quantile(0.95, root, degrees, parts)
            assert looked_up == pytest.approx(quantile(0.95, root, degrees, parts), rel=2e-3)
