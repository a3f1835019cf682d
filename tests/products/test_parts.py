"""Where one contender lacks a part of a run that others have, no total of fewer parts is compared with a whole one."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.campaigns import compile_campaign, result_of

YAML = """\
title: Gas of two evenings
contenders: {harl: Harl One, tolk: Tolk Beam, rymel: Rymel}
measure:
  burned: {kind: one reading, unit: g, better: lower, over parts: OVER}
readings: readings.csv
"""
READINGS = """\
contender,pass,part,burned
harl,1,first,10
harl,1,second,12
tolk,1,first,11
rymel,1,first,11
rymel,1,second,none (rain)
"""


@pytest.mark.parametrize("over", ["sum", "mean"])
def test_a_missing_part_is_one_message_and_no_total(tmp_path: Path, over: str) -> None:
    told = compile_campaign(tmp_path, YAML.replace("OVER", over), readings=READINGS)
    (found,) = [f for f in told["findings"] if f["rule"] == "part-missing"]
    assert found["says"] == "tolk has no reading of “burned” for “second”, and others have."
    assert (found["file"], found["line"], found["severity"]) == ("readings.csv", 4, "warning")
    assert found["do"] == "Add the reading, or a row with `none (reason)`."
    assert result_of(told, "burned", "tolk")["value"] is None
    assert result_of(told, "burned", "tolk")["missing"] == "part second was not read"
    assert result_of(told, "burned", "rymel")["missing"] == "rain"
    assert result_of(told, "burned", "harl")["value"] == (22 if over == "sum" else 11)
