"""Draws and exact quantiles between compiles: what was found once is told again to the last bit, and nothing else is.

Invented readings throughout; nothing here is held against a number.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from reportgen.build import reckoning_kept
from reportgen.build.run import compile_site
from reportgen.evaluation.evaluated import Evaluation
from reportgen.judgement.reach import remembered
from reportgen.metrology.draws import Draws
from reportgen.store.kept import Kept, get, kept_in, key_of, put
from tests.campaigns import write_campaign
from tests.evaluation.bench import read_in

PROGRAM = "a program"
YAML = """\
title: T
contenders:
  corvane: {title: C, claims: [{says: {box: At least 17 J/s²}, quantity: pull, at least: 17 J/s^2}]}
  ostler: {title: O}
  tamsin: {title: Ta}
tests: [swing]
"""
FILES = {
    "instruments.yaml": "watch: 1 s, accuracy ±0.5 s\nrule: 1 mm, accuracy ±2 mm\n",
    "constants.yaml": "energy: {value: 900 J, within: 9 J, source: a guess}\nsecond: {value: 1 s, source: a definition}\n",
    "tests/swing.yaml": """\
title: A swing
readings:
  file: r.csv
  columns:
    time: {column: time, unit: s, instrument: watch}
    way: {column: way, unit: mm, instrument: rule}
quantities:
  pull: {formula: "energy / time ^ 2", unit: J/s^2, better: higher}
  reach: {formula: "way * 2", unit: mm, better: higher}
headline: pull
""",
    "r.csv": "contender,pass,time,way\n"
    + "".join(
        f"{name},{n},{time},{way + n}\n"
        for name, time, way in (("corvane", 7, 300), ("ostler", 9, 306), ("tamsin", 9, 311))
        for n in (1, 2, 3)
    ),
}


@pytest.fixture(autouse=True)
def _nothing_remembered() -> Iterator[None]:
    forget()
    yield
    forget()


def forget() -> None:
    """As a new process begins."""
    for known in remembered._all:
        known.clear()


def written(place: Path, **changed: str) -> Path:
    return write_campaign(place, YAML, **{**FILES, **changed})


def site(folder: Path) -> dict[str, bytes]:
    out = compile_site(folder).out
    return {str(p.relative_to(out)): p.read_bytes() for p in out.rglob("*") if p.is_file()}


def worked_out(place: Path, kept: Kept, program: str = PROGRAM, **changed: str) -> Evaluation:
    declared, readings = read_in(place, YAML, **{**FILES, **changed})
    forget()
    return reckoning_kept.evaluation(declared, readings, lambda *_: iter(()), program, kept)


def entry(kept: Kept, program: str = PROGRAM) -> dict[str, Any]:
    data = get(kept, key_of("reckoning", program, "stoves"))
    assert data is not None
    found: dict[str, Any] = json.loads(data)
    return found


def never(*_: object) -> None:
    raise AssertionError("drawn again")


def test_some_results_here_are_drawn(tmp_path: Path) -> None:
    found = worked_out(tmp_path, Kept(None))
    assert any(r.draws and r.draws.needed for r in found.results)
    assert any(c.draws and c.draws.needed for c in found.comparisons)


def test_nothing_is_drawn_twice_and_the_site_is_the_same_to_the_byte(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = written(tmp_path / "kept")
    first = site(folder)
    (folder / "conclusions.md").write_text("It swings.\n", encoding="utf-8")
    forget()
    with monkeypatch.context() as no_draws:
        no_draws.setattr(Draws, "of", never)
        again = site(folder)
    forget()
    other = written(tmp_path / "anew")
    assert site(other) == first
    (other / "conclusions.md").write_text("It swings.\n", encoding="utf-8")
    for kept in (other / ".kept").glob("??/*"):
        kept.unlink()
    forget()
    assert site(other) == again
    assert again["stoves/results.json"] == first["stoves/results.json"]


def test_no_quantile_is_looked_for_twice(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    kept = kept_in(tmp_path / "kept")
    first = worked_out(tmp_path / "a", kept)
    assert entry(kept)["numbers"]
    monkeypatch.setattr("reportgen.judgement.reach.convolution._holding", never)
    assert worked_out(tmp_path / "b", kept) == first


def test_a_process_that_works_it_out_again_keeps_every_number(tmp_path: Path) -> None:
    """As `view` does: what it remembers by itself is noted as asked for, and so not let go."""
    kept = kept_in(tmp_path / "kept")
    first = worked_out(tmp_path / "a", kept)
    numbers = entry(kept)["numbers"]
    declared, readings = read_in(tmp_path / "b", YAML, **FILES)
    kept_anew = kept_in(tmp_path / "anew")
    assert reckoning_kept.evaluation(declared, readings, lambda *_: iter(()), PROGRAM, kept_anew) == first
    assert entry(kept_anew)["numbers"] == numbers


def test_a_program_that_changed_draws_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    kept = kept_in(tmp_path / "kept")
    worked_out(tmp_path / "a", kept)
    monkeypatch.setattr(Draws, "of", never)
    with pytest.raises(AssertionError, match="drawn again"):
        worked_out(tmp_path / "b", kept, "another program")


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("r.csv", "corvane,1,7,301", "corvane,1,8,301"),
        ("instruments.yaml", "±0.5 s", "±0.7 s"),
        ("instruments.yaml", "watch: 1 s, accuracy ±0.5 s", "watch: 1 s, accuracy ±0.5 s + 1 % of reading"),
        ("constants.yaml", "within: 9 J", "within: 30 J"),
        ("constants.yaml", "900 J", "905 J"),
        ("tests/swing.yaml", "energy / time ^ 2", "energy / time ^ 2.5 * sqrt(second)"),
        ("tests/swing.yaml", "energy / time ^ 2", "energy * way / way / time ^ 2"),
        ("tests/swing.yaml", "better: higher}\n  reach", "better: higher, over passes: most}\n  reach"),
    ],
)
def test_whatever_changes_what_was_kept_before_makes_no_difference(
    tmp_path: Path, file: str, old: str, new: str
) -> None:
    assert FILES[file].count(old) == 1
    changed = {file: FILES[file].replace(old, new)}
    kept = kept_in(tmp_path / "kept")
    before = worked_out(tmp_path / "a", kept)
    after = worked_out(tmp_path / "b", kept, **changed)
    assert after == worked_out(tmp_path / "c", Kept(None), **changed)
    assert after != before


@pytest.mark.parametrize(
    "wrong",
    [
        lambda row: [],
        lambda row: row[:-1],
        lambda row: "0.1",
        lambda row: {"0": 0.1},
        lambda row: [None, *row[1:]],
        lambda row: [str(x) for x in row],
        lambda row: [True, *row[1:]],
        lambda row: [float("nan"), *row[1:]],
        lambda row: [*row[:-2], 0.0, 1.0] if len(row) > 1 else [1.5],
        lambda row: [*row[:-2], 2.5, 1.0] if len(row) > 1 else [-0.5],
        lambda row: [*row, 0.0],
    ],
)
def test_a_row_that_cannot_be_one_is_drawn_again_and_mended(tmp_path: Path, wrong: Any) -> None:
    kept = kept_in(tmp_path / "kept")
    first, good = worked_out(tmp_path / "a", kept), entry(kept)
    assert {len(row) for row in good["draws"].values()} == {1, 14}
    bad = {"draws": {k: wrong(row) for k, row in good["draws"].items()}, "numbers": good["numbers"]}
    put(kept, key_of("reckoning", PROGRAM, "stoves"), json.dumps(bad).encode())
    assert worked_out(tmp_path / "b", kept) == first
    assert entry(kept) == good


@pytest.mark.parametrize(
    "data", [b"", b"\xff", b"nothing", b"[]", b"3", b'{"draws": []}', b'{"draws": 1, "numbers": {"a": "b"}}']
)
def test_an_entry_that_cannot_be_one_is_no_entry(tmp_path: Path, data: bytes) -> None:
    kept = kept_in(tmp_path / "kept")
    first, good = worked_out(tmp_path / "a", kept), entry(kept)
    put(kept, key_of("reckoning", PROGRAM, "stoves"), data)
    assert worked_out(tmp_path / "b", kept) == first
    assert entry(kept) == good


def test_a_quantile_that_is_no_number_is_looked_for_again(tmp_path: Path) -> None:
    kept = kept_in(tmp_path / "kept")
    first, good = worked_out(tmp_path / "a", kept), entry(kept)
    bad = {"draws": good["draws"], "numbers": dict.fromkeys(good["numbers"], float("nan"))}
    put(kept, key_of("reckoning", PROGRAM, "stoves"), json.dumps(bad).encode())
    assert worked_out(tmp_path / "b", kept) == first
    assert entry(kept) == good


def test_an_entry_altered_on_disk_is_drawn_again(tmp_path: Path) -> None:
    kept = kept_in(tmp_path / "kept")
    first, good = worked_out(tmp_path / "a", kept), entry(kept)
    (file,) = (tmp_path / "kept").glob("??/*")
    data = file.read_bytes()
    at = data.index(b"0.", 200)
    file.write_bytes(data[:at] + b"9." + data[at + 2 :])
    assert worked_out(tmp_path / "b", kept) == first
    assert entry(kept) == good


def test_rows_nobody_asks_for_are_let_go_with_the_next_that_is_new(tmp_path: Path) -> None:
    kept = kept_in(tmp_path / "kept")
    worked_out(tmp_path / "a", kept)
    good = entry(kept)
    more = {"draws": {**good["draws"], "of old": [0.5]}, "numbers": good["numbers"]}
    put(kept, key_of("reckoning", PROGRAM, "stoves"), json.dumps(more).encode())
    worked_out(tmp_path / "b", kept)
    assert entry(kept) == good
