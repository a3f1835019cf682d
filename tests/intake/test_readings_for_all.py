"""One reading for every contender, and readings taken against another one: which keys they get, and what is refused."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from reportgen.campaign.declared import Test
from tests.intake.table_bench import by_key, measure, read, the_error


def jars() -> Test:
    return measure("net", headings=("full", "jar"))


def served(place: Path, text: str, *tests: Test) -> dict[tuple[str, str, str], Decimal | None]:
    """Contender, pass and name → value, of what serves all contenders."""
    return {key: r.value for key, r in by_key(read(place, text, *(tests or (jars(),)))).items() if r.for_all}


def test_a_row_for_all_without_a_pass_serves_every_pass_of_each(tmp_path: Path) -> None:
    found = served(tmp_path, "contender,full,jar\nall,,120\ncorvane,351,\ncorvane,355,\nostler,380,\n")
    assert found == {
        ("corvane", "1", "jar"): 120,
        ("corvane", "2", "jar"): 120,
        ("ostler", "1", "jar"): 120,
    }


def test_with_a_pass_it_serves_that_pass(tmp_path: Path) -> None:
    text = "contender,pass,full,jar\nall,1,,120\nall,2,,121\ncorvane,1,351,\ncorvane,2,355,\nostler,2,380,\n"
    assert served(tmp_path, text) == {
        ("corvane", "1", "jar"): 120,
        ("corvane", "2", "jar"): 121,
        ("ostler", "2", "jar"): 121,
    }


def test_a_column_for_all_of_a_wide_table(tmp_path: Path) -> None:
    text = "what,all,corvane,ostler\njar,120,,\nfull,,351,380\nfull,,355,386\n"
    assert served(tmp_path, text) == {(c, p, "jar"): 120 for c in ("corvane", "ostler") for p in ("1", "2")}


def test_a_row_of_a_bench_log_for_all(tmp_path: Path) -> None:
    text = "contender,what,value\nall,jar,120\ncorvane,full,351\nostler,full,380\n"
    assert served(tmp_path, text) == {(c, "1", "jar"): 120 for c in ("corvane", "ostler")}


def test_a_test_read_only_for_all_gives_each_contender_one_pass(tmp_path: Path) -> None:
    assert served(tmp_path, "contender,room\nAll,20.5\n", measure("room", "°C")) == {
        ("corvane", "1", "room"): Decimal("20.5"),
        ("ostler", "1", "room"): Decimal("20.5"),
    }


def test_a_contenders_own_reading_or_stated_absence_counts_before_it(tmp_path: Path) -> None:
    readings = by_key(read(tmp_path, "contender,full,jar\nall,,120\ncorvane,351,118\nostler,380,none (lost)\n", jars()))
    assert readings["corvane", "1", "jar"].value == 118
    assert not readings["corvane", "1", "jar"].for_all
    assert readings["ostler", "1", "jar"].absent_because == "lost"


def test_two_readings_for_all_want_passes(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,full,jar\nall,,120\nall,,121\ncorvane,351,\nostler,380,\n", jars())
    assert (found.rule, found.place.line, found.place.column) == ("reading-twice", 3, 3)
    text = "contender,pass,full,jar\nall,,,120\nall,1,,121\ncorvane,1,351,\nostler,1,380,\n"
    assert the_error(tmp_path, text, jars()).rule == "reading-twice"


def test_a_pass_nobody_ran_is_refused(tmp_path: Path) -> None:
    text = "contender,pass,full,jar\nall,3,,120\ncorvane,1,351,118\nostler,1,380,118\n"
    assert the_error(tmp_path, text, jars()).rule == "reading-for-nobody"


def test_a_reading_against_itself_or_of_all_is_refused(tmp_path: Path) -> None:
    for row in ("corvane,corvane + 5\nostler,7", "corvane,7\nall,ostler + 5", "corvane,7\nostler,the red one + 5"):
        assert the_error(tmp_path, f"contender,mass\n{row}\n", measure("mass")).rule == "against-itself"


def test_readings_that_stand_on_each_other_are_refused_once(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,mass\ncorvane,ostler + 5\nostler,corvane - 5\n", measure("mass"))
    assert found.rule == "against-circle"
    assert "corvane" in found.says
    assert "ostler" in found.says


def test_the_other_contender_must_have_a_reading(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,mass\ncorvane,ostler + 5\n", measure("mass"))
    assert (found.rule, found.place.line) == ("against-nothing", 2)


def test_of_several_passes_the_same_one_is_meant_or_asked_for(tmp_path: Path) -> None:
    text = "contender,pass,mass\nostler,1,7\nostler,2,8\ncorvane,{},ostler + 5\n"
    assert read(tmp_path, text.format(2), measure("mass"))
    found = the_error(tmp_path, text.format(3), measure("mass"))
    assert found.rule == "against-nothing"
    assert "1, 2" in found.says


@pytest.mark.parametrize("pass_", ["", "pass,"])
def test_without_a_pass_the_other_contenders_several_readings_are_asked_about(tmp_path: Path, pass_: str) -> None:
    """Passes that were only counted tell which is meant where both have as many, in the order of the table."""
    rows = ["contender,pass,mass", "ostler,1,7", "ostler,2,8", "corvane,,ostler + 5"]
    if not pass_:
        rows = ["contender,mass", "ostler,7", "ostler,8", "corvane,ostler + 5"]
    found = the_error(tmp_path, "\n".join(rows), measure("mass"))
    assert (found.rule, found.place.line) == ("against-nothing", 4)
    assert found.says == "“ostler + 5” names no pass, and ostler has passes 1, 2."
    assert found.do.startswith("Write in `pass` which of ostler it was read against")
    assert read(tmp_path, "\n".join((*rows, rows[-1])), measure("mass"))


def test_a_cell_that_cannot_be_read_is_told_alone_not_what_stands_on_it(tmp_path: Path) -> None:
    found = the_error(tmp_path, "contender,mass\nostler,heavy\ncorvane,ostler + 5\n", measure("mass"))
    assert (found.rule, found.place.line) == ("not-a-number", 2)
