"""What is kept between compiles is what was put there, or nothing."""

from __future__ import annotations

import os
from pathlib import Path

from reportgen.store.kept import get, kept_in, key_of, put, tidy


def test_what_was_put_is_what_comes_back(tmp_path: Path) -> None:
    kept = kept_in(tmp_path / ".kept")
    put(kept, key_of("chart", "a"), b"one\ntwo")
    assert get(kept, key_of("chart", "a")) == b"one\ntwo"
    assert get(kept, key_of("chart", "b")) is None


def test_an_altered_or_cut_entry_is_a_miss(tmp_path: Path) -> None:
    kept = kept_in(tmp_path / ".kept")
    key = key_of("chart")
    put(kept, key, b"1234567890")
    (entry,) = (tmp_path / ".kept").glob("??/*")
    whole = entry.read_bytes()
    for broken in (whole[:-1], whole.replace(b"12345", b"12346"), b"", b"\xff\n"):
        entry.write_bytes(broken)
        assert get(kept, key) is None, broken
    entry.write_bytes(whole)
    assert get(kept, key) == b"1234567890"


def test_keys_do_not_run_together() -> None:
    assert key_of("ab", "c") != key_of("a", "bc") != key_of("abc")
    assert key_of("a") == key_of(b"a")


def test_where_nothing_can_be_written_everything_is_a_miss(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    kept = kept_in(tmp_path / "file" / ".kept")
    put(kept, key_of("x"), b"x")
    assert get(kept, key_of("x")) is None


def test_the_least_recently_used_go_first(tmp_path: Path) -> None:
    kept = kept_in(tmp_path / ".kept")
    for age, name in enumerate(("new", "old", "older")):
        put(kept, key_of(name), name.encode() * 100)
        (entry,) = (tmp_path / ".kept").glob(f"{key_of(name)[:2]}/{key_of(name)[2:]}")
        os.utime(entry, (1_000_000 - age, 1_000_000 - age))
    tidy(kept, largest=900)
    assert [bool(get(kept, key_of(name))) for name in ("new", "old", "older")] == [True, True, False]


def test_version_control_is_told_to_pass_it_over(tmp_path: Path) -> None:
    kept_in(tmp_path / ".kept")
    assert (tmp_path / ".kept" / ".gitignore").read_text() == "*\n"
