"""What is known as two limits stands as two limits, what ran once is said once, and pairs run along the longer side.

A value known to lie between two limits has no point in it that is likelier than another (JCGM 100:2008, 4.3.7), so none
is printed.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from tests.campaigns import compile_campaign, result_of
from tests.lab_reports import report
from tests.pages.reading import Element, read

LAB = """\
title: T
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II, tamsin: Tamsin Lee}
measure:
  lead:
    kind: laboratory
    unit: mg/kg
    better: lower
    laboratory:
      name: Lachter
      report: attachments/lab-report.pdf
      detection limit: 0.5 mg/kg
      report limit: 2 mg/kg
      uncertainty: 10 %
      k: 2
  weight: one reading, g, lower
  length: one reading, mm, lower
  width: one reading, mm, lower
readings: readings.csv
"""
ROWS = (
    "contender,lead,page,weight,length,width\ncorvane,2.4,1,50,80,20\nostler,3.1,1,60,90,30\ntamsin,found,1,70,95,40\n"
)


def compiled(place: Path) -> dict[str, Any]:
    files: dict[str, str | bytes] = {"readings": ROWS, "attachments/lab-report.pdf": report("Lead")}
    return compile_campaign(place, LAB, **files)


def page(place: Path, address: str) -> Element:
    return read((place / "stoves" / ".site" / "stoves" / f"{address}.html").read_text(encoding="utf-8"))


def test_found_without_a_number_is_printed_as_the_two_limits_it_lies_between(tmp_path: Path) -> None:
    told = compiled(tmp_path)
    assert result_of(told, "lead", "tamsin")["printed"] == "0.5 to 2 mg/kg"
    rows = {
        row.one("th").text.split()[-1]: (row.one("td", class_="value").text, row.one("td", class_="interval").text)
        for row in page(tmp_path, "tests/lead").one("table", class_="results").one("tbody").all("tr")
    }
    assert rows["Lee"][0].startswith("0.5 to 2")
    assert rows["Lee"][1] == "–"
    assert rows["Sol"][0].startswith("2.4")
    text = page(tmp_path, "tests/lead").text.replace("\u00a0", " ")
    assert "One sample each: " in text
    assert "Tamsin Lee 0.5 to 2 mg/kg" in text
    assert "of what the laboratory states alone" in text


def test_that_a_repeat_is_not_known_is_said_once_on_a_sheet(tmp_path: Path) -> None:
    compiled(tmp_path)
    sheet = page(tmp_path, "contenders/corvane").text
    assert sheet.count("whether a repeat would") == 1
    assert "isn’t known: lead, weight, length and width." in sheet


def test_pairs_stand_across_where_there_are_fewer_of_them_than_of_tests(tmp_path: Path) -> None:
    """Three contenders make three pairs, of four tests."""
    compiled(tmp_path)
    table = page(tmp_path, "index").one("details", class_="matrix").one("table")
    assert [tr.one("th").text for tr in table.one("tbody").all("tr")] == ["Lead", "Weight", "Length", "Width"]
    assert len(table.one("thead").all("th")) == 1 + 3
    assert all(len(tr.all("td")) == 3 for tr in table.one("tbody").all("tr"))
