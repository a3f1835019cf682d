"""Unit and instrument are said once: in `measure:`, or beside the readings where they differ from row to row."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.campaigns import compile_campaign, refusal, result_of, results_of

YAML = """\
title: Which lamp is lighter?
contenders: {harl: Harl One, tolk: Tolk Beam}
measure:
  weight: one reading, g, lower
  length: one reading, mm
readings: readings.csv
"""
LAYOUTS = {
    "long": "contender,instrument,weight\nharl,bench-scale,86.2\ntolk,kitchen-scale,91\n",
    "log": "contender,what,value,instrument\nharl,weight,86.2,bench-scale\ntolk,weight,91,kitchen-scale\n",
    "heading": 'contender,"weight (g, bench-scale)"\nharl,86.2\ntolk,91.0\n',
    "heading of one": "contender,weight (bench-scale)\nharl,86.2\ntolk,91.0\n",
    "wide": "what,instrument,unit,harl,tolk\nweight,bench-scale,g,86.2,91.0\nlength,tape-measure,mm,120,131\n",
    "what": 'contender,what,value\nharl,"weight (g, bench-scale)",86.2\ntolk,"weight (g, bench-scale)",91.0\n',
}


@pytest.mark.parametrize("layout", LAYOUTS)
def test_a_table_may_name_the_instrument(tmp_path: Path, layout: str) -> None:
    yaml_text = YAML if layout == "wide" else YAML.replace("  length: one reading, mm\n", "")
    told = compile_campaign(tmp_path, yaml_text, readings=LAYOUTS[layout])
    harl = result_of(told, "weight", "harl")
    # the bench scale that comes with the program: a step of 0.1 g, an accuracy of ±0.3 g (shared/instruments)
    assert {b["of"] for b in harl["budget"]} == {"bench-scale"}
    assert harl["u"] == pytest.approx((0.3**2 / 3 + 0.1**2 / 12) ** 0.5)  # JCGM 100, 4.3.7 and F.2.2.1
    page = (tmp_path / "stoves/.site/stoves/tests/weight.html").read_text(encoding="utf-8")
    assert "Bench scale, 2 kg" in page.replace("\u00a0", " ")
    assert (tmp_path / "stoves/.site/instruments/bench-scale.html").exists()


def test_a_row_counts_more_than_what_the_campaign_says_of_all(tmp_path: Path) -> None:
    told = results_of(tmp_path, YAML.replace("length: one reading, mm", "length: one reading, mm, ruler")
                            .replace("g, lower", "g, lower, letter-scale")
                            .replace("  length: one reading, mm, ruler\n", ""),
                            readings=LAYOUTS["long"])  # fmt: skip
    assert {b["of"] for b in result_of(told, "weight", "harl")["budget"]} == {"bench-scale"}


def test_an_instrument_nobody_described_is_one_message_with_its_cell(tmp_path: Path) -> None:
    readings = "contender,instrument,weight\nharl,bench-scalle,86.2\ntolk,bench-scale,91\n"
    (found,) = refusal(tmp_path, YAML.replace("  length: one reading, mm\n", ""), readings=readings)
    assert (found.rule, found.place.file, found.place.line) == ("unknown-instrument", "readings.csv", 2)
    assert "Did you mean “bench-scale”?" in found.do
