"""How often the rules name a winner, by simulation through the judge itself.

The expected rates come from 20,000 and more runs a cell of an independent simulation of the published rules (Gutmann and
Maymin 1987 for first place); each check allows three binomial standard deviations, or a bound of 5 % and as much.
"""

from itertools import combinations
from math import sqrt

import numpy as np
import pytest

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Measured, Rules
from reportgen.metrology.uncertain import Source
from tests.judgement.bench import LOWER, judged

RUNS = 700


def winners(leads, sds, n, rules=LOWER, runs=RUNS, seed=7, step=0.0, accuracy=0.0):
    """Share of runs that name each contender; `leads` are below the level of the rest, in the unit of `sds`."""
    draw = np.random.default_rng(seed)
    named = np.zeros(len(leads))
    steps = (step,) if step else ()
    for _ in range(runs):
        passes = draw.normal(20.0 - np.array(leads)[:, None], np.array(sds)[:, None], (len(leads), n))
        if accuracy:
            passes += draw.uniform(-accuracy, accuracy, (len(leads), 1)) * sqrt(3)
        if step:
            passes = np.round((passes + draw.uniform(0, step)) / step) * step
        found = judge(
            [
                Measured(
                    str(i),
                    float(v.mean()),
                    tuple(v.tolist()),
                    {Source("accuracy", "meter", str(i)): accuracy} if accuracy else {},
                    steps,
                )
                for i, v in enumerate(passes)
            ],
            rules,
        )
        if found.first.winner:
            named[int(found.first.winner)] += 1
    return named / runs


def spread(rate, runs=RUNS):
    return 3 * sqrt(rate * (1 - rate) / runs)


def test_four_equals_have_a_false_winner_in_about_one_campaign_of_a_hundred():
    rate = winners((0, 0, 0, 0), (1, 1, 1, 1), 3).sum()
    assert rate == pytest.approx(0.011, abs=spread(0.011))


def test_two_best_alike_have_a_false_winner_in_at_most_one_of_twenty():
    rate = winners((9, 9, 0, 0), (1, 1, 1, 1), 3).sum()
    assert rate == pytest.approx(0.050, abs=spread(0.05))


def test_a_lead_of_two_sd_over_three_equals_is_named_in_about_a_third_of_campaigns():
    named = winners((2, 0, 0, 0), (1, 1, 1, 1), 3)
    assert named[0] == pytest.approx(0.36, abs=spread(0.36))
    assert named[1:].sum() < 0.005


def test_five_passes_name_it_in_about_two_thirds():
    assert winners((2, 0, 0, 0), (1, 1, 1, 1), 5)[0] == pytest.approx(0.69, abs=spread(0.69))


def test_a_step_of_one_sd_keeps_the_guarantee_and_the_power():
    assert winners((9, 9, 0, 0), (1, 1, 1, 1), 3, step=1.0).sum() <= 0.053 + spread(0.053)
    assert winners((2, 0, 0, 0), (1, 1, 1, 1), 3, step=1.0)[0] == pytest.approx(0.34, abs=spread(0.34) + 0.01)


@pytest.mark.parametrize("ratio", [3, 50])
def test_own_scatter_keeps_the_guarantee_at_any_ratio(ratio):
    rate = winners((0, 0, 0, 0), (1, ratio, 1, 1), 3, Rules("lower", scatter="own")).sum()
    assert rate <= 0.051 + spread(0.051)
    two = winners((0, 0), (1, ratio), 5, Rules("lower", scatter="own")).sum()
    assert two == pytest.approx(0.05, abs=spread(0.05) + 0.002)


def test_an_unshared_accuracy_of_one_sd_keeps_the_guarantee():
    rate = winners((9, 9, 0, 0), (1, 1, 1, 1), 3, accuracy=1.0, runs=250).sum()
    assert rate == pytest.approx(0.044, abs=spread(0.044, 250))


def test_passes_that_do_not_overlap_by_luck_are_not_a_winner_for_that_alone():
    # Exact combinatorics: of four alike with three passes each, one holds the three lowest in 4 of 220 orders; of two
    # with two passes, passes don't overlap in 1 of 3.
    lowest = [c for c in combinations(range(12), 3) if c == (0, 1, 2)]
    assert 4 * len(lowest) / len(list(combinations(range(12), 3))) == pytest.approx(4 / 220)
    apart = [c for c in combinations(range(4), 2) if c in ((0, 1), (2, 3))]
    assert len(apart) / len(list(combinations(range(4), 2))) == pytest.approx(1 / 3)
    assert judged({"a": (1, 2), "b": (3, 4)}, LOWER).first.winner is None
    lucky = {"a": (0, 7, 8), "b": (9, 10, 20), "c": (11, 15, 19), "d": (12, 16, 18)}
    assert judged(lucky, LOWER).first.winner is None
    assert judged({**lucky, "a": (0, 1, 2)}, LOWER).first.winner == "a"


def test_two_passes_apart_by_luck_name_a_winner_at_the_nominal_rate_only():
    # Of two alike with two passes each a third don't overlap; the judge may name one in a twentieth.
    assert winners((0, 0), (1, 1), 2).sum() == pytest.approx(0.05, abs=spread(0.05))
