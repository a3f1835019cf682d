"""Single readings, declared repeatability, limits, blocked results, sessions: what may be said, and what may not."""

from math import sqrt

import pytest

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import DeclaredScatter, Measured, Rules
from reportgen.metrology.uncertain import Source
from tests.judgement.bench import HIGHER, LOWER, judged, pair, result

STEPS = (1.0, 1.0)


def test_one_reading_each_is_not_enough_to_say_however_wide_the_lead():
    found = judged({"a": (10,), "b": (90,), "c": (95,)}, LOWER, steps=STEPS)
    for p in found.pairs:
        assert (p.decision, p.resolved, p.favours) == ("not enough to say", False, None)
        assert (p.u, p.low, p.high) == (None, None, None)
        assert p.differed_low < p.difference < p.differed_high
        assert p.reason.code == "no-scatter-known"
    assert found.first.winner is None
    assert set(found.ranks.values()) == {(1, 3)}
    assert found.singles["a"].covers == "instrument"


def test_one_reading_each_may_still_have_differed_in_this_run():
    found = judged({"a": (81,), "b": (82,), "c": (84,)}, LOWER, steps=STEPS)
    assert [p.differed for p in found.pairs] == [False, True, True]


def test_a_single_reading_without_step_or_accuracy_has_no_uncertainty():
    found = judged({"a": (81,), "b": (82,)}, LOWER)
    assert found.singles["a"].u is None
    assert found.singles["a"].why_no_u == "accuracy-unknown"
    assert found.pairs[0].differed is None


def test_declared_repeatability_stands_in_for_passes():
    # ISO 5725-6, 4.1.4: repeatability limit t·σ√2; t(20) = 2.09 (JCGM 100, table G.2)
    rules = Rules("lower", declared=DeclaredScatter(1.0, 20))
    found = judged({"a": (10.0,), "b": (12.9,), "c": (13.0,)}, rules)
    half = 2.086 * sqrt(2)
    assert found.scatter.origin == "declared"
    assert found.first.reason.numbers["half_width"] == pytest.approx(half, abs=0.001)
    assert found.first.winner is None
    assert judged({"a": (10.0,), "b": (12.96,), "c": (13.0,)}, rules).first.winner == "a"


def test_a_guess_at_repeatability_has_a_wider_limit():
    # JCGM 100, G.4.2: relative uncertainty of 25 % is 8 degrees of freedom; t(8) = 2.31
    found = judged({"a": (10,), "b": (12,)}, Rules("lower", declared=DeclaredScatter(1.0, 8))).pairs[0]
    assert (found.high - found.low) / 2 == pytest.approx(2.306 * sqrt(2), abs=0.001)


def test_well_known_repeatability_joins_the_passes():
    passes = {"a": (10, 12), "b": (15, 17)}  # s² = 2 with 2 degrees
    joined = judged(passes, Rules("lower", declared=DeclaredScatter(1.0, 20))).scatter
    assert (joined.origin, joined.degrees) == ("both", 22)
    assert joined.sd**2 == pytest.approx((20 * 1 + 2 * 2) / 22)
    alone = judged(passes, Rules("lower", declared=DeclaredScatter(1.0, 8))).scatter
    assert (alone.origin, alone.degrees) == ("passes", 2)


def test_contenders_with_passes_lend_their_scatter_to_one_without():
    found = judged({"a": (10, 11, 12), "b": (20,), "c": (30, 31, 32)}, LOWER)
    assert found.first.winner == "a"
    assert pair(found, "a", "b").u == pytest.approx(sqrt(1 / 3 + 1))
    assert found.singles["b"].covers == "instrument and scatter"


def test_under_own_scatter_nothing_is_lent():
    found = judged({"a": (10, 11, 12), "b": (20,), "c": (30, 31, 32)}, Rules("lower", scatter="own"))
    assert pair(found, "a", "b").decision == "not enough to say"
    assert pair(found, "a", "c").decision == "better"
    assert found.first.winner is None


def test_off_scale_is_last_where_the_bound_alone_beats_the_half_width():
    steps = {"steps": (1.0,)}
    measured = [
        result("a", 40, 41, 42, **steps),
        result("b", 43, 44, 45, **steps),
        Measured("c", 90.0, (), steps=(1.0,), limit="above"),
    ]
    found = judge(measured, LOWER)
    assert pair(found, "a", "c").favours == "a"
    assert pair(found, "a", "c").reason.code == "bound-decides"
    assert pair(found, "a", "c").difference is None
    assert found.ranks["c"] == (3, 3)
    assert found.singles["c"].u is None
    assert (found.singles["c"].low, found.singles["c"].high) == (90.0, None)


def test_a_bound_that_promises_nothing_decides_nothing():
    measured = [result("a", 90, 91, 92), Measured("b", 90.0, (), limit="above"), Measured("c", None, (), limit="above")]
    found = judge(measured, LOWER)
    assert {p.decision for p in found.pairs} == {"too close to call"}
    assert pair(found, "b", "c").reason.code == "off-scale-both"
    assert pair(found, "a", "b").reason.code == "bound-too-close"
    assert set(found.ranks.values()) == {(1, 3)}


def test_two_off_the_same_end_are_too_close_but_off_either_end_are_told():
    measured = [
        result("a", 50, 51, 52),
        Measured("low", 1.0, (), limit="below"),
        Measured("high", 90.0, (), limit="above"),
        Measured("higher", 95.0, (), limit="above"),
    ]
    found = judge(measured, HIGHER)
    assert pair(found, "high", "higher").decision == "too close to call"
    assert pair(found, "low", "high").favours == "high"
    assert found.ranks == {"a": (3, 3), "low": (4, 4), "high": (1, 2), "higher": (1, 2)}


def test_one_against_less_than_one_is_a_tie():
    measured = [result("a", 1, 1, 1, steps=(1.0,)), Measured("b", 1.0, (), steps=(1.0,), limit="below")]
    assert judge(measured, LOWER).pairs[0].decision == "too close to call"


def test_a_blocked_result_takes_no_part():
    measured = [result("a", 1, 2, 3), result("b", 11, 12, 13), result("c", -50, 0, 50, blocked="diluted")]
    found = judge(measured, LOWER)
    assert found.first.winner == "a"
    assert found.first.unranked == ("c",)
    assert found.ranks["c"] is None
    assert found.scatter.sd == pytest.approx(1.0)
    assert pair(found, "a", "c").reason.code == "blocked"
    assert not pair(found, "a", "c").resolved


def test_a_contender_not_yet_tested_is_unranked():
    found = judge([result("a", 1, 2, 3), result("b", 11, 12, 13), Measured("c", None, ())], LOWER)
    assert (found.first.winner, found.first.unranked) == ("a", ("c",))
    assert found.singles["c"].why_no_u == "no-result"


ONE, TWO = {"sessions": frozenset({"1"})}, {"sessions": frozenset({"2"})}


def test_results_of_different_sessions_are_not_ranked():
    found = judge([result("a", 1, 2, 3, **ONE), result("b", 11, 12, 13, **TWO)], LOWER)
    assert found.pairs[0].reason.code == "sessions-apart"
    assert found.first.winner is None
    assert found.first.reason.code == "sessions-apart"


def test_a_declared_scatter_between_sessions_allows_ranking_and_is_paid_for():
    same, apart = (
        judge([result("a", 1, 2, 3, **ONE), result("b", 31, 32, 33, **other)], Rules("lower", between_sessions=2.0))
        for other in (ONE, TWO)
    )
    assert apart.first.winner == same.first.winner == "a"
    assert apart.pairs[0].u == pytest.approx(sqrt(same.pairs[0].u ** 2 + 2 * 2.0**2))


def test_a_contender_run_in_both_sessions_links_them_and_their_offset_drops_out():
    def passes(name, values, sessions):
        return result(name, *values, sessions=frozenset(sessions), sessions_by_pass=tuple(sessions))

    measured = [
        passes("a", (10, 11, 12), "111"),
        passes("b", (20, 21, 22, 50, 51, 52), "111222"),
        passes("c", (45, 46, 47), "222"),
    ]
    found = judge(measured, LOWER)  # session 2 reads 30 more: c is 15 in session 1's terms
    assert pair(found, "a", "c").difference == pytest.approx(-5)
    assert found.first.winner == "a"
    assert found.ranks == {"a": (1, 1), "b": (3, 3), "c": (2, 2)}


def test_a_shared_gain_costs_its_share_of_the_difference_only():
    # JCGM 100, 5.2.2: fully correlated errors; gain of 1 % over 1000 with a difference of 4
    gain = Source("gain", "meter", "1")
    measured = [
        result(n, *v, contributions={gain: 0.01 * sum(v) / 3})
        for n, v in {"a": (999, 1000, 1001), "b": (1003, 1004, 1005)}.items()
    ]
    found = judge(measured, LOWER)
    assert found.pairs[0].u == pytest.approx(sqrt(2 / 3 + (0.01 * 4) ** 2))
    assert found.singles["a"].u == pytest.approx(sqrt(1 / 3 + 10**2))
    assert found.first.winner == "a"


def test_under_relative_scatter_ratios_decide():
    # a against b and c against d both 1.2, at scatter of about 3 % a pass
    passes = {"a": (97, 100, 103), "b": (116.4, 120, 123.6), "c": (970, 1000, 1030), "d": (1164, 1200, 1236)}
    found = judged(passes, Rules("lower", scatter="relative"))
    assert found.scatter.sd == pytest.approx(0.03, abs=0.0005)
    assert all(p.resolved for p in found.pairs)
    low, high = pair(found, "c", "d").low, pair(found, "c", "d").high
    assert low < -200 < high < 0
    ten = pair(found, "a", "b")
    # a winner's pair prints the narrower interval, so the ratio of the two is not quite ten
    assert 10 < low / ten.low < 14


def test_a_ratio_of_something_at_or_below_zero_is_refused():
    found = judged({"a": (0, 1, 2), "b": (10, 11, 12)}, Rules("lower", scatter="relative"))
    assert found.pairs[0].decision == "not enough to say"
    assert found.pairs[0].reason.code == "not-above-zero"
    assert found.first.winner is None


def test_reasons_under_relative_scatter_speak_in_the_unit():
    found = judged({"a": (97, 100, 103), "b": (116.4, 120, 123.6)}, Rules("lower", scatter="relative"))
    assert found.first.reason.numbers["lead"] == pytest.approx(20, abs=0.1)
    assert found.pairs[0].reason.numbers["lead"] == pytest.approx(20, abs=0.1)


def test_a_blocked_result_keeps_an_interval_of_its_own():
    measured = [result("a", 1, 2, 3), result("b", 11, 12, 13), result("c", 50, 60, 70, blocked="diluted")]
    common, own = (judge(measured, Rules("lower", scatter=s)).singles["c"] for s in ("common", "own"))
    assert common.u == pytest.approx(1 / sqrt(3))
    assert own.u == pytest.approx(10 / sqrt(3))


def test_a_bound_well_beyond_what_matters_says_so():
    measured = [result("a", 40, 41, 42), result("b", 50, 51, 52), Measured("c", 90.0, (), limit="above")]
    assert pair(judge(measured, Rules("lower", matters=10)), "a", "c").beyond is True
    assert pair(judge(measured, Rules("lower", matters=60)), "a", "c").beyond is None
