"""What no layout can read: each mistake told at its line and column, all of them in one run."""

from __future__ import annotations

from pathlib import Path

from reportgen.finding import Place
from tests.intake.table_bench import NAMED_AT, by_key, errors, measure, read, source, the_error


def test_an_unknown_contender_gets_the_nearest_with_line_and_column(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,mass\ncorvane,1\nostlr,2\n", measure("mass"))
    assert (found.rule, found.place) == ("unknown-contender", Place("readings.csv", 3, 1))
    assert "“ostler”" in found.do


def test_a_misspelt_contender_among_headings_is_an_error(tmp_path: Path) -> None:
    found = the_error(tmp_path, "what,corvane,ostlr\nmass,1,2\n", measure("mass"))
    assert (found.rule, found.place) == ("unknown-contender", Place("readings.csv", 1, 3))


def test_a_missing_column_lists_those_there_are_and_the_nearest(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,boil tme\ncorvane,1\n", measure("boil time", "s"))
    assert (found.rule, found.place.line) == ("missing-column", 1)
    assert "“contender”, “boil tme”" in found.says
    assert "“boil tme”" in found.do


def test_a_role_given_a_heading_that_is_not_there_is_an_error(tmp_path: Path) -> None:
    test = measure("mass", sources=(source(contender="stove"),))
    found = the_error(tmp_path, "stoves,mass\ncorvane,1\n", test)
    assert (found.rule, found.do) == ("missing-column", "Did you mean “stoves”?")


def test_a_table_without_contenders_is_an_error(tmp_path: Path) -> None:
    found = the_error(tmp_path, "pass,mass\n1,1\n", measure("mass"))
    assert found.rule == "missing-column"
    assert "“contender”" in found.says


def test_a_misspelt_entry_of_a_log_is_an_error_where_its_test_would_be_empty(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,what,value\ncorvane,boil tim,1\n", measure("boil time", "s"))
    assert (found.rule, found.place) == ("unknown-what", Place("readings.csv", 2, 2))


def test_a_misspelt_entry_beside_right_ones_is_a_warning_at_its_row(tmp_path: Path) -> None:
    text = "contender,what,value\ncorvane,boil time,1\ncorvane,boil tim,1\n"
    (found,) = read(tmp_path, text, measure("boil time", "s")).findings
    assert (found.severity, found.rule, found.place.line) == ("warning", "unknown-what", 3)


def test_a_test_without_a_row_in_the_log_is_a_warning(tmp_path: Path) -> None:
    text = "contender,what,value\ncorvane,boil time,1\n"
    readings = read(tmp_path, text, measure("boil time", "s"), measure("noise", "dB"))
    assert [(f.severity, f.rule) for f in readings.findings] == [("warning", "no-readings")]


def test_two_readings_of_one_pass_name_both_lines(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,pass,mass\ncorvane,1,5\nostler,1,6\ncorvane,1,7\n", measure("mass"))
    assert (found.rule, found.place.line) == ("reading-twice", 4)
    assert "line 2" in found.says


def test_one_contender_in_two_columns_is_refused(tmp_path: Path) -> None:
    assert the_error(tmp_path, "what,ostler,the red one\nmass,1,2\n", measure("mass")).rule == "heading-twice"


def test_a_wide_table_without_what_serves_one_column_of_one_test(tmp_path: Path) -> None:
    text = {"noise.csv": "pass,corvane,ostler\n1,70,71\n2,72,73\n"}
    noise = measure("noise", "dB", sources=(source("noise.csv"),))
    assert by_key(read(tmp_path, text, noise))["ostler", "2", "noise"].value == 73
    echo = measure("echo", "dB", sources=(source("noise.csv"),))
    assert {f.rule for f in errors(tmp_path, text, noise, echo)} == {"missing-column"}


def test_a_file_of_another_sort_is_refused_with_what_to_do(tmp_path: Path) -> None:
    found = the_error(tmp_path, {"a.doc": b"mass"}, measure("mass", sources=(source("a.doc"),)))
    assert found.rule == "unknown-format"
    assert "CSV UTF-8" in found.do


def test_a_path_that_leaves_the_workspace_is_refused_where_it_is_named(tmp_path: Path) -> None:
    found = the_error(tmp_path, {}, measure("mass", sources=(source("../../secret.csv"),)))
    assert found.place == NAMED_AT


def test_a_bad_cell_is_told_with_file_line_and_column(tmp_path: Path) -> None:
    found = the_error(tmp_path, 'contender,note,mass\ncorvane,"a\nb",heavy\n', measure("mass"))
    assert str(found.place) == "readings.csv:2:3"
    assert found.says.startswith("mass: “heavy”")


def test_all_errors_of_all_files_come_in_one_run(tmp_path: Path) -> None:
    files = {
        "a.csv": "contender,mass\ncorvane,heavy\nostlr,2\n",
        "b.csv": "contender,noise\ncorvane,1,2\n",
    }
    a, b, c = (measure(n, sources=(source(f"{f}.csv"),)) for n, f in (("mass", "a"), ("noise", "b"), ("mud", "c")))
    found = {(f.rule, str(f.place)) for f in errors(tmp_path, files, a, b, c)}
    assert found == {
        ("not-a-number", "a.csv:2:2"),
        ("unknown-contender", "a.csv:3:1"),
        ("ragged-row", "b.csv:2"),
        ("missing-file", "campaign.yaml:14:11"),
    }
