"""Tables for others to take: valid by the standard's own validator, and the same as results.json says."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any

import pyarrow.parquet
import pytest
from frictionless import Package

from tests.campaigns import compile_campaign

TABLES = ("results", "comparisons", "claims", "passes", "readings", "contenders", "quantities", "caveats")


@pytest.fixture(scope="module")
def folder(demo_site: Path) -> Path:
    return demo_site / "demo-campaign"


def rows_of(folder: Path, table: str) -> list[dict[str, str]]:
    with (folder / "data" / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, strict=True))


def as_number(text: str) -> float | None:
    return float(text) if text else None


def test_the_package_is_valid_with_its_types_keys_sizes_and_digests(folder: Path) -> None:
    """Frictionless 5 holds the whole against the Data Package standard, version 2, and each cell against its schema."""
    report = Package(str(folder / "datapackage.json")).validate()
    assert report.errors == []
    assert {task.name: task.errors for task in report.tasks if not task.valid} == {}
    assert {task.name for task in report.tasks if task.type == "table"} >= set(TABLES)


@pytest.mark.parametrize(
    ("spoil", "kind"),
    [
        (lambda text: text.replace("measured", "guessed", 1), "constraint-error"),
        (lambda text: text.replace(",corvane,", ",corvan,", 1), "foreign-key"),
        (lambda text: text + text.splitlines()[-1] + "\r\n", "unique-error"),
    ],
)
def test_the_validator_would_see_a_spoiled_table(folder: Path, tmp_path: Path, spoil: Any, kind: str) -> None:
    descriptor = json.loads((folder / "datapackage.json").read_text(encoding="utf-8"))
    descriptor["resources"] = [
        r for r in descriptor["resources"] if r["name"] in ("results", "contenders", "quantities")
    ]
    for resource in descriptor["resources"]:
        target = tmp_path / resource["path"]
        target.parent.mkdir(exist_ok=True)
        text = (folder / resource["path"]).read_bytes().decode()
        target.write_bytes((spoil(text) if resource["name"] == "results" else text).encode())
    (tmp_path / "datapackage.json").write_text(json.dumps(descriptor), encoding="utf-8")
    report = Package(str(tmp_path / "datapackage.json")).validate()
    assert kind in {error.type for task in report.tasks for error in task.errors}


def test_results_say_the_same_in_every_form(folder: Path, demo_told: dict[str, Any]) -> None:
    rows = rows_of(folder, "results")
    assert len(rows) == len(demo_told["results"])
    for row, told in zip(rows, demo_told["results"], strict=True):
        for key in ("test", "quantity", "contender", "kind", "printed"):
            assert row[key] == told[key]
        for key in ("value", "u", "low", "high", "coverage", "without_exclusions"):
            assert as_number(row[key]) == told[key], row["result"]
        assert row["limit"] == (told["limit"] or "")
        assert [row["rank_from"], row["rank_to"]] == [str(n) for n in told["rank"] or ("", "")]
        assert row["caveats"].split() == told["caveats"]


def test_comparisons_say_the_same_in_every_form(folder: Path, demo_told: dict[str, Any]) -> None:
    rows = rows_of(folder, "comparisons")
    assert len(rows) == len(demo_told["comparisons"])
    for row, told in zip(rows, demo_told["comparisons"], strict=True):
        for key in ("quantity", "first", "second", "decision"):
            assert row[key] == told[key]
        assert row["favours"] == (told["favours"] or "")
        for key in ("difference", "u", "low", "high", "percent", "percent_low", "percent_high"):
            assert as_number(row[key]) == told[key], row["comparison"]
        assert row["resolved"] == ("true" if told["resolved"] else "false")


def test_claims_passes_and_caveats_are_all_there(folder: Path, demo_told: dict[str, Any]) -> None:
    assert [r["outcome"] for r in rows_of(folder, "claims")] == [c["outcome"] for c in demo_told["claims"]]
    assert [r["caveat"] for r in rows_of(folder, "caveats")] == [c["id"] for c in demo_told["caveat_list"]]
    passes = [p for r in demo_told["results"] for p in r["by_pass"] if not p["together"]]
    assert [as_number(r["value"]) for r in rows_of(folder, "passes")] == [p["value"] for p in passes]
    assert [r["excluded"] for r in rows_of(folder, "passes")] == [p["excluded"] or "" for p in passes]


def test_a_claim_is_named_as_the_place_where_it_stands_and_its_bounds_have_their_unit(folder: Path) -> None:
    rows = rows_of(folder, "claims")
    units = {r["quantity"]: r["unit"] for r in rows_of(folder, "quantities")}
    for row in rows:
        contender, _, name = row["claim"].partition("/")
        assert contender == row["contender"]
        page = (folder / "contenders" / f"{contender}.html").read_text(encoding="utf-8")
        assert f'id="claim-{name}"' in page
        assert row["unit"] == (units[row["quantity"]] if row["accept_from"] or row["accept_to"] else "")
    assert sum(bool(row["unit"]) for row in rows) > 1


def test_every_reading_stands_where_its_row_says(folder: Path) -> None:
    """Raw files lie beside the tables, byte for byte: what was typed is on the line that is named."""
    found = 0
    for row in rows_of(folder, "readings"):
        path = folder / "files" / row["file"]
        if path.suffix not in (".csv", ".yaml") or row["channel"] or not row["typed"] or row["instrument"] == "":
            continue
        line = path.read_text(encoding="utf-8-sig").splitlines()[int(row["line"]) - 1]
        assert (row["amended_from"] or row["typed"]) in line, row["reading"]
        found += 1
    assert found > 100


def test_a_reading_that_is_left_out_says_from_what_and_why(folder: Path) -> None:
    """demo_campaign/tests/gas-burned.yaml leaves out the second pass of the Corvane: its valve was left open."""
    out = {r["reading"]: r for r in rows_of(folder, "readings") if "gas-burned" in r["left_out_of"].split()}
    assert {(r["contender"], r["pass"]) for r in out.values()} == {("corvane", "2")}
    assert all("valve" in r["left_out_because"] for r in out.values())
    assert any(r["left_out_of"] == "" for r in rows_of(folder, "readings") if r["contender"] == "corvane")


@pytest.mark.parametrize("table", TABLES)
def test_parquet_holds_what_the_csv_holds(folder: Path, table: str) -> None:
    """Read by Arrow, which had no part in writing it."""
    read = pyarrow.parquet.read_table(folder / "data" / f"{table}.parquet")
    rows = rows_of(folder, table)
    assert read.num_rows == len(rows)
    heading = (folder / "data" / f"{table}.csv").read_text(encoding="utf-8").splitlines()[0]
    assert read.column_names == heading.split(",")
    for column in read.column_names:
        kind = str(read.schema.field(column).type)
        for parquet, text in zip(read.column(column).to_pylist(), (r[column] for r in rows), strict=True):
            assert parquet == (None if text == "" else READ[kind](text)), column


READ: dict[str, Any] = {
    "string": str,
    "double": float,
    "int64": int,
    "bool": {"true": True, "false": False}.__getitem__,
}


def test_csv_keeps_to_its_rfc(folder: Path) -> None:
    """RFC 4180, 2: lines end in CR LF, the last too; each has as many fields; quotes are doubled (read strictly)."""
    for table in TABLES:
        data = (folder / "data" / f"{table}.csv").read_bytes()
        assert data.endswith(b"\r\n")
        assert not data.startswith(b"\xef\xbb\xbf")
        rows = list(csv.reader(data.decode().splitlines(keepends=True), strict=True))
        assert len({len(row) for row in rows}) == 1


def test_typed_text_survives_commas_quotes_and_line_breaks(tmp_path: Path) -> None:
    compile_campaign(
        tmp_path,
        'title: "Ä, \\"b\\" & <c>"\ncontenders:\n  a: "Ä, \\"b\\" & <c>"\n  b: B\nmeasure:\n  weight: one reading, g, lower\nreadings: readings.csv\n',
        readings='contender,weight,note\na,12.5,"two\nlines, ""quoted"""\nb,13.5,=1+1\n',
    )
    folder = next((tmp_path / "stoves" / ".site").glob("*/datapackage.json")).parent
    assert [r["note"] for r in rows_of(folder, "readings")] == ['two\nlines, "quoted"', "=1+1"]
    assert rows_of(folder, "contenders")[0]["title"] == 'Ä, "b" & <c>'
    assert Package(str(folder / "datapackage.json")).validate().valid


def test_a_campaign_with_nothing_claimed_has_its_tables_all_the_same(tmp_path: Path) -> None:
    compile_campaign(tmp_path)
    folder = next((tmp_path / "stoves" / ".site").glob("*/datapackage.json")).parent
    assert rows_of(folder, "claims") == []
    assert {p.stem for p in (folder / "data").iterdir()} == set(TABLES)
    report = Package(str(folder / "datapackage.json")).validate()
    assert {task.name: task.errors for task in report.tasks if not task.valid} == {}
