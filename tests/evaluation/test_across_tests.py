"""Quantities built on those of other tests, and passes left out behind a mean; expected values are sums by hand."""

from __future__ import annotations

import html
from pathlib import Path
from typing import Any

import pytest
from scipy import stats

from tests.campaigns import compile_campaign, refusal, result_of, results_of
from tests.evaluation.bench import evaluated, pair, result, value

TWO = "title: T\ncontenders: {corvane: Corvane, ostler: Ostler}\n"
TIME = """\
title: Time
readings: {file: readings.csv, columns: {burn: {unit: s}}}
quantities: {burn: {kind: timed, unit: s, better: lower}}
"""
WEIGHT = """\
title: Weight
headline: weight
readings: {file: weight.csv, columns: {weight: {unit: g}}}
quantities:
  weight: {formula: weight, unit: g, better: lower}
  load: {formula: weight * burn, unit: g*s, better: lower}
  typical: {formula: mean_of_passes(weight), unit: g, better: neither}
"""
TIMES = "contender,pass,burn\ncorvane,1,3.1\ncorvane,2,3.3\ncorvane,3,9.9\nostler,1,4.2\nostler,2,4.1\n"
LEFT_OUT = "exclude: [{contender: corvane, pass: 3, because: the watch stuck, decided: during the test}]\n"


def test_a_quantity_of_another_test_is_taken_over_all_its_passes(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, TWO + "tests: [burn, weight]\n", readings=TIMES,
        **{"tests/burn.yaml": TIME + LEFT_OUT, "tests/weight.yaml": WEIGHT,
           "weight.csv": "contender,pass,weight\ncorvane,1,10.0\nostler,1,20.0\n"},
    )  # fmt: skip
    assert value(found, "load", "corvane") == pytest.approx(10.0 * (3.1 + 3.3) / 2)
    assert value(found, "load", "ostler") == pytest.approx(20.0 * (4.2 + 4.1) / 2)


def test_the_same_passes_in_both_tests_are_taken_pass_by_pass(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, TWO + "tests: [burn, weight]\n", readings=TIMES.replace("corvane,3,9.9\n", ""),
        **{"tests/burn.yaml": TIME, "tests/weight.yaml": WEIGHT,
           "weight.csv": "contender,pass,weight\ncorvane,1,10.0\ncorvane,2,20.0\nostler,1,20.0\nostler,2,20.0\n"},
    )  # fmt: skip
    assert value(found, "load", "corvane") == pytest.approx((10.0 * 3.1 + 20.0 * 3.3) / 2)


def test_passes_left_out_apart_the_same_passes_are_taken_pass_by_pass(tmp_path: Path) -> None:
    """The third burn is left out and was never weighed: what counts is the same in both tests."""
    found = evaluated(
        tmp_path, TWO + "tests: [burn, weight]\n", readings=TIMES,
        **{"tests/burn.yaml": TIME + LEFT_OUT, "tests/weight.yaml": WEIGHT,
           "weight.csv": "contender,pass,weight\ncorvane,1,10.0\ncorvane,2,20.0\nostler,1,20.0\nostler,2,20.0\n"},
    )  # fmt: skip
    assert value(found, "load", "corvane") == pytest.approx((10.0 * 3.1 + 20.0 * 3.3) / 2)
    assert result(found, "load", "corvane").passes == 2


POWER = """\
title: Power
readings: {file: energy.csv, columns: {energy: {unit: J}}}
headline: energy
quantities: {energy: {formula: energy, unit: J, better: neither}}
"""


def across(place: Path, burns: str, energies: str, more: str = "") -> dict[str, Any]:
    """Mean power out of energy and time, which are of two tests and neither of its own."""
    power = "measure: {power: {title: Mean power, formula: energy / burn, unit: W}}\nreadings: readings.csv\n"
    yaml = TWO + "tests: [burn, energy]\n" + power
    files = {"tests/burn.yaml": TIME + more, "tests/energy.yaml": POWER, "energy.csv": energies}
    return compile_campaign(place, yaml, readings=burns, **files)


def test_a_quantity_of_two_tests_is_of_as_many_passes_as_both_count(tmp_path: Path) -> None:
    """62/3.1 = 20 W and 99/3.3 = 30 W, whose mean is 25 W; the third pass is left out of the one, never read in the other."""
    energies = "contender,pass,energy\ncorvane,1,62\ncorvane,2,99\nostler,1,84\nostler,2,82\n"
    told = across(tmp_path, TIMES, energies, LEFT_OUT)
    assert result_of(told, "power", "corvane")["value"] == pytest.approx(25)
    assert result_of(told, "power", "corvane")["passes"] == 2
    assert [p["together"] for p in result_of(told, "power", "corvane")["by_pass"]] == [False, False]


def test_passes_in_parts_are_joined_before_they_meet_those_of_another_test(tmp_path: Path) -> None:
    burns = "contender,pass,part,burn\ncorvane,1,,3.1\ncorvane,2,a,1.0\ncorvane,2,b,2.3\nostler,1,,4.2\nostler,2,,4.1\n"
    energies = "contender,pass,energy\ncorvane,1,62\ncorvane,2,99\nostler,1,84\nostler,2,82\n"
    files = {"tests/burn.yaml": TIME.replace("better: lower", "better: lower, over parts: sum"),
             "tests/energy.yaml": POWER, "energy.csv": energies}  # fmt: skip
    yaml = TWO + "tests: [burn, energy]\nreadings: readings.csv\nmeasure: {power: {formula: energy / burn, unit: W}}\n"
    told = results_of(tmp_path, yaml, readings=burns, **files)
    assert result_of(told, "power", "corvane")["value"] == pytest.approx(25)
    assert result_of(told, "power", "corvane")["passes"] == 2


def test_where_passes_differ_it_is_one_value_that_says_so_and_marks_what_is_left_out(tmp_path: Path) -> None:
    energies = "contender,pass,energy\ncorvane,1,80\nostler,1,84\nostler,2,82\n"
    told = across(tmp_path, TIMES, energies, LEFT_OUT)
    power = result_of(told, "power", "corvane")
    assert power["value"] == pytest.approx(80 / 3.2)
    assert [p["together"] for p in power["by_pass"]] == [True]
    page = html.unescape((tmp_path / "stoves/.site/stoves/tests/power.html").read_text(encoding="utf-8"))
    assert "All passes as one value: those of energy and burn aren’t the same" in page
    assert "Left out: the watch stuck" in page


def test_the_scatter_of_a_quantity_behind_it_keeps_a_product_from_being_told_apart(tmp_path: Path) -> None:
    """Times 3 ± 2 and 4 ± 2 s in two passes each can't be told apart, nor can these times a weight of 10.0 g."""
    found = evaluated(
        tmp_path, TWO + "tests: [burn, weight]\n",
        readings="contender,pass,burn\ncorvane,1,1.0\ncorvane,2,5.0\nostler,1,2.0\nostler,2,6.0\n",
        **{"tests/burn.yaml": TIME, "tests/weight.yaml": WEIGHT,
           "weight.csv": "contender,pass,weight\n" + "".join(
               f"{c},{n},{w}\n" for n, w in enumerate(("10.0", "10.1", "9.9"), 1) for c in ("corvane", "ostler"))},
    )  # fmt: skip
    assert pair(found, "burn", "corvane", "ostler").resolved is False
    assert pair(found, "load", "corvane", "ostler").resolved is False
    load = result(found, "load", "corvane")
    assert load.low is not None
    assert load.low < 10.0 * 1.0  # the lower of its two times lies well inside


def test_a_pass_left_out_is_left_out_of_the_mean_behind_a_formula_and_spares_the_others(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, TWO + "tests: [burn, weight]\n", readings=TIMES,
        **{"tests/burn.yaml": TIME,
           "tests/weight.yaml": WEIGHT + "exclude: [{contender: corvane, pass: 2, because: spilled, decided: during the test}]\n",
           "weight.csv": "contender,pass,weight\ncorvane,1,10.0\ncorvane,2,90.0\ncorvane,3,11.0\nostler,1,20.0\n"},
    )  # fmt: skip
    assert value(found, "typical", "corvane") == pytest.approx((10.0 + 11.0) / 2)
    assert result(found, "typical", "corvane").passes > 0


def test_with_a_bound_put_back_the_value_is_a_bound(tmp_path: Path) -> None:
    told = compile_campaign(
        tmp_path, TWO + "tests: [burn]\n", readings=TIMES.replace("3,9.9", "3,over 9"), **{"tests/burn.yaml": TIME + LEFT_OUT}
    )  # fmt: skip
    corvane = result_of(told, "burn", "corvane")
    assert corvane["without_exclusions"] == pytest.approx((3.1 + 3.3 + 9.0) / 3)
    assert corvane["without_limit"] == "above"
    page = (tmp_path / "stoves" / ".site" / "stoves" / "tests" / "burn.html").read_text(encoding="utf-8")
    assert "more than 5.1" in page


def test_a_contender_above_and_below_limits_has_no_result_and_leaves_the_others_theirs(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, TWO + "measure: {burn: 'timed, s, lower'}\nreadings: readings.csv\n",
        readings="contender,pass,burn\ncorvane,1,over 9\ncorvane,2,under 3\nostler,1,4.2\nostler,2,4.1\n",
    )  # fmt: skip
    assert "above a limit and another below" in result(found, "burn", "corvane").missing
    assert value(found, "burn", "ostler") == pytest.approx(4.15)


def test_a_value_claimed_without_tolerance_is_not_tested(tmp_path: Path) -> None:
    """No reading is exact, so nothing says how near 3.1 s would have to be."""
    text = """\
        title: T
        contenders:
          corvane:
            title: Corvane
            claims: [{says: Three point one, source: box, quantity: burn, is: 3.1 s}]
          ostler: Ostler
        measure: {burn: 'timed, s, lower'}
        readings: readings.csv
        """
    told = results_of(tmp_path, text, readings="contender,pass,burn\ncorvane,1,3.1\nostler,1,3.4\n")
    (claim,) = told["claims"]
    assert (claim["outcome"], claim["probability"]) == ("not tested", None)


METHOD = "title: M\nscatter: relative\nsteps: [do it]\nrepeatability: {burn: %s, passes: 24, products: 4}\n"
BY_METHOD = TIME.replace("title: Time\n", "title: Time\nmethod: by-hand\n")


def test_a_relative_repeatability_is_a_share_of_the_value(tmp_path: Path) -> None:
    """5 % of a single 40 s is 2 s."""
    found = evaluated(
        tmp_path, TWO + "tests: [burn]\n", readings="contender,pass,burn\ncorvane,1,40.000\nostler,1,90.000\n",
        **{"tests/burn.yaml": BY_METHOD, "methods/by-hand.1.yaml": METHOD % "5 %"},
    )  # fmt: skip
    assert result(found, "burn", "corvane").u == pytest.approx(2.0, rel=1e-3)


def test_a_repeatability_declared_of_a_quantity_behind_is_in_what_stands_on_it(tmp_path: Path) -> None:
    """5 % of a time read once, beside a weight whose own scatter is small: 5 % of the product (JCGM 100, 5.1.6)."""
    rows = "".join(f"{c},{n},{w}\n" for n, w in enumerate(("10.00", "10.01", "9.99"), 1) for c in ("corvane", "ostler"))
    found = evaluated(
        tmp_path, TWO + "tests: [burn, weight]\n", readings="contender,pass,burn\ncorvane,1,40.000\nostler,1,90.000\n",
        **{"tests/burn.yaml": BY_METHOD, "methods/by-hand.1.yaml": METHOD % "5 %", "tests/weight.yaml": WEIGHT,
           "weight.csv": "contender,pass,weight\n" + rows},
    )  # fmt: skip
    load = result(found, "load", "corvane")
    assert load.estimate is not None
    assert load.estimate.value == pytest.approx(400)
    assert load.u == pytest.approx(20, rel=1e-3)
    assert load.low == pytest.approx(400 - 20 * stats.t.ppf(0.975, 20), rel=1e-3)  # 24 passes less 4 products


def test_a_relative_repeatability_in_seconds_is_refused(tmp_path: Path) -> None:
    findings = refusal(
        tmp_path, TWO + "tests: [burn]\n", readings="contender,pass,burn\ncorvane,1,40.0\nostler,1,90.0\n",
        **{"tests/burn.yaml": BY_METHOD, "methods/by-hand.1.yaml": METHOD % "0.5 s"},
    )  # fmt: skip
    assert any("relative" in f.says and "percent" in f.do for f in findings)


def test_the_least_of_passes_takes_no_scatter_for_an_interval(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, TWO + "tests: [burn]\n", readings=TIMES,
        **{"tests/burn.yaml": TIME.replace("better: lower", "better: lower, over passes: least")},
    )  # fmt: skip
    corvane = result(found, "burn", "corvane")
    assert (corvane.covers, corvane.rank) == ("instrument", None)
    assert corvane.u == pytest.approx(0.1 / 12**0.5)  # JCGM 100, F.2.2.1: the step written alone


def test_a_declared_scatter_between_sessions_widens_a_result_by_itself(tmp_path: Path) -> None:
    """One session each: √(s²/2 + σ²) with s² = (0.02 + 0.005)/2 (JCGM 100, 4.2.4 and 5.1.2)."""
    found = evaluated(
        tmp_path, TWO + "tests: [burn]\n",
        readings="contender,pass,session,burn\ncorvane,1,m,3.1\nostler,1,n,4.9\ncorvane,2,m,3.3\nostler,2,n,4.8\n",
        **{"tests/burn.yaml": BY_METHOD, "methods/by-hand.1.yaml": "title: M\nsteps: [do it]\nbetween sessions: 0.5 s, a guess\n"},
    )  # fmt: skip
    assert result(found, "burn", "corvane").u == pytest.approx(((0.02 + 0.005) / 2 / 2 + 0.5**2) ** 0.5, rel=1e-6)


def test_specimens_are_compared_and_not_their_passes(tmp_path: Path) -> None:
    """Two specimens of each, every one run twice: one value a specimen, so Student's t with k(m − 1) = 2 degrees."""
    burns = {"corvane": ((3.10, 3.11), (3.90, 3.91)), "ostler": ((4.50, 4.51), (5.30, 5.29))}
    table = "contender,specimen,pass,burn\n" + "".join(
        f"{c},{s},{p},{x}\n" for c, all_ in burns.items() for s, xs in enumerate(all_, 1) for p, x in enumerate(xs, 1)
    )
    found = evaluated(tmp_path, TWO + "tests: [burn]\n", readings=table, **{"tests/burn.yaml": TIME})
    expected = stats.ttest_ind(*([sum(xs) / 2 for xs in all_] for all_ in burns.values()))
    low, high = expected.confidence_interval(0.95)
    told = pair(found, "burn", "corvane", "ostler")
    assert (told.low, told.high) == pytest.approx((low, high), rel=1e-6)
    assert (expected.pvalue < 0.05, told.resolved) == (False, False)
