"""Where a new campaign goes, whether it would work, and the writing of it."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from reportgen.cli import begin_tables, beginning
from reportgen.cli.beginning import Asked
from reportgen.finding import Finding, Refused

PUBLICATION = "content/publication.yaml"
CAMPAIGN_FILES = ("campaign.yaml", *begin_tables.FIRST)


class Standing(Exception):
    """Something stands there already; the message says what and what to do."""


@dataclass(frozen=True)
class Site:
    """`campaign` is the new folder, `workspace` the folder it belongs to; `new_workspace` where that is to be made."""

    campaign: Path
    workspace: Path
    new_workspace: bool


@dataclass(frozen=True)
class Tried:
    """The files that the campaign needs beside its YAML, by name, and what would keep it from compiling."""

    files: Mapping[str, str]
    errors: tuple[Finding, ...]


def plan(folder: Path) -> Site:
    """Where the campaign and its workspace go. Raises `Standing` where something would be overwritten."""
    campaign = folder.resolve()
    for name in CAMPAIGN_FILES:
        if (campaign / name).exists():
            raise Standing(f"{folder / name} is there already, and nothing is overwritten. Begin in another folder.")
    if (campaign / PUBLICATION).exists():
        raise Standing(f"{folder} is a workspace. Begin a campaign in it: reportgen begin {folder / 'NAME'}")
    above = next((place for place in campaign.parents if (place / PUBLICATION).is_file()), None)
    if above and campaign.parent not in (above, above / "content/archive"):
        raise Standing(
            f"{folder} lies too deep in the workspace {above}: campaigns stand directly in it. "
            f"Begin it as {above / campaign.name}"
        )
    return Site(campaign, above or campaign.parent, above is None)


def try_out(site: Site, asked: Asked) -> Tried:
    """Compile-check the campaign on a copy, so that nothing is left behind where it wouldn't do."""
    from reportgen.build.run import audit_path

    with tempfile.TemporaryDirectory() as place:
        root = Path(place).resolve()
        folder = root / site.campaign.relative_to(site.workspace)
        _write(folder / "campaign.yaml", beginning.campaign_yaml(asked, "none"))
        _write(root / PUBLICATION, "title: Tried out\n")
        for path in (site.workspace / "shared").rglob("*"):
            if path.is_file():
                _write(root / path.relative_to(site.workspace), path.read_bytes())
        bare = [_write(folder / table, text) for table, text in begin_tables.bare().items()]
        try:
            files = _files(folder)
        except Refused as refused:
            return Tried({}, refused.findings)
        for table in bare:
            table.unlink()
        for name, text in files.items():
            _write(folder / name, text)
        return Tried(files, tuple(f for f in audit_path(folder) if f.severity == "error"))


def found(site: Site, asked: Asked, files: Mapping[str, str]) -> list[Path]:
    """Write the campaign, and its workspace where that is new; the files written. Overwrites nothing."""
    up = os.path.relpath(site.workspace, site.campaign)
    texts = {
        site.campaign / "campaign.yaml": beginning.campaign_yaml(asked, f"{up}/{beginning.schema_path('campaign')}"),
        **{site.campaign / name: text for name, text in files.items()},
    }
    if site.new_workspace:
        title = beginning.publication_yaml("Test reports", f"../{beginning.schema_path('publication')}")
        texts[site.workspace / PUBLICATION] = title
    schemas = {site.workspace / path: text for path, text in beginning.schema_files().items()}
    texts |= {path: text for path, text in schemas.items() if not path.exists()}
    return [_write(path, text) for path, text in texts.items()]


def _files(folder: Path) -> dict[str, str]:
    """What the campaign in `folder` reads and attaches, path → text. Raises `Refused`."""
    from reportgen.campaign.load import load_campaign
    from reportgen.campaign.publication import load_publication
    from reportgen.sources import find_workspace

    workspace = find_workspace(folder)
    name = folder.relative_to(workspace.root).as_posix()
    return begin_tables.files_of(load_campaign(workspace, name, load_publication(workspace)[0]).campaign)


def _write(path: Path, content: str | bytes) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("xb") as file:
        file.write(content if isinstance(content, bytes) else content.encode())
    return path
