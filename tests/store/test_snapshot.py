"""Times shorten the way to a digest and never decide."""

from __future__ import annotations

import os
import time
from pathlib import Path

from reportgen.store.snapshot import UNSURE, contents, files_under, take


def test_a_change_that_keeps_size_and_time_is_seen_while_the_clock_is_unsure(tmp_path: Path) -> None:
    file = tmp_path / "readings.csv"
    file.write_text("1.0")
    stat = file.stat()
    before = take([file], {}, time.time_ns())
    file.write_text("2.0")
    os.utime(file, ns=(stat.st_atime_ns, stat.st_mtime_ns))
    assert contents(take([file], before, time.time_ns())) != contents(before)


def test_a_file_that_has_rested_is_not_read_again(tmp_path: Path) -> None:
    file = tmp_path / "readings.csv"
    file.write_text("1.0")
    rested = time.time_ns() - 2 * UNSURE
    os.utime(file, ns=(rested, rested))
    before = take([file], {}, time.time_ns())
    file.write_text("2.0")
    os.utime(file, ns=(rested, rested))
    assert take([file], before, time.time_ns()) == before


def test_touching_a_file_changes_no_contents(tmp_path: Path) -> None:
    file = tmp_path / "readings.csv"
    file.write_text("1.0")
    before = take([file], {}, time.time_ns())
    os.utime(file, (1, 1))
    after = take([file], before, time.time_ns())
    assert after != before
    assert contents(after) == contents(before)


def test_a_file_that_goes_or_comes_changes_the_contents(tmp_path: Path) -> None:
    (tmp_path / "a").write_text("a")
    before = contents(take(files_under(tmp_path), {}, time.time_ns()))
    (tmp_path / "b").write_text("b")
    assert set(contents(take(files_under(tmp_path), {}, time.time_ns()))) - set(before) == {str(tmp_path / "b")}


def test_hidden_folders_and_what_is_left_out_are_passed_over(tmp_path: Path) -> None:
    for name in ("raw/a.csv", ".git/config", "site/index.html", "__pycache__/x.pyc"):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text("x")
    found = files_under(tmp_path, frozenset({tmp_path / "site"}))
    assert [path.relative_to(tmp_path).as_posix() for path in found] == ["raw/a.csv"]
