"""Text tables in other encodings: known for sure, or named by their source; never guessed.

Sources: Unicode 15, 23.8 (byte order mark); the code pages are those of Python's codecs, an independent reading of the
tables IANA lists.
"""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import pandas
import pytest

from reportgen.campaign.encodings import ENCODINGS
from reportgen.finding import Finding, Refused
from reportgen.intake import Readings
from tests.campaigns import compile_campaign, refusal, result_of
from tests.intake.table_bench import FILE, measure, source
from tests.intake.table_bench import read as read_files

TEXT = "contender,mass (µg),note\ncorvane,1,größer\nostler,2,\n"
YAML = """\
title: T
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
measure:
  mass: one reading, µg, lower
readings:
  file: readings.csv
  encoding: windows-1252
"""


def read(folder: Path, data: bytes, encoding: str = "") -> Readings:
    test = measure("mass", "", sources=(replace(source(), encoding=encoding),))
    return read_files(folder, {FILE: data}, test)


def error(folder: Path, data: bytes, encoding: str = "") -> Finding:
    try:
        read(folder, data, encoding)
    except Refused as refused:
        (found,) = refused.findings
        assert found.why
        assert found.do
        return found
    raise AssertionError("read without an error")


@pytest.mark.parametrize(
    ("data", "codec"),
    [
        (TEXT.encode(), "utf-8-sig"),
        (TEXT.encode("utf-8-sig"), "utf-8-sig"),
        (TEXT.encode("utf-16"), "utf-16"),
        (b"\xfe\xff" + TEXT.encode("utf-16-be"), "utf-16"),
        (TEXT.encode("utf-16-le"), "utf-16-le"),
        (TEXT.encode("utf-16-be"), "utf-16-be"),
    ],
)
def test_utf_8_and_utf_16_are_known_by_themselves(data: bytes, codec: str, tmp_path: Path) -> None:
    readings = read(tmp_path, data)
    (corvane, _) = readings.of_test("mass")
    assert (corvane.unit, corvane.note, corvane.at.line) == ("µg", "größer", 2)
    (raw,) = readings.files
    assert (raw.encoding, raw.size) == (codec, len(data))
    assert data.decode(raw.encoding) == TEXT


@pytest.mark.parametrize("encoding", [e for e in ENCODINGS if e.startswith(("windows-1252", "iso-8859-1", "cp850"))])
def test_an_old_code_page_is_read_where_its_source_names_it(encoding: str, tmp_path: Path) -> None:
    codec = ENCODINGS[encoding]
    try:
        data = TEXT.encode(codec)
    except UnicodeEncodeError:
        data = TEXT.replace("µ", "").replace("ö", "o").replace("ß", "ss").encode(codec)
    corvane, _ = read(tmp_path, data, encoding).of_test("mass")
    assert corvane.note == data.decode(codec).splitlines()[1].split(",")[2]


def test_what_pandas_writes_in_windows_1252_is_read_through_a_campaign(tmp_path: Path) -> None:
    frame = pandas.DataFrame({"contender": ["corvane", "ostler"], "mass (µg)": [1.5, 2.5]})
    out = io.BytesIO()
    frame.to_csv(out, index=False, encoding="cp1252")
    told = compile_campaign(tmp_path, YAML, readings=out.getvalue())
    assert result_of(told, "mass", "ostler")["value"] == 2.5
    (page,) = (tmp_path / "stoves" / ".site").rglob("readings.csv.html")
    assert "mass (µg)" in page.read_text(encoding="utf-8")


def test_every_encoding_an_author_may_name_is_one_python_knows() -> None:
    assert all(b"a,b".decode(codec) for codec in ENCODINGS.values() if not codec.startswith("utf-16"))
    assert len(set(ENCODINGS.values())) == len(ENCODINGS)


def test_an_unknown_name_of_an_encoding_is_refused_with_its_line(tmp_path: Path) -> None:
    (found,) = refusal(tmp_path, YAML.replace("windows-1252", "windows1252"), readings=TEXT)
    assert (found.place.line, found.rule) == (7, "wrong-value")
    assert "windows-1252" in found.do


@pytest.mark.parametrize(
    ("data", "encoding", "rule", "line"),
    [
        (TEXT.encode("cp1252"), "", "not-utf-8", 1),
        (TEXT.encode(), "windows-1252", "wrong-encoding", 0),
        (TEXT.encode("utf-16"), "windows-1252", "wrong-encoding", 0),
        (TEXT.encode(), "utf-16", "wrong-encoding", 0),
        (b"contender,mass\ncorvane,1\nost\x81ler,2\n", "windows-1252", "not-in-code-page", 3),
        (TEXT.encode("utf-32"), "", "not-utf-8", 1),
        (TEXT.encode("utf-16")[:-1], "", "not-utf-16", 3),
    ],
)
def test_bytes_that_are_not_of_the_encoding_are_refused(
    data: bytes, encoding: str, rule: str, line: int, tmp_path: Path
) -> None:
    found = error(tmp_path, data, encoding)
    assert (found.rule, found.place.file, found.place.line) == (rule, FILE, line)


@pytest.mark.parametrize("encoding", ["", "windows-1252"])
@pytest.mark.parametrize(("first", "then"), [("utf-8", "cp1252"), ("cp1252", "utf-8")])
def test_two_encodings_in_one_file_are_refused_with_the_line(
    first: str, then: str, encoding: str, tmp_path: Path
) -> None:
    data = "contender,mass,note\ncorvane,1,größer\n".encode(first) + "ostler,2,größer\n".encode(then)
    found = error(tmp_path, data, encoding)
    assert (found.rule, found.place.line) == ("two-encodings", 3)


def test_rows_of_utf_8_added_to_utf_16_are_refused_with_their_line(tmp_path: Path) -> None:
    data = "contender,mass\ncorvane,1\n".encode("utf-16") + b"ostler,2\nostler,3\n"
    found = error(tmp_path, data)
    assert (found.rule, found.place.line) == ("two-encodings", 3)


def test_a_refusal_says_how_to_name_the_encoding(tmp_path: Path) -> None:
    assert "encoding: windows-1252" in error(tmp_path, TEXT.encode("cp1252")).do


def test_an_encoding_of_a_spreadsheet_is_refused(tmp_path: Path) -> None:
    test = measure("mass", sources=(replace(source("day.xlsx"), encoding="windows-1252"),))
    with pytest.raises(Refused) as refused:
        read_files(tmp_path, {"day.xlsx": b"PK"}, test)
    assert [f.rule for f in refused.value.findings] == ["no-encoding"]
