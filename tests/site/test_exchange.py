"""The site is replaced whole or not at all, and nothing but a site is ever replaced."""

from __future__ import annotations

import multiprocessing
import os
from pathlib import Path

import pytest

from reportgen.finding import Refused
from reportgen.site import swap, write
from reportgen.site.write import MARKER, exchange

OLD = {"index.html": b"old", "a/kept.html": b"same", "a/gone.html": b"gone"}
NEW = {"index.html": b"new", "a/kept.html": b"same", "b/more.html": b"more"}


def held(folder: Path) -> dict[str, bytes]:
    return {
        p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file() and p.name != MARKER
    }


@pytest.fixture(params=["one step", "two renames"])
def out(request: pytest.FixtureRequest, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A place for a site, on a system that can exchange folders and on one that can't."""
    if request.param == "two renames":
        monkeypatch.setattr(swap, "exchanged", lambda new, out: False)
    return tmp_path / "site"


def test_a_new_site_takes_the_whole_place_of_the_old_one(out: Path) -> None:
    assert exchange(out, OLD)
    assert exchange(out, NEW)
    assert held(out) == NEW
    assert [p.name for p in out.parent.iterdir()] == ["site"]


def test_an_unchanged_file_is_linked_and_an_unchanged_site_left_alone(out: Path) -> None:
    exchange(out, OLD)
    kept, changed = (out / "a/kept.html").stat().st_ino, (out / "index.html").stat().st_ino
    exchange(out, NEW)
    assert (out / "a/kept.html").stat().st_ino == kept
    assert (out / "index.html").stat().st_ino != changed
    before = out.stat().st_ino
    assert not exchange(out, NEW)
    assert out.stat().st_ino == before


def test_a_file_that_somebody_edited_in_the_site_is_mended(out: Path) -> None:
    exchange(out, NEW)
    (out / "index.html").write_bytes(b"nEw")
    (out / "stray.txt").write_bytes(b"stray")
    assert exchange(out, NEW)
    assert held(out) == NEW


def test_a_full_disk_leaves_the_old_site(out: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    exchange(out, OLD)
    really = Path.write_bytes

    def full(path: Path, data: bytes) -> int:
        if path.name == "more.html":
            raise OSError(28, "No space left on device")
        return really(path, data)

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(OSError, match="No space left"):
        exchange(out, NEW)
    assert held(out) == OLD
    assert [p.name for p in out.parent.iterdir()] == ["site"]


def test_a_refused_second_rename_puts_the_old_site_back(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = tmp_path / "site"
    exchange(out, OLD)
    monkeypatch.setattr(swap, "exchanged", lambda new, out: False)
    really = Path.rename

    def refuse(path: Path, target: Path) -> Path:
        if path.name == ".site.new":
            raise PermissionError(13, "Permission denied")
        return really(path, target)

    monkeypatch.setattr(Path, "rename", refuse)
    with pytest.raises(PermissionError):
        exchange(out, NEW)
    assert held(out) == OLD


def _stop_between_renames(out: Path) -> None:
    swap.exchanged = lambda new, out: False
    really = Path.rename

    def stop(path: Path, target: Path) -> Path:
        if path.name == ".site.new":
            os._exit(9)
        return really(path, target)

    Path.rename = stop  # type: ignore[method-assign, assignment]
    exchange(out, NEW)


def test_a_stop_between_the_two_renames_is_mended_at_the_next_start(tmp_path: Path) -> None:
    out = tmp_path / "site"
    exchange(out, OLD)
    stopped = multiprocessing.get_context("fork").Process(target=_stop_between_renames, args=(out,))
    stopped.start()
    stopped.join()
    assert stopped.exitcode == 9
    assert not out.exists(), "the stop came between the renames"
    write.recover(out)
    assert held(out) == OLD
    exchange(out, NEW)
    assert held(out) == NEW
    assert [p.name for p in tmp_path.iterdir()] == ["site"]


def test_a_folder_that_is_not_a_site_is_refused_and_kept(out: Path) -> None:
    out.mkdir()
    (out / "novel.txt").write_text("chapter one")
    with pytest.raises(Refused, match="isn't a site") as refused:
        exchange(out, NEW)
    assert held(out) == {"novel.txt": b"chapter one"}
    assert refused.value.findings[0].do


def test_a_file_with_the_markers_name_does_not_make_a_site(out: Path) -> None:
    out.mkdir()
    (out / MARKER).write_text('{"version": 3, "name": "somebody else\'s"}')
    with pytest.raises(Refused):
        exchange(out, NEW)


def test_an_empty_folder_is_taken(out: Path) -> None:
    out.mkdir()
    exchange(out, NEW)
    assert held(out) == NEW


def test_a_foreign_folder_beside_is_never_removed(out: Path) -> None:
    beside = out.with_name(".site.new")
    beside.mkdir()
    (beside / "mine.txt").write_text("mine")
    with pytest.raises(Refused):
        exchange(out, NEW)
    assert held(beside) == {"mine.txt": b"mine"}


@pytest.mark.parametrize("where", ["raw", "raw/site", "."])
def test_the_authors_folders_are_kept_clear(tmp_path: Path, where: str) -> None:
    (tmp_path / "raw").mkdir()
    with pytest.raises(Refused, match="author's files"):
        exchange(tmp_path / where, NEW, sources=[tmp_path / "raw"])
    assert not any((tmp_path / "raw").iterdir())


def test_a_linked_folder_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "site").symlink_to(tmp_path / "real")
    exchange(tmp_path / "site", NEW)
    assert (tmp_path / "site").is_symlink()
    assert held(tmp_path / "real") == NEW


def test_addresses_that_leave_the_site_or_differ_in_case_alone_are_not_written(tmp_path: Path) -> None:
    out = tmp_path / "site"
    for address in ("../up.html", "/etc/x", "a//b", "a\\b"):
        with pytest.raises(ValueError, match="not an address"):
            exchange(out, {address: b""})
    with pytest.raises(Refused, match="one file"):
        exchange(out, {"a.html": b"", "A.html": b""})
    assert not out.exists()


def test_a_file_is_copied_as_it_lies_linked_while_unchanged_and_replaced_when_it_differs(
    out: Path, tmp_path: Path
) -> None:
    lies = tmp_path / "run 1.csv"
    lies.write_bytes(b"t,pull\n" * 400_000)  # more than one piece
    assert exchange(out, {"files/run 1.csv": lies})
    first = out / "files" / "run 1.csv"
    assert first.read_bytes() == lies.read_bytes()
    assert not exchange(out, {"files/run 1.csv": lies})
    lies.write_bytes(b"t,pull\n" * 399_999 + b"t,pulL\n")
    assert exchange(out, {"files/run 1.csv": lies})
    assert first.read_bytes() == lies.read_bytes()
    assert exchange(out, {"files/run 1.csv": b"short"})
    assert first.read_bytes() == b"short"
