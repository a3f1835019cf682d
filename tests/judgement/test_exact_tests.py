"""The exact tests and limits of what is counted, beside SciPy and statsmodels over many seeds."""

import random
from itertools import combinations

import numpy as np
import pytest
from scipy import stats
from statsmodels.stats.proportion import proportion_confint
from statsmodels.stats.rates import confint_poisson

from reportgen.judgement.exact.boschloo import boschloo, extreme
from reportgen.judgement.exact.exact_limits import rate_interval, share_interval
from reportgen.judgement.exact.planned import grades_for, tries_for
from reportgen.judgement.exact.rank_sum import rank_sum
from reportgen.judgement.exact.rates_compared import greater_rate
from reportgen.judgement.exact.shares import Tried, judge_shares


@pytest.mark.parametrize("seed", range(60))
def test_boschloo_agrees_with_scipy(seed):
    draw = random.Random(seed)
    of, other_of = draw.randint(1, 16), draw.randint(1, 16)
    yes, other = draw.randint(0, of), draw.randint(0, other_of)
    found = stats.boschloo_exact([[yes, other], [of - yes, other_of - other]], alternative="greater", n=64)
    assert boschloo(yes, of, other, other_of) == pytest.approx(found.pvalue, abs=1e-6)


@pytest.mark.parametrize(("of", "other_of"), [(1, 1), (2, 2), (3, 3), (2, 5), (1, 20)])
def test_no_outcome_has_a_smaller_p_than_all_against_none(of, other_of):
    every = [boschloo(x, of, y, other_of) for x in range(of + 1) for y in range(other_of + 1)]
    assert min(every) == pytest.approx(extreme(of, other_of), abs=1e-9)


def test_boschloo_is_never_above_fisher_and_beyond_some_hundreds_is_fisher():
    for yes, other in ((9, 3), (20, 15), (30, 20)):
        table = [[yes, other], [30 - yes, 30 - other]]
        assert boschloo(yes, 30, other, 30) <= stats.fisher_exact(table, alternative="greater").pvalue + 1e-12
    many = [[300, 250], [200, 250]]
    assert boschloo(300, 500, 250, 500) == pytest.approx(stats.fisher_exact(many, alternative="greater").pvalue)


@pytest.mark.parametrize("seed", range(40))
def test_the_rank_sum_with_ties_is_that_of_all_permutations(seed):
    draw = random.Random(seed)
    first = [draw.randint(0, 3) for _ in range(draw.randint(1, 5))]
    second = [draw.randint(0, 3) for _ in range(draw.randint(1, 5))]
    ranks = stats.rankdata([*first, *second])
    seen = sum(ranks[: len(first)])
    dealt = [sum(ranks[i] for i in taken) for taken in combinations(range(len(ranks)), len(first))]
    assert rank_sum(first, second) == pytest.approx(sum(s >= seen - 1e-9 for s in dealt) / len(dealt))


@pytest.mark.parametrize("seed", range(20))
def test_without_ties_the_rank_sum_is_scipys(seed):
    draw = random.Random(seed)
    values = draw.sample(range(100), 11)
    found = stats.mannwhitneyu(values[:5], values[5:], alternative="greater", method="exact")
    assert rank_sum(values[:5], values[5:]) == pytest.approx(found.pvalue)


@pytest.mark.parametrize("seed", range(40))
def test_limits_are_those_of_statsmodels(seed):
    draw = random.Random(seed)
    of = draw.randint(1, 200)
    yes = draw.randint(0, of)
    assert share_interval(yes, of) == pytest.approx(proportion_confint(yes, of, method="beta"), abs=1e-9)
    events, exposure = draw.randint(0, 60), draw.uniform(0.5, 20)
    assert rate_interval(events, exposure) == pytest.approx(
        confint_poisson(events, exposure, method="exact-c"), abs=1e-9
    )


@pytest.mark.parametrize("seed", range(40))
def test_a_greater_rate_is_a_binomial_test_given_the_total(seed):
    draw = random.Random(seed)
    events, other = draw.randint(0, 20), draw.randint(1, 20)
    mine, its = draw.uniform(0.5, 9), draw.uniform(0.5, 9)
    found = stats.binomtest(events, events + other, mine / (mine + its), alternative="greater")
    assert greater_rate(events, mine, other, its) == pytest.approx(found.pvalue)


@pytest.mark.parametrize("wrong", [(0, 0), (4, 3), (-1, 3)])
def test_what_is_no_share_of_tries_is_refused(wrong):
    with pytest.raises(ValueError, match="share"):
        share_interval(*wrong)
    with pytest.raises(ValueError, match="share"):
        boschloo(*wrong, 1, 3)


def test_events_over_nothing_are_refused():
    with pytest.raises(ValueError, match="rate"):
        rate_interval(3, 0.0)
    with pytest.raises(ValueError, match="rate"):
        greater_rate(3, 1.0, 2, 0.0)
    with pytest.raises(ValueError, match="values"):
        rank_sum([], [1])


def test_planned_tries_reach_the_power_they_are_planned_for():
    """By scipy's exact power of Boschloo's test at 2.5 %: 80 %, give or take the steps of a discrete test."""
    share, other = 0.9, 0.5  # twenty, says Boschloo; nineteen, the arcsine
    n = tries_for(share, other)
    mine, its = stats.binom(n, share), stats.binom(n, other)
    power = sum(mine.pmf(x) * its.pmf(y) for x in range(n + 1) for y in range(n + 1) if boschloo(x, n, y, n) <= 0.025)
    assert 0.8 <= power < 0.86


def test_nothing_is_planned_where_nothing_differs():
    assert tries_for(0.5, 0.5) is None
    assert grades_for(0.5) is None


@pytest.mark.parametrize("grades", [3, 5, 10_000])
def test_of_more_grades_than_can_be_dealt_out_the_normal_distribution_tells(grades):
    # scipy.stats.mannwhitneyu, method "asymptotic", with continuity and ties, as witness
    rng = np.random.default_rng(5)
    first, second = (rng.integers(0, grades, 200) + shift * grades / 10 for shift in (1, 0))
    first = np.floor(first)
    found = stats.mannwhitneyu(first, second, alternative="greater", method="asymptotic")
    assert rank_sum(first.tolist(), second.tolist()) == pytest.approx(found.pvalue, rel=0.02)
    assert rank_sum([1] * 400 + [0], [1] * 1400) > 0.5


def test_of_as_many_as_can_be_dealt_out_both_ways_agree(monkeypatch):
    # the continuity-corrected normal is good to some 0.001 at such sizes (Lehmann 1975, 1.3; common practice)
    rng = np.random.default_rng(6)
    first, second = rng.integers(0, 6, 60).tolist(), rng.integers(0, 5, 60).tolist()
    exact = rank_sum(first, second)
    monkeypatch.setattr("reportgen.judgement.exact.rank_sum.SUMS", 0)
    assert rank_sum(first, second) == pytest.approx(exact, abs=0.001)


def test_all_of_one_grade_say_nothing():
    assert rank_sum([2, 2, 2], [2, 2]) == 1.0


def test_what_would_settle_it_asks_no_more_of_who_was_tried_often():
    """Ten of ten against none of one: some more tries of the one, not eleven of each."""
    (pair,) = judge_shares([Tried("often", 10, 10), Tried("once", 0, 1)], "higher").pairs
    assert pair.settle is not None
    assert pair.settle.passes == tries_for(1.0, 0.0) == 3
