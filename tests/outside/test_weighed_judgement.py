"""Shares of places and pairwise indices through compiled campaigns, against closed forms of SMAA-2.

Lahdelma and Salminen 2001 (Operations Research 49:444): with no weights given, the weights of two groups are w and 1 − w, w
uniform on 0 to 1. All is worked out by hand below; no reading scatters, and steps of an instrument are far finer than
what is asked.
"""

from __future__ import annotations

from math import sqrt

import pytest

from tests.campaigns import results_of

NEAR = 4 * 0.5 / sqrt(10_000)  # four standard errors of an index of one half, from ten thousand draws
TWO = """\
title: Which?
contenders: {a: Alder, b: Birch}
measure:
  boil time: one reading, s, lower
  packed weight: one reading, g, lower
verdict:
  groups:
    speed: {criteria: {boil time: {worst: 400 s, best: 100 s}}}
    load: {criteria: {packed weight: {worst: 1000 g, best: 0.1 g}}}
readings: readings.csv
"""


def test_one_and_nothing_against_two_fifths_and_four_fifths_is_first_at_three_sevenths(tmp_path):
    # a is worth w, b 0.4·w + 0.8·(1 − w); a is ahead from w = 4/7 on.
    rows = "contender,boil time,packed weight\na,100.00,1000.00\nb,280.00,200.08\n"
    told = results_of(tmp_path, TWO, readings=rows)["verdict"]
    assert told["pairwise"]["a"]["b"] == pytest.approx(3 / 7, abs=NEAR)
    assert told["rank_shares"]["a"] == pytest.approx([3 / 7, 4 / 7], abs=NEAR)
    turns = {t["group"]: t for t in told["overall"]["turns"]}
    assert turns["speed"]["weight"] == pytest.approx(4 / 7, abs=0.002)
    assert (turns["speed"]["before"], turns["speed"]["after"]) == ("b", "a")
    leaders = [(c["weights"][0], c["leader"]) for c in told["overall"]["map"]["cells"]]
    assert all(leader == ("a" if w > 4 / 7 else "b") for w, leader in leaders if abs(w - 4 / 7) > 0.01)
    assert told["winner"] is None


def test_three_that_are_each_best_on_one_of_three_groups_have_a_third_each(tmp_path):
    text = TWO.replace("b: Birch", "b: Birch, c: Cedar").replace(
        "  packed weight: one reading, g, lower\n", "  packed weight: one reading, g, lower\n  pull: one reading, N, higher\n"
    ).replace("readings: readings", "    grip: {criteria: {pull: {worst: 10 N, best: 40 N}}}\nreadings: readings")  # fmt: skip
    rows = "contender,boil time,packed weight,pull\na,100.00,1000.00,10.000\nb,400.00,0.10,10.000\nc,400.00,1000.00,40.000\n"
    told = results_of(tmp_path, text, readings=rows)["verdict"]
    for name in "abc":
        assert told["rank_shares"][name] == pytest.approx([1 / 3] * 3, abs=NEAR)
    # a is ahead of b where its weight is the larger of the two: one half, whatever the third weighs.
    assert told["pairwise"]["a"]["b"] == pytest.approx(0.5, abs=NEAR)
    corners = [c["leader"] for c in told["overall"]["map"]["cells"] if 1.0 in c["weights"]]
    assert corners == ["c", "b", "a"]
