"""What must hold whatever the numbers: coherence, symmetry, and indifference to what carries no information."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import DeclaredScatter, Measured, Rules
from reportgen.metrology.uncertain import Source

NAMES = "abcde"
# Quarters, so that sums and means of moderate numbers are exact or nearly so.
VALUES = st.integers(-80, 80).map(lambda n: n / 4)


@st.composite
def results(draw, positive=False, plain=False):
    k, found = draw(st.integers(2, 5)), []
    steps = draw(st.sampled_from([(), (0.25,), (0.25, 0.25), (2.0,)]))
    shared = Source("gain", "meter")
    for name in NAMES[:k]:
        values = tuple(draw(st.lists(VALUES, min_size=1, max_size=4)))
        if positive:
            values = tuple(abs(x) + 1 for x in values)
        parts = {Source("accuracy", "meter", name): 0.3, shared: 0.1} if draw(st.booleans()) else {}
        limit = None if plain else draw(st.sampled_from([None, None, None, "above", "below"]))
        value = sum(values) / len(values)
        found.append(Measured(name, value, values, parts, steps, limit=limit))
    return found


@st.composite
def rules(draw):
    return Rules(
        draw(st.sampled_from(["lower", "higher"])),
        draw(st.sampled_from(["common", "own"])),
        matters=draw(st.sampled_from([None, 3.0])),
        declared=draw(st.sampled_from([None, DeclaredScatter(1.0, 8), DeclaredScatter(1.0, 30)])),
    )


def decisions(found):
    pairs = {frozenset((p.first, p.second)): (p.decision, p.resolved, p.differed, p.favours) for p in found.pairs}
    return pairs, dict(found.ranks), found.first.winner, set(found.first.may_be_first)


@settings(max_examples=40)
@given(results(), rules())
def test_a_winner_is_ranked_first_alone_and_its_pairs_are_resolved(measured, rule):
    found = judge(measured, rule)
    for name, (best, worst) in found.ranks.items():
        assert 1 <= best <= worst <= len(measured)
        assert (name in found.first.may_be_first) == (best == 1)
    winner = found.first.winner
    if winner is not None:
        assert found.ranks[winner] == (1, 1)
        assert found.first.may_be_first == (winner,)
        own = [p for p in found.pairs if winner in (p.first, p.second)]
        assert all(p.resolved and p.favours == winner and not p.adjusted for p in own)
    for p in found.pairs:
        assert p.resolved == (p.favours is not None)
        if p.low is not None:
            assert p.low <= p.difference <= p.high
            assert p.u > 0
            assert p.resolved == (p.low > 0 or p.high < 0) or min(abs(p.low), abs(p.high)) < 1e-6


@settings(max_examples=40)
@given(results(plain=True), rules())
def test_reversing_the_numbers_and_the_direction_changes_no_decision(measured, rule):
    turned = [
        replace(
            m,
            value=-m.value,
            values=tuple(-x for x in m.values),
            contributions={s: -c for s, c in m.contributions.items()},
        )
        for m in measured
    ]
    other = replace(rule, better="higher" if rule.better == "lower" else "lower")
    assert decisions(judge(turned, other)) == decisions(judge(measured, rule))


@settings(max_examples=40)
@given(results(plain=True), rules())
def test_reversing_the_direction_alone_turns_the_ranks_round(measured, rule):
    other = replace(rule, better="higher" if rule.better == "lower" else "lower")
    one, turned = judge(measured, replace(rule, matters=None)), judge(measured, replace(other, matters=None))
    if one.first.winner is None and turned.first.winner is None:  # a winner's pairs have their own interval
        k = len(measured)
        assert {n: (k + 1 - b, k + 1 - a) for n, (a, b) in one.ranks.items()} == dict(turned.ranks)
    for p, q in zip(one.pairs, turned.pairs, strict=True):
        assert p.favours is None or p.favours != q.favours


@settings(max_examples=40)
@given(results(), rules(), st.sampled_from([64.0, -1024.0, 4096.25]))
def test_adding_a_constant_to_everything_changes_no_decision(measured, rule, constant):
    moved = [replace(m, value=m.value + constant, values=tuple(x + constant for x in m.values)) for m in measured]
    assert decisions(judge(moved, rule)) == decisions(judge(measured, rule))


@settings(max_examples=40)
@given(results(), rules(), st.randoms(use_true_random=False))
def test_the_order_of_contenders_changes_nothing_but_the_order(measured, rule, random):
    mixed = measured.copy()
    random.shuffle(mixed)
    assert decisions(judge(mixed, rule)) == decisions(judge(measured, rule))


@settings(max_examples=40)
@given(results(positive=True, plain=True), st.sampled_from([0.5, 8.0, 1024.0]))
def test_under_relative_scatter_another_unit_changes_no_decision(measured, factor):
    rule = Rules("lower", "relative")
    scaled = [
        replace(
            m,
            value=m.value * factor,
            values=tuple(x * factor for x in m.values),
            contributions={s: c * factor for s, c in m.contributions.items()},
            steps=tuple(s * factor for s in m.steps),
        )
        for m in measured
    ]
    assert decisions(judge(scaled, rule)) == decisions(judge(measured, rule))


@pytest.mark.parametrize("scatter", ["common", "own", "relative"])
@pytest.mark.parametrize("n", [1, 2, 3])
def test_identical_numbers_are_never_told_apart_and_never_nan(scatter, n):
    measured = [Measured(name, 12.1, (12.1,) * n, steps=(0.1,)) for name in NAMES]
    found = judge(measured, Rules("lower", scatter))
    assert found.first.winner is None
    assert set(found.ranks.values()) == {(1, 5)}
    for p in found.pairs:
        assert p.difference == 0.0
        assert p.differed is False
        for x in (p.u, p.low, p.high, p.differed_low, p.differed_high):
            assert x is None or x == x  # no NaN


def test_forty_contenders_are_judged():
    measured = [Measured(f"c{i}", 2.0 * i, (2.0 * i - 1, 2.0 * i, 2.0 * i + 1), steps=(0.1,)) for i in range(40)]
    found = judge(measured, Rules("lower"))
    assert len(found.pairs) == 780
    assert found.first.winner == "c0"  # a lead of 2 over t(80)·√(2/3) = 1.62
    assert found.ranks["c39"] == (39, 40)  # q(40, 80)/√3 = 3.30 parts it from all but the next


def test_one_contender_alone_has_no_rival_to_beat():
    found = judge([Measured("a", 2.0, (1.0, 3.0))], Rules("lower"))
    assert (found.first.winner, found.first.reason.code) == (None, "one-contender")
    assert found.ranks["a"] == (1, 1)
    assert judge([], Rules("lower")).pairs == ()
