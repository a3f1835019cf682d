"""The files of one theme's folder."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from reportgen.sources import Workspace


@dataclass(frozen=True)
class ThemeFolder:
    """`files` by path from the theme's folder; `origin` is what a message calls the folder."""

    files: Mapping[str, bytes]
    origin: str
    carried: bool


def theme_files(ws: Workspace | None, name: str, carried_only: bool = False) -> ThemeFolder | None:
    """The workspace's theme of that name, else the carried one, else None."""
    roots = [(Path(__file__).parents[2] / "themes", True)]
    if ws is not None and not carried_only:
        roots.insert(0, (ws.root / "themes", False))
    for root, carried in roots:
        folder = root / name
        if (folder / "theme.yaml").is_file():
            files = {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}
            return ThemeFolder(files, f"themes/{name}", carried)
    return None
