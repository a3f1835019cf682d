"""Whether passes look as was assumed: one that scatters further, one that stands apart, all that climb, a stated scatter
that they contradict. Checked against tables of ISO 5725-2, scipy and statsmodels; rates by simulation."""

from math import sqrt

import numpy as np
import pandas as pd
import pytest
from scipy import stats

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import DeclaredScatter, Measured, Rules
from reportgen.judgement.passes.seen import at_odds, passes_seen
from reportgen.judgement.passes.stood_apart import cochran_critical, grubbs_critical, pass_apart, uneven
from reportgen.judgement.passes.trend import common_trend
from tests.judgement.bench import LOWER, result

RUNS = 2000


@pytest.mark.parametrize(
    ("contenders", "passes", "level", "critical"),
    [(4, 3, 0.05, 0.768), (4, 3, 0.01, 0.864), (8, 3, 0.05, 0.516), (8, 3, 0.01, 0.615), (2, 2, 0.05, 0.998)],
)
def test_cochrans_critical_values_are_those_of_the_standard(contenders, passes, level, critical):
    # ISO 5725-2:1994, table 4 (three decimals; from memory, as CHECKS has them)
    assert cochran_critical(contenders, passes, level) == pytest.approx(critical, abs=0.0006)


@pytest.mark.parametrize(("passes", "five", "one"), [(5, 1.715, 1.764), (6, 1.887, 1.973), (10, 2.290, 2.482)])
def test_grubbs_critical_values_are_those_of_the_standard(passes, five, one):
    # ISO 5725-2:1994, table 5, one outlying observation (three decimals; from memory, as CHECKS has them)
    assert grubbs_critical(passes, 0.05) == pytest.approx(five, abs=0.0006)
    assert grubbs_critical(passes, 0.01) == pytest.approx(one, abs=0.0006)


def test_cochrans_statistic_is_the_largest_of_all_squares_and_its_chance_agrees_with_the_table():
    # By hand: variances 1, 1, 1 and x of three passes; C = x/(3 + x). At the table's .864 the chance is 1 %.
    c = cochran_critical(4, 3, 0.01)
    wide = sqrt(3 * c / (1 - c))
    found = uneven({**dict.fromkeys("abc", (9, 10, 11)), "d": (10 - wide, 10, 10 + wide)})
    assert (found.name, found.share) == ("d", pytest.approx(c))
    assert found.p == pytest.approx(0.01, rel=1e-9)
    assert (found.sd, found.others) == pytest.approx((wide, 1.0))


def test_grubbs_chance_agrees_with_its_table():
    # Five values, one so far out that G is the 1 % value: by hand G² = n(n−1)·off²/… from the definition, solved by scipy
    from scipy.optimize import brentq

    def g(out):
        values = np.array([-1.0, 0.5, 1.0, -0.5, out])
        return abs(values - values.mean()).max() / values.std(ddof=1)

    out = brentq(lambda x: g(x) - grubbs_critical(5, 0.01), 5, 500)
    found = pass_apart({"a": (-1.0, 0.5, 1.0, -0.5, out)})
    assert (found.name, found.at, found.value) == ("a", 4, out)
    assert found.p == pytest.approx(0.01, rel=1e-6)


@pytest.mark.parametrize("seed", range(10))
def test_a_pass_that_stands_apart_is_judged_as_statsmodels_judges_outliers(seed):
    # statsmodels: externally studentized residuals of the one-way layout, Bonferroni's factor for the number of passes
    from statsmodels.formula.api import ols

    draw = np.random.default_rng(seed)
    passes = {name: draw.normal(5, 1, 4).tolist() for name in "abc"}
    rows = {"y": [x for v in passes.values() for x in v], "who": [n for n, v in passes.items() for _ in v]}
    data = pd.DataFrame(rows)
    table = ols("y ~ who", data).fit().outlier_test(method="bonf", order=False)
    found = pass_apart(passes)
    assert found.p == pytest.approx(min(1.0, float(np.min(table["bonf(p)"]))), rel=1e-9)
    assert data["y"][int(np.argmin(table["unadj_p"]))] == found.value


@pytest.mark.parametrize("seed", range(10))
def test_a_common_trend_is_the_slope_of_the_analysis_of_covariance(seed):
    from statsmodels.formula.api import ols
    from statsmodels.stats.anova import anova_lm

    draw = np.random.default_rng(seed)
    passes = {
        name: (draw.normal(5, 1, n) + 0.7 * np.arange(n)).tolist() for name, n in zip("abcd", (3, 3, 4, 5), strict=True)
    }
    rows = {
        "y": [x for v in passes.values() for x in v],
        "who": [n for n, v in passes.items() for _ in v],
        "pass_": [i for v in passes.values() for i, _ in enumerate(v)],
    }
    data = pd.DataFrame(rows)
    fitted = ols("y ~ who + pass_", data).fit()
    row = anova_lm(fitted, typ=2).loc["pass_"]
    found = common_trend(passes.values())
    assert found.slope == pytest.approx(fitted.params["pass_"], rel=1e-9)
    assert (found.f, found.p) == pytest.approx((row["F"], row["PR(>F)"]), rel=1e-6)
    assert found.degrees == fitted.df_resid


def test_a_stated_scatter_is_held_against_passes_by_f():
    # NIST/SEMATECH e-Handbook 1.3.5.9 gives F = s₁²/s₂²; the two-sided chance by scipy
    found = at_odds(3.0, 6, DeclaredScatter(1.0, 20))
    assert found.f == pytest.approx(9.0)
    assert found.p == pytest.approx(2 * stats.f.sf(9.0, 6, 20), rel=1e-9)
    small = at_odds(0.2, 6, DeclaredScatter(1.0, 20))
    assert small.p == pytest.approx(2 * stats.f.cdf(0.04, 6, 20), rel=1e-9)
    assert at_odds(0.2, 6, DeclaredScatter(1.0, 20), rounding=1 / 12).p > small.p  # steps make no scatter smaller


def test_all_four_are_silent_in_ninety_nine_of_a_hundred_campaigns_without_cause():
    """Each test at 1 %: of 2000 campaigns of equals no more than 20 and three binomial deviations say something."""
    draw = np.random.default_rng(3)
    said = dict.fromkeys(("uneven", "apart", "trend", "at_odds"), 0)
    rules = Rules("lower", declared=DeclaredScatter(1.0, 10**6))
    for _ in range(RUNS):
        found = passes_seen([result(n, *draw.normal(20, 1, 3)) for n in "abcd"], rules)
        for name in said:
            said[name] += getattr(found, name) is not None
    most = 0.01 * RUNS + 3 * sqrt(0.01 * 0.99 * RUNS)
    least = 0.01 * RUNS - 3 * sqrt(0.01 * 0.99 * RUNS)
    assert all(n <= most for n in said.values()), said
    assert all(said[n] >= least for n in ("trend", "at_odds", "uneven")), said  # these three are exact


@pytest.mark.parametrize(("ratio", "least"), [(10, 0.45), (50, 0.9)])
def test_a_contender_ten_times_noisier_is_seen_in_half_of_campaigns(ratio, least):
    """Power of the largest share of four, three passes: its exact distribution, an F, by scipy."""
    c = cochran_critical(4, 3, 0.01)
    # Var ratio·F: share > c where s²ᵢ/mean of the others > c/(1−c)·3; F(2, 6)
    expected = stats.f.sf(3 * c / (1 - c) / ratio**2, 2, 6)
    draw = np.random.default_rng(5)
    sds = np.array([1.0, 1.0, 1.0, ratio])
    seen = 0
    for _ in range(500):
        values = draw.normal(20.0, sds[:, None], (4, 3))
        found = passes_seen([result(str(i), *v) for i, v in enumerate(values)], LOWER)
        seen += found.uneven is not None and found.uneven.name == "3"
    assert expected > least
    assert seen / 500 == pytest.approx(expected, abs=3 * sqrt(expected * (1 - expected) / 500) + 0.002)


def test_passes_that_rise_together_are_a_trend_and_rising_by_luck_is_none():
    rising = {"a": (10.0, 10.9, 12.1, 13.0), "b": (20.1, 21.0, 21.9, 23.2), "c": (15.0, 16.1, 16.9, 18.0)}
    found = passes_seen([result(n, *v) for n, v in rising.items()], LOWER)
    assert found.trend.slope == pytest.approx(1.0, abs=0.05)
    one_alone = {"a": (10.0, 10.9, 12.1, 13.0), "b": (21.0, 20.1, 23.2, 21.9), "c": (18.0, 15.0, 16.9, 16.1)}
    assert passes_seen([result(n, *v) for n, v in one_alone.items()], LOWER).trend is None


def test_steps_alone_make_no_finding():
    """All on neighbouring steps: whichever way they fall, rounding could have done it."""
    for values in (((10, 10, 10), (12, 12, 13)), ((10, 10, 10), (12, 12, 12)), ((10, 10, 11), (12, 12, 13))):
        measured = [result(n, *v, steps=(1.0,)) for n, v in zip("ab", values, strict=True)]
        found = passes_seen(measured, LOWER)
        assert (found.uneven, found.apart, found.trend) == (None, None, None), values


def test_relative_scatter_is_looked_at_in_logarithms():
    """Ten times the value with ten times the scatter is the same scatter, relatively."""
    values = {"a": (9.0, 10.0, 11.0), "b": (900.0, 1000.0, 1100.0)}
    measured = [result(n, *v) for n, v in values.items()]
    assert passes_seen(measured, Rules("lower", scatter="relative")).uneven is None
    assert passes_seen(measured, LOWER).uneven.name == "b"
    assert (
        passes_seen(measured, Rules("lower", scatter="own")).uneven is None
    )  # nothing is assumed that they contradict


def test_without_repeats_nothing_is_seen():
    found = passes_seen([result("a", 1.0), result("b", 2.0)], LOWER)
    assert (found.degrees, found.uneven, found.apart, found.trend, found.at_odds) == (0, None, None, None, None)
    assert passes_seen([Measured("a", None, ())], LOWER).degrees == 0


def test_single_readings_judged_by_six_degrees_from_the_past_name_a_false_winner_in_one_of_twenty():
    """Two best alike, two far behind, each run once; the scatter of a pass from two contenders with four passes each,
    tested before (JUDGING 6): Student's t with their degrees of freedom keeps the guarantee exactly."""
    draw = np.random.default_rng(11)
    named = 0
    for _ in range(RUNS):
        past = draw.normal(50.0, 1.0, (2, 4))
        seen = passes_seen([result(n, *v) for n, v in zip("ab", past, strict=True)], LOWER)
        declared = DeclaredScatter(seen.within_sd, seen.within_degrees, origin="past campaigns")
        once = draw.normal((10.0, 10.0, 30.0, 30.0), 1.0)
        named += (
            judge(
                [result(n, x) for n, x in zip("cdef", once, strict=True)], Rules("lower", declared=declared)
            ).first.winner
            is not None
        )
    assert named / RUNS == pytest.approx(0.05, abs=3 * sqrt(0.05 * 0.95 / RUNS))
