"""Where a new campaign goes, whether it would work, and the writing of it."""

from __future__ import annotations

import os
import tempfile
from dataclasses import dataclass
from pathlib import Path

from reportgen.cli import beginning
from reportgen.cli.beginning import Asked
from reportgen.finding import Finding, Refused

PUBLICATION = "content/publication.yaml"
CAMPAIGN_FILES = ("campaign.yaml", "readings.csv")


class Standing(Exception):
    """Something stands there already; the message says what and what to do."""


@dataclass(frozen=True)
class Site:
    """`campaign` is the new folder, `workspace` the folder it belongs to; `new_workspace` where that is to be made."""

    campaign: Path
    workspace: Path
    new_workspace: bool


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


def check(site: Site, asked: Asked) -> tuple[Finding, ...]:
    """What would keep the campaign from compiling; found on a copy, so that nothing is left behind."""
    with tempfile.TemporaryDirectory() as place:
        root = Path(place).resolve()
        try:
            _try_out(site, asked, root)
        except Refused as refused:
            return refused.findings
    return ()


def found(site: Site, asked: Asked) -> list[Path]:
    """Write the campaign, and its workspace where that is new; the files written. Overwrites nothing."""
    schemas = os.path.relpath(site.workspace, site.campaign)
    with tempfile.TemporaryDirectory() as place:
        columns = _try_out(site, asked, Path(place).resolve())
    texts = {
        site.campaign / "campaign.yaml": beginning.campaign_yaml(
            asked, f"{schemas}/{beginning.schema_path('campaign')}"
        ),
        site.campaign / "readings.csv": beginning.readings_csv(columns),
    }
    if site.new_workspace:
        title = beginning.publication_yaml("Test reports", f"../{beginning.schema_path('publication')}")
        texts[site.workspace / PUBLICATION] = title
    written = [_write(path, text) for path, text in texts.items()]
    for path, text in beginning.schema_files().items():
        if not (site.workspace / path).exists():
            written.append(_write(site.workspace / path, text))
    return written


def _try_out(site: Site, asked: Asked, root: Path) -> tuple[str, ...]:
    """Read the campaign as it will stand, in a workspace at `root`; the headings its table needs. Raises `Refused`."""
    from reportgen.campaign.load import load_campaign
    from reportgen.campaign.publication import load_publication
    from reportgen.sources import find_workspace

    folder = site.campaign.relative_to(site.workspace).as_posix()
    _write(root / folder / "campaign.yaml", beginning.campaign_yaml(asked, "none"))
    _write(root / folder / "readings.csv", beginning.readings_csv(()))
    _write(root / PUBLICATION, "title: Tried out\n")
    for path in (site.workspace / "shared").rglob("*"):
        if path.is_file():
            _write(root / path.relative_to(site.workspace), path.read_bytes())
    workspace = find_workspace(root / folder)
    publication, _ = load_publication(workspace)
    campaign = load_campaign(workspace, folder, publication).campaign
    return tuple(dict.fromkeys(column.heading for test in campaign.tests for column in test.columns))


def _write(path: Path, content: str | bytes) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("xb") as file:
        file.write(content if isinstance(content, bytes) else content.encode())
    return path
