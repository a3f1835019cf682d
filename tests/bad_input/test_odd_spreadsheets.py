"""Spreadsheets that can't be read, or not truthfully: one message each, with place and remedy."""

from __future__ import annotations

import io
import tracemalloc
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from reportgen.finding import Refused
from reportgen.intake.sheets import package
from tests.campaigns import refusal
from tests.intake.books import (
    TWO_STOVES,
    ods,
    ods_number,
    ods_row,
    ods_text,
    of,
    read,
    saved,
    the_error,
    told,
    with_part,
    xlsx,
)

YAML = """\
title: T
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
measure:
  boil time: timed, s, lower
readings: raw/day.xlsx
"""
SHEET = "xl/worksheets/sheet1.xml"
HEADINGS = ods_row(ods_text("contender"), ods_text("boil time"))


def test_one_message_with_place_and_remedy_through_a_compiled_campaign(tmp_path: Path) -> None:
    def breaks(sheet: Worksheet) -> None:
        sheet["B2"] = "#DIV/0!"

    (found,) = refusal(tmp_path, YAML, **{"raw/day.xlsx": xlsx(change=breaks)})
    assert (found.rule, str(found.place)) == ("error-value", "raw/day.xlsx, sheet Bench, cell B2")
    assert found.why
    assert found.do


@pytest.mark.parametrize("value", ["#DIV/0!", "#N/A", "#REF!", "#VALUE!", "#NUM!", "#NAME?", "#NULL!"])
def test_an_error_value_is_refused_with_its_cell(value: str, tmp_path: Path) -> None:
    """ECMA-376, part 1, 18.17.3: the error values."""
    found = told(tmp_path, xlsx((TWO_STOVES[0], ("corvane", value), TWO_STOVES[2])))
    assert [(f.rule, f.place.cell) for f in found] == [("error-value", "cell B2")]
    assert value in found[0].says


@pytest.mark.parametrize(
    "cell",
    [
        '<table:table-cell table:formula="of:=1/0" office:value-type="string" office:string-value=""'
        ' calcext:value-type="error"><text:p>#DIV/0!</text:p></table:table-cell>',
        '<table:table-cell table:formula="of:=x" office:value-type="float" office:value="0">'
        "<text:p>Err:502</text:p></table:table-cell>",
    ],
)
def test_an_error_value_of_ods_is_refused_with_its_cell(cell: str, tmp_path: Path) -> None:
    rows = HEADINGS + ods_row(ods_text("corvane"), cell)
    assert the_error(tmp_path, ods(rows), "day.ods") == ("error-value", "day.ods, sheet Bench, cell B2")


def test_an_error_value_that_nothing_asks_for_keeps_nobody_from_reading(tmp_path: Path) -> None:
    rows = (("contender", "boil time", "ratio"), ("corvane", 212.4, "#DIV/0!"), ("ostler", 230.1, 1))
    assert len(read(tmp_path, xlsx(rows)).readings) == 2


def test_a_formula_whose_value_was_not_saved_is_refused(tmp_path: Path) -> None:
    data = xlsx((TWO_STOVES[0], ("corvane", "=2*106.2"), TWO_STOVES[2]))
    assert the_error(tmp_path, data) == ("not-worked-out", "day.xlsx, sheet Bench, cell B2")
    rows = HEADINGS + ods_row(ods_text("corvane"), '<table:table-cell table:formula="of:=1+1"/>')
    assert the_error(tmp_path, ods(rows), "day.ods") == ("not-worked-out", "day.ods, sheet Bench, cell B2")


def test_merged_cells_in_the_table_are_refused_and_a_merged_title_is_not(tmp_path: Path) -> None:
    rows = (("The second day",), (), *TWO_STOVES, ("ostler", 226.4))

    def title(sheet: Worksheet) -> None:
        sheet.merge_cells("A1:B1")

    def names(sheet: Worksheet) -> None:
        sheet.merge_cells("A5:A6")

    def headings(sheet: Worksheet) -> None:
        sheet.merge_cells("B3:C3")

    assert len(read(tmp_path, xlsx(rows, title)).readings) == 3
    found = told(tmp_path, xlsx(rows, names))
    assert ("merged-cells", "cell A5") in [(f.rule, f.place.cell) for f in found]
    assert any("A5:A6" in f.says for f in found)
    assert the_error(tmp_path, xlsx(rows, headings)) == ("merged-cells", "day.xlsx, sheet Bench, cell B3")


def test_merged_cells_of_ods_are_refused(tmp_path: Path) -> None:
    rows = HEADINGS + ods_row(ods_text("corvane", 'table:number-rows-spanned="2"'), ods_number("1"))
    rows += ods_row("<table:covered-table-cell/>", ods_number("2"))
    found = told(tmp_path, ods(rows), "day.ods")
    assert found[0].rule == "merged-cells"
    assert "A2:A3" in found[0].says


def test_hidden_rows_and_columns_are_read_and_that_is_said(tmp_path: Path) -> None:
    def hides(sheet: Worksheet) -> None:
        sheet.row_dimensions[3].hidden = True
        sheet.column_dimensions["B"].hidden = True

    readings = read(tmp_path, xlsx(change=hides))
    assert len(readings.readings) == 2
    assert [(f.severity, f.rule) for f in readings.findings] == [("warning", "hidden-cells")] * 2
    says = " ".join(f.says for f in readings.findings)
    assert "Row 3 is hidden" in says
    assert "Column B (boil time) is hidden" in says
    assert says.count("is read like the rest") == 2


@pytest.mark.parametrize("how", ['table:visibility="collapse"', 'table:visibility="filter"'])
def test_hidden_rows_of_ods_are_read_and_that_is_said(how: str, tmp_path: Path) -> None:
    rows = (
        HEADINGS
        + ods_row(ods_text("corvane"), ods_number("1"))
        + ods_row(ods_text("ostler"), ods_number("2"), more=how)
    )
    readings = read(tmp_path, ods(rows), "day.ods")
    assert of(readings)["ostler"].value == 2
    assert [(f.rule, f.place.line) for f in readings.findings] == [("hidden-cells", 3)]


def test_a_hidden_sheet_is_read_only_where_it_is_named(tmp_path: Path) -> None:
    book = Workbook()
    for row in TWO_STOVES:
        book.worksheets[0].append(list(row))
    book.create_sheet("Empty")
    book.worksheets[0].title, book.worksheets[0].sheet_state = "Old", "hidden"
    book.active = 1
    assert the_error(tmp_path, saved(book)) == ("empty-table", "day.xlsx")
    readings = read(tmp_path, saved(book), sheet="Old")
    assert [f.rule for f in readings.findings] == ["hidden-cells"]


def test_several_sheets_ask_which_and_name_them(tmp_path: Path) -> None:
    book = Workbook()
    for name in ("Bench", "Sound"):
        sheet = book.create_sheet(name)
        for row in TWO_STOVES:
            sheet.append(list(row))
    (found,) = told(tmp_path, saved(book))
    assert found.rule == "which-sheet"
    assert "“Bench”, “Sound”" in found.says
    assert "sheet: Bench" in found.do


def test_a_second_table_on_one_sheet_is_refused(tmp_path: Path) -> None:
    rows = (*TWO_STOVES, (), ("contender", "noise", "pass"), ("corvane", 71, 1))
    assert ("second-table", 5) in [(f.rule, f.place.line) for f in told(tmp_path, xlsx(rows))]


@pytest.mark.parametrize(
    ("value", "code", "rule"),
    [
        ("clock", "h:mm", "time-of-day"),
        ("hours", "[h]:mm:ss", "time-of-day"),
        ("date", "yyyy-mm-dd", "date-for-reading"),
        ("truth", "General", "truth-value"),
    ],
)
def test_what_a_spreadsheet_made_of_a_reading_is_refused(value: str, code: str, rule: str, tmp_path: Path) -> None:
    """DESIGN section 3: a spreadsheet turns 4:20 into a clock time."""
    from datetime import date, time, timedelta

    typed = {"clock": time(4, 20), "hours": timedelta(hours=25, minutes=10), "date": date(2026, 5, 3), "truth": True}

    def formats(sheet: Worksheet) -> None:
        sheet["B2"].number_format = code

    data = xlsx((TWO_STOVES[0], ("corvane", typed[value]), TWO_STOVES[2]), formats)
    assert the_error(tmp_path, data) == (rule, "day.xlsx, sheet Bench, cell B2")


def test_a_cell_beyond_the_headings_is_refused_by_its_letter(tmp_path: Path) -> None:
    found = told(tmp_path, xlsx((TWO_STOVES[0], ("corvane", 212.4, None, "see below"), TWO_STOVES[2])))
    assert [(f.rule, f.place.cell) for f in found] == [("no-heading", "cell D2")]
    assert "column D" in found[0].do


def test_an_empty_sheet_is_refused_and_headings_alone_are_not_yet_tested(tmp_path: Path) -> None:
    assert the_error(tmp_path, xlsx(())) == ("empty-table", "day.xlsx")
    assert the_error(tmp_path, xlsx(()), sheet="Bench") == ("empty-table", "day.xlsx, sheet Bench")
    assert read(tmp_path, xlsx(TWO_STOVES[:1])).readings == {}


def a_compound_file(stream: str) -> bytes:
    """The head of a compound file ([MS-CFB] 2.2) and a directory entry's name."""
    return b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(504) + stream.encode("utf-16-le") + bytes(512)


@pytest.mark.parametrize(
    ("file", "data", "rule"),
    [
        ("day.xlsx", a_compound_file("EncryptedPackage"), "password"),
        ("day.xlsx", a_compound_file("Workbook"), "other-spreadsheet"),
        ("day.xls", a_compound_file("Workbook"), "other-spreadsheet"),
        ("day.xlsb", b"PK\x03\x04", "other-spreadsheet"),
        ("day.numbers", b"PK\x03\x04", "other-spreadsheet"),
        ("day.xlsx", b"contender,boil time\ncorvane,212.4\n", "no-spreadsheet"),
        ("day.ods", b"", "no-spreadsheet"),
        ("day.xlsx", xlsx()[:-200], "cut-short"),
        ("day.xlsx", xlsx()[:2000], "cut-short"),
        ("day.xlsx", xlsx()[:800] + bytes(100) + xlsx()[900:], "damaged-spreadsheet"),
        ("day.ods", xlsx(), "damaged-spreadsheet"),
        ("day.xlsx", ods(HEADINGS), "damaged-spreadsheet"),
    ],
)
def test_what_is_no_spreadsheet_that_can_be_read_is_refused(file: str, data: bytes, rule: str, tmp_path: Path) -> None:
    assert the_error(tmp_path, data, file) == (rule, file)


def test_an_ods_under_a_password_is_refused(tmp_path: Path) -> None:
    """OpenDocument 1.3, part 2, 4.8: the manifest says which parts are encrypted."""
    out = io.BytesIO(ods(HEADINGS))
    with zipfile.ZipFile(out, "a") as parts:
        parts.writestr("META-INF/manifest.xml", "<m><manifest:encryption-data/></m>")
    assert the_error(tmp_path, out.getvalue(), "day.ods") == ("password", "day.ods")


@pytest.mark.parametrize("part", [SHEET, "xl/workbook.xml", "xl/styles.xml", "content.xml"])
def test_a_part_that_is_cut_short_or_has_a_dtd_is_refused(part: str, tmp_path: Path) -> None:
    file = "day.ods" if part == "content.xml" else "day.xlsx"
    whole = ods(HEADINGS) if file == "day.ods" else xlsx()
    bomb = '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]>'
    changes: tuple[Callable[[str], str], ...] = (lambda xml: xml[:-40], lambda xml: bomb + xml)
    for change in changes:
        assert the_error(tmp_path, with_part(whole, part, change), file) == ("damaged-spreadsheet", file)


def test_a_package_that_unpacks_to_more_than_memory_holds_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(package, "MOST_UNPACKED", 1_000_000)
    bomb = with_part(xlsx(), SHEET, lambda xml: xml.replace("<sheetData>", f"<!--{' ' * 2_000_000}--><sheetData>"))
    assert len(bomb) < 20_000
    assert the_error(tmp_path, bomb) == ("spreadsheet-too-large", "day.xlsx")


def test_an_ods_row_that_repeats_a_million_times_is_refused(tmp_path: Path) -> None:
    rows = HEADINGS + ods_row(
        ods_text("corvane"), ods_number("1"), ods_number("2"), more='table:number-rows-repeated="1048000"'
    )
    assert the_error(tmp_path, ods(rows), "day.ods") == ("table-too-large", "day.ods, sheet Bench, row 2")


@pytest.mark.parametrize(
    ("old", "new"),
    [('<row r="3"', '<row r="2"'), ('"B3"', '"A3"'), ('"B3"', '"B2"'), ('<row r="3"', '<row r="99999999999"'), ('<row r="3"', f'<row r="{"9" * 5000}"')],
    ids=["a row twice", "a cell twice", "a cell of another row", "a row beyond every sheet", "a row of no number"],
)  # fmt: skip
def test_rows_and_cells_out_of_their_order_are_refused_not_passed_over(old: str, new: str, tmp_path: Path) -> None:
    """ECMA-376, part 1, 18.3.1.73 and 18.3.1.4: what the attribute r says. openpyxl leaves such rows out silently."""
    data = with_part(xlsx(), SHEET, lambda xml: xml.replace(old, new))
    assert the_error(tmp_path, data) == ("damaged-spreadsheet", "day.xlsx")


def test_two_sheets_of_one_name_are_refused(tmp_path: Path) -> None:
    """ECMA-376, part 1, 18.2.19: the name of a sheet is unique."""
    book = Workbook()
    for title, seconds in (("Bench", 212.4), ("Other", 999.9)):
        sheet = book.create_sheet(title)
        sheet.append(["contender", "boil time"])
        sheet.append(["corvane", seconds])
    twins = with_part(saved(book), "xl/workbook.xml", lambda xml: xml.replace('"Other"', '"Bench"'))
    assert the_error(tmp_path, twins, sheet="Bench") == ("damaged-spreadsheet", "day.xlsx")


def test_a_part_that_is_longer_than_the_list_of_parts_says_fills_no_memory(tmp_path: Path) -> None:
    """APPNOTE.TXT of the zip format, 4.3.12: the uncompressed size in the central directory, here a lie."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(xlsx())) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            new.writestr(name, old.read(name))
        new.writestr("xl/media/image1.xml", bytes(64 << 20))
    data = bytearray(out.getvalue())
    entry = data.rindex(b"PK\x01\x02")
    assert b"image1" in data[entry : entry + 80]
    data[entry + 24 : entry + 28] = (100).to_bytes(4, "little")
    tracemalloc.start()
    try:
        assert the_error(tmp_path, bytes(data)) == ("damaged-spreadsheet", "day.xlsx")
        assert tracemalloc.get_traced_memory()[1] < 32 << 20
    finally:
        tracemalloc.stop()


def test_a_sheet_of_something_that_has_none_is_refused(tmp_path: Path) -> None:
    from dataclasses import replace

    from tests.intake.table_bench import measure, source
    from tests.intake.table_bench import read as read_files

    test = measure("boil time", sources=(replace(source("a.csv"), sheet="Bench"),))
    with pytest.raises(Refused) as refused:
        read_files(tmp_path, {"a.csv": "contender,boil time\ncorvane,1\n"}, test)
    assert [f.rule for f in refused.value.findings] == ["no-sheets"]
