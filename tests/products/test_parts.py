"""Where one contender lacks a part of a run that others have, no total of fewer parts is compared with a whole one."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.campaigns import compile_campaign, refusal, result_of, results_of

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
    told = results_of(tmp_path, YAML.replace("OVER", over), readings=READINGS)
    (found,) = [f for f in told["findings"] if f["rule"] == "part-missing"]
    assert found["says"] == "tolk has no reading of “burned” for “second”, and others have."
    assert (found["file"], found["line"], found["severity"]) == ("readings.csv", 4, "warning")
    assert found["do"] == "Add the reading, or a row with `none (reason)`; a run without parts leaves `part` empty."
    assert result_of(told, "burned", "tolk")["value"] is None
    assert result_of(told, "burned", "tolk")["missing"] == "part second was not read"
    assert result_of(told, "burned", "rymel")["missing"] == "rain"
    assert result_of(told, "burned", "harl")["value"] == (22 if over == "sum" else 11)


WHOLE = """\
contender,pass,part,burned
harl,1,,20
harl,2,first,10
harl,2,second,12
tolk,1,,11
tolk,2,,13
rymel,1,,12
"""


def test_a_pass_without_parts_is_a_whole_run_beside_one_in_parts(tmp_path: Path) -> None:
    """Pieces of one stopped run add up (10 + 12 = 22); nobody else is asked for pieces."""
    told = results_of(tmp_path, YAML.replace("OVER", "sum"), readings=WHOLE)
    assert not [f for f in told["findings"] if f["rule"] in ("part-missing", "part-unclear", "no-value")]
    assert result_of(told, "burned", "harl")["value"] == (20 + 22) / 2
    assert result_of(told, "burned", "tolk")["value"] == (11 + 13) / 2
    assert result_of(told, "burned", "rymel")["value"] == 12


def test_what_is_read_once_for_all_parts_of_a_pass_is_no_part_and_no_run(tmp_path: Path) -> None:
    yaml = YAML.replace("kind: one reading", "columns: {full: {unit: g}, empty: {unit: g}}, formula: full - empty")
    yaml = yaml.replace("OVER", "sum")
    rows = (
        "contender,pass,part,what,value\nharl,1,,empty,4\nharl,1,first,full,10\nharl,1,second,full,12\n"
        "tolk,1,,empty,4\ntolk,1,,full,15\n"
    )
    told = results_of(tmp_path, yaml, readings=rows)
    assert result_of(told, "burned", "harl")["value"] == (10 - 4) + (12 - 4)
    assert result_of(told, "burned", "tolk")["value"] == 15 - 4


def test_one_pass_of_a_contender_that_lacks_a_part_is_told_by_its_pass(tmp_path: Path) -> None:
    rows = WHOLE.replace("harl,2,second,12\n", "harl,3,first,9\nharl,3,second,12\n")
    told = results_of(tmp_path, YAML.replace("OVER", "sum"), readings=rows)
    (found,) = [f for f in told["findings"] if f["rule"] == "part-missing"]
    assert found["says"] == "harl has no reading of “burned” for “second” in pass 2, and other passes have."
    assert result_of(told, "burned", "harl")["value"] == (20 + 21) / 2


def test_a_pass_that_is_whole_and_in_parts_is_refused(tmp_path: Path) -> None:
    rows = WHOLE + "harl,2,,22\n"
    (found,) = refusal(tmp_path, YAML.replace("OVER", "sum"), readings=rows)
    assert (found.rule, found.place.line) == ("part-unclear", 8)
    assert found.says == "Pass 2 of harl has “burned” in parts, and here once more without a part."


def test_a_whole_run_where_parts_stay_apart_is_told_and_never_lost_in_silence(tmp_path: Path) -> None:
    told = results_of(tmp_path, YAML.replace("OVER", "each"), readings=WHOLE)
    found = [f["says"] for f in told["findings"] if f["rule"] == "part-missing"]
    assert found[0] == "harl has “burned” here without a part, and others have it in parts."
    assert len(found) == 3


def test_what_else_was_read_is_not_said_to_be_nothing(tmp_path: Path) -> None:
    """One pass left out and another that lacks its second part: something else was read, and gives no result."""
    yaml = YAML.replace("OVER", "sum") + (
        "exclude: [{contender: tolk, pass: 1, because: it fell, decided: during the test}]\nwho pays: us\n"
    )
    rows = "contender,pass,part,burned\nharl,1,first,10\nharl,1,second,12\ntolk,1,,11\ntolk,2,first,9\nrymel,1,,12\n"
    compile_campaign(tmp_path, yaml, readings=rows)
    page = (tmp_path / "stoves/.site/stoves/tests/burned.html").read_text(encoding="utf-8")
    assert "and what else was read gives no result" in page
    assert "nothing else was read" not in page
