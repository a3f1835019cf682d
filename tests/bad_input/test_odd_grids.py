"""A grid of contenders in a file that can't hold one."""

from __future__ import annotations

from pathlib import Path

from tests.campaigns import refusal
from tests.intake.books import xlsx

YAML = """\
title: T
contenders: contenders.xlsx
measure:
  boil time: timed, s, lower
readings: raw/day.xlsx
"""


def test_contenders_in_a_spreadsheet_are_refused_with_what_to_do(tmp_path: Path) -> None:
    files = {"raw/day.xlsx": xlsx(), "contenders.xlsx": xlsx()}
    found = [f for f in refusal(tmp_path, YAML, **files) if f.rule == "unknown-format"]
    assert [(str(f.place), "CSV UTF-8" in f.do) for f in found] == [("campaign.yaml:2:13", True)]
