"""First place, pairs and rank ranges tell one story, and every reason's numbers are those that decided."""

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.judgement.judging import judge, sole_winner
from reportgen.judgement.measured import DeclaredScatter, Measured, Reason, Rules
from reportgen.metrology.uncertain import Source
from tests.judgement.bench import result
from tests.judgement.test_judging_laws import decisions, results

ROUNDS = ("1", "2", "3", "4")


@st.composite
def every_rule(draw):
    origin = draw(st.sampled_from(["method", "past campaigns"]))
    declared = [None, DeclaredScatter(1.0, 8, "", origin), DeclaredScatter(1.0, 30, "", origin)]
    return Rules(
        draw(st.sampled_from(["lower", "higher"])),
        draw(st.sampled_from(["common", "own", "relative"])),
        rounds=draw(st.booleans()),
        matters=draw(st.sampled_from([None, 3.0])),
        declared=draw(st.sampled_from(declared)),
        between_sessions=draw(st.sampled_from([None, 0.5])),
    )


@st.composite
def campaigns(draw):
    """Results above zero, some blocked, some without a value, some in two sessions, some run in rounds."""
    found = []
    for m in draw(results(positive=True)):
        blocked = draw(st.sampled_from(["", "", "", "a caveat"]))
        gone = draw(st.sampled_from([False, False, False, True]))
        sessions = tuple(draw(st.sampled_from(["sat", "sun"])) for _ in m.values)
        m = replace(m, blocked=blocked, rounds=ROUNDS[: len(m.values)])
        m = replace(m, sessions_by_pass=sessions, sessions=frozenset(sessions))
        found.append(Measured(m.name, None, (), blocked=blocked) if gone else m)
    return found


@settings(max_examples=60)
@given(campaigns(), every_rule())
def test_ranks_are_what_the_resolved_pairs_make_of_them(measured, rule):
    """JUDGING 5: rank of i = [1 + resolved better than i, k − resolved worse than i]; section 4: a winner's is [1, 1]."""
    found = judge(measured, rule)
    ranked = [name for name, rank in found.ranks.items() if rank is not None]
    for name in ranked:
        over = [p for p in found.pairs if name in (p.first, p.second) and p.favours is not None]
        better = sum(p.favours != name for p in over)
        worse = sum(p.favours == name for p in over)
        assert found.ranks[name] == (1 + better, len(ranked) - worse)
    assert set(found.first.unranked) == {m.name for m in measured} - set(ranked)
    assert found.first.may_be_first == tuple(name for name in ranked if found.ranks[name][0] == 1)
    if found.first.winner is not None:
        assert len(ranked) > 1
        assert found.first.may_be_first == (found.first.winner,)
        assert found.ranks[found.first.winner] == (1, 1)
    assert sole_winner(measured, rule) == found.first.winner


@settings(max_examples=40)
@given(campaigns(), every_rule())
def test_other_names_change_nothing_but_the_names(measured, rule):
    called = {m.name: f"z{9 - n}" for n, m in enumerate(measured)}  # they sort the other way round, too
    renamed = [
        replace(
            m,
            name=called[m.name],
            contributions={replace(s, where=called.get(s.where, s.where)): c for s, c in m.contributions.items()},
        )
        for m in measured
    ]
    pairs, ranks, winner, first = decisions(judge(measured, rule))
    other_pairs, other_ranks, other_winner, other_first = decisions(judge(renamed, rule))
    assert other_winner == called.get(winner)
    assert other_first == {called[n] for n in first}
    assert other_ranks == {called[n]: r for n, r in ranks.items()}
    for names, (decision, resolved, differed, favours) in pairs.items():
        assert other_pairs[frozenset(called[n] for n in names)] == (decision, resolved, differed, called.get(favours))


@settings(max_examples=40)
@given(campaigns(), every_rule(), st.sampled_from([0.25, 16.0]))
def test_another_unit_changes_nothing(measured, rule, times):
    """Powers of two, so that binary fractions stay as they are."""
    scaled = [
        replace(
            m,
            value=None if m.value is None else m.value * times,
            values=tuple(x * times for x in m.values),
            contributions={s: c * times for s, c in m.contributions.items()},
            steps=tuple(s * times for s in m.steps),
        )
        for m in measured
    ]
    plain = rule.scatter != "relative"  # what is declared of a relative scatter is a part of the value, in any unit
    declared = rule.declared and replace(rule.declared, sd=rule.declared.sd * (times if plain else 1.0))
    between = rule.between_sessions and rule.between_sessions * (times if plain else 1.0)
    matters = rule.matters and rule.matters * times
    other = replace(rule, declared=declared, between_sessions=between, matters=matters)
    assert decisions(judge(scaled, other)) == decisions(judge(measured, rule))


@settings(max_examples=60)
@given(campaigns(), every_rule())
def test_the_numbers_of_a_reason_are_those_that_decided(measured, rule):
    found = judge(measured, rule)
    for p in found.pairs:
        numbers = p.reason.numbers
        code = p.reason.code
        if code == "lead-exceeds":
            assert p.favours is not None
            assert numbers["lead"] > numbers["half_width"] * (1 - 1e-9)
        if code in ("lead-within", "step-decides"):
            assert p.favours is None
            assert numbers["lead"] <= numbers["half_width"] * (1 + 1e-9) + 1e-9
        if code == "step-decides":
            assert numbers["lead"] < numbers["least_lead"] * (1 + 1e-9)
            assert numbers["least_lead"] - numbers["step"] <= numbers["half_width"] * (1 + 1e-9)
        if code == "inside-matters":
            assert numbers["matters"] == rule.matters
            assert -rule.matters < numbers["low"] == p.low
            assert p.high == numbers["high"] < rule.matters
        if code in ("lead-exceeds", "lead-within", "step-decides") and p.within == "" and rule.scatter != "relative":
            assert numbers["lead"] == pytest.approx(abs(p.difference), abs=1e-9)
            assert numbers["half_width"] == pytest.approx((p.high - p.low) / 2, rel=1e-6, abs=1e-9)
        if code in ("no-scatter-known", "sessions-apart", "blocked", "no-result"):
            assert (p.favours, p.low, p.high) == (None, None, None)
    code, numbers = found.first.reason.code, found.first.reason.numbers
    if code == "lead-exceeds":
        own = [p for p in found.pairs if found.first.winner in (p.first, p.second) and p.favours is not None]
        leads = [p.reason.numbers["lead"] for p in own if "lead" in p.reason.numbers]
        assert numbers["lead"] > numbers["half_width"] * (1 - 1e-9)
        assert not leads or numbers["lead"] >= min(leads) * (1 - 1e-9) or len(leads) < len(own)
    if code == "lead-within":
        assert found.first.winner is None


CODES = set(re.findall(r"[a-z]+(?:-[a-z]+)+", re.sub(r"\([^)]*\)", "", Reason.__doc__.split("Codes:")[1]))) | {
    "blocked"
}


def test_every_code_of_a_reason_has_words():
    from reportgen.wording.reason import why

    assert {"lead-exceeds", "step-decides", "sessions-apart", "inside-matters", "no-answer"} <= CODES
    for code in CODES - {"half-width", "least-lead"}:
        assert why(code) != code, code


def reasons():
    """One campaign a code, of those that judge itself can give."""
    lower = Rules("lower")
    steady = {"a": (1.0, 1.1, 1.2), "b": (5.0, 5.1, 5.2)}
    near = {"a": (1.0, 1.5, 2.0), "b": (1.2, 1.7, 2.2)}
    limit = {"limit": "above"}
    yield "lead-exceeds", [result(n, *v) for n, v in steady.items()], lower
    yield "lead-within", [result(n, *v) for n, v in near.items()], lower
    yield "step-decides", [result("a", *[1] * 5, steps=(1.0,)), result("b", *[2] * 5, steps=(1.0,))], lower
    yield "no-scatter-known", [result("a", 1.0), result("b", 2.0)], lower
    yield "off-scale-both", [result(n, *v, **limit) for n, v in steady.items()], replace(lower, declared=DECLARED)
    yield "bound-decides", [result("a", 1.0, 1.1), result("b", 9.0, **limit)], lower
    yield "bound-too-close", [result("a", 1.0, 1.1), result("b", 1.0, **limit)], lower
    yield "inside-matters", [result(n, *v) for n, v in near.items()], replace(lower, matters=9.0)
    apart = {"a": frozenset({"sat"}), "b": frozenset({"sun"})}
    yield "sessions-apart", [result(n, *v, sessions=apart[n]) for n, v in steady.items()], lower
    yield "blocked", [result("a", 1.0, 1.1), result("b", 2.0, 2.1, blocked="why")], lower
    yield "no-result", [result("a", 1.0, 1.1), Measured("b", None, ())], lower
    yield "not-above-zero", [result("a", -1.0, 1.5), result("b", 2.0, 2.1)], Rules("lower", "relative")


DECLARED = DeclaredScatter(0.1, 20)


@pytest.mark.parametrize(("code", "measured", "rule"), list(reasons()), ids=[r[0] for r in reasons()])
def test_each_code_is_given_where_its_rule_decides(code, measured, rule):
    (pair,) = judge(measured, rule).pairs
    assert pair.reason.code == code


def test_a_shared_gain_of_the_readings_names_no_other_winner_than_without():
    """JUDGING 3: a shared gain adds (u_g·d)² to the variance of the difference, and 1 % of a lead decides no lead."""
    lead = {"a": (1.0, 1.1, 1.2), "b": (5.0, 5.1, 5.2)}
    gain = [result(n, *v, contributions={Source("gain", "meter"): 0.01 * sum(v) / 3}) for n, v in lead.items()]
    assert judge(gain, Rules("lower")).first.winner == "a"
