"""What is measured of the thing itself stands among its particulars by itself, and is typed nowhere else."""

from __future__ import annotations

import html
import re
from pathlib import Path

from tests.campaigns import compile_campaign

YAML = """\
title: Which lamp is brighter?
contenders:
  harl: {title: Harl One, facts: {colour: grey FACT}}
  tolk: Tolk Beam
measure:
  packed weight: one reading, g, bench-scale
  length: one reading, mm, neither, tape-measure
  brightness: one reading, lx, higher, light-meter
  lit first time: yes/no
readings: sheet.csv
"""
SHEET = """\
what,harl,tolk
packed weight,86.2,91.0
length,120,131
brightness,810,700
lit first time,yes,yes
"""


def sheet_of(place: Path, fact: str = "") -> tuple[str, list[str]]:
    told = compile_campaign(place, YAML.replace(" FACT", fact), readings="", **{"sheet.csv": SHEET})
    page = (place / "stoves/.site/stoves/contenders/harl.html").read_text(encoding="utf-8")
    text = " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).replace("\u00a0", " ").split())
    return text, [f["rule"] for f in told["findings"]]


def test_weight_and_length_are_particulars_measured_by_us(tmp_path: Path) -> None:
    text, _ = sheet_of(tmp_path)
    particulars = text[text.index("Particulars") :]
    assert re.search(r"Packed weight 86\.2 g \([^)]+\) , measured by us", particulars)
    assert re.search(r"Length 120 mm \([^)]+\) , measured by us", particulars)
    assert "Colour grey" in particulars


def test_what_has_a_better_and_what_was_tried_stay_results(tmp_path: Path) -> None:
    text, _ = sheet_of(tmp_path)
    results = text[text.index("What we measured") : text.index("Particulars")]
    assert "Brightness" in results
    assert "Lit first time" in results
    assert "Packed weight" not in results


def test_typing_a_measured_thing_again_is_told(tmp_path: Path) -> None:
    assert "fact-measured" not in sheet_of(tmp_path / "once")[1]
    assert "fact-measured" in sheet_of(tmp_path / "twice", ", packed weight: 86 g")[1]
