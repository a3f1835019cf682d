"""Long tables, wide tables, contenders as rows, the bench log, tables typed in the YAML: one set of readings."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from reportgen.campaign.declared import Column, Source
from reportgen.finding import Place
from tests.intake.table_bench import NAMED_AT, by_key, measure, read, source, the_error, weighed

LONG = """\
contender,pass,gas burned before,gas burned after,boil time
corvane,1,231.4,217.1,212.4
ostler,1,240.2,223.9,230.1
ostler,2,223.9,207.2,226.4
corvane,2,217.1,202.6,214.9
"""
WIDE = """\
what,pass,corvane,ostler
gas burned before,1,231.4,240.2
gas burned after,1,217.1,223.9
gas burned before,2,217.1,223.9
gas burned after,2,202.6,207.2
boil time,1,212.4,230.1
boil time,2,214.9,226.4
"""
LOG = """\
contender,what,value
corvane,gas burned before,231.4
corvane,gas burned after,217.1
corvane,boil time,212.4
ostler,gas burned before,240.2
ostler,gas burned after,223.9
ostler,boil time,230.1
ostler,gas burned before,223.9
ostler,gas burned after,207.2
ostler,boil time,226.4
corvane,gas burned before,217.1
corvane,gas burned after,202.6
corvane,boil time,214.9
"""
STOVES = (weighed(), measure("boil time", "s", "timed"))
VALUES = {
    ("corvane", "1", "gas_burned_before"): "231.4",
    ("corvane", "1", "gas_burned_after"): "217.1",
    ("corvane", "1", "boil_time"): "212.4",
    ("corvane", "2", "gas_burned_before"): "217.1",
    ("corvane", "2", "gas_burned_after"): "202.6",
    ("corvane", "2", "boil_time"): "214.9",
    ("ostler", "1", "gas_burned_before"): "240.2",
    ("ostler", "1", "gas_burned_after"): "223.9",
    ("ostler", "1", "boil_time"): "230.1",
    ("ostler", "2", "gas_burned_before"): "223.9",
    ("ostler", "2", "gas_burned_after"): "207.2",
    ("ostler", "2", "boil_time"): "226.4",
}


@pytest.mark.parametrize("text", [LONG, WIDE, LOG, LONG.replace("pass", "x").replace(",x", ",note")])
def test_every_layout_gives_the_same_readings(tmp_path: Path, text: str) -> None:
    """The last one has no pass column: its passes are numbered in the order of their rows."""
    readings = by_key(read(tmp_path, text, *STOVES))
    assert {k: str(r.value) for k, r in readings.items()} == VALUES
    assert {r.unit for k, r in readings.items() if k[2] == "boil_time"} == {"s"}


def test_every_reading_points_at_its_own_cell(tmp_path: Path) -> None:
    for text in (LONG, WIDE, LOG):
        lines = [line.split(",") for line in text.splitlines()]
        for reading in read(tmp_path, text, *STOVES).readings.values():
            assert lines[reading.at.line - 1][reading.at.column - 1] == reading.text


def test_a_long_table_and_a_log_show_the_order_of_work_and_a_wide_one_does_not(tmp_path: Path) -> None:
    recorded = {
        name: read(tmp_path, t, *STOVES).order_recorded for name, t in (("long", LONG), ("log", LOG), ("wide", WIDE))
    }
    assert recorded == {
        "long": {"gas-burned": True, "boil-time": True},
        "log": {"gas-burned": True, "boil-time": True},
        "wide": {"gas-burned": False, "boil-time": False},
    }
    assert [r.key.contender for r in read(tmp_path, LONG, *STOVES).of_test("boil-time")] == [
        "corvane", "ostler", "ostler", "corvane",
    ]  # fmt: skip


def test_rounds_are_recorded_where_every_reading_has_one(tmp_path: Path) -> None:
    text = "what,round,corvane,ostler\nnoise,1,70,71\nnoise,2,70,72\nmass,,5,6\n"
    readings = read(tmp_path, text, measure("noise", "dB"), measure("mass"))
    assert readings.rounds_recorded == {"noise": True, "mass": False}
    assert readings.order_recorded == {"noise": True, "mass": False}
    assert {r.round_ for r in readings.of_test("noise")} == {"1", "2"}


def test_contenders_go_by_id_title_and_what_they_are_also_called(tmp_path: Path) -> None:
    text = "what,Corvane Sol,THE RED-ONE\nmass,1,2\n"
    assert by_key(read(tmp_path, text, measure("mass")))["ostler", "1", "mass"].value == 2


def test_contenders_as_rows_need_no_pass(tmp_path: Path) -> None:
    text = "contender,packed weight,lit first time\nCorvane Sol,431,yes\nOstler Mk II,388,no\n"
    readings = by_key(read(tmp_path, text, measure("packed weight"), measure("lit first time", "", "yes/no")))
    assert readings["ostler", "1", "packed_weight"].value == 388
    assert readings["ostler", "1", "lit_first_time"].word == "no"
    assert readings["ostler", "1", "lit_first_time"].unit == ""


def test_columns_of_a_test_with_different_counts_ask_for_a_pass(tmp_path: Path) -> None:
    log = LOG.replace("ostler,gas burned after,207.2\n", "")
    found = the_error(tmp_path, log, *STOVES)
    assert found.rule == "pass-unclear"
    assert "“gas burned before” 2 times, “gas burned after” 1 times" in found.says
    assert "`pass`" in found.do


def test_different_counts_in_different_tests_are_no_matter(tmp_path: Path) -> None:
    assert len(read(tmp_path, LOG + "corvane,noise,70\n", *STOVES, measure("noise", "dB")).readings) == 13


def test_an_empty_pass_is_numbered_like_a_missing_column(tmp_path: Path) -> None:
    text = "what,pass,corvane,ostler\nboil time,1,212.4,230.1\nnoise,,71.2,over 90\n"
    readings = by_key(read(tmp_path, text, measure("boil time", "s"), measure("noise", "dB")))
    noise = readings["ostler", "1", "noise"]
    assert (noise.value, noise.limit, noise.unit) == (Decimal(90), "above", "dB")


def test_passes_go_on_from_one_file_to_the_next(tmp_path: Path) -> None:
    days = (source("day1.csv"), source("day2.csv"))
    files = {"day1.csv": "contender,mass\ncorvane,1\nostler,2\n", "day2.csv": "contender,mass\ncorvane,3\nostler,4\n"}
    readings = by_key(read(tmp_path, files, measure("mass", sources=days)))
    assert readings["ostler", "2", "mass"].at == Place("day2.csv", 3, 2)


def test_two_files_may_hold_one_column_each(tmp_path: Path) -> None:
    files = {"a.csv": "contender,gas burned before\ncorvane,9\n", "b.csv": "contender,gas burned after\ncorvane,7\n"}
    readings = by_key(read(tmp_path, files, weighed(sources=(source("a.csv"), source("b.csv")))))
    assert {k[1] for k in readings} == {"1"}


def test_parts_are_not_passes(tmp_path: Path) -> None:
    text = "contender,part,mass\ncorvane,first evening,1\ncorvane,second evening,2\nostler,first evening,3\n"
    keys = read(tmp_path, text, measure("mass")).readings
    assert {(k.contender, k.part, k.pass_) for k in keys} == {
        ("corvane", "first evening", "1"),
        ("corvane", "second evening", "1"),
        ("ostler", "first evening", "1"),
    }


def test_a_test_names_the_headings_that_bear_its_roles(tmp_path: Path) -> None:
    """The split test file of the first campaign: `contender: stove`, `column: canister before`."""
    test = measure(
        "gas burned", headings=("canister before", "canister after"), sources=(source("raw/g.csv", contender="stove"),)
    )
    text = "stove,pass,canister before,canister after\ncorvane,1,231.4,217.1\n"
    readings = by_key(read(tmp_path, {"raw/g.csv": text}, test))
    assert readings["corvane", "1", "canister_before"].at == Place("raw/g.csv", 2, 3)


def test_a_log_keeps_what_else_was_noted(tmp_path: Path) -> None:
    text = (
        "time,contender,specimen,what,value,unit,pass,part,round,session,note,photo,film,wind\n"
        "14:05,ostler,2,pull,16.5,kg,3,cold,1,Monday,slipped once,display,main 4m20s,gusty\n"
    )
    (reading,) = read(tmp_path, text, measure("pull", "lbf", conditions=("wind",))).readings.values()
    assert (reading.key.specimen, reading.key.pass_, reading.key.part) == ("2", "3", "cold")
    assert (reading.time, reading.session, reading.round_, reading.note) == ("14:05", "Monday", "1", "slipped once")
    assert reading.unit == "kg"
    assert dict(reading.conditions) == {"wind": "gusty"}
    assert reading.photos == ("display",)
    assert reading.film is not None
    assert (reading.film.film, reading.film.seconds) == ("main", 4 * 60 + 20)


def test_conditions_of_a_pass_stay_with_its_readings(tmp_path: Path) -> None:
    text = "contender,mass,wind\ncorvane,1,calm\nostler,2,\n"
    readings = by_key(read(tmp_path, text, measure("mass", conditions=("wind",))))
    assert readings["corvane", "1", "mass"].conditions == (("wind", "calm"),)
    assert readings["ostler", "1", "mass"].conditions == ()


def test_a_condition_found_nowhere_is_an_error(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,mass,wnd\ncorvane,1,calm\n", measure("mass", conditions=("wind",)))
    assert found.rule == "missing-column"
    assert "“wnd”" in found.do


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("contender,mass\ncorvane,16.5\n", "g"),
        ("contender,mass (kg)\ncorvane,16.5\n", "kg"),
        ("contender,mass [kg]\ncorvane,16.5\n", "kg"),
        ("contender,mass,unit\ncorvane,16.5,kg\n", "kg"),
        ("contender,mass (lb),unit\ncorvane,16.5,kg\n", "kg"),
        ("contender,mass\ncorvane,16.5 kg\n", "kg"),
        ("what,corvane,ostler\nmass (kg),16.5,2\n", "kg"),
        ("contender,what,value\ncorvane,mass (kg),16.5\n", "kg"),
    ],
)
def test_the_unit_nearest_to_the_number_holds(tmp_path: Path, text: str, unit: str) -> None:
    reading = by_key(read(tmp_path, text, measure("mass", "g")))["corvane", "1", "mass"]
    assert (reading.value, reading.unit) == (Decimal("16.5"), unit)


def test_brackets_that_belong_to_a_columns_name_are_not_its_unit(tmp_path: Path) -> None:
    test = measure("speed", "s", headings=("time (first try)",))
    (reading,) = read(tmp_path, "contender,time (first try)\ncorvane,3\n", test).readings.values()
    assert reading.unit == "s"


def test_a_cell_and_its_row_with_two_units_are_refused(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,mass,unit\ncorvane,16.5 lb,kg\n", measure("mass"))
    assert (found.rule, found.place.line, found.place.column) == ("units-disagree", 2, 2)


def test_a_semicolon_table_reads_decimal_commas(tmp_path: Path) -> None:
    """As a spreadsheet of a country with decimal commas writes it."""
    reading = by_key(read(tmp_path, "contender;mass\r\ncorvane;12,50\r\nostler;1,250\r\n", measure("mass")))
    assert str(reading["corvane", "1", "mass"].value) == "12.50"
    assert reading["corvane", "1", "mass"].text == "12,50"
    assert str(reading["ostler", "1", "mass"].value) == "1.250"


def test_commas_and_points_in_one_table_are_refused(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender;mass\ncorvane;12,5\nostler;12.5\n", measure("mass"))
    assert (found.rule, found.place.line) == ("separator-in-number", 2)


def test_a_tab_table_reads_a_comma_once_another_cell_shows_what_it_is(tmp_path: Path) -> None:
    shown = "contender\tmass\ncorvane\t1,250\nostler\t12,5\n"
    readings = by_key(read(tmp_path, {"a.tsv": shown}, measure("mass", sources=(source("a.tsv"),))))
    assert str(readings["corvane", "1", "mass"].value) == "1.250"
    doubtful = {"a.tsv": "contender\tmass\ncorvane\t1,250\n"}
    assert the_error(tmp_path, doubtful, measure("mass", sources=(source("a.tsv"),))).rule == "separator-in-number"


def inline(*rows: tuple[str, ...], first_line: int = 20) -> Source:
    return Source(rows=rows, row_lines=tuple(range(first_line, first_line + len(rows))), place=NAMED_AT)


def test_a_table_typed_in_the_yaml_keeps_the_lines_of_the_yaml(tmp_path: Path) -> None:
    test = measure("mass", sources=(inline(("what", "corvane", "ostler"), ("mass", "1.50", "none (lost)")),))
    readings = read(tmp_path, {}, test)
    reading = by_key(readings)["corvane", "1", "mass"]
    assert (str(reading.value), reading.at) == ("1.50", Place("campaign.yaml", 21, 2))
    assert readings.files == ()


def test_the_yaml_that_tables_were_typed_in_is_a_file_of_readings_once(tmp_path: Path) -> None:
    """The digest of "abc" is the example of FIPS 180-2, B.1."""
    (tmp_path / "campaign.yaml").write_bytes(b"abc")
    tables = (
        inline(("what", "corvane"), ("mass", "1.50")),
        inline(("what", "ostler"), ("mass", "2.50"), first_line=30),
    )
    (file,) = read(tmp_path, {}, measure("mass", sources=tables)).files
    assert (file.path, file.size) == ("campaign.yaml", 3)
    assert file.digest == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"


def test_a_column_nobody_reads_in_a_typed_table_is_told(tmp_path: Path) -> None:
    test = measure("mass", sources=(inline(("contender", "mass", "moss"), ("corvane", "1", "2")),))
    (found,) = read(tmp_path, {}, test).findings
    assert (found.severity, found.rule, found.place.line) == ("warning", "unread-column", 20)


def test_what_no_test_reads_is_kept_with_the_file(tmp_path: Path) -> None:
    long = read(tmp_path, LONG, STOVES[0]).files[0]
    assert (long.headings[-1], long.unread) == ("boil time", ("boil time",))
    assert read(tmp_path, LONG, *STOVES).files[0].unread == ()
    assert read(tmp_path, WIDE, STOVES[0]).files[0].unread == ("boil time",)
    assert read(tmp_path, LOG, STOVES[0]).files[0].unread == ("boil time",)


def test_an_empty_cell_is_a_reading_without_a_reason(tmp_path: Path) -> None:
    readings = by_key(read(tmp_path, "contender,mass\ncorvane,\nostler,none (spilled)\n", measure("mass")))
    assert readings["corvane", "1", "mass"].absent_because == "no reason given"
    assert readings["ostler", "1", "mass"].absent_because == "spilled"
    assert readings["ostler", "1", "mass"].value is None


def test_empty_cells_of_a_contender_not_yet_tested_are_nothing(tmp_path: Path) -> None:
    readings = read(tmp_path, "what,corvane,ostler\nmass,1,\n", measure("mass", not_yet_tested=("ostler",)))
    assert [k.contender for k in readings.readings] == ["corvane"]


def test_an_instrument_stands_with_every_reading_of_its_column(tmp_path: Path) -> None:
    test = replace(measure("mass"), columns=(Column("mass", "mass", "g", "bench-scale"),))
    (reading,) = read(tmp_path, "contender,mass\ncorvane,1\n", test).readings.values()
    assert reading.instrument == "bench-scale"
