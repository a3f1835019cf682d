"""Parquet files written by Arrow, DuckDB and pandas read back to the same readings, row by row."""

from __future__ import annotations

import io
from datetime import date, datetime, time
from decimal import Decimal
from pathlib import Path
from typing import Any

import duckdb
import pandas
import pyarrow
import pyarrow.parquet
import pytest

from tests.campaigns import compile_campaign, refusal, result_of
from tests.intake.books import of, read, the_error, told

YAML = """\
title: T
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
measure:
  boil time: timed, s, lower
readings: raw/day.parquet
"""


def written(**columns: Any) -> bytes:
    """A file of two rows, contender among them, by Arrow."""
    out = io.BytesIO()
    pyarrow.parquet.write_table(pyarrow.table({"contender": ["corvane", "ostler"], **columns}), out)
    return out.getvalue()


def by_arrow(_: Path) -> bytes:
    return written(**{"boil time": [212.4, 230.1]})


def by_pandas(_: Path) -> bytes:
    out = io.BytesIO()
    pandas.DataFrame({"contender": ["corvane", "ostler"], "boil time": [212.4, 230.1]}).to_parquet(out, index=False)
    return out.getvalue()


def by_duckdb(folder: Path) -> bytes:
    path = folder / "made.parquet"
    rows = "SELECT * FROM (VALUES ('corvane', 212.4::DOUBLE), ('ostler', 230.1::DOUBLE)) AS t(contender, \"boil time\")"
    with duckdb.connect() as connection:
        connection.execute(f"COPY ({rows}) TO '{path}' (FORMAT parquet)")
    return path.read_bytes()


@pytest.mark.parametrize("writer", [by_arrow, by_pandas, by_duckdb])
def test_a_table_gives_its_readings_each_with_row_and_column(writer: Any, tmp_path: Path) -> None:
    readings = read(tmp_path, writer(tmp_path), "day.parquet")
    assert {c: (r.value, r.decimals, str(r.at)) for c, r in of(readings).items()} == {
        "corvane": (Decimal("212.4"), None, "day.parquet:1:2"),
        "ostler": (Decimal("230.1"), None, "day.parquet:2:2"),
    }
    (raw,) = readings.files
    assert (raw.form, raw.headings) == ("parquet", ("contender", "boil time"))


def test_a_campaign_compiles_and_traces_to_the_row(tmp_path: Path) -> None:
    data = written(**{"boil time": pyarrow.array([Decimal("212.40"), Decimal("230.10")], pyarrow.decimal128(8, 2))})
    told_of = compile_campaign(tmp_path, YAML, **{"raw/day.parquet": data})
    result = result_of(told_of, "boil-time", "ostler")
    assert (result["value"], result["trace"][0]["lines"]) == (230.1, [2])


def test_decimals_keep_their_scale_and_floats_have_none(tmp_path: Path) -> None:
    exact = pyarrow.array([Decimal("212.40"), Decimal("230.10")], pyarrow.decimal128(8, 2))
    found = of(read(tmp_path, written(**{"boil time": exact}), "day.parquet"))
    assert (found["corvane"].text, found["corvane"].decimals) == ("212.40", 2)


def test_single_precision_is_read_as_the_shortest_number_that_is_it(tmp_path: Path) -> None:
    """0.1 in binary32 (IEEE 754) is 0.100000001490116…; its shortest decimal is 0.1."""
    found = of(read(tmp_path, written(**{"boil time": pyarrow.array([0.1, 212.4], pyarrow.float32())}), "day.parquet"))
    assert [r.value for r in found.values()] == [Decimal("0.1"), Decimal("212.4")]


def test_text_whole_numbers_and_null_are_read_as_in_any_table(tmp_path: Path) -> None:
    found = of(read(tmp_path, written(**{"pass": [1, 1], "boil time": ["over 999", None]}), "day.parquet"))
    assert (found["corvane"].value, found["corvane"].limit) == (Decimal(999), "above")
    assert found["ostler"].absent_because == "no reason given"


def test_dates_times_and_truth_values_stand_beside_a_reading_as_text(tmp_path: Path) -> None:
    data = written(
        time=[time(10, 5), time(10, 7)],
        note=[datetime(2026, 5, 2, 10, 5), None],
        **{"boil time": [212.4, 230.1], "day": [date(2026, 5, 2)] * 2},
    )
    found = of(read(tmp_path, data, "day.parquet", conditions=("day",)))
    assert found["corvane"].time.startswith("10:05")
    assert found["corvane"].note.startswith("2026-05-02 10:05")
    assert found["corvane"].conditions == (("day", "2026-05-02"),)
    words = of(read(tmp_path, written(**{"boil time": [True, False]}), "day.parquet", unit="", kind="yes/no"))
    assert [r.word for r in words.values()] == ["yes", "no"]


@pytest.mark.parametrize(
    ("column", "rule"),
    [([time(4, 20)] * 2, "time-of-day"), ([date(2026, 5, 3)] * 2, "date-for-reading"), ([True] * 2, "truth-value")],
)
def test_what_is_no_reading_is_refused(column: list[Any], rule: str, tmp_path: Path) -> None:
    found = told(tmp_path, written(**{"boil time": column}), "day.parquet")
    assert {f.rule for f in found} == {rule}
    assert str(found[0].place) == "day.parquet:1:2"


@pytest.mark.parametrize(
    "column", [[{"a": 1}, {"a": 2}], [[1.0], [2.0, 3.0]], [b"a", b"b"]], ids=["struct", "list", "bytes"]
)
def test_a_column_of_several_values_or_of_bytes_is_refused_by_name(column: list[Any], tmp_path: Path) -> None:
    (found,) = told(tmp_path, written(**{"boil time": column}), "day.parquet")
    assert found.rule == "column-without-cells"
    assert "“boil time”" in found.says


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        (by_arrow(Path())[:-20], "cut-short"),
        (by_arrow(Path())[:8], "cut-short"),
        (b"", "no-parquet"),
        (b"contender,boil time\n", "no-parquet"),
        (b"PARE" + by_arrow(Path())[4:], "password"),
        (by_arrow(Path())[:40] + b"PAR1", "damaged-parquet"),
        (by_arrow(Path())[:8] + bytes(60) + by_arrow(Path())[68:], "damaged-parquet"),
    ],
)
def test_what_can_not_be_read_to_its_end_is_refused(data: bytes, rule: str, tmp_path: Path) -> None:
    """Apache Parquet, file format: PAR1 at both ends, the metadata before the second; PARE where that is encrypted."""
    assert the_error(tmp_path, data, "day.parquet") == (rule, "day.parquet")


def test_a_sheet_of_it_is_refused_and_so_is_a_missing_file(tmp_path: Path) -> None:
    assert the_error(tmp_path, by_arrow(tmp_path), "day.parquet", sheet="Bench") == ("no-sheets", "day.parquet")
    found = refusal(tmp_path, YAML)
    assert [(f.rule, f.place.file) for f in found] == [("missing-file", "campaign.yaml")]


def test_a_name_that_would_stand_for_many_files_stands_for_itself(tmp_path: Path) -> None:
    """DuckDB takes [1] for any name with a 1 there."""
    plain = compile_campaign(tmp_path / "plain", YAML, **{"raw/day.parquet": by_arrow(tmp_path)})
    yaml = YAML.replace("raw/day.parquet", "'raw [1]/day.parquet'")
    named = {"raw [1]/day.parquet": by_arrow(tmp_path), "raw 1/day.parquet": b"another"}
    odd = compile_campaign(tmp_path / "odd", yaml, **named)
    assert [r["value"] for r in odd["results"]] == [r["value"] for r in plain["results"]]
    assert None not in [r["value"] for r in odd["results"]]


def test_rows_come_in_their_order_however_many(tmp_path: Path) -> None:
    many = 20_000
    out = io.BytesIO()
    table = pyarrow.table({"contender": ["corvane"] * many, "pass": range(1, many + 1), "boil time": range(many)})
    pyarrow.parquet.write_table(table, out, row_group_size=1000)
    found = read(tmp_path, out.getvalue(), "day.parquet").of_test("boil-time")
    assert [(r.at.line, r.value) for r in found] == [(n + 1, n) for n in range(many)]
