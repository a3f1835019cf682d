"""One small builder for every test that puts a campaign through the program as a user would.

`results_of(tmp_path, YAML, readings=CSV)` writes the files and gives back results.json; `compile_campaign` compiles the
whole site for it, which takes ten times as long and is for tests that look at pages.
"""

from __future__ import annotations

import json
from pathlib import Path
from textwrap import dedent
from typing import Any

from reportgen.finding import Finding, Refused

SMALLEST = """\
title: Which stove boils a litre on the least gas?
contenders:
  corvane: Corvane Sol
  ostler: Ostler Mk II
measure:
  gas burned:
    kind: weighed before and after
    unit: g
    better: lower
  boil time:
    kind: timed
    unit: s
    better: lower
readings: readings.csv
"""
SMALLEST_READINGS = """\
contender,pass,gas burned before,gas burned after,boil time
corvane,1,231.4,217.1,212.4
ostler,1,240.2,223.9,230.1
ostler,2,223.9,207.2,226.4
corvane,2,217.1,202.6,214.9
"""


def write_campaign(place: Path, yaml_text: str = SMALLEST, **files: str | bytes) -> Path:
    """A campaign folder `stoves` under `place`, which lies in no workspace.

    `readings=` is `readings.csv`; other files come by path: ``**{"tests/noise.yaml": "…"}``. Text is dedented.
    """
    folder = place / "stoves"
    if yaml_text is SMALLEST and not files:
        files = {"readings": SMALLEST_READINGS}
    for name, content in {"campaign.yaml": yaml_text, **files}.items():
        path = folder / ("readings.csv" if name == "readings" else name)
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content if isinstance(content, bytes) else dedent(content).encode())
    return folder


def compile_folder(folder: Path) -> dict[str, Any]:
    """results.json of the one campaign in `folder`, compiled as it stands; the site is left at `folder/.site`."""
    from reportgen.build.run import compile_site

    built = compile_site(folder)
    (path,) = built.out.glob("*/results.json")
    told = json.loads(path.read_text(encoding="utf-8"))
    assert isinstance(told, dict)
    return told


def compile_campaign(place: Path, yaml_text: str = SMALLEST, **files: str | bytes) -> dict[str, Any]:
    """`write_campaign`, then `compile_folder`."""
    return compile_folder(write_campaign(place, yaml_text, **files))


def results_of(place: Path, yaml_text: str = SMALLEST, **files: str | bytes) -> dict[str, Any]:
    """`write_campaign`, then `results_in`."""
    return results_in(write_campaign(place, yaml_text, **files))


def results_in(folder: Path) -> dict[str, Any]:
    """results.json of the one campaign in `folder` as a compile would write it: through the same steps, without charts
    and pages. Raises `Refused` where a compile does."""
    from reportgen.build import campaign_steps
    from reportgen.build.in_reach import InReach
    from reportgen.build.memory import Memory
    from reportgen.build.steps import CHECKED, READ, follow
    from reportgen.campaign.publication import load_publication
    from reportgen.site.texts import SiteTexts
    from reportgen.sources import find_workspace
    from reportgen.store.kept import Kept

    workspace = find_workspace(folder)
    publication, _ = load_publication(workspace)
    begin = {
        "workspace": workspace,
        "folder": "",
        "publication": publication,
        "language": publication.speaks,
        "site_texts": SiteTexts(),
        "in_reach": InReach("", ""),
        "program": "",
        "kept": Kept(None),
        "others": (),
    }
    made = follow((*READ, *CHECKED), begin, lambda step: None, Memory())
    if any(finding.severity == "error" for finding in made["findings"]):
        raise Refused(made["findings"])
    parts = (made[name] for name in ("measured", "evaluation", "findings", "readings", "publication"))
    told = json.loads(campaign_steps.record(*parts))
    assert isinstance(told, dict)
    return told


def refusal(place: Path, yaml_text: str = SMALLEST, **files: str | bytes) -> tuple[Finding, ...]:
    """What keeps a campaign from compiling; fails where nothing does."""
    from reportgen.build.run import compile_site

    folder = write_campaign(place, yaml_text, **files)
    try:
        compile_site(folder)
    except Refused as refused:
        assert not (folder / ".site").exists()
        return refused.findings
    raise AssertionError("the campaign compiled")


def result_of(told: dict[str, Any], quantity: str, contender: str) -> dict[str, Any]:
    """The one result of a quantity for a contender."""
    (found,) = [r for r in told["results"] if (r["quantity"], r["contender"]) == (quantity, contender)]
    assert isinstance(found, dict)
    return found


def comparison_of(told: dict[str, Any], quantity: str, first: str, second: str) -> dict[str, Any]:
    """The one comparison of a pair, in the campaign's order."""
    (found,) = [c for c in told["comparisons"] if (c["quantity"], c["first"], c["second"]) == (quantity, first, second)]
    assert isinstance(found, dict)
    return found
