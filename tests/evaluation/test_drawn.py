"""Results whose formula bends within their uncertainty: intervals from joint draws (JCGM 101), through results.json.

Expected ends come from the distribution itself where it has a closed form: of one over a uniform input they are one over
its ends (JCGM 101, 7.7: quantiles go through a falling function turned round).
"""

from __future__ import annotations

from math import sqrt
from pathlib import Path
from typing import Any

import pytest
from scipy import stats

from tests.campaigns import compile_campaign, results_of
from tests.evaluation.bench import evaluated, pair, result

TWO = "title: T\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\ntests: [flow]\n"
FLOW = """\
title: Flow
readings:
  file: r.csv
  columns:
    water: {column: water, unit: l}
    time: {column: time, unit: s, instrument: watch}
    width: {column: width, unit: mm, instrument: rule}
quantities:
  flow: {formula: FORMULA, unit: UNIT, better: higher}
headline: flow
"""
BENCH = "watch: 1 s\nrule: 0.1 mm, accuracy ±2 %\n"


def files(formula: str, readings: str, unit: str = "l/s", instruments: str = BENCH) -> dict[str, str]:
    test = FLOW.replace("FORMULA", formula).replace("UNIT", unit)
    return {"tests/flow.yaml": test, "r.csv": readings, "instruments.yaml": instruments}


def told_of(place: Path, formula: str, readings: str, unit: str = "l/s", instruments: str = BENCH) -> dict[str, Any]:
    return results_of(place, TWO, **files(formula, readings, unit, instruments))


def row(told: dict[str, Any], contender: str) -> dict[str, Any]:
    (found,) = [r for r in told["results"] if (r["quantity"], r["contender"]) == ("flow", contender)]
    assert isinstance(found, dict)
    return found


ONCE = "contender,pass,water,time,width\ncorvane,1,9,3,10.0\nostler,1,9,40,10.0\n"


def test_a_divisor_read_in_coarse_steps_has_an_uneven_interval(tmp_path: Path) -> None:
    """9 l in 3 s by a clock of whole seconds: 2.5 to 3.5 s, evenly; 95 % of 9/t lies from 9/3.475 to 9/2.525 l/s."""
    found = row(told_of(tmp_path, "9 * (water / water) / (time / time) / time", ONCE, "1/s"), "corvane")
    assert found["value"] == pytest.approx(3.0)
    assert (found["low"], found["high"]) == pytest.approx((9 / 3.475, 9 / 2.525), abs=0.005)
    assert found["draws"]["used"] is True
    assert found["draws"]["first_order_low"] == pytest.approx(3 - 0.475, abs=1e-6)  # 9/3² · 0.475 either way


def test_its_u_is_that_of_the_budget_and_the_draws_own_stands_beside_it(tmp_path: Path) -> None:
    """9/t², t of 3 s, times 1/√12 s (JCGM 100, 5.1.2). Of 9/t, t uniform over 2.5 to 3.5: E[1/t] = ln 1.4,
    E[1/t²] = 1/(2.5·3.5), which comes to 4 % more."""
    found = row(told_of(tmp_path, "9 / time", ONCE, "1/s"), "corvane")
    mean, square = stats.uniform(2.5, 1).expect(lambda t: 9 / t), 81 / (2.5 * 3.5)
    assert found["u"] == found["draws"]["first_order_u"] == pytest.approx(1 / sqrt(12))
    assert found["draws"]["u"] == pytest.approx(sqrt(square - mean * mean), abs=0.005)
    assert found["draws"]["u_used"] is False
    assert found["draws"]["mean"] == pytest.approx(mean, abs=0.005)


def test_a_formula_that_is_straight_is_never_drawn(tmp_path: Path) -> None:
    told = told_of(tmp_path, "2 * time - 1 * time", ONCE, "s")
    assert [row(told, c)["draws"] for c in ("corvane", "ostler")] == [None, None]


def test_a_formula_that_hardly_bends_keeps_first_order(tmp_path: Path) -> None:
    """A step of 1 s in 40 000 s: second order is a hundred-thousandth of the interval."""
    readings = ONCE.replace("9,3,", "9,40003,").replace("9,40,", "9,50001,")
    assert row(told_of(tmp_path, "9 / time", readings, "1/s"), "corvane")["draws"] is None


def test_a_small_bend_is_drawn_and_first_order_found_to_do(tmp_path: Path) -> None:
    """JCGM 101, 8.2: both ends within half of the last of u's two digits. At 9/173, where u is 8.7e-5, the ends are off
    by 9·0.475²/173³, which is 3.9e-7, and 5e-7 is allowed."""
    readings = ONCE.replace("9,3,", "9,173,").replace("9,40,", "9,43,")
    found = row(told_of(tmp_path, "9 / time", readings, "1/s"), "corvane")
    assert found["draws"] is not None
    assert found["draws"]["used"] is False
    assert found["low"] == pytest.approx(found["draws"]["first_order_low"])


def test_quantities_that_feed_others_are_drawn_through(tmp_path: Path) -> None:
    """A rate by itself and its square by way of it: the ends of the square are the squares of the ends."""
    test = FLOW.replace("FORMULA", "9 / time").replace("UNIT", "1/s")
    test = test.replace("headline", "  square: {formula: flow ^ 2, unit: 1/s^2}\nheadline")
    told = results_of(tmp_path, TWO, **{**files("", ONCE), "tests/flow.yaml": test})
    (found,) = [r for r in told["results"] if (r["quantity"], r["contender"]) == ("square", "corvane")]
    assert (found["low"], found["high"]) == pytest.approx(((9 / 3.475) ** 2, (9 / 2.525) ** 2), abs=0.05)


def test_an_error_that_cancels_is_drawn_once(tmp_path: Path) -> None:
    """width / width is 1 whatever the rule's error, and so is what is made of it."""
    found = row(told_of(tmp_path, "(width / width) ^ 2 * 9 / time", ONCE, "1/s"), "corvane")
    assert (found["low"], found["high"]) == pytest.approx((9 / 3.475, 9 / 2.525), abs=0.005)


def test_what_two_contenders_share_cancels_in_draws_of_their_difference(tmp_path: Path) -> None:
    """A rule off by up to a third, squared: each result is uneven by it, their ratio isn't, and equal squares differ by
    nothing but their own steps."""
    readings = "contender,pass,water,time,width\n" + "".join(
        f"{c},{n},9,3,{10.0 + off}\n" for c in ("corvane", "ostler") for n, off in ((1, 0.0), (2, 0.1), (3, -0.1))
    )
    found = evaluated(
        tmp_path, TWO, **files("width ^ 2", readings, "mm^2", "watch: 1 s\nrule: 0.1 mm, accuracy ±30 %\n")
    )
    gap = pair(found, "flow", "corvane", "ostler")
    assert gap.difference == pytest.approx(0.0)
    spread = 2 * 10.0 * 0.1 * sqrt(2 / 3) * stats.t(4).ppf(0.975)  # of the passes alone; the rule's error adds nothing
    assert (gap.low, gap.high) == pytest.approx((-spread, spread), rel=0.01)
    one = result(found, "flow", "corvane")
    assert one.draws is not None
    assert one.draws.needed


def test_scatter_between_passes_is_added_without_draws(tmp_path: Path) -> None:
    """A shared bending factor beside Student's t: the interval holds what numerical integration of both says."""
    readings = "contender,pass,water,time,width\n" + "".join(
        f"{c},{n},{w},3,10.0\n" for c in ("corvane", "ostler") for n, w in ((1, 8.0), (2, 9.0), (3, 10.0))
    )
    constants = "factor: {value: 3, within: 1, source: a guess}\n"
    test = FLOW.replace("FORMULA", "water / factor").replace("UNIT", "l")
    told = results_of(tmp_path, TWO, **{**files("", readings), "tests/flow.yaml": test, "constants.yaml": constants})
    found = row(told, "corvane")
    sd = 1 / 3 / sqrt(3)

    def below(h: float) -> float:
        share = stats.uniform(2, 2).expect(lambda f: stats.t(4).cdf((h - (9 / f - 3)) / sd))
        return float(share)

    assert below(found["low"] - 3) == pytest.approx(0.025, abs=0.001)
    assert below(found["high"] - 3) == pytest.approx(0.975, abs=0.001)


def test_a_claim_is_weighed_by_the_draws(tmp_path: Path) -> None:
    """P(9/t ≥ 2.7) with t uniform over 2.5 to 3.5 is P(t ≤ 3.333) = 0.833; to first order it would be 0.8."""
    campaign = (
        "title: T\ncontenders:\n  corvane:\n    title: Corvane Sol\n    claims:\n"
        "      - {says: 2.7 Hz, quantity: flow, at least: 2.7 Hz, source: the box}\n"
        "  ostler: Ostler Mk II\ntests: [flow]\n"
    )
    told = results_of(tmp_path, campaign, **files("9 / time", ONCE, "Hz"))
    (claim,) = told["claims"]
    assert claim["probability"] == pytest.approx(9 / 2.7 - 2.5, abs=0.004)


def test_the_same_campaign_gives_the_same_figures(tmp_path: Path) -> None:
    one = told_of(tmp_path / "one", "9 / time", ONCE, "1/s")
    other = told_of(tmp_path / "other", "9 / time", ONCE, "1/s")
    assert one["results"] == other["results"]


def test_the_page_says_that_draws_were_used_and_why(tmp_path: Path) -> None:
    compile_campaign(tmp_path, TWO, **files("9 / time", ONCE, "1/s", BENCH))
    (page,) = (tmp_path / "stoves" / ".site").glob("*/tests/flow.html")
    text = page.read_text(encoding="utf-8")
    assert "(Monte Carlo)" in text
    assert "On average the draws of Corvane Sol come to 3.0" in text


def test_where_too_many_draws_have_no_answer_a_pair_says_so(tmp_path: Path) -> None:
    """A divisor of 2.1 ± 1.0 lies below nothing in 1.8 % of draws: of 5 % outside, that leaves an interval; of what four
    contenders leave to each pair, none."""
    four = "contenders: {corvane: Corvane Sol, ostler: Ostler Mk II, brindle: Brindle 2, tamsin: Tamsin Go}"
    campaign = f"title: T\n{four}\ntests: [flow]\n"
    readings = "contender,pass,water,time,width\n" + "".join(
        f"{c},{n},{w + n},3,10.0\n" for w, c in enumerate(("corvane", "ostler", "brindle", "tamsin"), 5) for n in (1, 2)
    )
    test = FLOW.replace("FORMULA", "water / factor").replace("UNIT", "l")
    constants = "factor: {value: 2.1, u: 1.0, source: a guess}\n"
    told = compile_campaign(
        tmp_path, campaign, **{**files("", readings), "tests/flow.yaml": test, "constants.yaml": constants}
    )
    assert all(row(told, c)["u"] and row(told, c)["high"] for c in ("corvane", "tamsin"))
    pairs = [c for c in told["comparisons"] if c["quantity"] == "flow"]
    assert {c["decision"] for c in pairs} == {"not enough to say"}
    assert {c["reason"]["code"] for c in pairs} == {"no-answer"}
    (page,) = (tmp_path / "stoves" / ".site").glob("*/tests/flow.html")
    assert "the formula has no answer" in page.read_text(encoding="utf-8")
