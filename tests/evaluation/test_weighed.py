"""The weighed verdict through campaigns: who is weighed, on what, and what the draws share."""

from __future__ import annotations

import json
from math import sqrt

import numpy as np
import pytest
from scipy import stats

from reportgen.evaluation.evaluated import Evaluation
from reportgen.judgement.measured import DeclaredScatter, Rules
from reportgen.judgement.verdict.overall import Overall
from tests.campaigns import refusal, results_of
from tests.evaluation.bench import evaluated
from tests.evaluation.weighing import told, weighed

NEAR = 4 * 0.5 / sqrt(10_000)  # four standard errors of an index of one half
HEAD = "title: Which?\ncontenders: {a: A one, b: B two, c: C three}\nmeasure:\n"
TIMES = "  boil time: one reading, s, lower\n  noise: one reading, dB, lower\n"
PLAN = """\
verdict:
  groups:
    speed: {criteria: {boil time: {worst: 400 s, best: 100 s}}}
    peace: {criteria: {noise: {worst: 80 dB, best: 40 dB}}}
"""


def overall(found: Evaluation) -> Overall:
    assert found.verdict is not None
    assert found.verdict.overall is not None
    return found.verdict.overall


def verdict(place, plan: str = PLAN, rows: str = "", measure: str = TIMES, more: str = "") -> Evaluation:
    return evaluated(place, HEAD + measure + plan + more + "readings: readings.csv\n", readings=rows)


ROWS = """\
contender,pass,boil time,noise
a,1,150,60
b,1,170,61
c,1,200,72
a,2,152,61
b,2,171,60
c,2,203,71
a,3,151,62
b,3,169,62
c,3,199,72
"""


def test_passes_of_two_tests_scatter_by_themselves():
    # Variances of independent sums add; of twenty passes Student's t is as good as normal.
    rng = np.random.default_rng(3)
    passes = rng.standard_normal((2, 20))
    p = {"a": passes[0], "b": passes[1]}
    found = weighed([told("p", p, test="one"), told("q", p, test="two")])
    d, s = passes[0].mean() - passes[1].mean(), sqrt(passes.var(axis=1, ddof=1).mean())
    together = weighed([told("p", p), told("q", p)])
    assert found.index[0].index == pytest.approx(stats.t.cdf(d / (s * sqrt(2 / 20) / sqrt(2)), 38), abs=NEAR)
    assert together.index[0].index == pytest.approx(stats.t.cdf(d / (s * sqrt(2 / 20)), 38), abs=NEAR)


def test_an_error_that_two_contenders_share_cancels_in_their_index(tmp_path):
    plan = "verdict: {groups: {g: {criteria: {weight: {worst: 300 g, best: 100 g}}}}}\n"
    # The scale may be 9 g off, on one day; both were weighed on it, and differ by 1 g.
    scale = (
        "instruments:\n  scale:\n    resolution: 0.1 g\n    accuracy: ±9 g\n    shared: offset\n"
        "readings: readings.csv\n"
    )
    text = (
        HEAD.replace(", c: C three", "")
        + "  weight: {kind: one reading, unit: g, better: lower, instrument: scale}\n"
        + plan
    )
    rows = "contender,pass,weight\na,1,200.0\nb,1,201.0\na,2,200.1\nb,2,201.1\n"
    shared = overall(evaluated(tmp_path / "1", text + scale, readings=rows))
    each = overall(evaluated(tmp_path / "2", text + scale.replace("shared: offset", "shared: nothing"), readings=rows))
    assert shared.index[0].index > 0.97
    assert each.index[0].index < 0.8


def test_an_unknown_scatter_is_guarded_and_said(tmp_path):
    rows = "contender,boil time,noise\na,100,40\nb,390,79\nc,395,78\n"
    found = overall(verdict(tmp_path, rows=rows))
    assert (found.with_repeats, found.criteria, found.index_known) == (0, 2, ())
    assert found.lead.leader == "a"
    assert found.lead.index == 1.0
    assert found.winner is None
    assert not any(c.lead.firm for c in found.map.cells)


def test_several_tries_of_a_yes_or_no_are_repeats_and_one_is_not(tmp_path):
    plan = """\
verdict:
  groups:
    lid: {criteria: {lid held: {worst: 50 %, best: 100 %}}}
    catch: {criteria: {catch held: {worst: 50 %, best: 100 %}}}
    peace: {criteria: {noise: {worst: 80 dB, best: 40 dB}}}
"""
    measure = "  noise: one reading, dB, lower\n  lid held: yes/no, higher\n  catch held: yes/no, higher\n"
    text = HEAD + measure + plan + "readings: [once.csv, tries.csv]\n"
    once = "contender,noise,catch held\na,40,yes\nb,79,no\nc,78,no\n"
    tries = "contender,pass,lid held\n" + "".join(f"{who},{n},yes\n" for n in (1, 2, 3) for who in "abc")
    found = evaluated(tmp_path, text, **{"once.csv": once, "tries.csv": tries})
    uses = {use.quantity: use.known_scatter for use in found.verdict.criteria}
    assert uses == {"lid-held": True, "catch-held": False, "noise": False}
    assert overall(found).with_repeats == sum(uses.values())


def test_a_clear_lead_on_all_criteria_with_repeats_wins(tmp_path):
    found = verdict(
        tmp_path,
        rows=ROWS.replace("a,1,150,60", "a,1,110,45")
        .replace("a,2,152,61", "a,2,112,46")
        .replace("a,3,151,62", "a,3,111,44"),
    )
    assert found.verdict.winner == overall(found).winner == "a"
    assert overall(found).with_repeats == 2
    assert all(c.lead.firm and c.lead.leader == "a" for c in overall(found).map.cells)


def test_who_misses_a_condition_is_out_and_who_may_miss_it_stays(tmp_path):
    must = "  must: [{quantity: boil time, at most: 180 s}]\n"
    found = verdict(tmp_path, PLAN + must, ROWS)
    assert overall(found).out == {"c": "must"}
    assert overall(found).contenders == ("a", "b")
    close = overall(verdict(tmp_path / "2", PLAN + must.replace("180", "170"), ROWS))
    assert close.out == {"c": "must"}  # b stands at 170 s: undecided


def test_who_has_no_number_on_a_criterion_is_out_with_the_reason(tmp_path):
    missing = ROWS.replace("b,1,170,61", "b,1,170,").replace("b,2,171,60", "b,2,171,").replace("b,3,169,62", "b,3,169,")
    assert overall(verdict(tmp_path / "1", rows=missing)).out == {"b": "no-value"}
    bound = (
        ROWS.replace("c,1,200,72", "c,1,200,over 90")
        .replace("c,2,203,71", "c,2,203,over 90")
        .replace("c,3,199,72", "c,3,199,over 90")
    )
    assert overall(verdict(tmp_path / "2", rows=bound)).out == {"c": "bound"}
    caveat = "caveats: [{about: noise, contender: b, says: A dog barked., so: do not rank}]\n"
    assert overall(verdict(tmp_path / "3", rows=ROWS, more=caveat)).out == {"b": "blocked"}


def test_where_too_few_would_be_left_a_criterion_goes_instead(tmp_path):
    rows = "\n".join(
        line if "noise" in line or line.startswith("a") else line.rsplit(",", 1)[0] + "," for line in ROWS.splitlines()
    )
    found = verdict(tmp_path, rows=rows + "\n")
    assert overall(found).left_out == {"noise": "too-few"}
    assert overall(found).contenders == ("a", "b", "c")
    assert [f.rule for f in found.findings] == ["criterion-left-out"]


def test_a_criterion_nobody_was_measured_on_is_left_out_and_told(tmp_path):
    emptied = [line if "noise" in line else line.rsplit(",", 1)[0] + "," for line in ROWS.splitlines()]
    found = verdict(tmp_path, rows="\n".join(emptied) + "\n")
    assert overall(found).left_out == {"noise": "nobody-measured"}
    assert overall(found).groups == ("speed",)
    (told_of,) = found.findings
    assert (told_of.rule, told_of.severity) == ("criterion-not-measured", "warning")
    assert told_of.place.line == 9


def test_where_only_criteria_of_no_weight_are_left_nothing_is_weighed_and_that_is_told(tmp_path):
    plan = PLAN.replace("speed: {", "speed: {weight: 0, ").replace("peace: {", "peace: {weight: 9, ")
    emptied = [line if "noise" in line else line.rsplit(",", 1)[0] + "," for line in ROWS.splitlines()]
    found = verdict(tmp_path, plan, rows="\n".join(emptied) + "\n")
    assert found.verdict.overall is None
    assert [f.rule for f in found.findings] == ["criterion-not-measured", "nothing-to-weigh"]


def test_a_condition_nobody_meets_is_told_and_nothing_is_weighed(tmp_path):
    found = verdict(tmp_path, PLAN + "  must: [{quantity: boil time, at most: 9 s}]\n", ROWS)
    assert found.verdict.overall is None
    assert found.verdict.winner is None
    assert [f.rule for f in found.findings] == ["condition-nobody-meets", "nobody-to-weigh"]
    assert all(f.place.line for f in found.findings)


def test_a_campaign_that_is_only_planned_is_told_nothing(tmp_path):
    found = verdict(tmp_path, rows="contender,pass,boil time,noise\n")
    assert found.verdict.overall is None
    assert found.findings == ()


def test_yes_and_no_are_drawn_from_their_beta(tmp_path):
    # JCGM 101 leaves it open; Beta(x + ½, n − x + ½) is Jeffreys' (Brown, Cai and DasGupta 2001, Statistical Science
    # 16:101). The witness is a plain sum over SciPy's distribution functions.
    measure = "  lit: {kind: yes/no, better: higher}\n"
    plan = "verdict: {groups: {g: {criteria: {lit: {worst: 0 %, best: 100 %}}}}}\n"
    rows = "contender,pass,lit\n" + "".join(
        f"{c},{n + 1},{'yes' if n < yes else 'no'}\n" for c, yes in (("a", 5), ("b", 3), ("c", 1)) for n in range(5)
    )
    found = overall(verdict(tmp_path, plan, rows, measure))
    x = np.linspace(0, 1, 20_001)
    for pair, (yes, other) in zip(found.index, ((5, 3), (5, 1), (3, 1)), strict=True):
        a, b = stats.beta(yes + 0.5, 5.5 - yes), stats.beta(other + 0.5, 5.5 - other)
        wanted = float((np.diff(a.cdf(x)) * b.cdf((x[1:] + x[:-1]) / 2)).sum())
        assert pair.index == pytest.approx(wanted, abs=NEAR)
    assert found.with_repeats == 1


def test_counts_are_drawn_from_their_gamma(tmp_path):
    # Gamma(x + ½), Jeffreys' for a Poisson mean; of two, the share has Beta(x + ½, y + ½).
    measure = "  sparks: {kind: count, better: lower}\n"
    plan = "verdict: {groups: {g: {criteria: {sparks: {worst: 20, best: 0}}}}}\n"
    rows = "contender,pass,sparks\na,1,2\na,2,1\nb,1,4\nb,2,5\nc,1,9\nc,2,9\n"
    found = overall(verdict(tmp_path, plan, rows, measure))
    wanted = stats.beta(3.5, 9.5).cdf(0.5)
    assert found.index[0].index == pytest.approx(wanted, abs=NEAR)
    assert found.with_repeats == 0  # nothing says that events come by themselves


def test_counts_that_are_said_to_be_independent_have_a_known_scatter(tmp_path):
    measure = "  sparks: {kind: count, better: lower, independent: yes}\n"
    plan = "verdict: {groups: {g: {criteria: {sparks: {worst: 20, best: 0}}}}}\n"
    rows = "contender,pass,sparks\na,1,2\nb,1,4\nc,1,40\n"
    found = overall(verdict(tmp_path, plan, rows, measure))
    assert found.with_repeats == found.criteria == 1
    assert found.index_known == found.index


def test_a_count_over_a_quantity_is_no_criterion(tmp_path):
    measure = TIMES + "  sparks: {kind: count, better: lower, independent: yes, counted over: boil time}\n"
    plan = "verdict: {groups: {g: {criteria: {sparks: {worst: 20, best: 0}}}}}\n"
    rows = "contender,pass,boil time,noise,sparks\na,1,150,60,2\nb,1,160,60,4\nc,1,170,60,9\n"
    (found,) = refusal(tmp_path, HEAD + measure + plan + "readings: readings.csv\n", readings=rows)
    assert found.rule == "criterion-counted-over"
    assert found.place.line
    assert "judged by its rate" in found.do


def test_parts_that_stay_apart_share_the_weight_of_their_criterion(tmp_path):
    measure = "  noise: {kind: one reading, unit: dB, better: lower, over parts: each}\n" + TIMES.splitlines(True)[0]
    rows = "contender,pass,part,noise,boil time\n" + "".join(
        f"{c},{n},{part},{x + 0.1 * n},{t + n if part == 'low' else ''}\n"
        for c, low, high, t in (("a", 40, 79, 150), ("b", 78, 42, 151), ("c", 79, 78, 300))
        for n in (1, 2, 3)
        for part, x in (("low", low), ("high", high))
    )
    found = overall(verdict(tmp_path, rows=rows, measure=measure))
    assert found.criteria == 2
    assert [w.quantity for w in found.without] == ["boil-time", "noise"]
    assert found.index[0].index > 0.5  # on both parts together b is ahead by half a decibel, and a by a second


def test_values_beyond_the_anchors_count_on_and_are_told(tmp_path):
    rows = ROWS.replace("c,1,200", "c,1,460").replace("c,2,203", "c,2,462").replace("c,3,199", "c,3,461")
    found = overall(verdict(tmp_path, rows=rows))
    assert found.past == {"boil-time": ("c",)}


def test_scatter_that_grows_with_the_level_and_a_criterion_of_ratios_are_weighed(tmp_path):
    text = HEAD.replace("measure:\n", "tests: [t]\n") + PLAN.replace("best: 100 s}", "best: 100 s, ratio: yes}")
    test = (
        "title: T\nheadline: noise\nscatter: relative\nreadings: readings.csv\nquantities:\n"
        "  boil time: {kind: one reading, unit: s, better: lower}\n"
        "  noise: {kind: one reading, unit: dB, better: lower}\n"
    )
    found = overall(evaluated(tmp_path, text, readings=ROWS, **{"tests/t.yaml": test, "tests/readings.csv": ROWS}))
    assert found.contenders == ("a", "b", "c")
    assert found.index[1].index > 0.9


def test_equal_input_gives_equal_bytes_and_a_newcomer_changes_no_draw(tmp_path):
    rows = ROWS.replace("a,1,150", "a,1,165").replace("a,2,152", "a,2,168")
    one, other = (json.dumps(overall(verdict(tmp_path / n, rows=rows)).places) for n in "12")
    assert one == other
    # With a scatter declared beforehand nothing that a newcomer brings moves the index of the others.
    rng = np.random.default_rng(1)
    p, q = ({n: rng.normal(0.5, 0.05, 3) for n in "abc"} for _ in "pq")
    rules = Rules("higher", declared=DeclaredScatter(0.05, 200))

    def index(names):
        found = weighed(
            [told(k, {n: v[n][:1] for n in names}, rules, test=k) for k, v in (("p", p), ("q", q))],
        )
        return {(i.first, i.second): i.index for i in found.index}

    both = index("ab")
    assert {pair: index("abc")[pair] for pair in both} == both


def test_the_record_holds_the_weighed_verdict(tmp_path):
    readers = "  readers: {hasty: {speed: 9, peace: 1}}\n"
    record = results_of(tmp_path, HEAD + TIMES + PLAN + readers + "readings: readings.csv\n", readings=ROWS)
    found = record["verdict"]
    assert found["pairwise"]["a"]["b"] == pytest.approx(1 - found["pairwise"]["b"]["a"])
    assert sum(found["rank_shares"]["a"]) == pytest.approx(1)
    weighed_ = found["overall"]
    assert weighed_["weights"] == "all"
    assert len(weighed_["map"]["cells"]) == weighed_["map"]["steps"] + 1
    assert weighed_["readers"][0]["name"] == "hasty"
    assert weighed_["readers"][0]["weights"] == pytest.approx([0.9, 0.1])
    assert sum(weighed_["equal_first"].values()) == pytest.approx(1)
    assert (weighed_["known_scatter"], weighed_["criteria"], weighed_["draws"]) == (2, 2, 10_000)
