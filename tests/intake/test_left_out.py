"""Rows of means and totals: passed over where they are named, told where they aren't, and never a way to lose readings."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.campaigns import refusal, result_of, results_of

YAML = """\
title: Boil
who pays: us
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
measure: {boil: "timed, s, lower, stopwatch"}
readings: {file: readings.csv, leave out: [LEFT]}
"""
TABLES = {
    "long": "contender,pass,boil\ncorvane,1,10\nostler,1,20\nMean,,15\n",
    "log": "contender,what,value\ncorvane,boil,10\nostler,boil,20\nMean,boil,15\n",
    "log, under what": "contender,what,value\ncorvane,boil,10\nostler,boil,20\nostler,Mean,15\n",
    "wide, a row": "what,corvane,ostler\nboil,10,20\nmean,10,20\n",
    "wide, a column": "what,corvane,ostler,mean\nboil,10,20,15\n",
}


@pytest.mark.parametrize("layout", TABLES)
def test_rows_named_are_passed_over_in_every_layout(tmp_path: Path, layout: str) -> None:
    told = results_of(tmp_path, YAML.replace("LEFT", "Mean"), readings=TABLES[layout])
    assert (result_of(told, "boil", "corvane")["value"], result_of(told, "boil", "ostler")["value"]) == (10, 20)
    assert not {f["rule"] for f in told["findings"]} & {"unread-column", "unknown-what", "leaves-nothing-out"}


def test_a_total_that_nobody_named_is_told_with_the_way_to_leave_it_out(tmp_path: Path) -> None:
    yaml = YAML.replace("{file: readings.csv, leave out: [LEFT]}", "readings.csv")
    (found,) = refusal(tmp_path, yaml, readings=TABLES["long"])
    assert (found.rule, found.place.line) == ("unknown-contender", 4)
    assert "`{file: readings.csv, leave out: [Mean]}`" in found.do
    assert "also called" not in found.do


@pytest.mark.parametrize("name", ["ostler", "Corvane Sol", "boil"])
def test_nothing_that_is_measured_can_be_left_out_so(tmp_path: Path, name: str) -> None:
    found = refusal(tmp_path, YAML.replace("LEFT", name), readings=TABLES["log"].replace("Mean,boil,15\n", ""))
    (wrong,) = [f for f in found if f.rule == "leaves-readings-out"]
    assert (wrong.place.file, wrong.place.line) == ("campaign.yaml", 5)
    assert "exclude" in wrong.do


def test_a_name_that_no_row_bears_is_a_warning(tmp_path: Path) -> None:
    rows = TABLES["long"].replace("Mean,,15\n", "")
    told = results_of(tmp_path, YAML.replace("LEFT", "Totals"), readings=rows)
    (found,) = [f for f in told["findings"] if f["rule"] == "leaves-nothing-out"]
    assert found["severity"] == "warning"
