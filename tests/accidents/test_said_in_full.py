"""What a reader could misread: a value that is only so far, how often, of which part, a unit taken for a column."""

from __future__ import annotations

from pathlib import Path

from tests.campaigns import comparison_of, compile_campaign, result_of, results_of
from tests.pages.reading import read

HEAD = "title: Three tubs\ncontenders: {velmar: Velmar, osbrand: Osbrand, sump: Sump}\n"


def page(place: Path, address: str) -> str:
    return read((place / "stoves" / ".site" / "stoves" / f"{address}.html").read_text(encoding="utf-8")).text


def test_a_value_that_is_only_so_far_and_no_bound_has_no_rank(tmp_path: Path) -> None:
    yaml = (
        HEAD + "measure: {water drawn: 'one reading, g, higher'}\nreadings: readings.csv\n"
        "running: {contender: osbrand, since: 2026-05-02}\n"
    )
    told = results_of(tmp_path, yaml, readings="contender,water drawn\nvelmar,104\nosbrand,88\nsump,110\n")
    ours = result_of(told, "water-drawn", "osbrand")
    assert (ours["value"], ours["rank"]) == (88, None)
    assert "so far" in ours["blocked"]
    assert [f["unranked"] for f in told["first"]] == [["osbrand"]]
    assert comparison_of(told, "water-drawn", "velmar", "osbrand")["favours"] is None


def test_how_often_is_said_where_the_words_do_not(tmp_path: Path) -> None:
    yaml = (
        HEAD + "measure: {water drawn: 'one reading, g, higher', stops: 'count of stop, in water drawn'}\n"
        "readings: readings.csv\n"
        "incidents:\n"
        "  - {contender: sump, about: water drawn, event: stop, times: 3, what: The fan stopped.}\n"
        "  - {contender: velmar, about: water drawn, event: stop, times: 2, what: The fan stopped twice.}\n"
    )
    told = compile_campaign(tmp_path, yaml, readings="contender,water drawn\nvelmar,104\nosbrand,88\nsump,110\n")
    assert [result_of(told, "stops", c)["value"] for c in ("velmar", "osbrand", "sump")] == [2, 0, 3]
    text = page(tmp_path, "tests/water-drawn")
    assert "The fan stopped. Three times." in text
    assert "The fan stopped twice." in text
    assert "Two times" not in text


def test_the_working_of_a_sum_names_its_parts(tmp_path: Path) -> None:
    yaml = (
        HEAD + "measure:\n  water drawn: {kind: one reading, unit: g, better: higher, over parts: sum}\n"
        "readings: readings.csv\n"
    )
    rows = "contender,part,water drawn\n" + "".join(
        f"{c},{part},{g}\n"
        for c, (one, two) in {"velmar": (70.2, 51.5), "osbrand": (60.1, 40.2), "sump": (66.0, 50.9)}.items()
        for part, g in (("first 30 h", one), ("last 42 h", two))
    )
    told = compile_campaign(tmp_path, yaml, readings=rows)
    assert round(result_of(told, "water-drawn", "velmar")["value"], 6) == 121.7
    text = page(tmp_path, "tests/water-drawn")
    assert "water drawn, first 30 h" in text
    assert "water drawn, last 42 h" in text


def test_a_unit_written_where_a_column_is_named_is_asked_about(tmp_path: Path) -> None:
    yaml = (
        HEAD + "measure:\n  brine: {formula: full_jar - empty_jar, unit: g, better: lower,"
        " columns: {full jar: g, empty jar: g}}\nreadings: log.csv\n"
    )
    log = "contender,what,value\nvelmar,full jar,104\nvelmar,empty jar,88\n"
    told = results_of(tmp_path, yaml, **{"log.csv": log})
    asked = [f["do"] for f in told["findings"] if f["rule"] == "no-readings"]
    assert any("write `full jar: {unit: g}`" in do for do in asked)


def test_two_records_that_both_stand_are_both_unstruck(tmp_path: Path) -> None:
    yaml = (
        HEAD + "measure: {water drawn: 'one reading, g, higher'}\nreadings: readings.csv\n"
        "two records: {where: 'sump, water drawn', said: [512 g, 521 g], used: not known, because: Two notebooks.}\n"
    )
    compile_campaign(tmp_path, yaml, readings="contender,water drawn\nvelmar,504\nosbrand,488\nsump,512\n")
    html = (tmp_path / "stoves" / ".site" / "stoves" / "tests" / "water-drawn.html").read_text(encoding="utf-8")
    assert "<del" not in html
    assert "512 g and 521 g" in page(tmp_path, "tests/water-drawn").replace("\u00a0", " ")
    assert "512.000" not in html


def test_an_interval_says_that_a_rough_reading_is_part_of_it(tmp_path: Path) -> None:
    yaml = HEAD + "measure: {water drawn: 'one reading, g, higher, kitchen-scale'}\nreadings: readings.csv\n"
    compile_campaign(
        tmp_path / "rough", yaml, readings="contender,water drawn\nvelmar,about 100\nosbrand,88\nsump,110\n"
    )
    compile_campaign(tmp_path / "plain", yaml, readings="contender,water drawn\nvelmar,104\nosbrand,88\nsump,110\n")
    rough, plain = (page(tmp_path / name, "tests/water-drawn") for name in ("rough", "plain"))
    assert "of the instrument and of how roughly it was read" in rough
    assert "what the instrument and a rough reading leave open" in rough
    assert "roughly" not in plain
