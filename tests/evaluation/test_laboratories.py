"""Kind laboratory through a compiled campaign: limits that stay limits, U/k, the page each value stands on.

Outside: JCGM 100:2008 (4.3.3 an expanded uncertainty divided by its k; 4.3.7 and F.2.3.3 a value known to lie between two
bounds is uniform, its standard uncertainty half the width over √3; worked there: 0.5·width/√3).
"""

from __future__ import annotations

import re
from math import sqrt
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign, refusal, result_of, results_of
from tests.lab_reports import report

REPORT = "attachments/lab-report.pdf"
HEAD = """\
title: Which stove leaves least lead in the water?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II, tamsin: Tamsin 3}
laboratory:
  name: Lachter Analytics
  report: attachments/lab-report.pdf
  number: LA-2291
  date: 2026-05-20
  accredited: ISO/IEC 17025, metals in water
measure:
  lead:
    kind: laboratory
    unit: mg/kg
    better: lower
    laboratory: {detection limit: 0.5 mg/kg, report limit: 2 mg/kg, uncertainty: 10 %, k: 2}
readings: readings.csv
"""
ROWS = "contender,lead,page,sample\ncorvane,not found,2,S-1\nostler,3.1,2,S-2\ntamsin,found,3,S-3\n"
PDF = report("Cover", "Lead, samples 1 and 2", "Lead, sample 3")


def told_of(place: Path, yaml: str = HEAD, rows: str = ROWS, pdf: bytes = PDF) -> dict[str, Any]:
    return results_of(place, yaml, **{"readings": rows, REPORT: pdf})


def compiled(place: Path, yaml: str = HEAD, rows: str = ROWS, pdf: bytes = PDF) -> dict[str, Any]:
    return compile_campaign(place, yaml, **{"readings": rows, REPORT: pdf})


def refused(place: Path, yaml: str = HEAD, rows: str = ROWS, **files: str | bytes) -> Any:
    (finding,) = refusal(place, yaml, **{"readings": rows, **files})
    return finding


def without(yaml: str, *keys: str) -> str:
    for key in keys:
        yaml = re.sub(rf"{key}: [^,}}]+,? ?", "", yaml)
    return yaml


def test_not_found_is_a_bound_at_the_detection_limit_and_never_half_of_it(tmp_path: Path) -> None:
    corvane = result_of(told_of(tmp_path), "lead", "corvane")
    assert (corvane["value"], corvane["limit"], corvane["u"], corvane["high"]) == (0.5, "below", None, 0.5)
    assert corvane["printed"] == "less than 0.5 mg/kg"
    assert "not-found/lead/lead" in corvane["caveats"]


def test_an_expanded_uncertainty_is_divided_by_its_k(tmp_path: Path) -> None:
    """JCGM 100, 4.3.3: u = U/k; 10 % of 3.1 with k = 2 is 0.155, and normal: 1.96 of it either way."""
    ostler = result_of(told_of(tmp_path), "lead", "ostler")
    assert ostler["u"] == pytest.approx(0.10 * 3.1 / 2)
    assert ostler["high"] - ostler["value"] == pytest.approx(1.959964 * 0.155, rel=1e-5)
    (line,) = ostler["budget"]
    assert (line["sort"], line["of"], line["shared"]) == ("laboratory", "Lachter Analytics", False)


def test_an_uncertainty_in_a_unit_of_its_own_is_converted(tmp_path: Path) -> None:
    """400 µg/kg is 0.4 mg/kg (SI prefixes); k = 1 leaves it as it is."""
    told = told_of(tmp_path, HEAD.replace("uncertainty: 10 %, k: 2", "uncertainty: 400 µg/kg, k: 1"))
    assert result_of(told, "lead", "ostler")["u"] == pytest.approx(0.4)


def test_found_without_a_number_is_the_interval_between_the_limits(tmp_path: Path) -> None:
    """JCGM 100, 4.3.7: uniform from 0.5 to 2, so 1.25 with 0.75/√3; no step and no stated uncertainty on top."""
    tamsin = result_of(told_of(tmp_path), "lead", "tamsin")
    assert tamsin["value"] == pytest.approx(1.25)
    assert tamsin["u"] == pytest.approx(0.75 / sqrt(3))
    assert [line["sort"] for line in tamsin["budget"]] == ["rough"]
    assert "found/lead/lead" in tamsin["caveats"]


def test_where_the_laboratory_states_no_uncertainty_the_page_says_so(tmp_path: Path) -> None:
    told = compiled(tmp_path, without(HEAD, "uncertainty", "k"))
    assert "no-uncertainty/lead/lead" in result_of(told, "lead", "ostler")["caveats"]
    assert "no-uncertainty/lead/lead" not in result_of(told, "lead", "corvane")["caveats"]
    assert not [f for f in told["findings"] if f["rule"] == "no-instrument"]
    text = page(tmp_path)
    assert "Lachter Analytics doesn’t state how uncertain its values of “lead” are" in text
    assert "Uncertainty it states not stated" in text


def test_the_record_names_the_laboratory_its_report_and_its_limits(tmp_path: Path) -> None:
    told = told_of(tmp_path)
    assert result_of(told, "lead", "corvane")["laboratory"] == {
        "name": "Lachter Analytics", "report": REPORT, "number": "LA-2291", "date": "2026-05-20",
        "accredited": "ISO/IEC 17025, metals in water", "page": None,
        "detection_limit": {"value": 0.5, "unit": "mg/kg"}, "report_limit": {"value": 2, "unit": "mg/kg"},
        "uncertainty": {"value": 10, "unit": "%"}, "coverage_factor": 2, "taken": {}, "diluted": {},
    }  # fmt: skip


def test_the_day_of_the_report_and_what_was_held_the_same_in_one_test_are_shown(tmp_path: Path) -> None:
    compiled(
        tmp_path, HEAD.replace("    better: lower\n", "    better: lower\n    held the same: [24 h of standing]\n")
    )
    assert "Date of the report 20 May 2026" in page(tmp_path).replace("\u00a0", " ")
    assert "24 h of standing" in page(tmp_path).replace("\u00a0", " ")


def test_pages_open_the_copied_report_where_values_stand(tmp_path: Path) -> None:
    compiled(tmp_path)
    for name, way in (("tests/lead", "../files"), ("method", "files")):
        html = raw(tmp_path, name)
        assert f'href="{way}/{REPORT}#page=2"' in html
        assert f'href="{way}/{REPORT}#page=3"' in html
    text = page(tmp_path)
    for said in ("Lachter Analytics", "LA-2291", "0.5 mg/kg", "2 mg/kg", "10 %, coverage factor 2", "Sample: S-2"):
        assert said in text.replace("\u00a0", " ")
    assert "The laboratory answers for the sample it got." in text
    (copied,) = (tmp_path / "stoves" / ".site").glob(f"*/files/{REPORT}")
    assert copied.read_bytes() == PDF


def test_one_page_for_all_rows_need_not_be_typed_twice(tmp_path: Path) -> None:
    yaml = HEAD.replace("  number:", "  page: 2\n  number:")
    compiled(tmp_path, yaml, "contender,lead\ncorvane,not found\nostler,3.1\ntamsin,2.5\n")
    assert f"{REPORT}#page=2" in raw(tmp_path, "tests/lead")


def test_a_picture_or_a_text_of_one_page_needs_no_page(tmp_path: Path) -> None:
    yaml = HEAD.replace("lab-report.pdf", "lab-report.txt")
    told = results_of(
        tmp_path,
        yaml,
        **{"readings": "contender,lead\nostler,3.1\n", "attachments/lab-report.txt": "Lead: 3.1 mg/kg\n"},
    )
    assert result_of(told, "lead", "ostler")["value"] == 3.1


@pytest.mark.parametrize(
    ("rows", "rule", "line", "says"),
    [
        (
            "contender,lead,page\nostler,3.1,9\n",
            "page-not-there",
            2,
            "page 9 of attachments/lab-report.pdf, which has 3",
        ),
        ("contender,lead\nostler,3.1\n", "page-missing", 2, "doesn't say on which page"),
        ("contender,lead,page\nostler,3.1,two\n", "not-a-page", 2, "“two” is no page"),
        ("contender,lead,page\nostler,0.3,2\n", "below-the-limit", 2, "below 0.5 mg/kg"),
        ("contender,lead,page\nostler,1.4,2\n", "below-the-limit", 2, "states no numbers"),
        ("contender,lead,page\nostler,n.d.,2\n", "not-a-number", 2, "“n.d.”"),
    ],
)
def test_a_row_that_doesnt_fit_the_report_is_refused_at_its_place(
    tmp_path: Path, rows: str, rule: str, line: int, says: str
) -> None:
    finding = refused(tmp_path, rows=rows, **{REPORT: PDF})
    assert (finding.rule, finding.place.file, finding.place.line) == (rule, "readings.csv", line)
    assert says in finding.says


def test_a_number_below_a_limit_in_another_unit_is_refused_too(tmp_path: Path) -> None:
    yaml = HEAD.replace("detection limit: 0.5 mg/kg", "detection limit: 500 µg/kg")
    finding = refused(tmp_path, yaml, "contender,lead,page\nostler,0.3,2\n", **{REPORT: PDF})
    assert (finding.rule, finding.place.line) == ("below-the-limit", 2)


@pytest.mark.parametrize(
    ("cell", "keys"), [("found", ("report limit",)), ("not found", ("detection limit", "report limit"))]
)
def test_found_means_nothing_without_the_limits(tmp_path: Path, cell: str, keys: tuple[str, ...]) -> None:
    finding = refused(tmp_path, without(HEAD, *keys), f"contender,lead,page\nostler,{cell},2\n", **{REPORT: PDF})
    assert (finding.rule, finding.place.line) == ("limit-not-declared", 2)
    assert keys[0] in finding.do


@pytest.mark.parametrize(
    ("files", "rule", "says"),
    [
        ({}, "missing-attachment", "there is no file"),
        ({REPORT: b"Dear customer, your report is ready."}, "attachment", "is no PDF"),
        ({REPORT: PDF[: len(PDF) // 3]}, "attachment", "can't be opened as a PDF"),
        ({REPORT: report("Lead", password="quillon")}, "attachment", "locked with a password"),
    ],
)
def test_a_report_that_isnt_there_or_doesnt_open_is_told_where_it_is_named(
    tmp_path: Path, files: dict[str, bytes], rule: str, says: str
) -> None:
    finding = refused(tmp_path, **{**files, "attachments/other.pdf": PDF})
    assert (finding.rule, finding.place.file, finding.place.line) == (rule, "campaign.yaml", 5)
    assert says in finding.says
    if rule == "missing-attachment":
        assert "attachments/other.pdf" in finding.why


def test_a_picture_that_is_none_is_told(tmp_path: Path) -> None:
    yaml = HEAD.replace("lab-report.pdf", "lab-report.png")
    finding = refused(tmp_path, yaml, **{"attachments/lab-report.png": b"not a picture"})
    assert (finding.rule, finding.place.line) == ("attachment", 5)


@pytest.mark.parametrize(
    ("old", "new", "rule"),
    [
        (", k: 2", "", "uncertainty-without-k"),
        (", k: 2", ", k: 0", "uncertainty-without-k"),
        ("uncertainty: 10 %, ", "", "uncertainty-without-k"),
        ("detection limit: 0.5", "detection limit: 5", "limits-upside-down"),
        ("detection limit: 0.5 mg/kg", "detection limit: 5000 µg/kg", "limits-upside-down"),
        ("detection limit: 0.5 mg/kg", "detection limit: 0.5 mm", "unit"),
        ("uncertainty: 10 %", "uncertainty: 3 s", "unit"),
        ("  name: Lachter Analytics\n", "", "laboratory-missing"),
        ("  report: attachments/lab-report.pdf\n", "", "laboratory-missing"),
        ("attachments/lab-report.pdf", "lab-report.pdf", "report-elsewhere"),
        ("kind: laboratory", "kind: one reading", "laboratory-unused"),
        ("k: 2", "kay: 2", "unknown-key"),
    ],
)
def test_a_laboratory_that_doesnt_hold_together_is_refused(tmp_path: Path, old: str, new: str, rule: str) -> None:
    yaml = HEAD.replace(old, new)
    assert yaml != HEAD
    rows = "contender,lead,page\nostler,31,2\n"
    findings = refusal(tmp_path, yaml, **{"readings": rows, REPORT: PDF, "lab-report.pdf": PDF})
    assert rule in {f.rule for f in findings}
    assert all(f.place.file == "campaign.yaml" and f.place.line for f in findings if f.rule == rule)


def raw(place: Path, name: str) -> str:
    (path,) = (place / "stoves" / ".site").glob(f"*/{name}.html")
    return path.read_text(encoding="utf-8")


def page(place: Path, name: str = "tests/lead") -> str:
    """The text of a page, without its drawing."""
    html = re.sub(r"<svg.*?</svg>", " ", raw(place, name), flags=re.S)
    return re.sub(r"[ \n]+", " ", re.sub(r"<[^>]+>", " ", html))


def test_a_value_without_any_laboratory_is_refused_once_there_is_one(tmp_path: Path) -> None:
    yaml = "title: Lead\ncontenders: {corvane: C, ostler: O}\nmeasure: {lead: 'laboratory, mg/kg'}\nreadings: readings.csv\n"
    finding = refused(tmp_path / "typed", yaml, "contender,lead\nostler,3.1\n")
    assert (finding.rule, finding.place.file, finding.place.line) == ("laboratory-missing", "campaign.yaml", 3)
    told = results_of(tmp_path / "to come", yaml, readings="contender,lead\n")
    assert {r["missing"] for r in told["results"]} == {"not yet tested"}
