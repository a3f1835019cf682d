"""Verdicts over odd numbers: what can't be weighed is left out with its true reason, and nobody wins by it."""

from __future__ import annotations

import warnings
from pathlib import Path
from typing import Any

import pytest

from reportgen.build.run import audit_path
from reportgen.finding import Finding
from tests.campaigns import compile_campaign, refusal

GAS = """\
title: T
contenders: {corvane: Corvane, ostler: Ostler, tamsin: Tamsin}
measure:
  gas: {kind: one reading, unit: g, better: lower, scatter: SCATTER}
readings: readings.csv
verdict:
  groups:
    thrift:
      criteria:
        gas: {worst: 20 g, best: 5 gRATIO}
"""


def rows(**passes: str) -> str:
    told = {name: values.split(",") for name, values in passes.items()}
    return "contender,pass,gas\n" + "".join(
        f"{name},{n + 1},{values[n]}\n" for n in range(2) for name, values in told.items()
    )


def compiled(place: Path, scatter: str, ratio: str, readings: str) -> tuple[dict[str, Any], str, dict[str, Finding]]:
    record = compile_campaign(place, GAS.replace("SCATTER", scatter).replace("RATIO", ratio), readings=readings)
    page = (place / "stoves" / ".site" / record["campaign"] / "index.html").read_text(encoding="utf-8")
    return record["verdict"], page, {f.rule: f for f in audit_path(place / "stoves")}


def test_where_ratios_decide_and_one_value_is_below_zero_nobody_wins_among_the_rest(tmp_path):
    """The one below zero is ahead of both others: a winner among those would be a false one."""
    readings = rows(corvane="-3,-3.1", ostler="2,2.1", tamsin="4,4.4")
    found, _, findings = compiled(tmp_path, "relative", "", readings)
    assert found["winner"] is None
    assert found["overall"] is None
    assert "ratios decide on it" in findings["criterion-not-above-zero"].says
    assert "nothing-to-weigh" not in findings


def test_who_has_no_logarithm_is_not_said_to_lack_a_value(tmp_path):
    readings = rows(corvane="0,0", ostler="6.0,6.2", tamsin="9.1,9.4")
    found, page, _ = compiled(tmp_path, "common", ", ratio: yes", readings)
    assert found["overall"]["out"] == {"corvane": "not-above-zero"}
    assert "its value there isn’t above zero" in page
    assert "lacks a value" not in page


def test_a_criterion_known_from_one_side_only_is_not_said_to_be_unmeasured(tmp_path):
    readings = rows(corvane="over 50,over 50", ostler="over 50,over 50", tamsin="over 50,over 50")
    found, _, findings = compiled(tmp_path, "common", "", readings)
    assert found["winner"] is None
    assert findings["criterion-of-bounds"].why == "It leaves nothing to weigh."
    assert not {"nothing-to-weigh", "criterion-not-measured"} & set(findings)


def test_draws_beyond_any_float_stay_numbers(tmp_path):
    """One degree of freedom and scatter in ratios: a draw of Student's t may lie thousands of scatters away."""
    readings = "contender,pass,gas\ncorvane,1,1\nostler,1,4\ncorvane,2,9\n"
    with warnings.catch_warnings():
        warnings.simplefilter("error", RuntimeWarning)
        found, _, _ = compiled(tmp_path, "relative", "", readings)
    assert sum(found["rank_shares"]["corvane"]) == pytest.approx(1.0)


def test_an_order_of_grades_names_each_once(tmp_path):
    grip = "title: T\ncontenders: {corvane: Corvane}\nmeasure:\n  grip: {kind: grade, grades: [bad, good, bad]}\n"
    (found,) = refusal(tmp_path, grip + "readings: readings.csv\n", readings="contender,pass,grip\ncorvane,1,bad\n")
    assert (found.rule, found.place.line) == ("grade-twice", 4)


def test_a_count_is_not_counted_over_itself(tmp_path):
    lost = "  lost: {kind: count, better: lower, independent: yes, counted over: lost}\nreadings: readings.csv\n"
    yaml = "title: T\ncontenders: {corvane: Corvane, ostler: Ostler}\nmeasure:\n" + lost
    (found,) = refusal(tmp_path, yaml, readings="contender,pass,lost\ncorvane,1,2\nostler,1,9\n")
    assert (found.rule, found.place.line) == ("counted-over-itself", 4)


def test_where_places_decide_nobody_is_said_to_lack_a_value(tmp_path):
    """Runs that did not finish were run: they make no unequal numbers, and what finished has its value."""
    yaml = (
        GAS.replace("scatter: SCATTER", "method: boil").replace("RATIO", "").replace("kind: one reading", "kind: timed")
    )
    yaml = yaml.replace("unit: g", "unit: s").replace(" g,", " s,").replace("5 g}", "5 s}")
    readings = rows(corvane="did not finish (wind),8.1", ostler="9.0,9.2", tamsin="11.1,11.4")
    method = {"methods/boil.1.yaml": "title: Boil\ndid not finish: worst place\n"}
    record = compile_campaign(tmp_path, yaml, readings=readings, **method)
    assert record["verdict"]["winner"] is None
    rules = {f.rule: f for f in audit_path(tmp_path / "stoves")}
    assert "hold the worst place" in rules["criterion-of-places"].says
    assert not {"criterion-not-measured", "unequal-passes", "no-value"} & set(rules)


@pytest.mark.parametrize("line", ["between sessions: 0 g", "repeatability: {gas: 0 g, passes: 9, products: 3}"])
def test_no_method_states_a_scatter_of_nothing(line, tmp_path):
    yaml = GAS.replace("scatter: SCATTER", "method: boil").replace("RATIO", "")
    readings = rows(corvane="8,8", ostler="9,9", tamsin="11,11")
    found = refusal(tmp_path, yaml, readings=readings, **{"methods/boil.1.yaml": f"title: Boil\n{line}\n"})
    assert [(f.rule, f.place.file, f.place.line) for f in found] == [("wrong-value", "methods/boil.1.yaml", 2)]
    assert "which no test can show" in found[0].says


def test_a_use_whose_cost_has_no_value_is_told_and_not_passed_over(tmp_path):
    use = "  use: {per: evening, cost: oil_price * gas / (gas - gas), times: 0 to 500}\n"
    constants = "constants:\n  oil price: {value: 0.012 EUR/g, source: receipt}\n"
    yaml = GAS.replace("SCATTER", "common").replace("RATIO", "") + use + constants
    record = compile_campaign(tmp_path, yaml, readings=rows(corvane="8,8.1", ostler="9,9.2", tamsin="11,11.4"))
    assert record["verdict"]["cost"] is None
    (found,) = [f for f in audit_path(tmp_path / "stoves") if f.rule == "use-without-a-cost"]
    assert (found.severity, found.place.line) == ("warning", 11)
