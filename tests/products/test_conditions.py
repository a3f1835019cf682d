"""Facts of single passes stand on the test's page with their values, and in results.json with their pass."""

from __future__ import annotations

import html
import re
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign, result_of, results_of

YAML = """\
title: Which lamp lasts longest?
contenders: {harl: Harl One, tolk: Tolk Beam}
held the same: [cells, room, beam setting]
conditions: [air, watch, table]
measure: {run time: "timed, min, higher"}
readings: readings.csv
"""
READINGS = """\
contender,pass,run time,air,watch,table
harl,1,251,18.2 °C,Ann,left
tolk,1,301,18.0 °C,Bo,left
harl,2,249,17.9 °C,Ann,left
tolk,2,298,18.4 °C,Bo,left
"""


def built(place: Path, readings: str = READINGS) -> tuple[dict[str, Any], str]:
    told = compile_campaign(place, YAML, readings=readings)
    page = (place / "stoves/.site/stoves/tests/run-time.html").read_text(encoding="utf-8")
    return told, " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).split())


def test_each_pass_shows_what_it_met(tmp_path: Path) -> None:
    _, text = built(tmp_path)
    assert "Contender Pass Air Watch Table" in text
    assert "Harl One Pass 2 17.9 °C Ann left" in text
    assert "Tolk Beam Pass 1 18.0 °C Bo left" in text


def test_what_was_held_the_same_stands_on_every_tests_page(tmp_path: Path) -> None:
    assert "The same for every contender: cells, room and beam setting." in built(tmp_path)[1].replace(" :", ":")


def test_a_condition_that_differs_between_contenders_is_told_from_one_that_varies(tmp_path: Path) -> None:
    _, text = built(tmp_path)
    assert "Air varied from pass to pass; what the contenders met overlaps." in text
    assert "Watch was not the same for all contenders, which may have moved what was measured." in text
    assert "Table: the same in every pass (left)." in text


def test_ranges_of_numbers_that_lie_apart_differ(tmp_path: Path) -> None:
    _, text = built(tmp_path, READINGS.replace("18.0 °C", "21 °C").replace("18.4 °C", "22.5 °C"))
    assert "Air was not the same for all contenders" in text


def test_the_record_keeps_them_with_their_pass(tmp_path: Path) -> None:
    told, _ = built(tmp_path)
    assert [p["conditions"] for p in result_of(told, "run-time", "tolk")["by_pass"]] == [
        {"air": "18.0 °C", "watch": "Bo", "table": "left"},
        {"air": "18.4 °C", "watch": "Bo", "table": "left"},
    ]


@pytest.mark.parametrize("layout", ["contender,what,value,air\nharl,run time,251,18\ntolk,run time,301,17\n",
                                    "what,air,harl,tolk\nrun time,18,251,301\n"])  # fmt: skip
def test_a_log_and_a_wide_table_have_condition_columns_too(tmp_path: Path, layout: str) -> None:
    told = results_of(tmp_path, YAML.replace("[air, watch, table]", "air"), readings=layout)
    assert result_of(told, "run-time", "harl")["by_pass"][0]["conditions"] == {"air": "18"}
