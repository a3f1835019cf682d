"""Photographs between compiles: a changed one is seen, an unchanged one is made once."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from reportgen.build.run import compile_site
from tests.campaigns import SMALLEST, SMALLEST_READINGS, write_campaign
from tests.photographs import photograph

PICTURE = "stoves/photos/display-64.jpg"


def photographed(place: Path) -> Path:
    yaml = SMALLEST + "photos:\n  display: The display reads 217.1 g.\n"
    return write_campaign(place, yaml, readings=SMALLEST_READINGS, **{"attachments/display.jpg": photograph()})


def test_a_changed_photograph_is_made_anew(tmp_path: Path) -> None:
    folder = photographed(tmp_path)
    first = compile_site(folder)
    before = (first.out / PICTURE).read_bytes()
    assert compile_site(folder).unchanged
    (folder / "attachments/display.jpg").write_bytes(photograph(words="218.4 g"))
    again = compile_site(folder)
    assert not again.unchanged
    assert (again.out / PICTURE).read_bytes() != before


def test_a_photograph_beside_the_campaign_is_watched_too(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    (tmp_path / "content/publication.yaml").write_text("title: Boil and Tell\n", encoding="utf-8")
    folder = photographed(tmp_path)
    (tmp_path / "elsewhere").mkdir()
    (folder / "attachments/display.jpg").rename(tmp_path / "elsewhere/display.jpg")
    text = (folder / "campaign.yaml").read_text(encoding="utf-8")
    text = text.replace(
        "display: The display reads 217.1 g.", "display: {shows: It reads 217.1 g., file: ../elsewhere/display.jpg}"
    )
    (folder / "campaign.yaml").write_text(text, encoding="utf-8")
    assert (compile_site(tmp_path).out / PICTURE).is_file()
    assert compile_site(tmp_path).unchanged
    (tmp_path / "elsewhere/display.jpg").write_bytes(photograph(words="218.4 g"))
    assert not compile_site(tmp_path).unchanged


def test_nothing_is_resized_twice(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = photographed(tmp_path)
    first = compile_site(folder)
    pictures = {p: p.read_bytes() for p in (first.out / "stoves/photos").iterdir()}
    assert len(pictures) == 2

    def never(*_: object) -> dict[str, bytes]:
        raise AssertionError("made again")

    monkeypatch.setattr("reportgen.pictures.draw", never)
    (folder / "conclusions.md").write_text("It boils.\n", encoding="utf-8")
    again = compile_site(folder)
    assert not again.unchanged
    assert {p: p.read_bytes() for p in (again.out / "stoves/photos").iterdir()} == pictures


def test_a_kept_picture_that_was_altered_is_made_again(tmp_path: Path) -> None:
    folder = photographed(tmp_path)
    good = (compile_site(folder).out / PICTURE).read_bytes()
    for entry in (folder / ".kept").glob("??/*"):
        data = bytearray(entry.read_bytes())
        data[-1] ^= 1
        entry.write_bytes(data)
    os.utime(folder / "campaign.yaml", (1, 1))
    assert (compile_site(folder).out / PICTURE).read_bytes() == good
