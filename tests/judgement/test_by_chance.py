"""Pairs, ranks and first place from exact tests hang together."""

from itertools import combinations

import pytest

from reportgen.judgement.exact.by_chance import ALLOWED, Against, judge_by_chance
from reportgen.judgement.exact.counts import Counted, judge_counts
from reportgen.judgement.exact.grades import Graded, judge_grades
from reportgen.judgement.exact.shares import Tried, judge_shares


def shares(better="higher", **of):
    return judge_shares([Tried(name, yes, tries) for name, (yes, tries) in of.items()], better)


def pair(judged, first, second):
    return next(p for p in judged.pairs if (p.first, p.second) == (first, second))


def test_three_of_three_against_none_of_three_is_enough_and_two_are_never():
    judged = shares(a=(3, 3), b=(0, 3))
    assert (judged.first.winner, judged.ranks) == ("a", {"a": (1, 1), "b": (2, 2)})
    assert judged.pairs[0].reason.numbers["p"] == pytest.approx(1 / 64)
    two = shares(a=(2, 2), b=(0, 2))
    assert (two.first.winner, two.first.reason.code) == (None, "never-enough")
    assert two.pairs[0].decision == "not enough to say"
    assert two.pairs[0].reason.numbers["enough"] == 3


def test_where_fewer_yes_is_better_the_other_leads():
    assert shares("lower", a=(3, 3), b=(0, 3)).first.winner == "b"


def test_a_pair_is_held_to_a_stricter_level_than_a_winner():
    """3 of 3 against 0 of 3 (p 1/64) decides for two contenders; among four nobody's, as 1/64 > 2.5 %/6."""
    judged = shares(a=(3, 3), b=(3, 3), c=(0, 3), d=(0, 3))
    assert judged.first.winner is None
    assert {p.decision for p in judged.pairs} == {"too close to call"}
    assert all(p.reason.numbers["allowed"] == pytest.approx(ALLOWED / 6) for p in judged.pairs)
    assert set(judged.ranks.values()) == {(1, 4)}


def test_a_winners_pairs_are_resolved_and_its_rank_is_one():
    judged = shares(a=(5, 5), b=(0, 5), c=(0, 5), d=(0, 5))
    assert judged.first.winner == "a"
    assert judged.ranks["a"] == (1, 1)
    assert [pair(judged, "a", o).favours for o in "bcd"] == ["a"] * 3
    assert not any(pair(judged, "a", o).adjusted for o in "bcd")


def test_those_set_aside_are_in_no_rank_and_count_in_no_level():
    tried = [Tried("a", 3, 3), Tried("b", 0, 3), Tried("c", 0, 0), Tried("d", 3, 3, blocked="blocked")]
    judged = judge_shares(tried, "higher")
    assert judged.first.unranked == ("c", "d")
    assert judged.first.winner == "a"
    assert judged.ranks["c"] is judged.ranks["d"] is None
    assert pair(judged, "a", "c").reason.code == "no-result"
    assert pair(judged, "a", "d").reason.code == "blocked"


def test_alone_nobody_is_first():
    judged = shares(a=(3, 3))
    assert (judged.first.winner, judged.first.reason.code) == (None, "one-contender")
    assert judged.ranks == {"a": (1, 1)}


def test_p_exactly_at_what_is_allowed_decides():
    assert judge_by_chance("ab", {("a", "b"): Against(0.025, 1.0)}, {}).first.winner == "a"
    assert judge_by_chance("ab", {("a", "b"): Against(0.0251, 1.0)}, {}).first.winner is None


@pytest.mark.parametrize("seed", range(30))
def test_ranks_follow_from_pairs_whatever_the_tries(seed):
    import random

    draw = random.Random(seed)
    tried = [Tried(n, draw.randint(0, 9), 9) for n in "abcd"]
    judged = judge_shares(tried, "higher")
    for n in "abcd":
        mine = [p for p in judged.pairs if n in (p.first, p.second)]
        worse, better = sum(p.favours not in (n, None) for p in mine), sum(p.favours == n for p in mine)
        assert judged.ranks[n] == (1 + worse, 4 - better)
    assert all((p.favours is not None) == p.resolved == (p.decision == "better") for p in judged.pairs)
    if judged.first.winner:
        assert judged.first.may_be_first == (judged.first.winner,)


def test_four_grades_apart_decide_and_three_never_do():
    four = judge_grades([Graded("a", (3, 3, 3, 3)), Graded("b", (0, 1, 2, 2))], "higher")
    assert (four.first.winner, four.first.reason.numbers["p"]) == ("a", pytest.approx(1 / 70))
    three = judge_grades([Graded("a", (3, 3, 3)), Graded("b", (0, 1, 2))], "higher")
    assert three.pairs[0].decision == "not enough to say"
    assert three.pairs[0].reason.numbers["enough"] == 4


def test_exposure_counts():
    """Six events against none over a quarter of the time say nothing: 0.8⁶ = .26."""
    short = [Counted("a", (6,), (4.0,)), Counted("b", (0,), (1.0,))]
    assert judge_counts(short, "lower").judged.first.winner is None
    assert judge_counts(short, "lower").judged.pairs[0].reason.numbers["p"] == pytest.approx(0.8**6)


def test_where_passes_scatter_further_than_chance_student_holds_the_binomial_test_back():
    calm = [Counted("a", (4, 5, 4), (1.0,) * 3), Counted("b", (12, 11, 13), (1.0,) * 3)]
    wild = [Counted("a", (0, 13, 0), (1.0,) * 3), Counted("b", (36, 0, 0), (1.0,) * 3)]
    assert judge_counts(calm, "lower").judged.first.winner == "a"
    assert judge_counts(wild, "lower").judged.first.winner is None


def test_an_interval_of_counts_holds_their_mean_and_is_never_narrower_than_garwoods():
    from reportgen.judgement.exact.exact_limits import rate_interval

    for events in ((0, 0, 0), (4, 5, 6), (0, 20), (1, 1)):
        found = judge_counts([Counted("a", events, (1.0,) * len(events)), Counted("b", (3, 4), (1.0, 1.0))], "lower")
        low, high = found.intervals["a"]
        exact = rate_interval(sum(events), float(len(events)))
        assert low <= exact[0] <= sum(events) / len(events) <= exact[1] <= high


def test_every_pair_is_there_in_the_order_given():
    judged = shares(a=(1, 4), b=(2, 4), c=(3, 4))
    assert [(p.first, p.second) for p in judged.pairs] == list(combinations("abc", 2))
