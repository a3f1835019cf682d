"""Spreadsheets read back to what other libraries wrote into them, each cell with its place.

Witnesses: openpyxl, odfpy and pandas write; formats after ECMA-376 and OpenDocument 1.3.
"""

from __future__ import annotations

import io
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from pathlib import Path

import pandas
import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from reportgen.intake.sheets.number_format import format_of, held, shown
from reportgen.intake.sheets.ods import read_ods
from reportgen.intake.sheets.xlsx import read_xlsx
from tests.campaigns import result_of, results_of
from tests.handbook.made import made
from tests.intake.books import (
    TWO_STOVES,
    ods,
    ods_number,
    ods_row,
    ods_sheets,
    ods_text,
    of,
    read,
    saved,
    the_error,
    told,
    with_part,
    xlsx,
)


@pytest.mark.parametrize("file", ["raw/day.xlsx", "raw/day.ods"])
def test_a_table_gives_its_readings_each_with_sheet_and_cell(file: str, tmp_path: Path) -> None:
    text = "[Bench]\ncontender,pass,boil time,note\ncorvane,1,212.4,windy\nostler,1,over 999,\n"
    readings = read(tmp_path, made(file, text), file)
    corvane, ostler = (of(readings)[c] for c in ("corvane", "ostler"))
    assert (str(corvane.at), corvane.value, corvane.note) == (
        f"{file}, sheet Bench, cell C2",
        Decimal("212.4"),
        "windy",
    )
    assert (str(ostler.at), ostler.value, ostler.limit) == (f"{file}, sheet Bench, cell C3", Decimal(999), "above")
    (raw,) = readings.files
    assert (raw.form, raw.sheets, raw.size) == ("spreadsheet", ("Bench",), (tmp_path / file).stat().st_size)
    assert raw.headings == ("contender", "pass", "boil time", "note")


@pytest.mark.parametrize("engine", ["openpyxl", "odf"])
def test_what_pandas_writes_comes_back(engine: str, tmp_path: Path) -> None:
    frame = pandas.DataFrame({"contender": ["corvane", "ostler"], "pass": [1, 1], "boil time": [0.1 + 0.2, 230.0]})
    out = io.BytesIO()
    frame.to_excel(out, index=False, engine=engine, sheet_name="Bench")
    file = "day.xlsx" if engine == "openpyxl" else "day.ods"
    found = of(read(tmp_path, out.getvalue(), file))
    assert {c: (r.value, r.at.line, r.at.column) for c, r in found.items()} == {
        "corvane": (Decimal("0.3"), 2, 3),
        "ostler": (Decimal(230), 3, 3),
    }


def test_every_number_openpyxl_writes_is_read_back_to_fifteen_digits(tmp_path: Path) -> None:
    @given(st.lists(st.floats(-1e12, 1e12), min_size=1, max_size=5))
    def check(numbers: list[float]) -> None:
        sheet = read_xlsx(xlsx([("x",), *((n,) for n in numbers)]), "a.xlsx")
        for row, number in zip(sheet.rows[1:], numbers, strict=True):
            assert float(row.cells[1].text) == pytest.approx(number, rel=1e-14, abs=0)

    check()


def test_a_number_has_the_decimals_of_its_format_and_none_without_one(tmp_path: Path) -> None:
    """JUDGING section 3: spreadsheet cells have no written decimals unless the cell's number format gives one."""

    def formats(sheet: Worksheet) -> None:
        sheet["B2"].number_format = "0.00"

    found = of(read(tmp_path, xlsx(change=formats)))
    assert (found["corvane"].text, found["corvane"].decimals) == ("212.40", 2)
    assert (found["ostler"].text, found["ostler"].decimals) == ("230.1", None)


@pytest.mark.parametrize(
    ("code", "value", "text"),
    [
        ("General", 212.4, "212.4"),
        ("0", 5, "5"),
        ("0.0", 212.4, "212.4"),
        ("#,##0.00", 1234.5, "1234.50"),
        ("0.0##", 1.5, "1.5"),
        ("0.00;[Red]-0.00", -1.5, "-1.50"),
        ("0.0_);(0.0)", -1.5, "-1.5"),
        ("0.0 %", 0.125, "12.5 %"),
        ("0%", 0.12, "12 %"),
        ('0.0" kg"', 1.5, "1.5 kg"),
        ("0.0\\ \\g", 1.5, "1.5 g"),
        ("[$€-407] 0.00", 1.5, "€ 1.50"),
    ],
)
def test_number_formats_show_what_ecma_376_says(code: str, value: float, text: str) -> None:
    """ECMA-376, part 1, 18.8.31; the thousands separator, which is never read, is left out."""
    number = held(value)
    assert shown(number, format_of(code, number)) == (text, text)


@pytest.mark.parametrize("code", ["General", "0.00E+00", "# ?/?", "@", "0.0,", "yyyy-mm-dd"])
def test_formats_without_fixed_decimals_give_none(code: str) -> None:
    assert format_of(code, Decimal(5)).most is None


def test_a_cell_that_shows_less_than_it_holds_is_read_whole_and_told(tmp_path: Path) -> None:
    def rounds(sheet: Worksheet) -> None:
        sheet["B2"].number_format = "0"

    readings = read(tmp_path, xlsx(change=rounds))
    corvane = of(readings)["corvane"]
    assert (corvane.value, corvane.decimals) == (Decimal("212.4"), None)
    (finding,) = readings.findings
    assert (finding.severity, finding.rule, str(finding.place)) == (
        "warning",
        "digits-hidden",
        "day.xlsx, sheet Bench, cell B2",
    )
    assert "shows 212 and holds 212.4" in finding.says


def test_a_sum_of_binary_numbers_hides_nothing(tmp_path: Path) -> None:
    """231.4 − 217.1 is 14.300000000000011 in binary64: fifteen digits are sure (IEEE 754)."""

    def formats(sheet: Worksheet) -> None:
        sheet["B2"].number_format = "0.0"

    readings = read(tmp_path, xlsx((TWO_STOVES[0], ("corvane", 231.4 - 217.1), TWO_STOVES[2]), formats))
    assert of(readings)["corvane"].text == "14.3"
    assert readings.findings == ()


def test_percentages_are_read_as_shown(tmp_path: Path) -> None:
    def formats(sheet: Worksheet) -> None:
        sheet["B2"].number_format = sheet["B3"].number_format = "0.0 %"

    rows = (TWO_STOVES[0], ("corvane", 0.125), ("ostler", 0.5))
    found = of(read(tmp_path, xlsx(rows, formats), unit="%", kind="one reading"))
    assert {c: (r.value, r.unit, r.decimals) for c, r in found.items()} == {
        "corvane": (Decimal("12.5"), "%", 1),
        "ostler": (Decimal("50.0"), "%", 1),
    }


def test_dates_and_times_beside_a_reading_are_iso_text(tmp_path: Path) -> None:
    rows = (
        ("contender", "time", "note", "boil time"),
        ("corvane", time(10, 5), date(2026, 5, 2), 212.4),
        ("ostler", time(10, 7, 30), datetime(2026, 5, 2, 10, 5), 230.1),
    )
    found = of(read(tmp_path, xlsx(rows)))
    assert (found["corvane"].time, found["corvane"].note) == ("10:05", "2026-05-02")
    assert (found["ostler"].time, found["ostler"].note) == ("10:07:30", "2026-05-02 10:05")


@pytest.mark.parametrize(
    ("typed", "code", "seconds"),
    [
        (time(0, 4, 20), "h:mm:ss", "260"),
        (time(0, 4, 20, 500_000), "mm:ss.0", "260.5"),
        (time(0, 5), "mm:ss", "300"),
        (timedelta(minutes=90), "[mm]:ss", "5400"),
        (timedelta(hours=25, seconds=10), "[h]:mm:ss", "90010"),
    ],
)
def test_a_stretch_of_time_that_can_only_be_one_is_read(typed: object, code: str, seconds: str, tmp_path: Path) -> None:
    def formats(sheet: Worksheet) -> None:
        sheet["B2"].number_format = code

    found = of(read(tmp_path, xlsx((TWO_STOVES[0], ("corvane", typed), TWO_STOVES[2]), formats)))
    assert (found["corvane"].value, found["corvane"].unit) == (Decimal(seconds), "s")


def test_truth_values_are_yes_and_no(tmp_path: Path) -> None:
    rows = (TWO_STOVES[0], ("corvane", True), ("ostler", False))
    found = of(read(tmp_path, xlsx(rows), unit="", kind="yes/no"))
    assert {c: r.word for c, r in found.items()} == {"corvane": "yes", "ostler": "no"}


def test_a_formula_is_read_as_the_value_saved_with_it(tmp_path: Path) -> None:
    """ECMA-376, part 1, 18.3.1.40 (f) and 18.3.1.96 (v): the value is what it gave when the file was saved."""
    data = xlsx((TWO_STOVES[0], ("corvane", "=2*106.2"), TWO_STOVES[2]))
    worked_out = with_part(
        data,
        "xl/worksheets/sheet1.xml",
        lambda xml: xml.replace("<v></v>", "<v>212.4</v>").replace("<v />", "<v>212.4</v>"),
    )
    assert of(read(tmp_path, worked_out))["corvane"].value == Decimal("212.4")


def test_a_formula_that_gave_an_empty_text_is_an_empty_cell(tmp_path: Path) -> None:
    data = xlsx((("contender", "note", "boil time"), ("corvane", "=A1&B1", 212.4), ("ostler", "", 230.1)))
    empty = with_part(data, "xl/worksheets/sheet1.xml", lambda xml: xml.replace('<c r="B2">', '<c r="B2" t="str">'))
    assert of(read(tmp_path, empty))["corvane"].note == ""


def test_the_headings_are_found_below_a_title(tmp_path: Path) -> None:
    rows = (("Boil time of two stoves, second day",), (), *TWO_STOVES)
    readings = read(tmp_path, xlsx(rows))
    assert of(readings)["corvane"].at.cell == "cell B4"
    assert [(f.severity, f.rule, f.place.line) for f in readings.findings] == [("note", "above-headings", 1)]


def test_the_only_visible_sheet_with_cells_needs_no_name(tmp_path: Path) -> None:
    book = Workbook()
    for name, state in (("Empty", "visible"), ("Bench", "visible"), ("Old", "hidden")):
        sheet = book.create_sheet(name)
        sheet.sheet_state = state
        for row in TWO_STOVES if name != "Empty" else ():
            sheet.append(list(row))
    book.remove(book.worksheets[0])
    assert of(read(tmp_path, saved(book)))["corvane"].at.sheet == "Bench"


def test_two_sheets_of_one_file_are_one_raw_file_with_places_of_their_own(tmp_path: Path) -> None:
    from dataclasses import replace

    from tests.intake.table_bench import measure, source
    from tests.intake.table_bench import read as read_files

    data = made(
        "day.xlsx", "[Bench]\ncontender,mass\ncorvane,1\nostler,2\n[Sound]\ncontender,noise\ncorvane,3\nostler,4\n"
    )
    both = (replace(source("day.xlsx"), sheet="Bench"), replace(source("day.xlsx"), sheet="Sound"))
    tests = measure("mass", sources=both[:1]), measure("noise", "dB", sources=both[1:])
    readings = read_files(tmp_path, {"day.xlsx": data}, *tests)
    assert {r.at.sheet for r in readings.readings.values()} == {"Bench", "Sound"}
    (raw,) = readings.files
    assert (raw.sheets, raw.unread) == (("Bench", "Sound"), ())


def test_a_wide_sheet_and_a_bench_log_are_read_like_their_csv(tmp_path: Path) -> None:
    wide = "what,corvane,ostler\nboil time,212.4,230.1\n"
    log = "contender,what,value,unit\ncorvane,boil time,212.4,s\nostler,boil time,230.1,s\n"
    for text, cells in ((wide, ("B2", "C2")), (log, ("C2", "C3"))):
        found = of(read(tmp_path, made("a.xlsx", text), "a.xlsx"))
        assert tuple(found[c].at.cell.split()[1] for c in ("corvane", "ostler")) == cells


FIXED = (
    '<number:number-style style:name="N2"><number:number number:decimal-places="2"/></number:number-style>'
    '<style:style style:name="ce1" style:family="table-cell" style:data-style-name="N2"/>'
)


def test_ods_decimals_come_from_the_style_of_cell_row_or_column(tmp_path: Path) -> None:
    """OpenDocument 1.3, part 3, 19.619: a cell without a style has its row's, else its column's."""
    column = '<table:table-column/><table:table-column table:default-cell-style-name="ce1"/>'
    rows = ods_row(ods_text("contender"), ods_text("boil time")) + ods_row(ods_text("corvane"), ods_number("212.4"))
    rows += ods_row(ods_text("ostler"), ods_number("230.1", more='table:style-name="Default"'))
    found = of(read(tmp_path, ods(column + rows, FIXED), "day.ods"))
    assert (found["corvane"].text, found["corvane"].decimals) == ("212.40", 2)
    assert found["ostler"].decimals is None


def test_ods_cells_and_rows_that_repeat_are_counted(tmp_path: Path) -> None:
    rows = ods_row(ods_text("contender"), ods_text("note", 'table:number-columns-repeated="1"'), ods_text("boil time"))
    rows += ods_row('<table:table-cell table:number-columns-repeated="3"/>', more='table:number-rows-repeated="4"')
    rows += ods_row(ods_text("corvane"), "<table:table-cell/>", ods_number("212.4"))
    rows += ods_row(
        ods_text("ostler"), "<table:table-cell/>", ods_number("230.1"), more='table:number-rows-repeated="2"'
    )
    rows += ods_row(
        '<table:table-cell table:number-columns-repeated="16384"/>', more='table:number-rows-repeated="1048569"'
    )
    readings = read(tmp_path, ods(rows), "day.ods")
    assert [(r.key.contender, r.key.pass_, r.at.cell) for r in readings.of_test("boil-time")] == [
        ("corvane", "1", "cell C6"),
        ("ostler", "1", "cell C7"),
        ("ostler", "2", "cell C8"),
    ]


def test_ods_text_keeps_its_spaces_and_lines_and_leaves_comments_out() -> None:
    """OpenDocument 1.3, part 3, 6.1.3 (text:s) and 14.1 (annotations)."""
    cell = '<table:table-cell office:value-type="string"><office:annotation><text:p>no</text:p></office:annotation>'
    cell += '<text:p>a<text:s text:c="2"/>b</text:p><text:p><text:span>c</text:span></text:p></table:table-cell>'
    assert read_ods(ods(ods_row(cell)), "a.ods").rows[0].cells[1].text == "a  b\nc"


def test_ods_times_percentages_dates_and_truth_values() -> None:
    cells = (
        '<table:table-cell office:value-type="time" office:time-value="PT00H04M20S"><text:p>00:04:20</text:p></table:table-cell>',
        '<table:table-cell office:value-type="time" office:time-value="PT04H20M00S"><text:p>04:20</text:p></table:table-cell>',
        ods_number("0.125", "12,5 %", kind="percentage"),
        '<table:table-cell office:value-type="date" office:date-value="2026-05-02"><text:p>02.05.26</text:p></table:table-cell>',
        '<table:table-cell office:value-type="boolean" office:boolean-value="true"><text:p>WAHR</text:p></table:table-cell>',
    )
    found = read_ods(ods(ods_row(*cells)), "a.ods").rows[0].cells
    assert [(c.text, c.sort) for c in found.values()] == [
        ("0:04:20", "text"),
        ("04:20", "time of day"),
        ("12.5 %", "free number"),
        ("2026-05-02", "date"),
        ("yes", "truth value"),
    ]


def test_a_million_empty_rows_cost_nothing(tmp_path: Path) -> None:
    def far(sheet: Worksheet) -> None:
        sheet["D1048576"] = "end"
        sheet["D1048576"] = None

    assert len(read(tmp_path, xlsx(change=far)).readings) == 2


def test_a_hidden_sheet_in_ods_is_passed_over(tmp_path: Path) -> None:
    style = '<style:style style:name="ta1" style:family="table"><style:table-properties table:display="false"/></style:style>'
    row = ods_row(ods_text("contender"), ods_text("boil time")) + ods_row(ods_text("corvane"), ods_number("1"))
    old = f'<table:table table:name="Old" table:style-name="ta1">{row}</table:table>'
    new = f'<table:table table:name="Bench">{row}{ods_row(ods_text("ostler"), ods_number("2"))}</table:table>'
    assert of(read(tmp_path, ods_sheets(old + new, style), "day.ods"))["ostler"].at.sheet == "Bench"


def test_a_sheet_is_found_by_a_name_that_differs_in_case_alone(tmp_path: Path) -> None:
    assert of(read(tmp_path, xlsx(), sheet="bench"))["corvane"].at.sheet == "Bench"
    assert the_error(tmp_path, xlsx(), sheet="Bunch") == ("unknown-sheet", "day.xlsx")
    assert "“Bench”" in told(tmp_path, xlsx(), sheet="Bunch")[0].do


def test_one_line_names_a_file_and_its_sheet(tmp_path: Path) -> None:
    yaml = "title: T\ncontenders: {corvane: C, ostler: O}\nmeasure:\n  boil time: timed, s, lower\nreadings: "
    text = "[Bench]\ncontender,boil time\ncorvane,1.5\nostler,2.5\n[Sound]\ncontender,noise\ncorvane,3\n"
    sources = ("raw/day.xlsx, sheet Bench\n", "\n  file: raw/day.xlsx\n  sheet: Bench\n")
    for n, written in enumerate(sources):
        told_of = results_of(tmp_path / str(n), yaml + written, **{"raw/day.xlsx": made("day.xlsx", text)})
        assert result_of(told_of, "boil-time", "ostler")["trace"] == [
            {"file": "raw/day.xlsx", "sheet": "Bench", "lines": [3], "cells": [[3, 2]]}
        ]
