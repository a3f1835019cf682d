"""Every example of the handbook is compiled; those marked `refused` are refused.

A fenced block whose first line names a file (```` ```yaml campaign.yaml ````) is that file. Files gather through a page: each section
is compiled with what came before it, as an author following along would have it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from reportgen.audit.rules import RULES
from reportgen.campaign.kinds import KINDS
from reportgen.campaign.schema import FILE_KINDS, schema_of
from tests.campaigns import compile_folder
from tests.handbook.made import made

HANDBOOK = Path(__file__).parents[2] / "content" / "handbook"
ANEW = ("tests/", "contenders/", "verdict.yaml")
BLOCK = re.compile(r"^```\w+ (?P<file>\S+\.\w+)(?P<refused> refused)?\n(?P<text>.*?)^```$", re.M | re.S)


@dataclass(frozen=True)
class Example:
    name: str
    files: dict[str, str]
    refused: bool


def examples() -> Iterator[Example]:
    """A section with files, as the page stands after it; a new campaign.yaml keeps tables, instruments and methods alone."""
    apart = {HANDBOOK / "themes.md", HANDBOOK / "languages.md"}  # no campaigns: test_themes.py, test_languages.py
    for page in sorted(set(HANDBOOK.glob("*.md")) - apart):
        files: dict[str, str] = {}
        for section in re.split(r"^## ", page.read_text(encoding="utf-8"), flags=re.M):
            found = list(BLOCK.finditer(section))
            if not found:
                continue
            here = {m["file"]: m["text"] for m in found}
            if any(m["refused"] for m in found):
                yield Example(f"{page.stem}: {section.splitlines()[0]}", files | here, refused=True)
                continue
            kept = {n: t for n, t in files.items() if "campaign.yaml" not in here or not n.startswith(ANEW)}
            files = kept | here
            if "instruments/hall-meter.yaml" in here:  # the long form takes the place of the short one
                assert "hall-meter" not in here["instruments.yaml"]
            yield Example(f"{page.stem}: {section.splitlines()[0]}", dict(files), refused=False)


EXAMPLES = list(examples())


def test_the_handbook_has_its_examples() -> None:
    assert len(EXAMPLES) >= 25
    assert sum(e.refused for e in EXAMPLES) >= 2


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda e: e.name)
def test_an_example_of_the_handbook_does_what_it_says(example: Example, tmp_path: Path) -> None:
    from reportgen.finding import Refused

    folder = tmp_path / "stoves"
    for name, text in example.files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(made(name, text))
    if example.refused:
        with pytest.raises(Refused) as refused:
            compile_folder(folder)
        assert all(f.place.file and f.says for f in refused.value.findings)
        return
    told = compile_folder(folder)
    assert told["results"]
    said = ("limit", "grade", "stands")
    assert all(r["value"] is not None or any(r[s] for s in said) for r in told["results"] if not r.get("missing"))


def test_the_handbook_names_every_rule_of_the_audit() -> None:
    page = (HANDBOOK / "audit.md").read_text(encoding="utf-8")
    assert [r.name for r in RULES] == re.findall(r"^\| `([\w-]+)` \|", page, flags=re.M)


def test_the_handbook_names_every_kind() -> None:
    page = (HANDBOOK / "kinds-and-formulas.md").read_text(encoding="utf-8")
    assert set(KINDS) <= {row.strip() for row in re.findall(r"^\| ([\w/ ]+) \|", page, flags=re.M)}


def test_every_page_of_the_handbook_is_in_its_contents() -> None:
    contents = (HANDBOOK / "index.md").read_text(encoding="utf-8")
    named = re.findall(r"\]\(([\w-]+\.md)\)", contents)
    assert set(named) == {p.name for p in HANDBOOK.glob("*.md")} - {"index.md"}
    assert len(named) == len(set(named))


def test_the_handbook_tells_every_key_of_the_schemas() -> None:
    pages = ((HANDBOOK / name).read_text(encoding="utf-8") for name in ("keys.md", "keys-shared.md"))
    told = {key for page in pages for key in re.findall(r"^\| `([^`]+)` \|", page, flags=re.M)}
    known = {key for kind in FILE_KINDS for key in _keys(schema_of(kind))}
    assert {"weight", "address"} <= known
    assert known - {"$schema"} == told


def _keys(schema: object) -> Iterator[str]:
    """Every key that some mapping of a schema may have."""
    if isinstance(schema, dict):
        named = {"properties", "$defs"}
        yield from schema.get("properties", {})
        for name in named & schema.keys():
            for inner in schema[name].values():
                yield from _keys(inner)
        for name, inner in schema.items():
            if name not in named:
                yield from _keys(inner)
    elif isinstance(schema, list):
        for inner in schema:
            yield from _keys(inner)


def test_the_handbook_names_every_instrument_and_method_that_comes_with_the_program() -> None:
    page = (HANDBOOK / "instruments-and-methods.md").read_text(encoding="utf-8")
    shared = HANDBOOK.parents[1] / "shared"
    instruments = re.findall(r"^([a-z][\w-]*):$", (shared / "instruments.yaml").read_text(encoding="utf-8"), flags=re.M)
    instruments += [path.stem for path in (shared / "instruments").glob("*.yaml")]
    assert sorted(instruments) == sorted(re.findall(r"^\| `([\w-]+)` \|", page, flags=re.M))
    assert all(f"`{path.name.split('.')[0]}`" in page for path in (shared / "methods").glob("*.yaml"))
