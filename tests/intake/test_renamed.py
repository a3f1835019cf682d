"""What was renamed since its raw file was written: the file stays as it is."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from reportgen.campaign.declared import Publication
from reportgen.campaign.load import load_campaign
from reportgen.intake import Readings, read_readings
from reportgen.sources import Workspace
from tests.intake.table_bench import measure, the_error, weighed

RENAMED = """\
title: Which stove boils a litre soonest?
contenders:
  corvane: {title: Corvane Sol, formerly: [sol, sol one]}
  ostler: Ostler Mk II
measure:
  boil time: {kind: timed, unit: s, better: lower, formerly: time to boil, columns: {boil time: time to boil}}
readings: readings.csv
"""


def loaded(place: Path, text: str, table: str) -> Readings:
    (place / "campaign.yaml").write_text(text, encoding="utf-8")
    (place / "readings.csv").write_text(table, encoding="utf-8")
    workspace = Workspace(place, ("",), True)
    return read_readings(workspace, load_campaign(workspace, "", Publication()))


def test_raw_files_may_call_a_contender_what_it_was_called_before(tmp_path: Path) -> None:
    table = "contender,pass,time to boil\nSol,1,212.4\nostler,1,230.1\nsol-one,2,214.9\ncorvane,3,211.8\n"
    found = loaded(tmp_path, RENAMED, table).of_test("boil-time")
    assert [(r.key.contender, str(r.value)) for r in found] == [
        ("corvane", "212.4"), ("ostler", "230.1"), ("corvane", "214.9"), ("corvane", "211.8"),
    ]  # fmt: skip


def test_a_former_name_yields_to_what_another_is_called_now(tmp_path: Path) -> None:
    text = RENAMED.replace("ostler: Ostler Mk II", "ostler: {title: Ostler Mk II, also called: [Sol]}")
    found = loaded(tmp_path, text, "contender,time to boil\nsol,230.1\ncorvane,212.4\n").of_test("boil-time")
    assert [(r.key.contender, str(r.value)) for r in found] == [("ostler", "230.1"), ("corvane", "212.4")]


def test_a_heading_of_old_is_named_with_the_line_that_reads_it(tmp_path: Path) -> None:
    renamed = replace(measure("boil time", "s", "timed"), formerly=("time-to-boil",))
    found = the_error(tmp_path, "contender,pass,time to boil (s)\ncorvane,1,212.4\nostler,1,230.1\n", renamed)
    assert found.rule == "missing-column"
    assert found.do.startswith("“time to boil (s)” is what it was called before")
    assert "`columns: {boil time: time to boil (s)}`" in found.do


def test_so_is_one_of_two_headings_of_old(tmp_path: Path) -> None:
    renamed = replace(weighed("gas burned"), formerly=("gas-used",))
    table = "contender,gas used before,gas burned after\ncorvane,231.4,217.1\nostler,240.2,223.9\n"
    assert "`columns: {gas burned before: gas used before}`" in the_error(tmp_path, table, renamed).do
