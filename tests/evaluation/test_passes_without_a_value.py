"""Passes that were read, and that the formula makes nothing of: told at the reading, and beside the result."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path

from tests.campaigns import compile_campaign, result_of

YAML = """\
title: Which kettle is faster?
contenders: {harl: Harl, tolk: Tolk}
instruments: {watch: 1 s, scale: 1 g}
measure:
  rate:
    formula: water / time
    unit: g/s
    better: higher
    columns: {water: "water, g, scale", time: "time, s, watch"}
readings: readings.csv
"""
TABLE = "contender,pass,water,time\nharl,1,900,210\nharl,2,905,0\nharl,3,910,215\ntolk,1,900,240\ntolk,2,903,243\ntolk,3,none (spilled),244\n"


def test_a_pass_lost_to_a_division_by_zero_is_warned_of_at_the_reading_and_told_at_the_result(tmp_path: Path) -> None:
    told = compile_campaign(tmp_path, YAML, readings=TABLE)
    assert result_of(told, "rate", "harl")["passes"] == 2
    (found,) = [f for f in told["findings"] if f["rule"] == "no-value"]
    assert (found["severity"], found["file"].rpartition("/")[2], found["line"]) == ("warning", "readings.csv", 3)
    assert found["says"] == "rate of Harl has no value for pass 2: a division by zero (time is “0”)."
    (page,) = (tmp_path / "stoves/.site").glob("*/tests/rate.html")
    text = re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", "", page.read_text(encoding="utf-8"))))
    assert "Pass 2 of Harl was read and gives no value, so it isn’t counted: a division by zero" in text
    assert "Pass 3 of Tolk was read" not in text  # which has a reason of its own
