"""A finding in the terminal: place, what is wrong, why, what to do; the worst three in full."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest

from reportgen.cli.dressed import dressed
from reportgen.cli.finding_told import where
from reportgen.cli.say import as_rows, counted, in_plain_text
from reportgen.finding import Finding, Place


def warning(line: int, **more: str) -> Finding:
    return Finding("warning", "unread-column", Place("raw/a.csv", line, 2), f"column {line} is not read", **more)  # type: ignore[arg-type]  # a slip fails the test


ERROR = Finding(
    "error",
    "unknown-key",
    Place("campaign.yaml", 4, 1),
    "“contendres” is no key",
    "It would be lost.",
    "Write contenders.",
)


def test_the_first_line_names_file_line_and_column_then_why_and_what_to_do() -> None:
    assert in_plain_text([ERROR]) == [
        "error   campaign.yaml:4:1  “contendres” is no key",
        "    Why: It would be lost.",
        "    Do:  Write contenders.",
    ]


def test_the_worst_three_come_first_and_in_full_and_the_rest_a_line_each() -> None:
    lines = in_plain_text([*(warning(n, why=f"w{n}") for n in range(1, 6)), ERROR])
    assert lines[0].startswith("error")
    assert sum("Why:" in line for line in lines) == 3
    assert len(lines) == 6 + 3 + 1


def test_a_reason_is_told_once_and_leaves_the_room_to_others() -> None:
    findings = [*(warning(n, why="same", do="mend") for n in range(1, 6)), warning(6, why="other")]
    lines = in_plain_text(findings)
    assert [line for line in lines if line.startswith("    ")] == ["    Why: same", "    Do:  mend", "    Why: other"]
    assert lines[-1] == "    Why: other"


def test_of_every_error_it_is_told_what_to_do() -> None:
    errors = [Finding("error", "wrong-value", Place("a.yaml", n), "says", f"why {n}", f"do {n}") for n in range(1, 6)]
    lines = in_plain_text(errors)
    assert [line for line in lines if "Do:" in line] == [f"    Do:  do {n}" for n in range(1, 6)]
    assert sum("Why:" in line for line in lines) == 3


def test_what_can_be_accepted_names_its_rule() -> None:
    (line,) = in_plain_text([warning(1)])
    assert line.endswith(f"[{warning(1).rule}]")


def test_what_the_author_accepted_is_counted_and_not_shown() -> None:
    findings = [warning(1), warning(2, accepted="the column is for us")]
    assert len(in_plain_text(findings)) == 1
    assert counted(findings) == "1 warning (1 accepted)"
    assert counted([]) == "nothing to mend"
    assert [row["accepted"] for row in as_rows(findings)] == [None, "the column is for us"]


def test_a_place_is_named_so_that_it_can_be_opened_from_here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert where(Place("campaign.yaml", 3, 1), tmp_path / "stoves") == "stoves/campaign.yaml:3:1"
    (tmp_path / "elsewhere").mkdir()
    monkeypatch.chdir(tmp_path / "elsewhere")
    assert where(Place("campaign.yaml", 3), tmp_path / "stoves") == f"{tmp_path}/stoves/campaign.yaml:3"


@pytest.mark.parametrize("no_color", [False, True])
def test_on_a_terminal_lines_are_folded_and_only_colour_can_be_turned_off(
    no_color: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    class Terminal(io.StringIO):
        def isatty(self) -> bool:
            return True

    for name, value in (("COLUMNS", "60"), ("TERM", "xterm")):
        monkeypatch.setenv(name, value)
    monkeypatch.setenv("NO_COLOR", "1") if no_color else monkeypatch.delenv("NO_COLOR", raising=False)
    terminal = Terminal()
    dressed([ERROR, warning(7, why="word " * 40)], None, terminal)
    told = terminal.getvalue()
    assert ("\x1b[1;31m" in told) is not no_color
    plain = re.sub(r"\x1b\[[0-9;]*m", "", told)
    assert max(map(len, plain.splitlines())) <= 60
    assert "campaign.yaml:4:1" in plain
    assert plain.count("word") == 40


def test_a_place_in_a_spreadsheet_keeps_its_sheet_and_cell(tmp_path: Path) -> None:
    place = Place("raw/day.xlsx", 5, 3, "Bench")
    assert where(place, tmp_path).endswith("raw/day.xlsx, sheet Bench, cell C5")
    (row,) = as_rows([Finding("error", "r", place, "says")])
    assert (row["sheet"], row["line"], row["column"]) == ("Bench", 5, 3)
