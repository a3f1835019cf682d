"""The files of one theme's folder."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from reportgen.sources import Workspace, carried, exists, list_files, read_bytes


@dataclass(frozen=True)
class ThemeFolder:
    """`files` by path from the theme's folder; `origin` is what a message calls the folder."""

    files: Mapping[str, bytes]
    origin: str
    carried: bool


def theme_files(ws: Workspace | None, name: str, carried_only: bool = False) -> ThemeFolder | None:
    """The workspace's theme of that name, else the carried one, else None."""
    ours = Workspace(carried("themes"), ())
    if ws is not None and not carried_only and exists(ws, f"themes/{name}/theme.yaml"):
        return ThemeFolder(_files(ws, f"themes/{name}"), f"themes/{name}", False)
    if exists(ours, f"{name}/theme.yaml"):
        return ThemeFolder(_files(ours, name), f"themes/{name}", True)
    return None


def _files(ws: Workspace, folder: str) -> dict[str, bytes]:
    return {path.removeprefix(f"{folder}/"): read_bytes(ws, path) for path in list_files(ws, folder)}
