"""A table whose cells name the files of a logger: row and trace belong together."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from reportgen.finding import Finding
from tests.campaigns import compile_campaign, refusal, result_of, results_of

YAML = """\
title: Which lamp lasts longest?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
instruments: {lux-meter: "1 lx, up to 2000 lx, accuracy ±3 %"}
photos:
  meter: {file: attachments/meter.png, shows: The meter.}
measure:
  brightest:
    kind: logged
    formula: highest(light)
    unit: lx
    better: higher
    columns: {light: "Ch1, lx, lux-meter"}
  weight: {kind: one reading, unit: g, better: lower}
conditions: [draught]
readings: raw/bench.csv
"""
LONG = """\
contender,pass,session,light,weight,draught,note
corvane,1,evening,raw/a.csv,120.5,none,
corvane,2,evening,raw/b.csv,120.4,strong,the door stood open
ostler,1,evening,raw/c.csv,98.2,none,
ostler,2,evening,none (battery flat),98.1,none,
"""
PEAKS = {"raw/a.csv": 812, "raw/b.csv": 790, "raw/c.csv": 655}


def log(peak: float, times: str = "Elapsed (s)") -> str:
    return f"{times},Ch1\n0,5\n10,{peak}\n20,7\n"


def files(bench: str = LONG, **more: str | bytes) -> dict[str, str | bytes]:
    return {"raw/bench.csv": bench, **{name: log(peak) for name, peak in PEAKS.items()}, **more}


def yaml() -> str:
    return YAML.replace("photos:\n  meter: {file: attachments/meter.png, shows: The meter.}\n", "")


def readings(told: dict[str, Any], name: str = "light") -> list[dict[str, Any]]:
    return [r for r in told["reading_list"] if r["name"] == name]


def wrong(found: tuple[Finding, ...]) -> list[tuple[str, str, int, int]]:
    return [(f.rule, f.place.file, f.place.line, f.place.column) for f in found if f.severity == "error"]


def test_a_cell_stands_for_the_trace_of_its_file(tmp_path: Path) -> None:
    told = results_of(tmp_path, yaml(), **files())
    highest = {(t["contender"], t["pass"]): t["highest"] for t in told["trace_list"]}
    assert highest == {("corvane", "1"): 812, ("corvane", "2"): 790, ("ostler", "1"): 655}
    assert result_of(told, "brightest", "ostler")["value"] == 655
    assert result_of(told, "weight", "ostler")["value"] == pytest.approx(float(Decimal("98.15")))


def test_the_row_of_the_cell_is_shown_with_its_trace(tmp_path: Path) -> None:
    compile_campaign(tmp_path, yaml(), **files())
    (page,) = (tmp_path / "stoves/.site").glob("*/tests/brightest.html")
    shown = page.read_text(encoding="utf-8").replace("\u00a0", " ")
    assert "the door stood open" in shown
    assert "draught: strong" in shown
    assert "evening" in shown
    assert "raw/bench.csv, line 3" in shown
    assert "battery flat" in shown


@pytest.mark.parametrize(
    ("name", "column"),
    [("long", 4), ("log", 4)],
)
def test_a_misnamed_file_is_one_message_at_its_cell(name: str, column: int, tmp_path: Path) -> None:
    log_table = (
        "contender,pass,what,value\ncorvane,1,light,raw/a.csv\ncorvane,2,light,raw/bb.csv\nostler,1,light,raw/c.csv\n"
    )
    bench = LONG.replace("raw/b.csv", "raw/bb.csv") if name == "long" else log_table
    plain = yaml() if name == "long" else yaml().replace("conditions: [draught]\n", "")
    found = refusal(tmp_path, plain, **files(bench))
    assert wrong(found) == [("missing-file", "raw/bench.csv", 3, column)]
    (told,) = [f for f in found if f.rule == "missing-file"]
    assert "raw/bb.csv" in told.says
    assert told.do == "Did you mean “raw/b.csv”?"


def test_a_wide_table_may_name_files_too(tmp_path: Path) -> None:
    wide = "what,pass,corvane,ostler\nlight,1,raw/a.csv,raw/c.csv\nlight,2,raw/b.csv,none (battery flat)\nweight,1,120.5,98.2\n"
    told = results_of(tmp_path, yaml().replace("conditions: [draught]\n", ""), **files(wide))
    assert result_of(told, "brightest", "ostler")["value"] == 655
    assert result_of(told, "brightest", "corvane")["value"] == pytest.approx(801)  # (812 + 790) / 2


def test_a_bench_log_may_name_files_too(tmp_path: Path) -> None:
    table = "contender,pass,what,value\ncorvane,1,light,raw/a.csv\nostler,1,light,raw/c.csv\ncorvane,1,weight,120.5\n"
    told = results_of(tmp_path, yaml().replace("conditions: [draught]\n", ""), **files(table))
    assert result_of(told, "brightest", "corvane")["value"] == 812


def test_one_file_in_two_cells_is_refused(tmp_path: Path) -> None:
    found = refusal(tmp_path, yaml(), **files(LONG.replace("raw/b.csv", "raw/a.csv")))
    assert wrong(found) == [("file-named-twice", "raw/bench.csv", 3, 4)]


def test_a_number_in_place_of_a_file_is_refused(tmp_path: Path) -> None:
    found = refusal(tmp_path, yaml(), **files(LONG.replace("raw/b.csv", "790")))
    assert wrong(found) == [("missing-file", "raw/bench.csv", 3, 4)]


def test_a_way_out_of_the_workspace_is_no_file(tmp_path: Path) -> None:
    (tmp_path / "outside.csv").write_text(log(1))
    found = refusal(tmp_path, yaml(), **files(LONG.replace("raw/b.csv", "../outside.csv")))
    assert wrong(found) == [("missing-file", "raw/bench.csv", 3, 4)]


def test_how_such_files_are_read_can_be_said_with_the_table(tmp_path: Path) -> None:
    more = yaml().replace("readings: raw/bench.csv", "readings: {file: raw/bench.csv, time: 'Elapsed, min'}")
    bare = {name: log(peak, "Elapsed") for name, peak in PEAKS.items()}
    told = results_of(tmp_path / "time", more, **files(**bare))
    assert {t["seconds"] for t in told["trace_list"]} == {1200}
    more = yaml().replace("readings: raw/bench.csv", "readings: {file: raw/bench.csv, rate: 10 Hz}")
    told = results_of(tmp_path / "rate", more, **files(**bare))
    assert {t["seconds"] for t in told["trace_list"]} == {0.2}
    found = refusal(tmp_path / "none", yaml(), **files(**bare))
    assert {f.rule for f in found if f.severity == "error"} == {"no-times"}


def test_a_rate_for_a_table_that_names_no_file_is_refused(tmp_path: Path) -> None:
    more = """\
title: How heavy
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
measure: {weight: {kind: one reading, unit: g, better: lower}}
readings: {file: raw/bench.csv, rate: 10 Hz}
"""
    table = "contender,weight\ncorvane,120.5\nostler,98.2\n"
    assert [r for r, *_ in wrong(refusal(tmp_path, more, **{"raw/bench.csv": table}))] == ["readings-without-place"]
