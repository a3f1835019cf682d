"""The weighed judgement against closed forms of SMAA-2 (Lahdelma and Salminen 2001, Operations Research 49:444).

With two criteria and all weightings the first one's weight w is uniform on 0 to 1; with three each weight has the
distribution 1 − (1 − w)², so that shares of places can be worked out by hand.
"""

from __future__ import annotations

from itertools import combinations
from math import erf, sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.judgement.verdict.criteria import Criterion
from reportgen.judgement.verdict.weighing import weigh_up
from reportgen.judgement.verdict.worth import ValueFunction

DRAWS = 10_000
NEAR = 4 * 0.5 / sqrt(DRAWS)  # four standard errors of an index of one half


def certain(quantity, group="", first=None, known=True, weight=1.0, **worth):
    """A criterion on which worth is known exactly."""
    drawn = {name: np.full(DRAWS, x) for name, x in worth.items()}
    return Criterion(quantity, group or quantity, drawn, worth, known, weight, first)


def normal(quantity, sd, seed=1, group="", known=True, first=None, **worth):
    """A criterion on which worth is known to a standard deviation, each contender by itself."""
    rng = np.random.default_rng(seed)
    drawn = {name: rng.normal(x, sd, DRAWS) for name, x in worth.items()}
    return Criterion(quantity, group or quantity, drawn, worth, known, 1.0, first)


def weighed(criteria, given=(), readers=None, contenders=None):
    groups = list(dict.fromkeys(c.group for c in criteria))
    return weigh_up(criteria, contenders or list(criteria[0].worth), groups, given, readers)


def index(found, first, second):
    for pair in found.index:
        if (pair.first, pair.second) == (first, second):
            return pair.index
        if (pair.first, pair.second) == (second, first):
            return 1 - pair.index
    raise AssertionError("no such pair")


def test_two_criteria_under_all_weightings_give_three_sevenths():
    # a is worth w, b .4w + .8(1 − w): a is ahead from w = 4/7 on.
    found = weighed([certain("thrift", a=1.0, b=0.4), certain("speed", a=0.0, b=0.8)])
    assert found.places["a"] == pytest.approx((3 / 7, 4 / 7), abs=NEAR)
    assert found.places["b"] == pytest.approx((4 / 7, 3 / 7), abs=NEAR)
    assert index(found, "a", "b") == pytest.approx(3 / 7, abs=NEAR)
    assert (found.weights, found.given) == ("all", ())


@given(st.tuples(*[st.floats(0, 1)] * 4))
@settings(max_examples=15)
def test_two_criteria_have_a_closed_form(worths):
    a, b, c, d = (round(x, 2) for x in worths)
    found = weighed([certain("p", a=a, b=c), certain("q", a=b, b=d)])
    p, q = a - c, b - d  # ahead where w·p + (1 − w)·q > 0
    wanted = 0.5 if p == q == 0 else float(p + q > 0) if p * q >= 0 else abs(max(p, q)) / (abs(p) + abs(q))
    assert index(found, "a", "b") == pytest.approx(wanted, abs=NEAR)


def test_three_criteria_have_a_closed_form():
    # b is worth one half at every weighting; a is worth w, and P(w > ½) = (1 − ½)².
    found = weighed([certain("p", a=1.0, b=0.5), certain("q", a=0.0, b=0.5), certain("r", a=0.0, b=0.5)])
    assert index(found, "a", "b") == pytest.approx(0.25, abs=NEAR)
    # Three that are each best on one: a third each, by symmetry; last and middle too.
    alike = weighed([certain(q, **{n: float(n == q) for n in "abc"}) for q in "abc"])
    for name in "abc":
        assert alike.places[name] == pytest.approx((1 / 3,) * 3, abs=NEAR)


def test_fixed_weights_and_normal_errors_have_a_closed_form():
    # Worth differs by .3·.2 + .7·(−.05); its standard deviation is .1·√2·√(.3² + .7²).
    found = weighed([normal("p", 0.1, 1, a=0.7, b=0.5), normal("q", 0.1, 2, a=0.5, b=0.55)], (30, 70))
    z = (0.3 * 0.2 - 0.7 * 0.05) / (0.1 * sqrt(2) * sqrt(0.3**2 + 0.7**2))
    assert index(found, "a", "b") == pytest.approx((1 + erf(z / sqrt(2))) / 2, abs=NEAR)
    assert found.given == pytest.approx((0.3, 0.7))


def test_a_group_counts_once_however_many_criteria_it_has():
    one = weighed([certain("p", a=1.0, b=0.0), certain("q", a=0.0, b=0.9)], (1, 1))
    three = weighed(
        [certain(f"p{i}", "p", a=1.0, b=0.0) for i in range(3)] + [certain("q", a=0.0, b=0.9)],
        (1, 1),
    )
    assert one.lead.leader == three.lead.leader == "a"
    apart = weighed([certain(f"p{i}", a=1.0, b=0.0) for i in range(3)] + [certain("q", a=0.0, b=0.9)], (1, 1, 1, 1))
    assert apart.lead == one.lead
    turned = weighed([certain("p", a=1.0, b=0.0), certain("q", a=0.0, b=0.9), certain("q2", "q", a=0.0, b=2.0)], (1, 1))
    assert turned.lead.leader == "b"


def test_weights_inside_a_group_are_shares_of_it():
    inside = [certain("p", "g", weight=3, a=1.0, b=0.0), certain("q", "g", weight=1, a=0.0, b=2.9)]
    assert weighed(inside).lead.leader == "a"  # .75 against .725
    assert weighed([inside[0], certain("q", "g", weight=1, a=0.0, b=3.1)]).lead.leader == "b"


WORTHS = st.lists(st.tuples(*[st.floats(-0.5, 1.5)] * 4), min_size=3, max_size=6)


@given(WORTHS, st.booleans(), st.integers(0, 3))
@settings(max_examples=10)
def test_a_contender_that_joins_never_turns_two_others(worths, fixed, seed):
    names = [f"c{i}" for i in range(len(worths))]
    spread = np.random.default_rng(seed).normal(0.0, 0.2, (len(names), 4, DRAWS))

    def of(count):
        criteria = [
            Criterion(
                f"q{c}", f"q{c}", {n: worths[i][c] + spread[i, c] for i, n in enumerate(names[:count])},
                {n: worths[i][c] for i, n in enumerate(names[:count])},
            )
            for c in range(4)
        ]  # fmt: skip
        return weighed(criteria, (1, 2, 3, 4) if fixed else ())

    fewer, more = of(len(names) - 1), of(len(names))
    for a, b in combinations(names[:-1], 2):
        assert index(more, a, b) == index(fewer, a, b)


def test_anchors_from_the_contenders_own_range_let_a_newcomer_turn_the_others_round():
    # Why anchors are the author's: of four contenders at random on three criteria, another one comes first in some 8
    # of a hundred cases once a fifth has joined; with anchors set before, in none.
    rng, runs = np.random.default_rng(5), 1500

    def first_of_four(values, anchors):
        functions = [ValueFunction(low, high) for low, high in anchors]
        return int(np.argmax([sum(f.of(x) for f, x in zip(functions, row, strict=True)) for row in values[:4]]))

    def own_range(values):
        return list(zip(values.min(axis=0), values.max(axis=0), strict=True))

    turned = fixed = 0
    for _ in range(runs):
        five = rng.random((5, 3))
        turned += first_of_four(five, own_range(five[:4])) != first_of_four(five, own_range(five))
        fixed += first_of_four(five[:4], [(0, 1)] * 3) != first_of_four(five, [(0, 1)] * 3)
    assert turned / runs == pytest.approx(0.078, abs=3 * sqrt(0.078 * 0.922 / runs))
    assert fixed == 0


def test_the_order_of_contenders_changes_no_number():
    criteria = [normal("p", 0.2, a=0.5, b=0.6, c=0.55), normal("q", 0.2, 2, a=0.6, b=0.5, c=0.55)]
    one, other = weighed(criteria, contenders=["a", "b", "c"]), weighed(criteria, contenders=["c", "b", "a"])
    for a, b in combinations("abc", 2):
        assert index(one, a, b) == pytest.approx(index(other, a, b), abs=1e-12)
    assert all(one.places[n] == pytest.approx(other.places[n]) for n in "abc")
    assert (one.lead.leader, one.turns, one.equal_first) == (other.lead.leader, other.turns, other.equal_first)


def test_equals_share_every_place_and_nobody_leads():
    found = weighed([certain("p", a=0.5, b=0.5, c=0.5), certain("q", a=0.1, b=0.1, c=0.1)])
    assert [p.index for p in found.index] == [0.5] * 3
    assert all(places == pytest.approx((1 / 3,) * 3) for places in found.places.values())
    assert (found.lead.leader, found.lead.index, found.winner, found.turns) == (None, 0.5, None, ())
    assert all(c.lead.leader is None for c in found.map.cells)


def test_equal_contenders_would_each_be_first_in_their_share():
    # By symmetry a third each, however far apart they are found; one that is known less well is first more often.
    found = weighed([normal("p", 0.1, a=0.9, b=0.5, c=0.1)])
    assert found.equal_first == pytest.approx(dict.fromkeys("abc", 1 / 3), abs=NEAR)
    rng = np.random.default_rng(4)
    worth = {"a": rng.normal(0.5, 5.0, DRAWS), "b": rng.normal(0.5, 0.1, DRAWS), "c": rng.normal(0.5, 0.1, DRAWS)}
    uneven = weighed([Criterion("p", "p", worth, dict.fromkeys("abc", 0.5))])
    assert uneven.equal_first["a"] == pytest.approx(0.5, abs=0.02)  # it is either far ahead or far behind


def test_a_winner_needs_every_index_and_criteria_of_known_scatter():
    sure = {"a": 0.9, "b": 0.1, "c": 0.2}
    assert weighed([certain("p", first="a", **sure)]).winner == "a"
    assert weighed([certain("p", known=False, first="a", **sure)]).winner is None  # none of known scatter is left
    both = [certain("p", known=False, **sure), normal("q", 0.3, first="a", a=0.9, b=0.5, c=0.5)]
    assert weighed(both, (9, 1)).lead.leader == "a"
    assert weighed(both, (9, 1)).lead.index >= 0.975
    assert weighed(both, (9, 1)).winner is None  # on q alone a is not ahead for sure
    assert weighed([both[0], certain("q", first="a", a=0.9, b=0.5, c=0.5)], (9, 1)).winner == "a"
    found = weighed([certain("p", a=0.9, b=0.1, c=0.2), normal("q", 0.3, a=0.9, b=0.5, c=0.5)], (1, 1))
    assert (found.with_repeats, found.criteria) == (2, 2)
    assert found.index == found.index_known


def test_of_a_single_criterion_first_place_must_agree():
    assert weighed([certain("p", first=None, a=0.9, b=0.1)]).winner is None
    assert weighed([certain("p", first="a", a=0.9, b=0.1)]).winner == "a"
    found = weighed([certain("p", first="a", a=0.9, b=0.1), certain("q", first=None, a=0.9, b=0.1)], (1, 1))
    assert found.winner == "a"  # two criteria: the sum decides
    assert [w.lead.firm for w in found.without] == [False, True]  # without p, q alone doesn't name it
    assert [c.lead.firm for c in found.map.cells][:: found.map.steps] == [False, True]


def test_one_criterion_left_out_may_turn_the_lead():
    found = weighed([certain("p", a=1.0, b=0.0), certain("q", a=0.0, b=0.6)], (1, 1))
    assert found.lead.leader == "a"
    assert {w.quantity: w.lead.leader for w in found.without} == {"p": "b", "q": "a"}
    assert weighed([certain("p", first="a", a=1.0, b=0.0)]).without[0].lead.leader is None


def test_the_lead_turns_at_the_weight_that_makes_both_worth_the_same():
    found = weighed([certain("thrift", a=1.0, b=0.4), certain("speed", a=0.0, b=0.8)], (50, 50))
    turns = {t.group: t for t in found.turns}
    assert turns["thrift"].weight == pytest.approx(4 / 7, abs=1e-3)
    assert (turns["thrift"].before, turns["thrift"].after) == ("b", "a")
    assert turns["speed"].weight == pytest.approx(3 / 7, abs=1e-3)
    # Of three groups the others keep their proportions: w + 0·(1 − w) against .3w + .8·(1 − w)·¼ gives w = 2/9.
    three = weighed([certain("p", a=1.0, b=0.3), certain("q", a=0.0, b=0.8), certain("r", a=0.0, b=0.0)], (50, 10, 30))
    (turn,) = [t for t in three.turns if t.group == "p"]
    assert turn.weight == pytest.approx(2 / 9, abs=1e-3)


def test_the_map_holds_every_weight_in_its_steps():
    two = weighed([certain("thrift", a=1.0, b=0.4), certain("speed", a=0.0, b=0.8)], (50, 50)).map
    assert len(two.cells) == two.steps + 1
    for cell in two.cells:
        assert cell.lead.leader == ("a" if cell.weights[0] > 4 / 7 else "b")
    three = weighed([certain(q, **{n: float(n == q) for n in "abc"}) for q in "abc"]).map
    assert (three.steps, len(three.cells)) == (20, 231)
    for cell in three.cells:
        most = max(cell.weights)
        best = [n for n, w in zip("abc", cell.weights, strict=True) if w == most]
        assert cell.lead.leader == (best[0] if len(best) == 1 else None)
    assert weighed([certain("p", a=1.0, b=0.4)]).map is None
    assert weighed([certain(q, a=1.0, b=0.4) for q in "pqrs"]).map is None


def test_readers_weigh_in_their_own_way():
    criteria = [certain("thrift", a=1.0, b=0.4), certain("speed", a=0.0, b=0.8)]
    found = weighed(criteria, (1, 1), {"hasty": (10, 90), "thrifty": (3, 1)})
    hasty, thrifty = found.readers
    assert (hasty.name, hasty.weights, hasty.lead.leader) == ("hasty", pytest.approx((0.1, 0.9)), "b")
    assert (thrifty.lead.leader, thrifty.index[0].index) == ("a", 1.0)


def test_there_is_nothing_to_weigh_of_one_contender_or_no_criterion():
    assert weigh_up([certain("p", a=1.0)], ["a"], ["p"]) is None
    assert weigh_up([], ["a", "b"], ["p"]) is None
    assert weigh_up([certain("p", weight=0.0, a=1.0, b=0.0)], ["a", "b"], ["p"]) is None


def test_worth_is_straight_between_the_anchors_and_beyond():
    lower = ValueFunction(25.0, 10.0)
    assert [lower.of(x) for x in (25.0, 17.5, 10.0, 4.0)] == pytest.approx([0.0, 0.5, 1.0, 1.4])
    assert [lower.is_past(x) for x in (25.1, 25.0, 9.9)] == [True, False, True]
    ratio = ValueFunction(400.0, 100.0, ratio=True)
    assert [ratio.of(x) for x in (400.0, 200.0, 100.0, 50.0)] == pytest.approx([0.0, 0.5, 1.0, 1.5])
    with pytest.raises(ValueError, match="same"):
        ValueFunction(3.0, 3.0)
    with pytest.raises(ValueError, match="above zero"):
        ValueFunction(3.0, 0.0, ratio=True)


def test_draws_of_a_value_keep_its_worth_in_their_middle():
    off = np.random.default_rng(2).normal(0.0, 0.02, DRAWS)
    plain, ratio = ValueFunction(0.0, 10.0), ValueFunction(1.0, 10.0, ratio=True)
    assert np.median(plain.of_draws(5.0, off, relative=False)) == pytest.approx(0.5, abs=1e-3)
    assert np.std(plain.of_draws(5.0, off, relative=False)) == pytest.approx(0.002, rel=0.05)
    assert np.std(plain.of_draws(5.0, off, relative=True)) == pytest.approx(0.01, rel=0.05)
    assert np.std(ratio.of_draws(5.0, off, relative=True)) == pytest.approx(0.02 / np.log(10), rel=0.05)
    assert np.std(ratio.of_draws(5.0, off, relative=False)) == pytest.approx(0.004 / np.log(10), rel=0.05)
