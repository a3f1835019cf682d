"""What matters, what would settle it, what the maker claims, and what dearer ones are worth."""

from dataclasses import replace
from math import sqrt

import pytest

from reportgen.judgement.claim import conformance
from reportgen.judgement.judging import judge
from reportgen.judgement.measured import DeclaredScatter, Measured, Rules
from reportgen.judgement.money.frontier import dominated
from reportgen.metrology.uncertain import Source
from tests.judgement.bench import LOWER, judged, result


def one_pair(a, b, matters):
    return judged({"a": a, "b": b}, Rules("lower", matters=matters)).pairs[0]


A = (9.9, 10.0, 10.1)  # with a like B: half-width t(4)·0.1·√(2/3) = 0.227


def test_a_resolved_lead_smaller_than_what_matters_is_both():
    found = one_pair(A, tuple(x + 0.5 for x in A), 1.0)
    assert (found.decision, found.resolved, found.favours, found.beyond) == (
        "no difference that matters",
        True,
        "a",
        False,
    )


def test_a_tie_inside_the_margin_is_no_difference_that_matters():
    found = one_pair(A, tuple(x + 0.1 for x in A), 1.0)
    assert (found.decision, found.resolved, found.favours) == ("no difference that matters", False, None)


def test_a_lead_beyond_the_margin_matters_and_one_across_it_is_open():
    assert one_pair(A, tuple(x + 2 for x in A), 1.0).beyond is True
    across = one_pair(A, tuple(x + 1.1 for x in A), 1.0)
    assert (across.decision, across.beyond) == ("better", None)


def test_a_tie_that_may_hide_what_matters_is_too_close_to_call():
    assert one_pair(A, tuple(x + 0.1 for x in A), 0.2).decision == "too close to call"


def test_equivalence_is_two_one_sided_tests():
    # Schuirmann 1987: the interval inside (−m, m); half-width t(4) = 2.776 of √(2/3)·0.1 (JCGM 100, table G.2: 2.78)
    half = 2.7764 * 0.1 * sqrt(2 / 3)
    assert one_pair(A, A, half + 1e-4).decision == "no difference that matters"
    assert one_pair(A, A, half - 1e-4).decision == "too close to call"


@pytest.mark.parametrize(("effect", "passes"), [(0.2, 393), (0.5, 64), (0.8, 26), (1.0, 17)])
def test_passes_that_settle_a_difference_are_cohens(effect, passes):
    # Cohen 1988, table 2.4.1: two-sided 5 %, power .80 (from memory); statsmodels as the second witness
    from math import ceil

    from statsmodels.stats.power import TTestIndPower

    found = one_pair((-1, 0, 1), (effect - 1, effect, effect + 1), None).settle
    assert found.passes == pytest.approx(passes, abs=1)  # the table rounds
    assert found.passes == ceil(TTestIndPower().solve_power(effect, alpha=0.05, power=0.8))
    assert (found.difference, found.at, found.finer) == (pytest.approx(effect), "seen", False)


def test_what_matters_is_settled_for_where_it_was_set():
    found = one_pair((-1, 0, 1), (-0.9, 0.1, 1.1), 0.5).settle
    assert (found.passes, found.difference, found.at) == (64, 0.5, "matters")


def test_two_passes_under_own_scatter_are_told_how_many_would_do():
    found = judged({"a": (0, 1), "b": (2, 3)}, Rules("lower", scatter="own")).pairs[0]
    assert found.decision == "too close to call"
    assert 3 <= found.settle.passes <= 10


def test_a_tie_of_equal_numbers_has_nothing_to_settle():
    assert one_pair(A, A, None).settle is None


def test_declared_scatter_needs_no_passes_to_plan_by():
    found = judged({"a": (10,), "b": (11,)}, Rules("lower", declared=DeclaredScatter(1.0, 1000))).pairs[0]
    assert found.settle.passes == 16  # 2·(1.96 + 0.84)²: the normal case


def test_an_accuracy_wider_than_the_gap_is_settled_by_no_number_of_passes():
    measured = [
        result(n, *v, contributions={Source("accuracy", "meter", n): 2.0})
        for n, v in {"a": (0, 1, 2), "b": (1, 2, 3)}.items()
    ]
    found = judge(measured, LOWER).pairs[0].settle
    assert (found.passes, found.finer) == (None, False)


def test_what_stands_in_the_way_of_passes_is_named():
    wide = [
        result(n, *v, contributions={Source("accuracy", "meter", n): 5.0})
        for n, v in {"a": (0, 1, 2), "b": (1, 2, 3)}.items()
    ]
    found = judge(wide, LOWER).pairs[0].settle
    assert (found.passes, found.finer, found.specimens, found.calibration) == (None, False, None, True)
    constant = [replace(m, contributions={Source("constant", "heat", m.name): 5.0}) for m in wide]
    found = judge(constant, LOWER).pairs[0].settle
    assert (found.passes, found.specimens, found.calibration) == (None, None, False)  # nothing that is known of here


@pytest.mark.parametrize(("effect", "specimens"), [(0.8, 26), (1.0, 17)])
def test_specimens_that_settle_a_difference_are_cohens(effect, specimens):
    """Cohen 1988, two-sided 5 %, power 0.8 (from memory): scatter between specimens of 1, that of passes next to none."""
    measured = [
        result(n, v - 1e-6, v + 1e-6, contributions={Source("scatter", "specimens", n, "normal"): 1.0})
        for n, v in {"a": 0.0, "b": effect}.items()
    ]
    found = judge(measured, LOWER).pairs[0].settle
    assert (found.passes, found.specimens) == (None, specimens)


def claim_of(values, **claimed):
    found = judged({"a": values}, LOWER)
    return conformance(result("a", *values), found.singles["a"], **claimed)


@pytest.mark.parametrize(
    ("claimed", "outcome"),
    [
        ({"at_most": 12.0}, "supported"),
        ({"at_most": 8.0}, "contradicted"),
        ({"at_most": 10.0}, "undecided"),
        ({"at_least": 9.5}, "supported"),
        ({"at_least": 9.5, "at_most": 10.5}, "supported"),
        ({"at_least": 10.5, "at_most": 11.5}, "contradicted"),
    ],
)
def test_claims_are_weighed_by_the_probability_that_they_hold(claimed, outcome):
    found = claim_of(A, **claimed)
    assert (found.outcome, found.scope) == (outcome, "repeat")


def test_probability_of_conformity_is_the_standards():
    # JCGM 106:2012, 7.3.1: p = Φ((T − y)/u) with a normal distribution: T 1.5 u away is 93.3 %; beside Student's t(2)
    from scipy.stats import norm, t

    u = 0.1 / sqrt(3)
    assert claim_of(A, at_most=10.0 + 1.5 * u).probability == pytest.approx(t.cdf(1.5, 2), abs=1e-6)
    measured = Measured("a", 10.0, (10.0,), {Source("accuracy", "meter", shape="normal"): 1.0})
    single = judge([measured], LOWER).singles["a"]
    found = conformance(measured, single, at_most=11.5)
    assert found.probability == pytest.approx(norm.cdf(1.5), abs=1e-4)
    assert (found.outcome, found.scope) == ("undecided", "this run")


def test_a_claim_against_a_reading_of_unknown_accuracy_is_undecided():
    found = claim_of((10.0,), at_most=12.0)
    assert (found.outcome, found.probability) == ("undecided", None)


def test_bounds_decide_claims_where_they_can():
    step = {"steps": (1.0,)}

    def of(value, limit, **claimed):
        measured = Measured("a", value, (), limit=limit, **step)
        return conformance(measured, judge([measured], LOWER).singles["a"], **claimed).outcome

    assert of(90.0, "above", at_most=50.0) == "contradicted"
    assert of(90.0, "above", at_least=50.0) == "supported"
    assert of(90.0, "above", at_most=95.0) == "undecided"
    assert of(90.0, "above", at_least=95.0) == "undecided"
    assert of(1.0, "below", at_most=5.0) == "supported"
    assert of(1.0, "below", at_least=5.0) == "contradicted"
    assert of(1.0, "below", at_least=0.5, at_most=5.0) == "undecided"
    assert of(None, "above", at_most=5.0) == "undecided"  # off a scale whose end nobody knows: tested, and undecided
    assert of(None, None, at_most=5.0) == "not tested"


def test_only_those_as_dear_or_dearer_and_resolved_worse_are_dominated():
    found = judged({"a": (1, 2, 3), "b": (11, 12, 13), "c": (11, 12, 13), "d": (21, 22, 23)}, LOWER)
    prices = {"a": (50.0, 50.0), "b": (50.0, 50.0), "c": (40.0, 45.0), "d": (48.0, 52.0)}
    assert dominated(prices, found.pairs) == {
        "a": (),
        "b": ("a",),  # as dear
        "c": (),  # cheaper than a, tied with b
        "d": ("c",),  # its range may lie below a's price, not below c's
    }


def test_a_tie_dominates_nobody_however_cheap():
    found = judged({"a": (1, 2, 3), "b": (1.5, 2.5, 3.5)}, LOWER)
    assert dominated({"a": (1.0, 1.0), "b": (99.0, 99.0)}, found.pairs) == {"a": (), "b": ()}
