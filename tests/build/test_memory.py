"""A process that compiles again makes anew what a change touched, and ends with the very site of a clean compile."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from reportgen.build.memory import Memory, Standing, same
from reportgen.build.progress import Progress
from reportgen.build.run import compile_site
from reportgen.finding import Refused
from tests.campaigns import write_campaign

YAML = """
title: Which {what} is quicker?
contenders: {{corvane: Corvane Sol, ostler: Ostler Mk II}}
measure:
  boil time: timed, s, lower
readings: readings.csv
"""
ROWS = "contender,pass,boil time\ncorvane,1,212.4\nostler,1,230.1\ncorvane,2,214.9\nostler,2,226.4\n"
TEXT = "# What we make of it\n\nCorvane took [](value:boil time/corvane).\n"


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    root = tmp_path / "work"
    (root / "content").mkdir(parents=True)
    (root / "content/publication.yaml").write_text("title: Boil and Tell\n", encoding="utf-8")
    (root / "content/about.md").write_text("# About\n\nWe test.\n", encoding="utf-8")
    for what in ("stove", "kettle"):
        write_campaign(tmp_path / what, YAML.format(what=what), readings=ROWS, **{"conclusions.md": TEXT}).rename(
            root / what
        )
    return root


def add(path: str, text: str) -> Callable[[Path], object]:
    def change(root: Path) -> object:
        file = root / path
        file.parent.mkdir(exist_ok=True)
        return file.write_text((file.read_text(encoding="utf-8") if file.exists() else "") + text, encoding="utf-8")

    return change


def instead(path: str, old: str, new: str) -> Callable[[Path], object]:
    def change(root: Path) -> object:
        text = (root / path).read_text(encoding="utf-8")
        assert old in text
        return (root / path).write_text(text.replace(old, new), encoding="utf-8")

    return change


EDITS = {
    "a word in a text": add("stove/conclusions.md", "\nAnd that is that.\n"),
    "a reading": instead("stove/readings.csv", "212.4", "202.4"),
    "a line put above": instead("stove/campaign.yaml", "measure:", "# as on the bench\nmeasure:"),
    "a title": instead("kettle/campaign.yaml", "Ostler Mk II", "Ostler Mk III"),
    "a caveat": add("stove/campaign.yaml", "caveats:\n  - about: boil time\n    says: Indoors only.\n"),
    "a text of the site": add("content/about.md", "\nFor years.\n"),
    "a setting": add("content/publication.yaml", "contact: letters at example.org\n"),
    "a text that is passed on": add("stove/attachments/notes.md", "Kept dry.\n"),
    "a word in it": add("stove/attachments/notes.md", "Kept cool as well.\n"),
    "a new text": add("kettle/method.md", "# How\n\nWith care.\n"),
    "a whole campaign less": lambda root: shutil.rmtree(root / "kettle"),
}


def files(site: Path) -> dict[str, bytes]:
    return {str(p.relative_to(site)): p.read_bytes() for p in sorted(site.rglob("*")) if p.is_file()}


def test_after_each_of_many_changes_the_site_is_that_of_a_clean_compile(workspace: Path, tmp_path: Path) -> None:
    standing = Standing()
    before: dict[str, bytes] = {}
    for what, change in {"nothing": lambda root: None, **EDITS}.items():
        change(workspace)
        now = files(compile_site(workspace, standing=standing).out)
        assert now != before, f"{what} changed nothing"
        bare = tmp_path / "bare" / what.replace(" ", "-")
        shutil.copytree(workspace, bare, ignore=shutil.ignore_patterns(".site", ".kept"))
        assert now == files(compile_site(bare).out), what
        before = now


def steps_after(workspace: Path, change: Callable[[Path], object], monkeypatch: pytest.MonkeyPatch) -> set[str]:
    """What is worked out anew after a change, by name."""
    standing = Standing()
    compile_site(workspace, standing=standing)
    change(workspace)
    worked: set[str] = set()
    again = Memory.again

    def watched(self: Memory, name: str, given: tuple[object, ...], work: Callable[[], object]) -> object:
        def noted() -> object:
            worked.add(name)
            return work()

        return again(self, name, given, noted)

    monkeypatch.setattr(Memory, "again", watched)
    compile_site(workspace, standing=standing)
    return worked


def test_a_word_in_a_text_works_out_no_result_and_draws_nothing(
    workspace: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    worked = steps_after(workspace, EDITS["a word in a text"], monkeypatch)
    assert "writing pages with the author's texts" in worked
    assert not worked & {
        *("reading the measurements", "working out results", "drawing charts", "writing pages", "making pictures"),
        *("noting it in the archive", "pages across campaigns"),
    }


def test_a_reading_of_one_campaign_leaves_the_other_alone(workspace: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    standing = Standing()
    compile_site(workspace, standing=standing)
    kettle = dict(standing.campaigns["kettle"].last)
    EDITS["a reading"](workspace)
    compile_site(workspace, standing=standing)
    assert standing.campaigns["kettle"].last["working out results"] is kettle["working out results"]
    assert standing.campaigns["kettle"].last["writing pages"] is kettle["writing pages"]


def test_a_mistake_and_its_mending_are_both_seen(workspace: Path) -> None:
    standing = Standing()
    site = files(compile_site(workspace, standing=standing).out)
    instead("stove/readings.csv", "212.4", "twelve")(workspace)
    with pytest.raises(Refused, match="twelve"):
        compile_site(workspace, standing=standing)
    instead("stove/readings.csv", "twelve", "212.4")(workspace)
    assert files(compile_site(workspace, standing=standing).out) == site


def test_every_step_is_told_though_none_is_run(workspace: Path) -> None:
    standing = Standing()
    first: list[Progress] = []
    compile_site(workspace, tell=first.append, standing=standing)
    EDITS["a text of the site"](workspace)
    again: list[Progress] = []
    compile_site(workspace, tell=again.append, standing=standing)
    assert [p.step for p in again] == [p.step for p in first]


def test_what_cannot_be_compared_is_not_the_same() -> None:
    class Strange:
        def __eq__(self, other: object) -> bool:
            raise ValueError("neither true nor false")

    one = Strange()
    assert same(one, one)
    assert not same(one, Strange())
    assert not same(1, True)
