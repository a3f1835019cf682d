"""What is shown of a raw file: all of a short one; of a long one the ends and what was read."""

from __future__ import annotations

import csv
import io
from pathlib import Path
from typing import Any

import pytest

from reportgen.finding import Place
from reportgen.intake.raw.rows import AROUND, HEAD, MOST_CELLS, TAIL, WHOLE, RawSheet
from reportgen.intake.raw.view import view_of
from reportgen.intake.reading import FileForm, RawFile
from reportgen.sources import Workspace, find_workspace


def shown(
    place: Path,
    name: str,
    data: bytes,
    *spots: Place,
    form: FileForm = "text",
    encoding: str = "utf-8-sig",
    sheets: tuple[str, ...] = (),
) -> RawSheet:
    """The one sheet (or text) that is shown of such a file."""
    (place / "campaign.yaml").write_text("title: x\n", encoding="utf-8")
    (place / name).write_bytes(data)
    ws: Workspace = find_workspace(place)
    (sheet,) = view_of(ws, RawFile(name, "", len(data), form=form, encoding=encoding, sheets=sheets), spots).sheets
    return sheet


def numbers(sheet: RawSheet) -> list[int]:
    return [row.number for row in sheet.rows]


def test_a_short_text_is_shown_line_by_line_to_its_end(tmp_path: Path) -> None:
    sheet = shown(tmp_path, "a.csv", b"a,b\n1,2\n3,4")
    assert [row.cells for row in sheet.rows] == [("a,b",), ("1,2",), ("3,4",)]
    assert (numbers(sheet), sheet.total) == ([1, 2, 3], 3)


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_lines_are_counted_as_a_reader_of_csv_counts_them(tmp_path: Path, end: str) -> None:
    """Python's csv module is the witness; form feeds and line separators (U+2028) end no line of a table."""
    text = end.join(["a,b", "1,x\x0cy", "2,p\u2028q", "3,z"]) + end
    sheet = shown(tmp_path, "a.csv", text.encode())
    reader = csv.reader(io.StringIO(text, newline=""))
    counted = [(reader.line_num, ",".join(cells)) for cells in reader]
    assert [(row.number, row.cells[0]) for row in sheet.rows] == counted


@pytest.mark.parametrize(
    ("encoding", "codec"), [("utf-16", "utf-16"), ("cp1252", "cp1252"), ("utf-8-sig", "utf-8-sig")]
)
def test_a_text_is_shown_in_the_encoding_it_was_read_in(tmp_path: Path, encoding: str, codec: str) -> None:
    sheet = shown(tmp_path, "a.csv", "heat,°C\n12,µ\n".encode(codec), encoding=encoding)
    assert [row.cells[0] for row in sheet.rows] == ["heat,°C", "12,µ"]


def test_of_a_long_text_the_ends_are_shown_and_what_was_read_with_the_lines_around_it(tmp_path: Path) -> None:
    last, read = 50_000, 31_000
    data = "".join(f"{n},{n}.5\n" for n in range(1, last + 1)).encode()
    sheet = shown(tmp_path, "run.csv", data, Place("run.csv", read, 2))
    head = list(range(1, HEAD + 1))
    around = list(range(read - AROUND, read + AROUND + 1))
    assert numbers(sheet) == head + around + list(range(last - TAIL + 1, last + 1))
    assert sheet.total == last
    assert all(row.cells == (f"{row.number},{row.number}.5",) for row in sheet.rows)


def test_a_text_of_just_so_many_lines_is_shown_whole(tmp_path: Path) -> None:
    for lines, whole in ((WHOLE, True), (WHOLE + 1, False)):
        sheet = shown(tmp_path, "a.csv", b"x\n" * lines)
        assert (len(sheet.rows) == lines) is whole


def _workbook(rows: list[list[Any]]) -> bytes:
    from openpyxl import Workbook

    book = Workbook(write_only=True)
    sheet = book.create_sheet("Bench")
    for row in rows:
        sheet.append(row)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def test_a_sheet_is_shown_from_its_first_row_with_the_empty_ones_between(tmp_path: Path) -> None:
    data = _workbook([["title"], [], ["who", "mass"], ["corvane", 12.5]])
    sheet = shown(tmp_path, "a.xlsx", data, Place("a.xlsx", 4, 2, "Bench"), form="spreadsheet", sheets=("Bench",))
    assert (sheet.name, numbers(sheet), sheet.total, sheet.beyond) == ("Bench", [1, 2, 3, 4], 4, 0)
    assert [row.cells for row in sheet.rows] == [("title", ""), (), ("who", "mass"), ("corvane", "12.5")]


def test_a_wide_and_long_sheet_is_cut_but_never_a_cell_that_was_read(tmp_path: Path) -> None:
    data = _workbook([[f"h{c}" for c in range(90)], *([n] * 90 for n in range(700))])
    spot = Place("a.xlsx", 600, 75, "Bench")
    sheet = shown(tmp_path, "a.xlsx", data, spot, form="spreadsheet", sheets=("Bench",))
    assert sheet.beyond == 90 - 75
    assert sheet.total == 701
    (row,) = [row for row in sheet.rows if row.number == 600]
    assert row.cells[74] == "598"
    assert sum(len(row.cells) for row in sheet.rows) <= MOST_CELLS


def test_of_a_long_parquet_file_only_what_was_read_is_fetched(tmp_path: Path) -> None:
    import pyarrow
    import pyarrow.parquet

    last = 300_000
    table = pyarrow.table(
        {
            "n": list(range(1, last + 1)),
            'a "quoted" name': [x / 8 for x in range(last)],
            "ok": [True, None] * (last // 2),
        }
    )
    out = io.BytesIO()
    pyarrow.parquet.write_table(table, out, row_group_size=10_000)
    sheet = shown(tmp_path, "a.parquet", out.getvalue(), Place("a.parquet", 123_456, 2), form="parquet")
    assert sheet.headings == ("n", 'a "quoted" name', "ok")
    assert len(sheet.rows) == HEAD + 2 * AROUND + 1 + TAIL
    assert all(row.cells[0] == str(row.number) for row in sheet.rows)
    (row,) = [row for row in sheet.rows if row.number == 123_456]
    assert float(row.cells[1]) == 123_455 / 8
    assert {row.cells[2] for row in sheet.rows} == {"yes", ""}


def test_a_long_text_is_never_held_whole(tmp_path: Path) -> None:
    import tracemalloc

    line = b"0.01;12.5;" + b"x" * 200 + b"\n"
    (tmp_path / "campaign.yaml").write_text("title: x\n", encoding="utf-8")
    (tmp_path / "run.csv").write_bytes(line * 100_000)
    ws, file = find_workspace(tmp_path), RawFile("run.csv", "", 100_000 * len(line))
    tracemalloc.start()
    (sheet,) = view_of(ws, file, [Place("run.csv", 70_000)]).sheets
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert sheet.total == 100_000
    assert peak < file.size / 2
