"""Criteria that can't be weighed and weights that say nothing: refused, with their places."""

from __future__ import annotations

import pytest

from tests.campaigns import refusal
from tests.evaluation.test_weighed import HEAD, ROWS, TIMES

BAD = {
    "ratios of a level": ("{worst: 80 dB, best: 40 dB, ratio: yes}", "ratio-without-zero", "noise"),
    "anchors alike in two units": ("{worst: 1 min, best: 60 s}", "anchors-alike", "boil time"),
    "a ratio from nothing": ("{worst: 60 s, best: 0 s, ratio: yes}", "ratio-not-above-zero", "boil time"),
    "a grade": ("{worst: 1, best: 3}", "criterion-without-scale", "finish"),
    "the least pass": ("{worst: 60 s, best: 1 s}", "criterion-not-ranked", "quickest"),
    "a price": ("{worst: 90, best: 10}", "price-as-criterion", "price"),
}


@pytest.mark.parametrize("mistake", BAD)
def test_a_criterion_that_cannot_be_weighed_is_refused_with_its_place(mistake, tmp_path):
    anchors, rule, quantity = BAD[mistake]
    measure = (
        TIMES + "  finish: {kind: grade, grades: [poor, fair, good]}\n"
        "  quickest: {kind: one reading, unit: s, better: lower, over passes: least}\n"
    )
    plan = f"verdict:\n  groups:\n    g:\n      criteria:\n        {quantity}: {anchors}\n"
    rows = "contender,pass,boil time,noise,finish,quickest\na,1,150,60,good,3\nb,1,150,60,good,4\nc,1,150,60,good,5\n"
    text = HEAD + measure + plan + "readings: readings.csv\n"
    (found,) = refusal(tmp_path, text, readings=rows)
    assert found.rule == rule
    assert found.place.line == text[: text.index(f"        {quantity}: {anchors}")].count("\n") + 1
    assert found.do


WEIGHTS = {
    "some weights inside a group": ("{g: {criteria: {boil time: {worst: 9 s, best: 1 s, weight: 3}, noise: {worst: 9 dB, best: 1 dB}}}}", "weights-for-some"),
    "weights of nothing inside": ("{g: {criteria: {boil time: {worst: 9 s, best: 1 s, weight: 0}}}}", "weights-of-nothing"),
    "one quantity in two groups": ("{g: {criteria: {noise: {worst: 9 dB, best: 1 dB}}}, h: {criteria: {noise: {worst: 9 dB, best: 1 dB}}}}", "criterion-twice"),
    "a reader of no weight": ("{g: {criteria: {noise: {worst: 9 dB, best: 1 dB}}}}\n  readers: {idle: {g: 0}}", "weights-of-nothing"),
}  # fmt: skip


@pytest.mark.parametrize("mistake", WEIGHTS)
def test_weights_that_say_nothing_are_refused(mistake, tmp_path):
    groups, rule = WEIGHTS[mistake]
    found = refusal(tmp_path, HEAD + TIMES + f"verdict:\n  groups: {groups}\nreadings: readings.csv\n", readings=ROWS)
    assert rule in [f.rule for f in found]
    assert all(f.place.line and f.do for f in found)
