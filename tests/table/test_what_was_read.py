"""Readings that are no plain number: each is counted as what it is and told in words wherever it bears.

Uncertainties are worked out beside by `uncertainties`, from the rules of JCGM 100 (4.3.7: a stated ±a is uniform, a/√3).
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from uncertainties import ufloat

from tests.campaigns import comparison_of, refusal, result_of
from tests.table.bench import row, row_of_sheet, site, stands_wherever_it_bears, working_of

HEAD = """\
title: Which stove does it on the least?
who pays: us
contenders:
  corvane: {title: Corvane Sol, claims: [{says: No more than that, source: box, quantity: QUANTITY, at most: CLAIM}]}
  ostler: Ostler Mk II
  tamsin: Tamsin
instruments: {scale: "1 g, up to 5000 g, accuracy ±2 g", probe: "0.1 °C, accuracy ±1 °C", meter: "1 ppm, up to 999 ppm"}
readings: readings.csv
"""
FUEL = """\
tests:
  fuel:
    title: Fuel used
    readings:
      file: readings.csv
      columns:
        start: {unit: g, instrument: scale}
        end: {unit: g, instrument: scale}
        added: {unit: g, instrument: scale}
    quantities:
      fuel: {title: Fuel used, formula: start - end + added, unit: g, better: lower}
"""
SOUP = """\
tests:
  soup:
    title: Soup left
    readings: {file: readings.csv, columns: {jar: {unit: g, instrument: scale}, full: {unit: g, instrument: scale}}}
    quantities: {soup: {title: Soup left, formula: full - jar, unit: g, better: lower}}
"""


def head(quantity: str = "soot", claim: str = "300 g") -> str:
    return HEAD.replace("QUANTITY", quantity).replace("CLAIM", claim)


def uniform(half: float):  # type: ignore[no-untyped-def]  # uncertainties has no types
    return ufloat(0.0, half / math.sqrt(3))


@row("off the meter's scale; its limit unknown; below a detection limit")
def test_what_was_off_the_scale_stays_more_than_its_end(tmp_path: Path) -> None:
    yaml = head("soot", "500 ppm") + (
        "measure: {soot: 'peak, ppm, lower, meter'}\nverdict: {must: [{quantity: soot, at most: 500 ppm}]}\n"
    )
    rows = (
        "contender,pass,soot\nostler,1,41\ntamsin,1,63\ncorvane,1,over 999\ncorvane,2,>999\ntamsin,2,58\nostler,2,44\n"
    )
    seen = site(tmp_path, yaml, readings=rows)
    found = result_of(seen.told, "soot", "corvane")
    assert (found["value"], found["limit"], found["low"], found["high"]) == (999, "above", 999, None)
    assert (found["printed"], found["u"], found["rank"]) == ("more than 999 ppm", None, [3, 3])
    assert found["trace"] == [{"file": "readings.csv", "lines": [4, 5], "cells": [[4, 3], [5, 3]]}]
    for other in ("ostler", "tamsin"):  # 999 lies hundreds above readings that scatter by some 3 ppm
        pairs = [p for p in seen.told["comparisons"] if {p["first"], p["second"]} == {"corvane", other}]
        assert [(p["decision"], p["favours"], p["difference"]) for p in pairs] == [("better", other, None)]
    (claim,) = seen.told["claims"]
    assert claim["outcome"] == "contradicted"  # whatever it was, it was more than 999, and so more than 500
    for address in ("index", "tests/soot"):
        assert "Corvane Sol read more than 999 ppm: last, but by how much is unknown." in seen.text(address)
    assert "soot has to be at most 500 ppm, and it read more than 999 ppm" in seen.text("index")
    assert "more than 999 ppm" in row_of_sheet(seen, "corvane", "Soot")
    assert "We measured more than 999 ppm where the claim has at most 500 ppm" in seen.text("contenders/corvane")
    assert "over 999 ppm" in working_of(seen, "soot", "soot", "corvane")
    assert ">999 ppm" in working_of(seen, "soot", "soot", "corvane")


@row("off the meter's scale; its limit unknown; below a detection limit")
def test_an_unknown_end_of_the_scale_and_one_below_are_no_numbers_either(tmp_path: Path) -> None:
    yaml = head("lead", "10 mg/L") + "measure: {lead: 'one reading, mg/L, lower'}\n"
    seen = site(tmp_path, yaml, readings="contender,lead\ncorvane,over unknown\nostler,under 1\ntamsin,4.2\n")
    unknown, below = (result_of(seen.told, "lead", c) for c in ("corvane", "ostler"))
    assert (unknown["value"], unknown["limit"], unknown["low"], unknown["high"]) == (None, "above", None, None)
    assert (below["value"], below["limit"], below["low"], below["high"]) == (1, "below", None, 1)
    assert seen.told["claims"][0]["outcome"] == "undecided", "it was tested, and nobody knows how it came out"
    for address in ("index", "tests/lead"):
        assert "Corvane Sol more than the meter can show" in seen.text(address)
        assert "Ostler Mk II less than 1 mg/L" in seen.text(address)
    assert "more than the meter can show" in row_of_sheet(seen, "corvane", "Lead")
    assert "less than 1 mg/L" in row_of_sheet(seen, "ostler", "Lead")
    assert "over unknown" in working_of(seen, "lead", "lead", "corvane")
    assert "under 1 mg/L" in working_of(seen, "lead", "lead", "ostler")


@row("roughly; with a stated width")
@pytest.mark.parametrize(
    ("written", "middle", "half", "counts"),
    [
        ("about 250", 250, 10, "250 g ± 10 g"),  # our convention: one unit of the last figure that is no trailing zero
        ("250 ±15", 250, 15, "250 g ± 15 g"),
        ("2 to 3", 2.5, 0.5, "2.5 g ± 0.5 g"),
    ],
)
def test_a_rough_reading_is_as_wide_as_was_said(
    written: str, middle: float, half: float, counts: str, tmp_path: Path
) -> None:
    rows = f"contender,soot\ncorvane,{written}\nostler,900\ntamsin,950\n"
    seen = site(tmp_path, head() + "measure: {soot: 'one reading, g, lower, scale'}\n", readings=rows)
    found = result_of(seen.told, "soot", "corvane")
    witness = middle + uniform(half) + uniform(2) + uniform(0.5)  # its width, the scale's accuracy, the scale's step
    assert (found["value"], found["limit"]) == (middle, None)
    assert found["u"] == pytest.approx(witness.std_dev, rel=1e-9)
    caveat = stands_wherever_it_bears(seen, f"“{written}” counts as {counts}", "soot", on=("corvane",))
    assert "every value in between as likely as any other" in caveat["says"]
    assert ("our convention" in caveat["says"]) is written.startswith("about")
    working = working_of(seen, "soot", "soot", "corvane")
    assert f"{written} g" in working
    low, high = f"{middle - half:g}", f"{middle + half:g}"
    assert f"Taken as anything from {low} to {high} g." in working
    assert "How roughly it was read" in working


@row("some was added and nobody weighed it")
def test_some_makes_more_than_and_nobody_says_that_a_meter_ended(tmp_path: Path) -> None:
    yaml = head("fuel") + FUEL + "verdict: {must: [{quantity: fuel, at most: 350 g}]}\n"
    rows = "contender,pass,start,end,added\ncorvane,1,500,120,some\nostler,1,500,200,0\ntamsin,1,500,300,some\n"
    rows += "tamsin,2,500,302,10\nostler,2,500,202,0\ncorvane,2,500,118,0\n"
    seen = site(tmp_path, yaml, readings=rows)
    found = result_of(seen.told, "fuel", "corvane")
    assert (found["value"], found["limit"], found["high"]) == (pytest.approx((380 + 382) / 2), "above", None)
    assert [(p["value"], p["limit"]) for p in found["by_pass"]] == [(380, "above"), (382, None)]
    assert comparison_of(seen.told, "fuel", "corvane", "ostler")["favours"] == "ostler"  # 299 against more than 381
    assert comparison_of(seen.told, "fuel", "ostler", "tamsin")["resolved"] is False  # 299 against more than 204
    assert seen.told["claims"][0]["outcome"] == "contradicted"
    stands_wherever_it_bears(seen, "Nobody measured how much of “added” there was", "fuel", on=("corvane", "tamsin"))
    assert "Corvane Sol read more than 381 g" in seen.text("index")
    assert "fuel used has to be at most 350 g, and it read more than 381 g" in seen.text("index")
    assert "more than 381 g" in row_of_sheet(seen, "corvane", "Fuel used")
    working = working_of(seen, "fuel", "fuel", "corvane")
    assert "some g More" not in working
    assert "More than nothing; how much, nobody measured." in working
    assert "known from one side only" in working
    for address in ("index", "tests/fuel", "contenders/corvane"):
        assert "meter" not in seen.text(address), "a scale that showed every gram is blamed"


@row("some was added and nobody weighed it")
def test_what_some_is_taken_from_is_less_than(tmp_path: Path) -> None:
    yaml = head("fuel") + FUEL.replace("start - end + added", "start - end - added")
    seen = site(
        tmp_path, yaml, readings="contender,start,end,added\ncorvane,500,120,some\nostler,500,100,0\ntamsin,500,90,0\n"
    )
    found = result_of(seen.told, "fuel", "corvane")
    assert (found["value"], found["limit"], found["printed"]) == (380, "below", "less than 380 g")
    assert "less than 380 g" in row_of_sheet(seen, "corvane", "Fuel used")


@row("read against another contender")
def test_a_reading_told_against_anothers_stands_on_it(tmp_path: Path) -> None:
    yaml = head("heat", "300 °C") + "measure: {heat: 'one reading, °C, lower, probe'}\n"
    rows = "contender,heat\nostler,55.2\ncorvane,ostler + 72\ntamsin,ostler + about 70\n"
    seen = site(tmp_path, yaml, readings=rows)
    ostler = 55.2 + uniform(1) + uniform(0.05)  # the probe's offset and step
    # the offset is one and the same, as both were read off one probe; a difference brings the step of the probe or its own width
    corvane, tamsin = ostler + 72 + uniform(0.05), ostler + 70 + uniform(10)
    for who, witness in (("ostler", ostler), ("corvane", corvane), ("tamsin", tamsin)):
        found = result_of(seen.told, "heat", who)
        assert found["value"] == pytest.approx(witness.nominal_value)
        assert found["u"] == pytest.approx(witness.std_dev, rel=1e-3), who
    assert result_of(seen.told, "heat", "corvane")["trace"][0]["lines"] == [2, 3], "it rests on both rows"
    stands_wherever_it_bears(seen, "“ostler + 72” (Corvane Sol)", "heat", on=("corvane", "tamsin"))
    stands_wherever_it_bears(seen, "“ostler + about 70” counts as 70 °C ± 10 °C", "heat", on=("tamsin",))
    working = working_of(seen, "heat", "heat", "corvane")
    assert "heat (Ostler Mk II) 55.2 °C" in working
    assert "ostler + 72 °C" in working
    assert "Read as a difference from Ostler Mk II." in working


@row("only an order was seen or heard")
def test_an_order_is_told_as_seen_and_those_never_compared_stay_uncompared(tmp_path: Path) -> None:
    yaml = (
        "title: Which smells least?\nwho pays: us\n"
        "contenders: {corvane: Corvane Sol, ostler: Ostler Mk II, tamsin: Tamsin, brindle: Brindle}\n"
        "measure: {smell: 'order, lower'}\nreadings: readings.csv\n"
    )
    rows = "contender,what,value\ncorvane,smell,much less than ostler\ntamsin,smell,about like ostler\n"
    seen = site(tmp_path, yaml, readings=rows + "brindle,smell,a little less than tamsin\n")
    assert all(r["rank"] is None and r["value"] is None for r in seen.told["results"])
    never = comparison_of(seen.told, "smell", "corvane", "brindle")
    assert (never["decision"], never["observed"]["told"]) == ("not enough to say", "never")
    assert seen.told["first"] == [], "nobody is first of what was only seen once"
    for address in ("index", "tests/smell"):
        text = seen.text(address)
        assert "Corvane Sol much less than Ostler Mk II; Ostler Mk II about like Tamsin" in text
        # “about like” isn't handed on: Corvane was seen beside Ostler alone, Brindle beside Tamsin alone
        assert "Three pairs were never put side by side, nor ordered through others." in text
        assert "nobody has a rank" in text
    assert (
        "Smell: Ostler Mk II about like Tamsin, as it was noted; a small difference may have gone unnoticed."
        in seen.text("tests/smell")
    )
    assert "They were never put side by side" in seen.text("index")
    assert "much less than Ostler Mk II" in row_of_sheet(seen, "corvane", "Smell")
    assert "a little less than Tamsin" in row_of_sheet(seen, "brindle", "Smell")
    assert working_of(seen, "smell", "smell", "ostler").count("much less than ostler") == 1  # Corvane's row, as written


@row("nothing was read, and why")
def test_a_lost_reading_is_told_with_its_reason_and_never_filled_in(tmp_path: Path) -> None:
    rows = "contender,pass,soot\ncorvane,1,none (spilled)\nostler,1,250\ntamsin,1,none (battery empty)\n"
    rows += "tamsin,2,none (battery empty)\nostler,2,252\ncorvane,2,255\n"
    seen = site(tmp_path, head() + "measure: {soot: 'one reading, g, lower, scale'}\n", readings=rows)
    corvane, tamsin = (result_of(seen.told, "soot", c) for c in ("corvane", "tamsin"))
    assert (corvane["value"], corvane["passes"]) == (255, 1)
    assert (tamsin["value"], tamsin["missing"], tamsin["rank"]) == (None, "battery empty", None)
    assert [p["absent_because"] for p in corvane["by_pass"]] == ["spilled", None]
    sentence = "Some readings of “soot” are missing: Corvane Sol, pass 1 (spilled). What is shown rests on the others."
    stands_wherever_it_bears(seen, sentence, "soot", on=("corvane",))
    assert "Tamsin has no result: battery empty." in seen.text("tests/soot")
    assert "Tamsin has no result: battery empty." in seen.text("index")
    assert "battery empty" in row_of_sheet(seen, "tamsin", "Soot")
    assert "none (spilled)" in working_of(seen, "soot", "soot", "corvane")
    assert not [f for f in seen.told["findings"] if f["rule"] == "empty-cell"]


@row("nothing was read, and why")
def test_an_empty_cell_without_a_reason_is_asked_about(tmp_path: Path) -> None:
    rows = "contender,pass,soot\ncorvane,1,\nostler,1,250\ntamsin,1,300\ntamsin,2,301\nostler,2,252\ncorvane,2,255\n"
    seen = site(tmp_path, head() + "measure: {soot: 'one reading, g, lower, scale'}\n", readings=rows)
    (finding,) = [f for f in seen.told["findings"] if f["rule"] == "empty-cell"]
    assert (finding["file"], finding["line"], finding["column"]) == ("readings.csv", 2, 3)
    assert "none (" in finding["do"]
    assert "left empty" in working_of(seen, "soot", "soot", "corvane")
    assert "no reason given" in working_of(seen, "soot", "soot", "corvane")


@row("one reading serves all")
def test_an_empty_jar_weighed_once_is_one_error_for_all(tmp_path: Path) -> None:
    rows = "contender,jar,full\nall,120,\ncorvane,,380\nostler,,351\ntamsin,118,322\n"
    seen = site(tmp_path, head("soup") + SOUP, readings=rows)
    offset = uniform(2)  # of the one scale, the same in every weighing: it cancels between full and empty
    jar = 120 + offset + uniform(0.5)
    witness = 380 + offset + uniform(0.5) - jar
    found = result_of(seen.told, "soup", "corvane")
    assert found["value"] == witness.nominal_value == 260
    assert found["u"] == pytest.approx(witness.std_dev, rel=1e-9)
    assert found["trace"][0]["lines"] == [2, 3], "the jar's row and its own"
    apart = site(
        tmp_path / "apart",
        head("soup") + SOUP,
        readings=rows.replace("all,120,\n", "").replace("e,,", "e,120,").replace("r,,", "r,120,"),
    )
    shared, twice = (comparison_of(s.told, "soup", "corvane", "ostler") for s in (seen, apart))
    widths = [p["differed_high"] - p["differed_low"] for p in (shared, twice)]
    assert widths[0] < widths[1], "one jar's error cancels between the two, two jars' errors don't"
    sentence = "One reading of “jar” serves Corvane Sol and Ostler Mk II: “120”"
    stands_wherever_it_bears(seen, sentence, "soup", on=("corvane", "ostler"))
    assert "One reading serves every contender, and so does its error." in working_of(seen, "soup", "soup", "ostler")
    assert "jar 118 g" in working_of(seen, "soup", "soup", "tamsin")


@row("units differ from row to row")
def test_each_row_is_read_in_its_own_unit_and_shown_in_it(tmp_path: Path) -> None:
    yaml = head("pull", "300 N") + "measure: {pull: 'peak, N, higher'}\n"
    rows = "contender,what,value,unit\ncorvane,pull,4.74,lbf\nostler,pull,21.9,N\ntamsin,pull,2.10,kgf\n"
    seen = site(tmp_path, yaml, readings=rows)
    # NIST SP 811 (2008), appendix B.8, exact: 1 lbf = 4.448 221 615 260 5 N; 1 kgf = 9.806 65 N
    wanted = {
        "corvane": (4.74 * 4.4482216152605, "4.74 lbf"),
        "ostler": (21.9, "21.9 N"),
        "tamsin": (2.10 * 9.80665, "2.10 kgf"),
    }
    for who, (newtons, written) in wanted.items():
        assert result_of(seen.told, "pull", who)["value"] == pytest.approx(newtons, rel=1e-9)
        assert written in working_of(seen, "pull", "pull", who)
        assert f"{newtons:.1f}" in row_of_sheet(seen, who, "Pull")


@row("units differ from row to row")
def test_a_mass_where_a_force_is_wanted_is_told_to_be_kgf(tmp_path: Path) -> None:
    yaml = head("pull", "300 N") + "measure: {pull: 'peak, N, higher'}\n"
    rows = "contender,what,value,unit\ncorvane,pull,2.10,kg\nostler,pull,21.9,N\ntamsin,pull,20.1,N\n"
    (found,) = [f for f in refusal(tmp_path, yaml, readings=rows) if f.severity == "error"]
    assert (found.place.file, found.place.line) == ("readings.csv", 2)
    assert "kg is a mass" in found.says
    assert "kgf" in found.do
