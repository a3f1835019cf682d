"""What a page says of rough, relative and shared readings and of frames, as its reader meets it."""

from __future__ import annotations

import html
import re
from pathlib import Path

from tests.campaigns import compile_campaign, results_of

CAMPAIGN = """\
title: Cases
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
instruments:
  probe: 0.1 °C, accuracy ±1 °C
  camera: 59.94 frames a second
measure:
  case heat: one reading, °C, lower, probe
  lighting time: timed, s, lower, camera
  pull: one reading, N, higher
readings: readings.csv
"""
ROWS = """\
contender,case heat,lighting time,pull
ostler,55.2,frames 1204 to 1262,4.74 lbf
corvane,ostler + about 70,frames 10 to 60,about 20
"""


def text_of(page: Path) -> str:
    """The words of a page, as they are read."""
    bare = re.sub(r"<(script|style|svg)\b.*?</\1>", " ", page.read_text(encoding="utf-8"), flags=re.S)
    return re.sub(r"\s+", " ", html.unescape(re.sub(r"<[^>]+>", " ", bare))).replace("\u00a0", " ")


def test_each_is_quoted_and_told_beside_its_number(tmp_path: Path) -> None:
    compile_campaign(tmp_path, CAMPAIGN, readings=ROWS)
    site = tmp_path / "stoves" / ".site" / "stoves" / "tests"
    heat = text_of(site / "case-heat.html")
    assert "“ostler + about 70” counts as 70 °C ± 10 °C" in heat
    assert "case heat (Ostler Mk II)" in heat  # the row of the reading it stands on, in Corvane's working
    assert "How roughly it was read" in heat
    lighting = text_of(site / "lighting-time.html")
    assert "58 frames; the camera takes 60000/1001 (59.94) a second" in lighting
    assert "1262 frames" not in lighting
    assert "4.74 lbf lbf" not in text_of(site / "pull.html")


def test_the_instruments_page_names_the_exact_rate(tmp_path: Path) -> None:
    compile_campaign(tmp_path, CAMPAIGN, readings=ROWS)
    site = tmp_path / "stoves" / ".site"
    assert "one frame, at 60000/1001 (59.94) frames a second" in text_of(site / "instruments" / "camera.html")


def test_results_json_has_every_part_of_a_reading(tmp_path: Path) -> None:
    told = results_of(tmp_path, CAMPAIGN, readings=ROWS)
    (found,) = [r for r in told["results"] if (r["quantity"], r["contender"]) == ("case-heat", "corvane")]
    rows = {r["text"]: r for r in found["by_pass"][0]["readings"]}
    row = rows["ostler + about 70"]
    assert (row["width"], row["rough"], row["beside"]) == (10, "about", "ostler")
    assert rows["55.2"]["contender"] == "ostler"
    assert {c["sort"] for c in told["caveat_list"]} == {"reading"}
    assert "rough" in {b["sort"] for b in found["budget"]}
