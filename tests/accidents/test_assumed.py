"""What a formula assumes enters the uncertainty with its own distribution, and every result that names it says so."""

from __future__ import annotations

from math import sqrt
from pathlib import Path

import pytest

from tests.accidents.accident_bench import HEAD, caveats, compiled, page, told_of
from tests.campaigns import comparison_of, result_of

WITHIN = 5.0  # g
ASSUMED = "assumed: {fill: {within: 5 g, because: equal fills by eye}}"
HOT = (
    HEAD
    + f"measure:\n  water lost: {{formula: lost + fill, columns: {{lost: 'lost, g'}}, unit: g, better: lower, {ASSUMED}}}\nreadings: lost.csv\n"
)
ROWS = "contender,lost\ncorvane,41.003\nostler,44.007\n"


def parts(told: dict, contender: str) -> list[dict]:
    return [b for b in result_of(told, "water-lost", contender)["budget"] if b["sort"] == "assumption"]


def test_an_assumption_is_uniform_between_its_ends(tmp_path: Path) -> None:
    """A half-width a gives a/√3 (JCGM 100, 4.3.7)."""
    told = told_of(tmp_path, HOT, lost=ROWS)
    (part,) = parts(told, "ostler")
    assert part["of"] == "fill"
    assert part["size"] == pytest.approx(WITHIN / sqrt(3), rel=1e-9)
    assert not part["shared"]


def test_each_contender_has_an_error_of_its_own_that_does_not_cancel(tmp_path: Path) -> None:
    """The difference of two uniform errors of half-width a is triangular on ±2a: 95 % lie within 2a(1 − √0.05)
    (JCGM 101:2008, 6.4.5). The scale's step of 0.001 g adds less than 0.01 g to it."""
    pair = comparison_of(told_of(tmp_path, HOT, lost=ROWS), "water-lost", "corvane", "ostler")
    half = 2 * WITHIN * (1 - sqrt(0.05))
    assert pair["differed_low"] == pytest.approx(-3.004 - half, abs=0.01)
    assert pair["differed_high"] == pytest.approx(-3.004 + half, abs=0.01)
    assert pair["differed"] is False


def test_an_error_alike_for_all_cancels_between_contenders(tmp_path: Path) -> None:
    told = told_of(tmp_path, HOT.replace("within: 5 g", "within: 5 g, alike: yes"), lost=ROWS)
    pair = comparison_of(told, "water-lost", "corvane", "ostler")
    assert pair["differed"] is True
    assert pair["differed_high"] - pair["differed_low"] < 0.01
    (part,) = parts(told, "ostler")
    assert part["shared"]
    assert part["size"] == pytest.approx(WITHIN / sqrt(3), rel=1e-9), "of the value itself it takes nothing away"


def test_the_assumed_value_counts_in_its_own_unit(tmp_path: Path) -> None:
    told = told_of(tmp_path, HOT.replace("within: 5 g", "within: 5 g, value: 0.02 kg"), lost=ROWS)
    assert result_of(told, "water-lost", "corvane")["value"] == pytest.approx(61.003)  # 41.003 g and 20 g
    (part,) = parts(told, "corvane")
    assert part["size"] == pytest.approx(WITHIN / sqrt(3), rel=1e-9)


def test_the_assumption_is_told_on_all_that_names_it_and_beside_the_formula(tmp_path: Path) -> None:
    yaml = HOT.replace(
        "readings:",
        "  times ten: {formula: water_lost * 10, unit: g, better: lower}\n  loss: {formula: lost, columns: {lost: 'lost, g'}, unit: g, better: lower}\nreadings:",
    )
    told = compiled(tmp_path, yaml, lost=ROWS)
    (caveat,) = caveats(told, "assumption")
    said = caveat["says"].replace("\u00a0", " ")
    assert (
        said == "Not measured: fill is taken as 0 g, give or take 5 g, for each contender by itself. Equal fills by eye"
    )
    on = {r["quantity"] for r in told["results"] if caveat["id"] in r["caveats"]}
    assert on == {"water-lost", "times-ten"}, "and on what is worked out from it, but not on the plain reading"
    text = page(tmp_path, "tests/water-lost").text.replace("\u00a0", " ")
    assert said in text
    assert "fill: 0 g, give or take 5 g (assumed, for each contender by itself: equal fills by eye)" in text
    assert "What is assumed of “fill”" in text


def test_an_assumption_of_the_campaign_serves_every_test_that_names_it(tmp_path: Path) -> None:
    yaml = HOT.replace(f", {ASSUMED}", "") + ASSUMED + "\n"
    told = told_of(tmp_path, yaml, lost=ROWS)
    assert parts(told, "corvane")[0]["size"] == pytest.approx(WITHIN / sqrt(3), rel=1e-9)
    assert caveats(told, "assumption")[0]["id"] == "assumption-fill"


def test_an_assumption_that_no_formula_names_is_a_finding(tmp_path: Path) -> None:
    told = told_of(tmp_path, HOT.replace("lost + fill", "lost"), lost=ROWS)
    (finding,) = [f for f in told["findings"] if f["rule"] == "unused-assumption"]
    assert finding["severity"] == "warning"
    assert "fill" in finding["says"]
    assert caveats(told, "assumption") == []
