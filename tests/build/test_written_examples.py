"""The examples an author is given are not only read: together in one workspace they compile to a site."""

from __future__ import annotations

import json
from pathlib import Path

from reportgen.build.run import compile_site
from tests.campaign.written_examples import SHARED, SHORT_FORMS, SMALLEST, SPLIT, write

READINGS = {
    "split/raw/gas-burned.csv": (
        "stove,pass,canister before,canister after\n"
        "corvane,1,231.4,215.1\nostler,1,240.2,226.0\nostler,2,226.0,211.5\ncorvane,2,215.1,190.6\n"
        "corvane,3,190.6,174.0\nostler,3,211.5,197.2\n"
    ),
    "split/raw/times.csv": "contender,pass,boil time\ncorvane,1,230.4\nostler,1,212.4\nostler,2,214.9\ncorvane,2,226.1\n",
}


def test_every_written_example_compiles_in_one_workspace(tmp_path: Path) -> None:
    built = compile_site(write(tmp_path, SMALLEST, SHARED, SHORT_FORMS, SPLIT, READINGS))
    assert built.campaigns == 3
    assert not [f for f in built.findings if f.severity == "error"]
    told = {p.parent.name: json.loads(p.read_text(encoding="utf-8")) for p in built.out.glob("*/results.json")}
    assert set(told) == {"stoves", "short", "split"}
    split = {(r["quantity"], r["contender"]): r for r in told["split"]["results"]}
    assert split["gas-burned", "corvane"]["excluded"] == 1
    assert split["gas-burned", "tamsin"]["missing"] == "not yet tested"
    assert {c["contender"]: c["outcome"] for c in told["split"]["claims"] if c["id"] == "c1"} == {
        "corvane": "supported", "ostler": "not tested",
    }  # fmt: skip
    noise = {r["contender"]: r for r in told["short"]["results"] if r["quantity"] == "noise"}
    assert (noise["ostler"]["limit"], noise["ostler"]["value"]) == ("above", 90)


def test_a_lone_campaign_folder_compiles_as_a_workspace_does(tmp_path: Path) -> None:
    write(tmp_path, SMALLEST)
    built = compile_site(tmp_path / "stoves", tmp_path / "site")
    assert built.campaigns == 1
    assert (tmp_path / "site" / "stoves" / "method.html").is_file()
    assert not (tmp_path / "content").exists()
