"""Slips, records that disagree, biases, assumptions, and what is not over: told wherever they bear."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from tests.campaigns import comparison_of, result_of
from tests.table.bench import Site, row, row_of_sheet, site, stands_wherever_it_bears, working_of

HEAD = """\
title: Which stove boils a litre on the least gas?
who pays: us
contenders:
  corvane: {title: Corvane Sol, claims: [{says: Under 16 g a litre, source: box, quantity: gas burned, at most: 16 g}]}
  ostler: Ostler Mk II
  tamsin: Tamsin
"""
GAS = (
    HEAD + "measure: {gas burned: 'weighed before and after, g, lower, scale'}\nreadings: gas.csv\n"
    "instruments: {scale: '0.1 g, accuracy ±0.3 g'}\nverdict: {must: [{quantity: gas burned, at most: 20 g}]}\n"
)
ROWS = (
    "contender,pass,gas burned before,gas burned after\ncorvane,1,231.4,217.1\nostler,1,240.2,223.9\n"
    "tamsin,1,250.0,231.0\ntamsin,2,231.0,212.2\nostler,2,223.9,207.2\ncorvane,2,217.1,202.6\n"
)


def gas(place: Path, more: str = "", rows: str = ROWS) -> Site:
    return site(place, GAS + more, **{"gas.csv": rows})


@row("two records of one reading disagree")
def test_two_records_are_both_told_and_what_the_other_would_give(tmp_path: Path) -> None:
    records = (
        "two records:\n  - where: corvane, pass 2, gas burned after\n    said: [202.6 g, 201.6 g]\n    used: 201.6 g\n"
        "    because: The photograph of the display shows it.\n"
    )
    seen = gas(tmp_path, records)
    found = result_of(seen.told, "gas-burned", "corvane")
    assert found["value"] == pytest.approx((231.4 - 217.1 + 217.1 - 201.6) / 2)  # 14.9; with 202.6 it would be 14.4
    caveat = stands_wherever_it_bears(
        seen,
        "two records of “gas burned after, pass 2”: 202.6 g and 201.6 g. The one that counts is 201.6 g.",
        "gas-burned",
        on=("corvane",),
    )
    assert (caveat["said"], caveat["used"]) == (["202.6 g", "201.6 g"], "201.6 g")
    box = seen.page("tests/gas-burned").one(id=caveat["anchor"]).text
    assert "The photograph of the display shows it." in box
    assert "With 202.6 g, gas burned of Corvane Sol would be 14.40 g instead of 14.90 g" in box
    places = [result_of(s.told, "gas-burned", "corvane")["rank"] for s in (seen, gas(tmp_path / "other"))]
    assert places == [[1, 2], [1, 1]]  # compiled with 202.6 g and no second record, it would be first alone
    assert "Some places would change." in box
    working = working_of(seen, "gas-burned", "gas-burned", "corvane")
    assert "201.6" in working
    assert "202.6" in working


@row("a typing slip in a raw file")
def test_a_slip_is_struck_through_the_raw_file_stays_and_everything_says_so(tmp_path: Path) -> None:
    slipped = ROWS.replace("231.4,217.1", "231.4,21.7")
    amend = (
        "amend:\n  - {file: gas.csv, line: 2, column: gas burned after, from: 21.7, to: 217.1, "
        "why: a figure was left out, seen by: whoever held the lamp}\n"
    )
    seen, meant = gas(tmp_path / "seen", amend, slipped), gas(tmp_path / "meant")
    for who in ("corvane", "ostler", "tamsin"):
        ours, theirs = (result_of(s.told, "gas-burned", who) for s in (seen, meant))
        assert (ours["value"], ours["u"], ours["rank"]) == (theirs["value"], theirs["u"], theirs["rank"])
    assert (seen.folder / ".site/stoves/files/gas.csv").read_text() == slipped, "the raw file is passed on as it is"
    sentence = "line 2 of gas.csv says 21.7, but 217.1 was meant. A figure was left out"
    caveat = stands_wherever_it_bears(seen, sentence, "gas-burned", on=("corvane",))
    box = seen.page("index").one(id=caveat["anchor"]).text
    assert "That changes the reading by 195.4 g." in box  # 217.1 − 21.7
    assert "Seen by whoever held the lamp." in box
    worked = seen.page("tests/gas-burned").one(id="result-gas-burned-corvane")
    (struck,) = worked.all("s") or worked.all("del")
    assert struck.text.startswith("21.7")
    assert struck.parent is not None
    assert "217.1" in struck.parent.text.replace(struck.text, "", 1)
    (line,) = seen.page("files/gas.csv").all("s") + seen.page("files/gas.csv").all("del")
    assert line.text == "21.7"


@row("a result biased by what happened")
def test_a_biased_result_is_shown_without_a_rank_and_decides_nothing(tmp_path: Path) -> None:
    caveat = (
        "caveats:\n  - about: gas burned\n    contender: corvane\n"
        "    says: Its canister was topped up between weighings.\n    pushes: down\n    so: do not rank\n"
    )
    seen = gas(tmp_path, caveat)
    found = result_of(seen.told, "gas-burned", "corvane")
    assert found["value"] == pytest.approx(14.4)
    assert (found["rank"], found["blocked"]) == (None, "Its canister was topped up between weighings.")
    assert seen.told["first"][0]["winner"] != "corvane"
    assert "corvane" in seen.told["first"][0]["unranked"]
    assert all(not p["resolved"] for p in seen.told["comparisons"] if "corvane" in (p["first"], p["second"]))
    assert seen.told["claims"][0]["outcome"] == "not tested"
    told = stands_wherever_it_bears(
        seen, "Its canister was topped up between weighings.", "gas-burned", on=("corvane",)
    )
    assert (told["pushes"], told["blocks"]) == ("down", True)
    for address in ("index", "tests/gas-burned", "contenders/corvane"):
        box = seen.page(address).one(id=told["anchor"]).text
        assert "So the true figure is likely higher." in box, address
    assert "14.40 g" in row_of_sheet(seen, "corvane", "Gas burned"), "it is still shown"
    assert "topped up" in seen.page("contenders/corvane").one(id=seen.told["claims"][0]["anchor"]).text, (
        "why the claim stays open"
    )
    for address in ("index", "tests/gas-burned"):
        assert "Corvane Sol isn’t ranked: Its canister was topped up between weighings." in seen.text(address)


@row("an assumption in a formula")
def test_an_assumption_enters_the_uncertainty_and_is_told(tmp_path: Path) -> None:
    yaml = HEAD.replace("quantity: gas burned", "quantity: lost").replace("16 g", "400 g") + (
        "measure:\n  lost:\n    formula: filled - left + fill\n    columns: {left: 'water left, g, scale'}\n"
        "    unit: g\n    better: lower\n    assumed: {fill: {within: 5 g, because: filled to one mark by eye}}\n"
        "constants: {filled: {value: 1000 g, source: the mark on the jar}}\n"
        "instruments: {scale: '0.1 g, accuracy ±0.3 g'}\nreadings: left.csv\n"
    )
    seen = site(tmp_path, yaml, **{"left.csv": "contender,water left\ncorvane,812.4\nostler,790.2\ntamsin,760.1\n"})
    found = result_of(seen.told, "lost", "corvane")
    assert found["value"] == pytest.approx(1000 - 812.4)
    # uniform ±5 g, the scale's ±0.3 g and its step of 0.1 g (JCGM 100, 4.3.7)
    assert found["u"] == pytest.approx(math.sqrt(5**2 / 3 + 0.3**2 / 3 + 0.1**2 / 12), rel=1e-9)
    sentence = (
        "Not measured: fill is taken as 0 g, give or take 5 g, for each contender by itself. Filled to one mark by eye"
    )
    stands_wherever_it_bears(seen, sentence, "lost", on=("corvane", "ostler", "tamsin"))
    assert "fill" in working_of(seen, "lost", "lost", "corvane").split("What the known uncertainty is made of", 1)[1]


@row("a contender or test not done yet, an endurance run still going")
def test_what_is_not_over_and_not_begun_is_said_wherever_it_would_stand(tmp_path: Path) -> None:
    yaml = HEAD.replace("quantity: gas burned, at most: 16 g", "quantity: burn time, at least: 100 min").replace(
        "  tamsin: Tamsin\n", "  tamsin: Tamsin\n  brindle: Brindle\n"
    ) + (
        "measure:\n  burn time: {kind: run to a limit, unit: min, better: higher}\n  noise: level, dB, lower\n"
        "readings: run.csv\nrunning: {contender: corvane, test: burn time, since: 2026-05-02}\n"
        "not yet tested: [brindle, noise]\n"
    )
    rows = "contender,pass,burn time\ncorvane,1,118\nostler,1,50\ntamsin,1,60\ntamsin,2,61\nostler,2,49\n"
    seen = site(tmp_path, yaml, **{"run.csv": rows})
    going, later = (result_of(seen.told, "burn-time", c) for c in ("corvane", "brindle"))
    assert (going["value"], going["limit"], going["printed"]) == (118, "above", "more than 118 min so far")
    assert (later["missing"], later["rank"]) == ("not yet tested", None)
    assert comparison_of(seen.told, "burn-time", "corvane", "ostler")["favours"] == "corvane"  # over 118 against 50
    assert seen.told["claims"][0]["outcome"] == "supported", "it has burned longer than 100 min already"
    stands_wherever_it_bears(
        seen, "Still running since 2 May 2026: more than 118 min so far", "burn-time", on=("corvane",)
    )
    index = seen.text("index")
    assert "Corvane Sol is still running (burn time), so what is said of it there is only so far." in index
    assert "Brindle hasn’t been tested yet." in index
    assert "more than 118 min so far" in row_of_sheet(seen, "corvane", "Burn time")
    assert "not yet tested" in row_of_sheet(seen, "brindle", "Burn time")
    assert "Brindle has no result: not yet tested." in seen.text("tests/burn-time")
    assert "Not yet tested" in seen.text("tests/noise")
    assert {r["missing"] for r in seen.told["results"] if r["quantity"] == "noise"} == {"not yet tested"}
    for address in ("tests/burn-time", "contenders/corvane", "index"):
        assert "meter" not in seen.text(address), "no meter ended: the run goes on"
