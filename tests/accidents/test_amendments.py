"""A slip of the pen put right: what counts is what was meant, the file stays, and everything that rests on it says so."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.accidents.accident_bench import GAS, GAS_ROWS, HEAD, caveats, compiled, page, told_of
from tests.campaigns import result_of

SLIP = GAS_ROWS.replace("231.4,217.1", "231.4,21.7")
AMEND = (
    "amend:\n  - {file: gas.csv, line: 2, column: gas burned after, from: 21.7, to: 217.1, "
    "why: a figure was left out, seen by: the film}\n"
)


def test_an_amended_reading_counts_as_if_the_file_had_said_so(tmp_path: Path) -> None:
    """The witness is the same campaign with the right figure in its file."""
    meant = compiled(tmp_path / "meant", GAS, gas=GAS_ROWS)
    amended = compiled(tmp_path / "amended", GAS + AMEND, gas=SLIP)
    for contender in ("corvane", "ostler"):
        ours, theirs = (result_of(told, "gas-burned", contender) for told in (amended, meant))
        assert {k: ours[k] for k in ("value", "u", "low", "high", "rank", "trace")} == {
            k: theirs[k] for k in ("value", "u", "low", "high", "rank", "trace")
        }
    assert (tmp_path / "amended" / "stoves" / "gas.csv").read_text() == SLIP
    copied = (tmp_path / "amended" / "stoves" / ".site" / "stoves" / "files" / "gas.csv").read_text()
    assert copied == SLIP


def test_the_amendment_travels_and_says_by_how_much(tmp_path: Path) -> None:
    told = compiled(tmp_path, GAS + AMEND, gas=SLIP)
    (caveat,) = caveats(told, "amendment")
    assert caveat["says"] == (
        "One reading was put right: line 2 of gas.csv says 21.7, but 217.1 was meant. A figure was left out. "
        "That changes the reading by 195.4\u00a0g. Seen by the film."  # 217.1 − 21.7
    )
    assert (caveat["said"], caveat["used"], caveat["seen_by"]) == (["21.7"], "217.1", "the film")
    assert caveat["id"] in result_of(told, "gas-burned", "corvane")["caveats"]
    assert caveat["id"] not in result_of(told, "gas-burned", "ostler")["caveats"]
    assert all(caveat["id"] in c["caveats"] for c in told["comparisons"])
    assert caveat["id"] in told["first"][0]["caveats"]
    assert "line 2 of gas.csv says 21.7, but 217.1 was meant" in page(tmp_path, "tests/gas-burned").text
    assert "line 2 of gas.csv says 21.7, but 217.1 was meant" in page(tmp_path, "index").text


def test_what_was_meant_may_be_in_any_notation(tmp_path: Path) -> None:
    amend = AMEND.replace("to: 217.1", "to: none (the note can't be read)")
    told = told_of(tmp_path, GAS + amend, gas=SLIP)
    passes = result_of(told, "gas-burned", "corvane")["by_pass"]
    assert [p["absent_because"] for p in passes] == ["the note can't be read", None]
    assert "That changes" not in caveats(told, "amendment")[0]["says"]


def test_an_empty_cell_can_be_filled_in(tmp_path: Path) -> None:
    amend = AMEND.replace("from: 21.7, ", "")
    told = told_of(tmp_path, GAS + amend, gas=GAS_ROWS.replace("231.4,217.1", "231.4,"))
    assert result_of(told, "gas-burned", "corvane")["value"] == pytest.approx(14.4)
    assert caveats(told, "amendment")[0]["says"].startswith("One reading was filled in: line 2 of gas.csv is empty")
    assert not [f for f in told["findings"] if f["rule"] == "empty-cell"]


def test_a_wrong_name_in_a_row_is_put_right_and_told_of_what_is_read_in_that_row(tmp_path: Path) -> None:
    amend = (
        "amend: {file: gas.csv, line: 4, column: contender, from: corvane, to: ostler, why: the bench sheet says so}\n"
    )
    told = told_of(
        tmp_path, GAS + amend, gas=GAS_ROWS.replace("ostler,2", "corvane,2").replace("corvane,2,217", "corvane,3,217")
    )
    assert result_of(told, "gas-burned", "ostler")["passes"] == 2
    assert result_of(told, "gas-burned", "corvane")["caveats"] == []
    (caveat,) = caveats(told, "amendment")
    assert (
        caveat["says"]
        == "One cell was put right: line 4 of gas.csv says “corvane”, but “ostler” was meant. The bench sheet says so"
    )
    assert caveat["contender"] == "ostler"


def test_a_wrong_heading_is_put_right(tmp_path: Path) -> None:
    amend = "amend: {file: gas.csv, line: 1, column: gas burnt after, from: gas burnt after, to: gas burned after, why: our word}\n"
    told = told_of(tmp_path, GAS + amend, gas=GAS_ROWS.replace("burned after", "burnt after"))
    assert result_of(told, "gas-burned", "ostler")["value"] == pytest.approx(16.5)  # (16.3 + 16.7) / 2
    assert caveats(told, "amendment")[0]["contender"] is None


def test_an_amendment_of_a_test_stands_in_its_test(tmp_path: Path) -> None:
    yaml = HEAD + "measure:\n  gas burned:\n    kind: weighed before and after\n    unit: g\n    better: lower\n"
    yaml += "    readings: gas.csv\n" + "".join(f"    {line}\n" for line in AMEND.splitlines())
    told = told_of(tmp_path, yaml, gas=SLIP)
    assert result_of(told, "gas-burned", "corvane")["value"] == pytest.approx(14.4)  # (14.3 + 14.5) / 2
    assert caveats(told, "amendment")[0]["id"] == "amendment-gas-burned-1"


def test_an_amendment_that_mends_nothing_read_is_a_finding(tmp_path: Path) -> None:
    rows = GAS_ROWS.replace("after\n", "after,helper\n").replace("217.1\n", "217.1,Ann\n", 1)
    rows = "".join(
        line if "Ann" in line or "helper" in line else line.replace("\n", ",\n")
        for line in rows.splitlines(keepends=True)
    )
    amend = "amend: {file: gas.csv, line: 2, column: helper, from: Ann, to: Anna, why: her name}\n"
    told = told_of(tmp_path, GAS + "conditions: [helper]\n" + amend, gas=rows)
    assert not [f for f in told["findings"] if f["rule"] == "amends-nothing"], "a condition is told beside the reading"
    rows = rows.replace("helper", "scribble")
    told = told_of(tmp_path / "2", GAS + amend.replace("helper", "scribble"), gas=rows)
    (finding,) = [f for f in told["findings"] if f["rule"] == "amends-nothing"]
    assert (finding["severity"], finding["file"]) == ("warning", "campaign.yaml")
    assert "gas.csv:2:5" in finding["says"]


def test_a_cell_of_a_spreadsheet_is_put_right_by_its_name(tmp_path: Path) -> None:
    """The workbook is written by openpyxl; D2 is the first weighing after, as a spreadsheet counts."""
    import io

    from openpyxl import Workbook, load_workbook

    from tests.campaigns import compile_campaign

    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for line in SLIP.splitlines():
        sheet.append([float(cell) if cell.replace(".", "").isdigit() else cell for cell in line.split(",")])
    held = io.BytesIO()
    book.save(held)
    yaml = GAS.replace("gas.csv", "day.xlsx") + (
        "amend: {file: day.xlsx, cell: D2, from: 21.7, to: 217.1, why: a figure was left out}\n"
    )
    told = compile_campaign(tmp_path, yaml, **{"day.xlsx": held.getvalue()})
    assert result_of(told, "gas-burned", "corvane")["value"] == pytest.approx(14.4)  # (14.3 + 14.5) / 2
    assert caveats(told, "amendment")[0]["says"].startswith("One reading was put right: cell D2 of day.xlsx says 21.7")
    kept = load_workbook(tmp_path / "stoves" / "day.xlsx").active
    assert kept is not None
    assert kept["D2"].value == 21.7
