"""The files of one theme's folder."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import yaml

from reportgen.finding import Place
from reportgen.sources import Workspace, carried, exists, list_files, read_bytes
from reportgen.sources.workspace import PUBLICATION


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


def carried_themes() -> tuple[str, ...]:
    """The names of the themes that come with the program."""
    ours = Workspace(carried("themes"), ())
    return tuple(sorted({path.partition("/")[0] for path in list_files(ours, "") if path.endswith("/theme.yaml")}))


def asked_at(ws: Workspace | None) -> Place:
    """Where the publication says which theme its pages are set in."""
    if ws is None or not exists(ws, PUBLICATION):
        return Place(PUBLICATION)
    return _place_of("theme", read_bytes(ws, PUBLICATION), PUBLICATION)


def based_on_at(folder: ThemeFolder) -> Place:
    """Where a theme says what it is based on."""
    return _place_of("based on", folder.files["theme.yaml"], f"{folder.origin}/theme.yaml")


def _place_of(key: str, data: bytes, file: str) -> Place:
    """The place of what is said to the key; the whole file where it says nothing to it, or can't be read."""
    try:
        found = yaml.compose(data.decode("utf-8"))
    except (yaml.YAMLError, UnicodeDecodeError):
        return Place(file)
    for said, value in found.value if isinstance(found, yaml.MappingNode) else ():
        if said.value == key:
            return Place(file, value.start_mark.line + 1, value.start_mark.column + 1)
    return Place(file)


def _files(ws: Workspace, folder: str) -> dict[str, bytes]:
    return {path.removeprefix(f"{folder}/"): read_bytes(ws, path) for path in list_files(ws, folder)}
