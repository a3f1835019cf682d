"""Worked examples from handbooks and open datasets, put through the judge as a campaign would."""

from itertools import combinations
from math import floor

import pytest

from reportgen.judgement.measured import Rules
from reportgen.judgement.reach.convolution import quantile
from reportgen.judgement.reach.parts import NOTHING
from tests.judgement.bench import HIGHER, judged, pair

# Montgomery, Design and Analysis of Experiments: tensile strength (psi) of paper by hardwood content (from memory).
HARDWOOD = {
    "5 %": (7, 8, 15, 11, 9, 10),
    "10 %": (12, 17, 13, 18, 19, 15),
    "15 %": (14, 18, 19, 17, 16, 18),
    "20 %": (19, 25, 22, 23, 18, 20),
}
# R, dataset PlantGrowth (Dobson 1983, An Introduction to Statistical Modelling): dried weight of plants, g.
PLANT_GROWTH = {
    "trt2": (6.31, 5.12, 5.54, 5.50, 5.37, 5.29, 4.92, 6.15, 5.80, 5.26),
    "trt1": (4.81, 4.17, 4.41, 3.59, 5.87, 3.83, 6.03, 4.89, 4.32, 4.69),
    "ctrl": (4.17, 5.58, 5.18, 6.11, 4.50, 4.61, 5.17, 4.53, 5.33, 5.14),
}
# R, dataset sleep (Cushny and Peebles 1905): hours of extra sleep under two drugs, the same ten patients.
SLEEP = {
    "1": (0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0),
    "2": (1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4),
}
# R, package MASS, dataset shoes (Box, Hunter and Hunter 1978): wear of two sole materials, one of each on ten boys.
SHOES = {
    "A": (13.2, 8.2, 10.9, 14.3, 10.7, 6.6, 9.5, 10.8, 8.8, 13.3),
    "B": (14.0, 8.8, 11.2, 14.2, 11.8, 6.4, 9.8, 11.3, 9.3, 13.6),
}
TEN = tuple(str(n) for n in range(10))


@pytest.mark.parametrize(("degrees", "t"), [(1, 12.71), (2, 4.30), (3, 3.18), (5, 2.57), (10, 2.23)])
def test_student_factors_are_those_of_the_gum(degrees, t):
    # JCGM 100:2008, table G.2, p = 95 %
    assert quantile(0.95, 1.0, degrees, NOTHING) == pytest.approx(t, abs=0.005)


def test_hardwood_means_and_pooled_scatter():
    found = judged(HARDWOOD, HIGHER)
    assert [round(sum(v) / 6, 3) for v in HARDWOOD.values()] == [10.000, 15.667, 17.000, 21.167]
    assert found.scatter.sd == pytest.approx(2.551, abs=0.0005)
    assert found.scatter.degrees == 20


def test_all_hardwood_pairs_differ_but_ten_and_fifteen_per_cent():
    found = judged(HARDWOOD, HIGHER)
    unresolved = [(p.first, p.second) for p in found.pairs if not p.resolved]
    assert unresolved == [("10 %", "15 %")]
    assert found.first.winner == "20 %"
    assert found.ranks == {"5 %": (4, 4), "10 %": (2, 3), "15 %": (2, 3), "20 %": (1, 1)}


def test_hardwood_half_width_is_tukeys():
    # q(4, 20) = 3.96, so q·s/√6 = 4.12
    tied = pair(judged(HARDWOOD, HIGHER), "10 %", "15 %")
    assert (tied.high - tied.low) / 2 == pytest.approx(3.96 * 2.551 / 6**0.5, abs=0.005)


@pytest.mark.parametrize(
    ("first", "second", "difference", "low", "high"),
    [
        ("trt1", "ctrl", -0.371, -1.062, 0.320),
        ("trt2", "ctrl", 0.494, -0.197, 1.185),
        ("trt2", "trt1", 0.865, 0.174, 1.556),
    ],
)
def test_plant_growth_intervals_are_those_r_prints(first, second, difference, low, high):
    # R, TukeyHSD(aov(weight ~ group, PlantGrowth))
    found = pair(judged(PLANT_GROWTH, HIGHER), first, second)
    assert found.adjusted
    assert (found.difference, found.low, found.high) == pytest.approx((difference, low, high), abs=0.0005)


def test_plant_growth_has_no_sole_winner_but_one_that_cannot_be_first():
    found = judged(PLANT_GROWTH, HIGHER)
    assert found.first.winner is None
    assert found.first.may_be_first == ("trt2", "ctrl")


def test_sleep_under_own_scatter_is_welchs_interval_with_degrees_truncated():
    # R, t.test(extra ~ group, sleep): t = −1.8608, ν = 17.776; JCGM 100, G.4.1 truncates to 17
    found = pair(judged(SLEEP, Rules("higher", scatter="own")), "1", "2")
    assert found.difference / found.u == pytest.approx(-1.8608, abs=0.00005)
    assert (found.high - found.low) / 2 / found.u == pytest.approx(
        2.1098, abs=0.00005
    )  # t(17), JCGM 100 table G.2: 2.11
    assert not found.resolved


def test_sleep_in_rounds_is_the_paired_interval():
    # R, t.test(..., paired = TRUE): t = −4.0621, ν = 9
    found = judged(SLEEP, Rules("higher", scatter="own", rounds=True), rounds=TEN)
    assert found.pairs[0].difference / found.pairs[0].u == pytest.approx(-4.0621, abs=0.00005)
    assert found.first.winner == "2"


@pytest.mark.parametrize("scatter", ["common", "own"])
def test_shoes_in_rounds_differ_and_ignoring_rounds_do_not(scatter):
    # R, t.test(A, B, paired = TRUE): mean 0.41, t 3.349, 95 % interval 0.133 to 0.687; unpaired p = .716
    rounds = judged(SHOES, Rules("lower", scatter=scatter, rounds=True), rounds=TEN).pairs[0]
    assert rounds.difference / rounds.u == pytest.approx(-3.349, abs=0.0005)
    assert (rounds.low, rounds.high) == pytest.approx((-0.687, -0.133), abs=0.0005)
    assert rounds.favours == "A"
    assert judged(SHOES, Rules("lower", scatter=scatter)).pairs[0].decision == "too close to call"


def test_shoes_with_gaps_agree_with_an_independent_least_squares():
    # statsmodels OLS on contender and block as the second witness
    import numpy as np
    import statsmodels.api as sm

    from reportgen.judgement.judging import judge
    from tests.judgement.bench import result

    kept = {"A": range(8), "B": range(2, 10)}
    found = judge(
        [
            result(name, *(SHOES[name][i] for i in kept[name]), rounds=tuple(TEN[i] for i in kept[name]))
            for name in ("A", "B")
        ],
        Rules("lower", rounds=True),
    ).pairs[0]
    rows = [(name == "A", i, SHOES[name][i]) for name in kept for i in kept[name]]
    design = np.array([[is_a, *(i == j for j in range(10))] for is_a, i, _ in rows], dtype=float)
    witness = sm.OLS(np.array([x for _, _, x in rows]), design).fit()
    assert found.difference == pytest.approx(witness.params[0])
    assert (found.low, found.high) == pytest.approx(tuple(witness.conf_int()[0]))


@pytest.mark.parametrize("seed", range(12))
def test_pairs_agree_with_scipys_tukey_hsd(seed):
    import numpy as np
    from scipy.stats import tukey_hsd

    draw = np.random.default_rng(seed)
    sizes = draw.integers(2, 7, size=int(draw.integers(3, 6)))  # unequal: Kramer's form
    passes = {str(i): draw.normal(draw.choice([0, 2]), 1, n) for i, n in enumerate(sizes)}
    witness = tukey_hsd(*passes.values()).confidence_interval(0.95)
    found = judged(passes, HIGHER)
    compared = 0
    for (i, j), p in zip(combinations(range(len(sizes)), 2), found.pairs, strict=True):
        if p.adjusted:  # a winner's pairs print the unadjusted interval
            compared += 1
            assert (p.low, p.high) == pytest.approx((witness.low[i, j], witness.high[i, j]), abs=1e-5)
            assert p.resolved == (witness.low[i, j] > 0 or witness.high[i, j] < 0)
    assert compared


@pytest.mark.parametrize("seed", range(8))
def test_own_scatter_agrees_with_scipys_welch_once_its_degrees_are_truncated(seed):
    import numpy as np
    from scipy.stats import t, ttest_ind

    draw = np.random.default_rng(seed)
    passes = {"a": draw.normal(0, 1, 6), "b": draw.normal(1, 4, 6)}
    witness = ttest_ind(*passes.values(), equal_var=False)
    found = judged(passes, Rules("lower", scatter="own")).pairs[0]
    assert found.difference / found.u == pytest.approx(witness.statistic)
    assert (found.high - found.low) / 2 == pytest.approx(found.u * t.ppf(0.975, floor(witness.df)))


def test_studentized_range_agrees_with_scipy():
    from scipy.stats import studentized_range as witness

    from reportgen.judgement.simultaneous import studentized_range

    for means, degrees in [(3, 1), (4, 8), (12, 2), (40, 80)]:
        assert studentized_range(0.95, means, degrees) == pytest.approx(witness.ppf(0.95, means, degrees), rel=1e-8)
