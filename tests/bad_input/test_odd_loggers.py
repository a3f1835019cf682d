"""Logger files that a bench gives on its worst days: each refused with its line and what to do, or read for what it is."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.finding import Finding
from tests.campaigns import compile_campaign, refusal, result_of

PATTERN = "raw/run-{contender}-{pass}.csv"
YAML = """\
title: T
contenders: {corvane: Corvane Lamp, ostler: Ostler Lamp}
instruments: {lux-meter: "1 lx, accuracy ±4 %"}
measure:
  brightest:
    kind: logged
    formula: highest(light)
    unit: lx
    better: higher
    columns: {light: "Ch1, lx, lux-meter"}
    readings: PATTERN
"""
HEAD = "Elapsed (min),Ch1 (lx),Battery\n"
ROWS = "0,812,100\n20,790,95\n40,655,88\n60,410,70\n"
OTHER = HEAD + ROWS.replace("812", "1105")
ONE = "raw/run-corvane-1.csv"


def files(corvane: str | bytes, **more: str | bytes) -> dict[str, str | bytes]:
    return {"raw/run-ostler-1.csv": OTHER, ONE: corvane, **more}


def errors(place: Path, corvane: str | bytes, yaml: str = YAML.replace("PATTERN", PATTERN)) -> tuple[Finding, ...]:
    found = tuple(f for f in refusal(place, yaml, **files(corvane)) if f.severity == "error")
    assert all(f.says and f.do for f in found)
    return found


# mistake → (the file, rule, line, words of the message)
MISTAKES: dict[str, tuple[str, str, int, str]] = {
    "an empty file": ("", "empty-table", 0, "is empty"),
    "a quote above the headings never closes": ('"Logger LX-9\n' + HEAD + ROWS, "quotes", 1, "quotes"),
    "a quote among the headings never closes": (HEAD.replace("Ch1", '"Ch1') + ROWS, "quotes", 1, "quotes"),
    "headings deeper than anyone looks": ("a line\n" * 400 + HEAD + ROWS, "missing-column", 0, "first 300 lines"),
    "two headings that differ in case": (HEAD.replace("Battery", "ch1") + ROWS, "missing-column", 1, "twice"),
    "a cell of a million digits": (HEAD + ROWS.replace("655", "6" * 1_000_000), "text-in-a-channel", 4, "666…"),
    "a comma inside a cell between commas": (HEAD + ROWS.replace("655", '"1,204"'), "text-in-a-channel", 4, "1,204"),
    "a comma that may part thousands": ((HEAD + ROWS).replace(",", "\t").replace("812", "1,204"), "separator-in-number", 2, "three digits"),
    "a first row that ends too early": (HEAD + "0\n" + ROWS, "ragged-row", 2, "ends before the column “Ch1”"),
    "a sample beyond all reckoning": (HEAD + ROWS.replace("655", "1e300"), "text-in-a-channel", 4, "1e300"),
    "a time beyond all reckoning": (HEAD + ROWS.replace("60,", "1e299,"), "no-times", 5, "thousands of years"),
    "times nearer than any logger's": (HEAD + "0,8,1\n1e-300,7,1\n2e-300,6,1\n", "no-times", 2, "nearer together"),
}  # fmt: skip


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_mistake_in_a_logger_file_is_one_message_at_its_line(mistake: str, tmp_path: Path) -> None:
    text, rule, line, words = MISTAKES[mistake]
    (found,) = errors(tmp_path, text)
    assert (found.rule, found.place.file, found.place.line) == (rule, ONE, line)
    assert words in found.says
    assert len(found.says) < 300


@pytest.mark.parametrize("rate", ["1e40 Hz", "1e-40 Hz", "0 Hz", "-1 Hz"])
def test_a_rate_no_logger_has_is_refused_where_it_is_written(rate: str, tmp_path: Path) -> None:
    (found,) = errors(tmp_path, HEAD + ROWS, YAML.replace("PATTERN", f'{{logger: "{PATTERN}", rate: {rate}}}'))
    assert (found.rule, str(found.place)[:16]) == ("no-rate", "campaign.yaml:11")


def test_a_pattern_out_of_the_workspace_is_refused_where_it_is_written(tmp_path: Path) -> None:
    for pattern in ("../{contender}.csv", "/etc/{contender}"):
        (found,) = errors(tmp_path, HEAD + ROWS, YAML.replace("PATTERN", pattern))
        assert (found.rule, found.place.file, found.place.line) == ("leaves-workspace", "campaign.yaml", 11)


def test_a_brace_that_never_closes_is_told(tmp_path: Path) -> None:
    (found,) = errors(tmp_path, HEAD + ROWS, YAML.replace("PATTERN", "{logger: 'raw/run-{contender-{pass}.csv'}"))
    assert (found.rule, found.place.line) == ("unknown-brace", 11)
    assert "closes" in found.says


@pytest.mark.parametrize("ends", ["\r\n", "\r", "\n"])
def test_lines_that_end_in_several_ways_are_lines_all_the_same(ends: str, tmp_path: Path) -> None:
    text = (HEAD + ROWS).replace("\n", "\r\n", 3).replace("88\n", f"88{ends}")
    told = compile_campaign(tmp_path, YAML.replace("PATTERN", PATTERN), **files(text.encode()))
    assert result_of(told, "brightest", "corvane")["value"] == 812


def test_a_file_of_six_thousand_channels_is_read(tmp_path: Path) -> None:
    wide = [["Elapsed (min)", "Ch1 (lx)", *(f"channel {i}" for i in range(5998))]]
    wide += [[str(20 * i), str(812 - i), *(["1"] * 5998)] for i in range(6)]
    text = "".join(",".join(row) + "\n" for row in wide)
    told = compile_campaign(tmp_path, YAML.replace("PATTERN", PATTERN), **files(text))
    assert result_of(told, "brightest", "corvane")["value"] == 812


def test_a_name_that_would_stand_for_many_files_stands_for_itself(tmp_path: Path) -> None:
    """DuckDB takes * ? [ ] in a path for any other signs; a folder may well be called `bench [2026]`."""
    named = {
        "raw [1]/run-corvane-1.csv": HEAD + ROWS,
        "raw [1]/run-ostler-1.csv": OTHER,
        "raw 1/run-corvane-1.csv": OTHER,
    }
    told = compile_campaign(tmp_path, YAML.replace("PATTERN", "'raw [1]/run-{contender}-{pass}.csv'"), **named)
    assert [result_of(told, "brightest", who)["value"] for who in ("corvane", "ostler")] == [812, 1105]


def test_a_file_that_names_two_contenders_is_nobody_s(tmp_path: Path) -> None:
    of_two = {"raw/run-corvane-ostler-1.csv": OTHER}
    yaml = YAML.replace("PATTERN", PATTERN)
    (found,) = [f for f in refusal(tmp_path, yaml, **files(HEAD + ROWS, **of_two)) if f.severity == "error"]
    assert (found.rule, found.place.file) == ("two-contenders", "raw/run-corvane-ostler-1.csv")


UNITS = YAML.replace("corvane: Corvane Lamp", "corvane: {title: Corvane Lamp, specimens: {A: C-1, B: C-2}}")


def test_a_logger_s_file_of_no_specimen_is_refused_as_a_row_is(tmp_path: Path) -> None:
    (found,) = (
        f for f in refusal(tmp_path, UNITS.replace("PATTERN", PATTERN), **files(HEAD + ROWS)) if f.severity == "error"
    )
    assert (found.rule, found.place.file, found.place.line) == ("unknown-specimen", ONE, 0)
    assert "doesn't say which specimen of Corvane Lamp it is of; there are “A”, “B”" in found.says
    assert "{specimen}" in found.do


def test_a_logger_s_file_is_of_the_specimen_in_its_name_or_of_the_usual_one(tmp_path: Path) -> None:
    named = {f"raw/run-corvane-{s}-1.csv": HEAD + ROWS.replace("812", v) for s, v in (("a", "812"), ("B", "832"))}
    pattern = "raw/run-{contender}-{specimen}-{pass}.csv"
    of_two = compile_campaign(
        tmp_path / "named", UNITS.replace("PATTERN", pattern), **named, **{"raw/run-ostler-1-1.csv": OTHER}
    )
    found = result_of(of_two, "brightest", "corvane")
    assert (found["value"], {p["specimen"] for p in found["by_pass"]}) == (822, {"A", "B"})
    usual = UNITS.replace("specimens:", "usual specimen: B, specimens:").replace("PATTERN", PATTERN)
    (only,) = result_of(compile_campaign(tmp_path / "usual", usual, **files(HEAD + ROWS)), "brightest", "corvane")[
        "by_pass"
    ]
    assert only["specimen"] == "B"


def test_a_contender_whose_files_are_named_otherwise_is_warned_of(tmp_path: Path) -> None:
    logs = {"raw/run-ostler-1.csv": OTHER, "raw/run_corvane_1.csv": HEAD + ROWS}
    told = compile_campaign(tmp_path, YAML.replace("PATTERN", PATTERN), **logs)
    (found,) = (f for f in told["findings"] if f["rule"] == "no-file-of-a-contender")
    assert (found["severity"], found["contender"], found["line"]) == ("warning", "corvane", 11)
    assert f"No file is named like {PATTERN} for corvane; the nearest is raw/run_corvane_1.csv." == found["says"]


def test_nobody_is_warned_of_a_contender_that_waits(tmp_path: Path) -> None:
    yaml = YAML.replace("PATTERN", PATTERN) + "    not yet tested: [corvane]\n"
    told = compile_campaign(tmp_path, yaml, **{"raw/run-ostler-1.csv": OTHER})
    assert not [f for f in told["findings"] if f["rule"] == "no-file-of-a-contender"]


@pytest.mark.parametrize("function", ["mean_level", "area", "slope"])
def test_one_sample_has_no_mean_over_time_no_area_and_no_slope(function: str, tmp_path: Path) -> None:
    unit = {"mean_level": "lx", "area": "lx*s", "slope": "lx/s"}[function]
    yaml = YAML.replace("PATTERN", PATTERN).replace("highest", function).replace("unit: lx", f"unit: {unit}")
    found = result_of(compile_campaign(tmp_path, yaml, **files(HEAD + "0,812,100\n")), "brightest", "corvane")
    assert (found["value"], found["u"], found["passes"]) == (None, None, 0)
    assert "sample" in found["missing"]


NUMBERS = """\
title: T
contenders: {corvane: Corvane Urn, ostler: Ostler Urn}
tests: [drip]
"""


def test_a_column_of_numbers_under_a_function_of_traces_is_one_message_at_the_formula(tmp_path: Path) -> None:
    drip = (
        "title: Drip\nreadings: readings.csv\nquantities:\n  flow: {formula: slope(cup), unit: g/min, better: higher}\n"
    )
    rows = "contender,pass,cup\ncorvane,1,180.2\ncorvane,2,181.4\nostler,1,179.3\n"
    told = refusal(tmp_path, NUMBERS, readings=rows, **{"tests/drip.yaml": drip})
    (found,) = [f for f in told if f.severity == "error"]
    assert (found.rule, found.place.file, found.place.line) == ("numbers-for-a-trace", "tests/drip.yaml", 4)
    assert "`slope(cup)` looks along a trace" in found.says
    assert "“180.2” in readings.csv:2" in found.says
    assert "slope_of_parts(cup, …)" in found.do


def test_a_unit_in_the_place_of_a_heading_is_asked_about(tmp_path: Path) -> None:
    yaml = "title: T\ncontenders: {one: One, other: Other}\nreadings: readings.csv\nmeasure:\n"
    yaml += "  drip: {formula: cup * 2, unit: g, better: lower, columns: {cup: g}}\n"
    told = refusal(tmp_path, yaml, readings="contender,cup\none,60.0\nother,70.0\n")
    (found,) = [f for f in told if f.severity == "error"]
    assert found.rule == "missing-column"
    assert "unit: g" in found.do
