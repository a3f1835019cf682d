"""RFC 4180, section 2, rule by rule, and what spreadsheets do beside it.

Source of the rules and of their wording: RFC 4180, "Common Format and MIME Type for CSV Files", October 2005.
"""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pandas
import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.finding import Refused
from reportgen.intake.dialect import decode, records, separator_of
from tests.intake.table_bench import by_key, errors, measure, read, the_error, weighed


def split(text: str) -> list[tuple[int, tuple[str, ...]]]:
    return list(records(text, "a.csv", ","))


def test_rule_1_each_record_is_on_a_line_ended_by_crlf() -> None:
    assert split("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") == [(1, ("aaa", "bbb", "ccc")), (2, ("zzz", "yyy", "xxx"))]


def test_rule_2_the_last_record_needs_no_line_break() -> None:
    assert split("aaa,bbb,ccc\r\nzzz,yyy,xxx") == [(1, ("aaa", "bbb", "ccc")), (2, ("zzz", "yyy", "xxx"))]


def test_rule_4_spaces_belong_to_a_field_and_the_last_field_has_no_comma_behind() -> None:
    assert split("aaa, b b ,ccc") == [(1, ("aaa", " b b ", "ccc"))]


def test_rule_5_fields_may_be_quoted_or_not() -> None:
    assert split('"aaa","bbb","ccc"\r\nzzz,yyy,xxx') == [(1, ("aaa", "bbb", "ccc")), (2, ("zzz", "yyy", "xxx"))]


def test_rule_6_a_quoted_field_holds_line_breaks_quotes_and_commas() -> None:
    text = '"aaa","b\r\nbb","c,c"\r\nzzz,yyy,xxx'
    assert split(text) == [(1, ("aaa", "b\r\nbb", "c,c")), (3, ("zzz", "yyy", "xxx"))]


def test_rule_7_a_quote_inside_a_field_is_written_twice() -> None:
    assert split('"aaa","b""bb","ccc"') == [(1, ("aaa", 'b"bb', "ccc"))]


@pytest.mark.parametrize("text", ['a,b\n1,"2"x\n', 'a,b\n1,"2\n3,4\n'], ids=["text behind a quote", "never closed"])
def test_quotes_that_do_not_fit_are_refused_with_their_line(text: str) -> None:
    with pytest.raises(Refused) as caught:
        split(text)
    assert (caught.value.findings[0].rule, caught.value.findings[0].place.line) == ("quotes", 2)


@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"])
def test_every_line_ending_counts_lines_alike(ends: str) -> None:
    assert [line for line, _ in split(ends.join(["a,b", "", '"1\n2",3' if ends == "\n" else "1,2", "x,y"]))][-2] == 3


cells = st.text(st.characters(codec="utf-8", exclude_characters="\0"), max_size=8)


@given(st.lists(st.lists(cells, min_size=2, max_size=3), min_size=1, max_size=5), st.sampled_from(",;\t"))
def test_what_the_csv_module_writes_comes_back_cell_for_cell_and_line_for_line(
    rows: list[list[str]], separator: str
) -> None:
    out = io.StringIO(newline="")
    writer = csv.writer(out, delimiter=separator)
    lines = []
    for row in rows:
        lines.append(len(out.getvalue().replace("\r\n", "\n").replace("\r", "\n").split("\n")))
        writer.writerow(row)
    assert list(records(out.getvalue(), "a.csv", separator)) == [
        (line, tuple(row)) for line, row in zip(lines, rows, strict=True)
    ]


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_a_table_written_by_pandas_is_read_with_its_lines(tmp_path: Path, separator: str) -> None:
    frame = pandas.DataFrame(
        {
            "contender": ["corvane", "ostler", "corvane"],
            "pass": [1, 1, 2],
            "note": ['a 5" pot, lid on', "two\nlines", None],
            "boil time": [212.4, 230.1, 214.9],
        }
    )
    text = frame.to_csv(index=False, sep=separator, lineterminator="\r\n")
    readings = by_key(read(tmp_path, text, measure("boil time", "s", "timed")))
    assert {k: (str(r.value), r.at.line, r.at.column) for k, r in readings.items()} == {
        ("corvane", "1", "boil_time"): ("212.4", 2, 4),
        ("ostler", "1", "boil_time"): ("230.1", 3, 4),
        ("corvane", "2", "boil_time"): ("214.9", 5, 4),
    }
    assert readings["ostler", "1", "boil_time"].note == "two\nlines"


def test_passes_that_pandas_turned_into_floats_keep_their_names(tmp_path: Path) -> None:
    frame = pandas.DataFrame({"what": ["noise"] * 3, "pass": [1, 2, None], "corvane": [1, 2, 3], "ostler": [4, 5, 6]})
    text = frame.to_csv(index=False)
    assert "1.0" in text
    passes = {k.pass_ for k in read(tmp_path, text, measure("noise", "dB")).readings}
    assert passes == {"1", "2", "3"}


def test_a_byte_order_mark_is_no_part_of_the_first_heading(tmp_path: Path) -> None:
    text = "contender,mass\ncorvane,1\nostler,2\n".encode("utf-8-sig")
    assert len(read(tmp_path, text, measure("mass")).readings) == 2


def test_windows_1252_is_refused_with_its_line_and_what_the_byte_may_be(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,mass (µg)\ncorvane,1\n".encode("cp1252"), measure("mass"))
    assert (found.place.file, found.place.line) == ("readings.csv", 1)
    assert "“µ”" in found.why
    assert "UTF-8" in found.do


def test_a_nul_character_is_refused_with_its_line() -> None:
    with pytest.raises(Refused) as caught:
        decode(b"a,b\n1,2\n3,\x004\n", "a.csv")
    assert caught.value.findings[0].place.line == 3


def test_a_name_that_ends_in_tsv_speaks_for_tabs() -> None:
    assert separator_of("a\tb,c\n1\t2,3\n", "a.tsv", []) == "\t"


def test_known_headings_decide_between_separators() -> None:
    """A German spreadsheet: semicolons between cells, and a comma in each line that would split it too."""
    text = "contender;pass;mass, net\ncorvane;1;12,5\nostler;1;13,0\n"
    assert separator_of(text, "a.csv", ["contender", "pass"]) == ";"


def test_a_table_that_two_separators_would_split_is_refused(tmp_path: Path) -> None:
    found = the_error(tmp_path, "stove,a;b,c;d\nx,1;2,3;4\n", measure("mass"))
    assert found.rule == "separator"
    assert "comma and semicolon" in found.says


def test_rows_shorter_or_longer_than_the_headings_are_refused_each_with_its_line(tmp_path: Path) -> None:
    text = "contender,pass,mass\ncorvane,1\nostler,1,2,3\ncorvane,2,7,,\n"
    found = errors(tmp_path, text, measure("mass"))
    assert [(f.rule, f.place.line) for f in found] == [("ragged-row", 2), ("ragged-row", 3)]


def test_two_headings_that_are_one_name_are_refused(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,boil time,boil_time\ncorvane,1,2\n", measure("boil time", "s"))
    assert (found.rule, found.place.line, found.place.column) == ("heading-twice", 1, 3)


def test_a_cell_under_no_heading_is_refused(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,,mass\ncorvane,x,1\n", measure("mass"))
    assert (found.rule, found.place.line, found.place.column) == ("no-heading", 2, 2)


def test_empty_lines_and_rows_of_separators_are_passed_over_and_counted(tmp_path: Path) -> None:
    readings = read(tmp_path, "contender,mass\n\n,\ncorvane,1\n\nostler,2\n", measure("mass"))
    assert [r.at.line for r in readings.of_test("mass")] == [4, 6]


@pytest.mark.parametrize("content", [b"", b"\n\n", "\ufeff".encode(), b",,\n"])
def test_a_file_without_even_headings_is_an_error(tmp_path: Path, content: bytes) -> None:
    assert the_error(tmp_path, content, measure("mass")).rule == "empty-table"


def test_headings_alone_mean_not_yet_tested(tmp_path: Path) -> None:
    readings = read(tmp_path, "contender,pass,gas burned before,gas burned after\n", weighed())
    assert readings.readings == {}
    assert readings.findings == ()


def test_a_missing_file_is_told_where_it_is_named(tmp_path: Path) -> None:
    found = the_error(tmp_path, {"reading.csv": "contender,mass\n"}, measure("mass"))
    assert (found.place.file, found.place.line, found.place.column) == ("campaign.yaml", 14, 11)
    assert "reading.csv" in found.do


def test_a_raw_file_is_kept_as_it_is_and_known_by_its_digest(tmp_path: Path) -> None:
    """SHA-256 of the three bytes "abc": FIPS 180-2, appendix B.1."""
    content = b"contender,mass\r\ncorvane,1\r\n"
    readings = read(tmp_path, content, measure("mass"))
    assert (tmp_path / "readings.csv").read_bytes() == content
    assert readings.files[0].size == len(content)
    from reportgen.sources import digest

    assert digest(b"abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
