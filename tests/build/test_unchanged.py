"""A compile with nothing changed does nothing, quickly; anything changed is seen."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from reportgen.build.run import compile_site
from tests.campaigns import write_campaign

ROOT = Path(__file__).parents[2]
HEAVY = {"numpy", "scipy", "pint", "altair", "pandas", "vl_convert", "playwright", "jinja2", "markdown_it", "yaml"}


@pytest.fixture(scope="module")
def charts(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What was kept of one compile: charts are drawn once for all these tests, and found by what they show."""
    folder = write_campaign(tmp_path_factory.mktemp("drawn"))
    compile_site(folder)
    return folder / ".kept"


@pytest.fixture
def folder(tmp_path: Path, charts: Path) -> Path:
    """A campaign never compiled here."""
    folder = write_campaign(tmp_path)
    shutil.copytree(charts, folder / ".kept")
    return folder


def test_nothing_changed_is_nothing_done_and_the_findings_are_told_again(folder: Path) -> None:
    first = compile_site(folder)
    page = first.out / "stoves/index.html"
    before = page.stat()
    second = compile_site(folder)
    assert (first.unchanged, second.unchanged) == (False, True)
    assert (second.findings, second.pages, second.campaigns) == (first.findings, first.pages, first.campaigns)
    assert page.stat() == before


def edited(path: Path, old: str, new: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


CHANGES: dict[str, Callable[[Path], object]] = {
    "a reading": lambda folder: edited(folder / "readings.csv", "212.4", "213.4"),
    "a word in the declarations": lambda folder: edited(folder / "campaign.yaml", "Corvane Sol", "Corvane Sola"),
    "a new file": lambda folder: (folder / "conclusions.md").write_text("It boils.\n"),
    "a page gone from the site": lambda folder: (folder / ".site/stoves/index.html").unlink(),
    "a page altered on the site": lambda folder: edited(folder / ".site/stoves/index.html", "Corvane", "Corvine"),
    "a file put into the site": lambda folder: (folder / ".site/other.html").write_text("x"),
}


@pytest.mark.parametrize("change", CHANGES.values(), ids=CHANGES)
def test_a_change_is_seen(folder: Path, change: Callable[[Path], object]) -> None:
    compile_site(folder)
    change(folder)
    again = compile_site(folder)
    assert not again.unchanged
    assert not (again.out / "other.html").exists()
    assert compile_site(folder).unchanged


def test_a_change_in_the_workspace_round_the_campaign_is_seen(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    (tmp_path / "content/publication.yaml").write_text("title: Boil and Tell\n")
    compile_site(tmp_path)
    edited(tmp_path / "content/publication.yaml", "Boil", "Brew")
    assert not compile_site(tmp_path).unchanged


def test_a_newer_time_alone_is_no_change(folder: Path) -> None:
    compile_site(folder)
    for path in (folder / "readings.csv", folder / ".site/stoves/index.html"):
        os.utime(path)
    assert compile_site(folder).unchanged


def test_a_stamp_that_was_altered_is_not_believed(folder: Path) -> None:
    compile_site(folder)
    for entry in (folder / ".kept").glob("??/*"):
        entry.write_bytes(entry.read_bytes()[:-2])
    assert not compile_site(folder).unchanged


def test_where_nothing_can_be_kept_the_site_is_made_all_the_same(folder: Path) -> None:
    shutil.rmtree(folder / ".kept")
    (folder / ".kept").write_text("in the way")
    assert compile_site(folder).pages > 0
    assert not compile_site(folder).unchanged


def test_with_nothing_changed_no_library_is_loaded(folder: Path) -> None:
    told = f"""
import sys, contextlib
from reportgen.cli.outcome import run
with contextlib.suppress(SystemExit):
    run(["compile", {str(folder)!r}])
print(*sorted(name for name in sys.modules if "." not in name))
"""
    for words in ("Compiled", "Nothing has changed"):
        done = subprocess.run([sys.executable, "-c", told], cwd=ROOT, capture_output=True, text=True, check=True)
        assert words in done.stdout
    assert set(done.stdout.splitlines()[-1].split()) & HEAVY == set()


def test_a_line_put_above_a_test_draws_no_chart_again(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import reportgen.charts.draw

    first = compile_site(folder)
    before = (first.out / "stoves/tests/boil-time.html").read_text(encoding="utf-8")
    assert "<svg" in before
    edited(folder / "campaign.yaml", "measure:", "# a note\nmeasure:")

    def never(*told: object) -> None:
        raise AssertionError("drawn again")

    monkeypatch.setattr(reportgen.charts.draw, "figures", never)
    assert not compile_site(folder).unchanged
    edited(folder / "readings.csv", "212.4", "213.4")
    with pytest.raises(AssertionError, match="drawn again"):
        compile_site(folder)
