"""Two steps lead from every figure to the row or cell it was read from, whatever file it stood in.

What stands at the end of a trace is read out of the file itself by libraries that are not ours: csv, openpyxl, pyarrow.
"""

from __future__ import annotations

import csv
import io
import posixpath
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import unquote

import pytest

from reportgen.browser.links import links
from reportgen.browser.standing import read_site
from tests.campaigns import compile_campaign
from tests.handbook.made import ods
from tests.pages.reading import read

YAML = """\
title: Every form a reading can have
contenders:
  corvane: Corvane Sol
  ostler: Ostler Mk II
instruments: {g: bench-scale}
films: {main: {title: The film, address: "https://example.org/main.mp4"}}
measure:
  boil time:
    kind: timed
    unit: s
    better: lower
    readings: {file: raw/bench days.xlsx, sheet: Day 1}
  noise:
    kind: level
    unit: dB
    better: lower
    readings: {file: raw/bench days.xlsx, sheet: Übung (2)}
  width: {kind: one reading, unit: mm, better: neither, readings: raw/sizes.parquet}
  packed weight: one reading, g, lower
  empty jar: one reading, g, neither
  heat: one reading, °C, lower
  lead:
    kind: laboratory
    unit: mg/kg
    better: lower
    laboratory: {name: A laboratory of the town, report: attachments/report 7.pdf}
    readings:
      table:
        - [contender, lead, page]
        - [corvane, 3.1, 2]
        - [ostler, 4.7, 3]
  pull:
    formula: highest(pull)
    unit: N
    better: higher
    readings: {logger: "raw/pull {contender}.csv", time: Elapsed, columns: {pull: {column: Pull, unit: N}}}
  lit: {kind: timed, unit: s, better: lower, instrument: camera, readings: raw/frames.csv}
  smell: order, lower
  depth: {kind: one reading, unit: mm, better: lower, readings: raw/depths.ods}
  girth: {kind: one reading, unit: mm, better: lower, readings: raw/girths.csv}
readings: raw/bench log.csv
amend:
  - file: raw/bench log.csv
    line: 3
    column: value
    from: 1120
    to: 112.0
    why: the point was forgotten
two records:
  - where: {contender: corvane, reading: packed weight}
    said: [86.2 g, 82.6 g]
    used: 86.2 g
    because: the film shows the display
"""
LOG = """\
time,contender,what,value,unit,note,film
10:05,corvane,packed weight,86.2,g,,main 4m20s
10:06,ostler,packed weight,1120,g,in its bag,
10:10,all,empty jar,about 250,g,,
10:20,corvane,heat,90 ±2,°C,,
10:21,ostler,heat,corvane + 7,°C,"second, by hand",
10:30,corvane,smell,less than ostler,,,
"""
FRAMES = "contender,lit\ncorvane,frames 1204 to 4820\nostler,frames 300 to 3916\n"
GIRTHS = "contender;girth\ncorvane;31,5\nostler;33,2\n"  # as UTF-16, with a decimal comma
TRACE = "Written by a logger\n\nElapsed;Pull\ns;N\n" + "".join(
    f"{n / 100:.2f};{n * (9000 - n) / 1e6:.2f}\n".replace(".", ",") for n in range(9001)
)
SHEETS: dict[str, list[list[Any]]] = {
    "Day 1": [
        ["What was done on the first day"],
        [],
        ["contender", "pass", "boil time"],
        ["corvane", 1, 212.4],
        ["ostler", 1, 230.1],
        ["corvane", 2, 214.9],
        ["ostler", 2, 226.4],
    ],
    "Übung (2)": [["contender", "noise"], ["corvane", 71.2], ["ostler", 69.5]],
}
SIZES = {"contender": ["corvane", "ostler"], "width": [81, 94]}


def workbook() -> bytes:
    from openpyxl import Workbook

    book = Workbook()
    book.remove(book.worksheets[0])
    for name, rows in SHEETS.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def parquet() -> bytes:
    import pyarrow
    import pyarrow.parquet

    out = io.BytesIO()
    pyarrow.parquet.write_table(pyarrow.table(SIZES), out)
    return out.getvalue()


def pdf(pages: int) -> bytes:
    from pypdf import PdfWriter

    writer = PdfWriter()
    for _ in range(pages):
        writer.add_blank_page(width=200, height=200)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


class Site:
    """A compiled site as a visitor has it: pages by address, files as bytes."""

    def __init__(self, folder: Path, told: dict[str, Any]) -> None:
        self.folder, self.told = folder, told
        self.pages = {
            p.relative_to(folder).as_posix(): read(p.read_text(encoding="utf-8"))
            for p in folder.rglob("*.html")
            if "handbook" not in p.parts
        }

    def follow(self, start: str, href: str) -> tuple[str, str]:
        path, _, anchor = href.partition("#")
        return (posixpath.normpath(posixpath.join(posixpath.dirname(start), unquote(path))) if path else start), anchor


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Site:
    place = tmp_path_factory.mktemp("forms")
    told = compile_campaign(
        place,
        YAML,
        **{
            "raw/bench log.csv": LOG,
            "raw/bench days.xlsx": workbook(),
            "raw/sizes.parquet": parquet(),
            "attachments/report 7.pdf": pdf(3),
            **{f"raw/pull {who}.csv": TRACE for who in ("corvane", "ostler")},
            "raw/frames.csv": FRAMES,
            "raw/depths.ods": ods("[Depth]\ncontender,depth\ncorvane,12.5\nostler,14\n"),
            "raw/girths.csv": GIRTHS.encode("utf-16"),
            "instruments.yaml": "bench-scale: 0.1 g, accuracy ±0.3 g\ncamera: 240 frames a second\n",
        },
    )
    return Site(place / "stoves" / ".site", told)


def readings_of(told: dict[str, Any]) -> Iterator[tuple[dict[str, Any], dict[str, Any]]]:
    """Each result with each of its readings."""
    for result in told["results"]:
        for one in result["by_pass"]:
            for reading in one["readings"]:
                yield result, reading


def text_in_file(folder: Path, reading: dict[str, Any]) -> str:
    """What the published file holds where the reading is said to stand, read by a library of its own."""
    path = folder / "stoves" / "files" / reading["file"]
    line, column = reading["line"], reading.get("column", 0)
    if path.suffix == ".xlsx":
        from openpyxl import load_workbook

        return str(load_workbook(path)[reading["sheet"]].cell(line, column).value)
    if path.suffix == ".ods":
        from pandas import read_excel

        return str(read_excel(path, sheet_name=reading["sheet"], header=None, engine="odf").iat[line - 1, column - 1])
    if path.suffix == ".parquet":
        import pyarrow.parquet

        return str(pyarrow.parquet.read_table(path).column(column - 1)[line - 1].as_py())
    data = path.read_bytes()
    text = data.decode("utf-16" if data[:2] == b"\xff\xfe" else "utf-8").splitlines()[line - 1]
    if "series" in reading:
        return text
    separator = ";" if ";" in text else ","
    return next(csv.reader([text], delimiter=separator))[column - 1] if path.suffix == ".csv" else text


def test_every_form_is_among_the_readings(site: Site) -> None:
    read_here = [r for _, r in readings_of(site.told)]
    assert {posixpath.splitext(r["file"])[1] for r in read_here} == {".csv", ".xlsx", ".ods", ".parquet", ".yaml"}
    for key in (
        "series",
        "frames",
        "film",
        "rough",
        "width",
        "beside",
        "for_all",
        "amendment",
        "records",
        "attachment",
        "time",
        "note",
        "sheet",
    ):
        assert any(r.get(key) for r in read_here), key


def test_every_figure_leads_to_its_working_and_on_to_where_each_of_its_readings_stands(site: Site) -> None:
    seen = 0
    for result in site.told["results"]:
        start = f"stoves/tests/{result['test']}.html"
        anchor = f"result-{result['quantity']}-{result['contender']}"
        figures = [a for a in site.pages[start].all("a") if site.follow(start, a.attrs["href"]) == (start, anchor)]
        assert figures, f"no figure leads to {anchor}"
        working = site.pages[start].one(id=anchor)
        rows = [tr for tr in working.all("tr") if tr.attrs.get("id", "").startswith(anchor)]
        readings = [r for one in result["by_pass"] for r in one["readings"]]
        assert len(rows) == len(readings) > 0
        for tr, reading in zip(rows, readings, strict=True):
            ways = [site.follow(start, a.attrs["href"]) for a in tr.one("td", class_="from").all("a")]
            address, spot = ways[0]
            assert address == f"stoves/files/{reading['file']}.html"
            end = site.pages[address].one(id=spot)
            held = text_in_file(site.folder, reading)
            assert " ".join(held.split()) in end.text
            assert "series" in reading or (reading.get("was") or reading["text"]) in held
            seen += 1
    assert seen == 2 * (2 + 10) + 2 + 1  # Ostler's heat rests on Corvane's too


def test_a_cell_of_a_spreadsheet_is_found_by_sheet_and_cell_and_holds_that_alone(site: Site) -> None:
    (reading,) = [
        r for result, r in readings_of(site.told) if (result["quantity"], result["contender"]) == ("noise", "ostler")
    ]
    assert (reading["sheet"], reading["line"], reading["column"]) == ("Übung (2)", 3, 2)
    page = site.pages["stoves/files/raw/bench days.xlsx.html"]
    assert page.one("td", id="ubung-2-B3").text == "69.5"
    link = site.pages["stoves/tests/noise.html"].one(id="result-noise-ostler").one("td", class_="from").one("a")
    assert link.text == "raw/bench days.xlsx, sheet Übung (2), cell B3"
    assert page.one("section", id="day-1").one("h2").text == "Sheet Day 1"


def test_a_laboratorys_value_leads_to_its_page_of_the_published_report(site: Site) -> None:
    row = site.pages["stoves/tests/lead.html"].one(id="result-lead-ostler-r1")
    address, spot = site.follow("stoves/tests/lead.html", row.one("td", class_="from").all("a")[1].attrs["href"])
    assert (address, spot) == ("stoves/files/attachments/report 7.pdf", "page=3")
    assert (site.folder / address).is_file()


def test_a_trace_of_a_logger_leads_to_its_first_and_last_line_and_the_page_leaves_out_what_lies_between(
    site: Site,
) -> None:
    start = "stoves/tests/pull.html"
    ways = site.pages[start].one(id="result-pull-ostler").one("td", class_="from").all("a")
    lines = TRACE.splitlines()
    values = [float(line.partition(";")[2].replace(",", ".")) for line in lines[4:]]
    top = 5 + values.index(max(values))  # line 5 is the first sample
    assert ways[2].text == f"highest in line {top}"
    for way, line in zip(ways, (5, len(lines), top), strict=True):
        address, spot = site.follow(start, way.attrs["href"])
        assert spot == f"L{line}"
        assert site.pages[address].one("tr", id=spot).one("code").text == lines[line - 1]
    page = site.pages["stoves/files/raw/pull ostler.csv.html"]
    assert page.one("tr", id="L3").one("code").text == "Elapsed;Pull"
    leaves = [
        page,
        *(
            site.pages[f"stoves/files/raw/{a.attrs['href'].replace('%20', ' ')}"]
            for a in page.one("nav", class_="leaves").all("a")[1:]
        ),
    ]
    rows = [tr.attrs.get("id", tr.text) for leaf in leaves for tr in leaf.one("tbody").all("tr")]
    left_out = [f"Left out here: 31 to {top - 4}", f"Left out here: {top + 4} to {len(lines) - 4}"]
    assert rows[29:32] == ["L30", left_out[0], left_out[0]]  # said where one page of the file ends and the next begins
    shown = [row for row in rows[32:] if row not in left_out]  # three lines around each that is marked
    assert shown == [
        *(f"L{n}" for n in range(top - 3, top + 4)),
        *(f"L{n}" for n in range(len(lines) - 3, len(lines) + 1)),
    ]
    assert left_out[1] in rows
    assert (site.folder / "stoves/files/raw/pull ostler.csv").read_text(encoding="utf-8") == TRACE
    assert {r["trace"][0]["channel"] for r in site.told["results"] if r["quantity"] == "pull"} == {"Pull"}
    assert {tuple(r["trace"][0]["span"]) for r in site.told["results"] if r["quantity"] == "pull"} == {(5, len(lines))}


def test_the_trace_in_the_record_names_sheet_cells_and_page(site: Site) -> None:
    traces = {(r["quantity"], r["contender"]): r["trace"] for r in site.told["results"]}
    assert traces["boil-time", "corvane"] == [
        {"file": "raw/bench days.xlsx", "sheet": "Day 1", "lines": [4, 6], "cells": [[4, 3], [6, 3]]}
    ]
    assert traces["width", "ostler"] == [{"file": "raw/sizes.parquet", "lines": [2], "cells": [[2, 2]]}]
    (lead,) = traces["lead", "ostler"]
    assert (lead["file"], lead["attachment"], lead["page"]) == ("campaign.yaml", "attachments/report 7.pdf", 3)


def test_the_record_keeps_the_schema_with_every_form_in_it(site: Site) -> None:
    import jsonschema

    from reportgen.record.schema import results_schema

    jsonschema.validate(site.told, results_schema())


def test_a_reading_in_the_record_has_no_empty_keys(site: Site) -> None:
    for _, reading in readings_of(site.told):
        assert all(v not in (None, "", [], {}, False) for k, v in reading.items() if k not in ("value", "text"))


def test_every_link_of_every_page_has_an_end(site: Site) -> None:
    ids = {address: {e.attrs["id"] for e in page.all() if "id" in e.attrs} for address, page in site.pages.items()}
    for address, page in site.pages.items():
        for link in page.all("a"):
            href = link.attrs["href"]
            if href.partition(":")[0] in ("https", "mailto"):
                continue
            target, anchor = site.follow(address, href)
            assert (site.folder / target).is_file(), f"{address}: {href}"
            if target.endswith(".html") and anchor and target in ids:
                assert unquote(anchor) in ids[target], f"{address}: {href}"


def test_the_data_page_lists_each_file_by_form_with_its_checksum(site: Site) -> None:
    import hashlib

    page = site.pages["stoves/data.html"]
    forms = {}
    for section in page.all("section", class_="file"):
        name = section.one("h3").text
        data = (site.folder / "stoves" / "files" / name).read_bytes()
        assert section.one("code", class_="digest").text == hashlib.sha256(data).hexdigest()
        forms[name] = section.one("dl").all("dd")[0].text
    assert forms["raw/bench days.xlsx"] == "spreadsheet; sheets: Day 1, Übung (2)"
    assert forms["raw/depths.ods"] == "spreadsheet; sheet Depth"
    assert forms["raw/sizes.parquet"] == "Parquet table"
    assert forms["raw/pull ostler.csv"] == "what a logger wrote"
    assert forms["campaign.yaml"] == "readings typed into the campaign’s own YAML"
    assert forms["raw/bench log.csv"] == "text table"
    (report,) = page.one("section", aria_labelledby="attachments").all("li")
    assert [a.text for a in report.all("a")] == ["attachments/report 7.pdf", "page 2", "page 3", "Lead"]


def test_files_of_any_name_are_led_to_and_what_stands_in_them_is_shown_letter_by_letter(tmp_path: Path) -> None:
    """RFC 3986, 2.1: what a link has no place for is percent-encoded. An apostrophe that was typed stays the one typed."""
    name, report = "raw/it's 50 % #2.csv", "attachments/it's 50 % #7.pdf"
    laboratory = (
        "  lead:\n    kind: laboratory\n    unit: mg/kg\n"
        f'    laboratory: {{name: A laboratory, report: "{report}", number: 7}}\n'
        "    readings: {table: [[contender, lead], [corvane, 3.1], [ostler, 4.7]]}\n"
    )
    yaml = "title: T\ncontenders: {corvane: Corvane, ostler: Ostler}\nmeasure:\n  weight: one reading, g, lower\n"
    rows = "contender,what,value,unit,note\ncorvane,weight,86.2,g,didn't spill\nostler,weight,91.0,g,\n"
    compile_campaign(tmp_path, f'{yaml}{laboratory}readings: "{name}"\n', **{name: rows, report: pdf(1)})
    site = tmp_path / "stoves/.site"
    assert list(links(read_site(site))) == []
    shown = (site / f"stoves/files/{name}.html").read_text(encoding="utf-8")
    assert "corvane,weight,86.2,g,didn&#39;t spill" in shown
