"""Readings whose error nobody knows to be their own: passes don't make it smaller.

Outside: JCGM 100:2008, 5.2.2 (correlated input: with r = 1 uncertainties add linearly) and F.1.2.4 (correlation can't be
ignored where a common influence is likely); the package `uncertainties`, in which one variable used thrice is one error.
"""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest
from scipy.stats import ttest_ind
from uncertainties import ufloat

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Measured, Rules
from reportgen.metrology.uncertain import Source
from tests.campaigns import comparison_of, result_of, results_of
from tests.lab_reports import report

POURED = """\
title: Fuel poured from a jug without marks
contenders:
  corvane:
    title: Corvane Sol
    claims:
      - {says: Takes little, source: box, quantity: poured, at most: 257 mL}
  ostler: Ostler Mk II
measure:
  poured: one reading, mL, lower
readings: readings.csv
"""
LEAD = """\
title: Lead
contenders:
  corvane:
    title: Corvane Sol
    claims:
      - {says: Hardly any lead, source: box, quantity: lead, at most: 10 mg/kg}
  ostler: Ostler Mk II
laboratory: {name: Lachter Analytics, report: attachments/lab-report.pdf}
measure:
  lead:
    kind: laboratory
    unit: mg/kg
    better: lower
    laboratory: {uncertainty: 1 mg/kg, k: 2}
readings: readings.csv
"""


@pytest.mark.parametrize("text", ["about 250", "250 ±10", "240 to 260"])
def test_three_rough_passes_are_no_surer_than_one(text: str, tmp_path: Path) -> None:
    rows = "contender,pass,poured\n" + "".join(f"corvane,{n},{text}\n" for n in (1, 2, 3)) + "ostler,1,280 mL\n"
    told = results_of(tmp_path, POURED, readings=rows)
    eye = ufloat(0, 10 / math.sqrt(3))  # JCGM 100, 4.3.7
    witness = sum(250 + eye for _ in range(3)) / 3
    (line,) = [b for b in result_of(told, "poured", "corvane")["budget"] if b["sort"] == "rough"]
    assert line["size"] == pytest.approx(witness.std_dev)


def test_three_samples_of_one_laboratory_don_t_support_what_one_leaves_open(tmp_path: Path) -> None:
    """9.5 with U = 1, k = 2: P(at most 10) = Φ(1) = 0.841 for one sample, and as long as all may err alike for three.
    Taken as errors of their own it would be Φ(√3) = 0.958, and "supported"."""
    rows = "contender,pass,lead,page\n" + "".join(f"corvane,{n},9.5,2\n" for n in (1, 2, 3)) + "ostler,1,12,2\n"
    told = results_of(tmp_path, LEAD, **{"readings": rows, "attachments/lab-report.pdf": report("Cover", "Lead")})
    (claim,) = told["claims"]
    assert claim["outcome"] == "undecided"
    assert claim["probability"] == pytest.approx(0.8413, abs=1e-3)
    assert result_of(told, "lead", "corvane")["u"] == pytest.approx(0.5)


def test_a_weighing_that_is_the_next_ones_first_still_cancels_when_it_is_rough(tmp_path: Path) -> None:
    """Chained: 500 − 400 and 400 − 300 are 500 − 300 in all; the rough middle is one reading and falls out."""
    text = """\
title: Fuel
contenders: {corvane: Corvane Sol}
tests: [fuel]
"""
    test = """\
title: Fuel
method: weigh, version 1
readings: {file: fuel.csv}
quantities:
  used: {kind: weighed before and after, unit: g, better: lower}
"""
    method = "title: Weigh\nchained: yes\nsteps: [Weigh.]\n"
    rows = "contender,pass,used before,used after\ncorvane,1,500,400 ±30\ncorvane,2,400 ±30,300\n"
    files = {"tests/fuel.yaml": test, "fuel.csv": rows, "methods/weigh.1.yaml": method}
    told = results_of(tmp_path, text, **files)
    assert not [b for b in result_of(told, "used", "corvane")["budget"] if b["sort"] == "rough"]


@pytest.mark.parametrize("passes", [2, 3, 5])
def test_an_eye_that_errs_alike_names_a_false_winner_in_one_of_twenty_at_most(passes: int) -> None:
    """Every contender alike at 200, guessed by an eye that errs by up to 10 on it, alike on each pass, which scatter by
    2. With errors of their own a false winner came in 11, 24 and 36 % of runs (2, 3, 5 passes)."""
    random, runs, false = np.random.default_rng(passes), 600, 0
    for _ in range(runs):
        measured = []
        for name in ("corvane", "ostler"):
            values = 200 + random.uniform(-10, 10) + random.normal(0, 2, passes)
            eye = {Source("rough", "", name): 10 / math.sqrt(3)}
            measured.append(Measured(name, float(values.mean()), tuple(values), eye))
        false += judge(measured, Rules("lower")).first.winner is not None
    assert false / runs <= 0.05 + 3 * math.sqrt(0.05 * 0.95 / runs)


def test_means_over_passes_told_once_a_pass_are_no_repeats(tmp_path: Path) -> None:
    """mean(a) − mean(b) is one number, whatever pass it is worked out for: three times the same shows no repeatability.
    Told pass by pass, a − b scatters, and Student's t (SciPy) leaves a lead of 4.3 open."""
    text = """\
title: Means
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
tests: [net]
"""
    test = """\
title: Net
readings: {file: net.csv, columns: {a: {unit: g}, b: {unit: g}}}
quantities:
  of means: {formula: mean_of_passes(a) - mean_of_passes(b), unit: g, better: lower}
  by pass: {formula: a - b, unit: g, better: lower}
headline: of means
"""
    rows = "contender,pass,a,b\ncorvane,1,10,5\ncorvane,2,14,6\ncorvane,3,12,9\n"
    rows += "ostler,1,13,5\nostler,2,16,6\nostler,3,20,9\n"
    told = results_of(tmp_path, text, **{"tests/net.yaml": test, "net.csv": rows})
    of_means, by_pass = (comparison_of(told, q, "corvane", "ostler") for q in ("of-means", "by-pass"))
    assert of_means["difference"] == pytest.approx(by_pass["difference"])
    assert (of_means["resolved"], of_means["reason"]["code"]) == (False, "no-scatter-known")
    assert ttest_ind([5, 8, 3], [8, 10, 11]).pvalue > 0.05
    assert by_pass["resolved"] is False
