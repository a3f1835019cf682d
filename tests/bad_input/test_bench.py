"""Files and words that a bench brings and that can't be taken as they stand: each is ONE message with place and remedy.

What belongs to the same list and is held elsewhere, likewise through a compiled campaign:

- a relative reading in a circle: `test_one_mistake.py`, "differences that go round"; an order in a circle: `test_orders_seen.py`
- an image that is none, a film moment beyond its length: `test_pictures_and_moments.py`
- an amendment whose old value doesn't match the file: `test_accidents.py`
- an attachment page that isn't there, an attachment that is none: `tests/evaluation/test_laboratories.py`
- parts missing for one contender: `tests/products/test_parts.py` (no total, and a finding)
- hidden rows: read, and said in a finding: below
"""

from __future__ import annotations

import io
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign, refusal

HEAD = "title: T\nwho pays: us\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"
GAS = HEAD + "measure: {gas: 'one reading, g, lower'}\nreadings: FILE\n"
HEAT = HEAD + "measure: {heat: 'one reading, °C, lower'}\nreadings: day.csv\n"
LAMP = HEAD + "tests: [lamp]\n"
TEST = """\
title: Lamp
readings: {logger: "{contender}.csv", time: "Elapsed, s", columns: {light: "Ch1, lx"}}
quantities: {lamp: {kind: logged, formula: highest(light), unit: lx, better: higher}}
"""
STEADY = "Elapsed,Ch1\n" + "".join(f"{n},{100 - n}\n" for n in range(20))
ROWS = [
    ("contender", "pass", "gas"),
    ("corvane", 1, 14.3),
    ("ostler", 1, 16.3),
    ("corvane", 2, 14.5),
    ("ostler", 2, 16.7),
]


def book(change: Callable[[Any], None] = lambda sheet: None) -> bytes:
    """A spreadsheet by openpyxl, with something done to it."""
    from openpyxl import Workbook

    made = Workbook()
    sheet = made.active
    assert sheet is not None
    for cells in ROWS:
        sheet.append(cells)
    change(sheet)
    out = io.BytesIO()
    made.save(out)
    return out.getvalue()


def parquet() -> bytes:
    import pyarrow
    from pyarrow import parquet as files

    names, *rows = ROWS
    out = io.BytesIO()
    files.write_table(pyarrow.table({str(n): [r[i] for r in rows] for i, n in enumerate(names)}), out)
    return out.getvalue()


def error_value(sheet: Any) -> None:
    sheet["C3"] = "#DIV/0!"


def merged(sheet: Any) -> None:
    sheet.merge_cells("C2:C3")


def locked() -> bytes:
    """A workbook under a password is a compound file that holds an encrypted package ([MS-OFFCRYPTO], 2.3.2)."""
    entry = "EncryptedPackage".encode("utf-16-le")
    return b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(504) + entry + bytes(512 - len(entry))


def lamp(text: str | bytes) -> dict[str, str | bytes]:
    return {"tests/lamp.yaml": TEST, "corvane.csv": STEADY, "ostler.csv": text}


def table(name: str, data: str | bytes) -> tuple[str, dict[str, str | bytes]]:
    return GAS.replace("FILE", name), {name: data}


@dataclass(frozen=True)
class Case:
    """A campaign with one thing wrong; `at` is where that is said, `says` and `do` are pieces of the message."""

    made: tuple[str, dict[str, str | bytes]]
    rule: str
    at: str
    says: str
    do: str


CSV = "".join(",".join(str(c) for c in cells) + "\n" for cells in ROWS)
CASES = {
    "a spreadsheet with an error value": Case(table("day.xlsx", book(error_value)), "error-value", "day.xlsx, sheet Sheet, cell C3", "#DIV/0!", "Mend the formula"),
    "a spreadsheet with merged cells": Case(table("day.xlsx", book(merged)), "merged-cells", "day.xlsx, sheet Sheet, cell C2", "C2:C3", "Split the cell"),
    "a spreadsheet with a password": Case(table("day.xlsx", locked()), "password", "day.xlsx", "password", "without"),
    "a Parquet file cut short": Case(table("day.parquet", parquet()[:-20]), "cut-short", "day.parquet", "Parquet", "again"),
    "two encodings in one file": Case(table("day.csv", (CSV.replace("\n", ",in Köln\n").replace("gas,in Köln", "gas,note")).encode() + "ostler,3,16.5,Köln\n".encode("cp1252")), "two-encodings", "day.csv:6", "begins in UTF-8 (line 2)", "save each as"),
    "a logger whose time runs backwards": Case((LAMP, lamp(STEADY.replace("\n7,", "\n3.5,").replace("\n12,", "\n3.2,"))), "time-backwards", "ostler.csv:9", "backwards", "a file of its own"),
    "a logger with one stamp twice": Case((LAMP, lamp(STEADY.replace("\n7,", "\n6,"))), "time-twice", "ostler.csv:9", "same time", ""),
    "text in a channel": Case((LAMP, lamp(STEADY.replace("\n7,93", "\n7,broken"))), "text-in-a-channel", "ostler.csv:9", "broken", ""),
    "some of what has no nothing": Case((HEAT, {"day.csv": "contender,heat\ncorvane,some\nostler,70\n"}), "some-of-nothing", "day.csv:2:2", "°C", "over"),
    "some where an answer must be": Case((HEAD + "measure: {lit first time: yes/no}\nreadings: day.csv\n", {"day.csv": "contender,lit first time\ncorvane,some\nostler,yes\n"}), "not-yes-or-no", "day.csv:2:2", "some", "none (reason)"),
}  # fmt: skip


@pytest.mark.parametrize("name", CASES)
def test_it_is_one_message_with_its_place_and_what_to_do(name: str, tmp_path: Path) -> None:
    case = CASES[name]
    yaml, files = case.made
    (found,) = [f for f in refusal(tmp_path, yaml, **files) if f.severity == "error"]
    assert (found.rule, str(found.place)) == (case.rule, case.at), found
    assert case.says in found.says
    assert found.do
    assert case.do in found.do


@pytest.mark.parametrize("hide", ["row", "column"])
def test_hidden_rows_and_columns_are_read_and_that_is_said(hide: str, tmp_path: Path) -> None:
    def hidden(sheet: Any) -> None:
        dimension = sheet.row_dimensions[3] if hide == "row" else sheet.column_dimensions["C"]
        dimension.hidden = True

    yaml, files = table("day.xlsx", book(hidden))
    told = compile_campaign(tmp_path, yaml, **files)
    assert [r["passes"] for r in told["results"]] == [2, 2]
    (found,) = [f for f in told["findings"] if "hidden" in f["rule"]]
    assert found["file"] == "day.xlsx"
    assert "hidden" in found["says"].lower()
    assert found["do"]
