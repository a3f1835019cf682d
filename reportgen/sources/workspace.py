"""Where the workspace begins and which campaigns it holds."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from reportgen.finding import Place, Refused, refuse

PUBLICATION = "content/publication.yaml"
CAMPAIGN = "campaign.yaml"
ARCHIVE = "content/archive"
NOT_CAMPAIGNS = frozenset({"tests"})


@dataclass(frozen=True)
class Workspace:
    """A folder of campaigns. `campaigns` are folders as POSIX paths from `root`, sorted; current ones come first.

    `lone`: a campaign folder taken by itself; its only campaign is "".
    """

    root: Path
    campaigns: tuple[str, ...]
    lone: bool = False


def find_workspace(path: Path) -> Workspace:
    """The workspace `path` lies in: the nearest folder upward that has `content/publication.yaml`.

    A campaign folder that no workspace lists is a workspace by itself. Raises Refused where there is neither.
    """
    if not path.exists():
        raise refuse("no-such-folder", Place(str(path)), f"there is no {path}", do="Check the spelling of the folder.")
    start = (path if path.is_dir() else path.parent).resolve()
    campaign = next((f for f in (start, *start.parents) if (f / CAMPAIGN).is_file()), None)
    root = next((f for f in (start, *start.parents) if (f / PUBLICATION).is_file()), None)
    if root is not None:
        held = _campaigns(root)
        inside = campaign is not None and campaign.is_relative_to(root)
        if not inside or campaign is None or campaign.relative_to(root).as_posix() in held:
            return Workspace(root, held)
    if campaign is not None:
        return Workspace(campaign, ("",), lone=True)
    raise _nothing_here(path, start)


def _nothing_here(path: Path, start: Path) -> Refused:
    near = sorted(p.parent.name for p in start.glob(f"*/{CAMPAIGN}"))
    alike = sorted(p.name for p in start.glob("campaign.y*") if p.name != CAMPAIGN)
    if (start / CAMPAIGN).exists():
        do = f"Put a file in the place of {CAMPAIGN}: it is a folder, a pipe or a link in a circle."
    elif alike:
        do = f"Rename {alike[0]} to {CAMPAIGN}."
    elif near:
        do = f"Name one of the campaigns here: {', '.join(near)}."
    else:
        do = "Start one with: reportgen begin FOLDER"
    why = f"A campaign is a folder with a {CAMPAIGN}; a workspace has {PUBLICATION}."
    return refuse("no-campaign", Place(str(path)), "there is no campaign and no workspace here", why, do)


def _campaigns(root: Path) -> tuple[str, ...]:
    current = [f.name for f in _folders(root) if f.name not in NOT_CAMPAIGNS and (f / CAMPAIGN).is_file()]
    past = [f"{ARCHIVE}/{f.name}" for f in _folders(root / ARCHIVE) if (f / CAMPAIGN).is_file()]
    return (*sorted(current), *sorted(past))


def _folders(folder: Path) -> list[Path]:
    if not folder.is_dir():
        return []
    return [f for f in folder.iterdir() if f.is_dir() and not f.is_symlink() and not f.name.startswith(".")]
