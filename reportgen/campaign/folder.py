"""The files of one campaign's folder, each read into the record it holds."""

from __future__ import annotations

import posixpath
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeVar

from reportgen.addresses import as_id
from reportgen.campaign.declared import ProseFile
from reportgen.campaign.look_up import error
from reportgen.campaign.yaml_reader import read_record
from reportgen.campaign.yaml_text import compose
from reportgen.finding import Finding, Place, Refused
from reportgen.sources import Workspace, list_files, read_text

T = TypeVar("T")


@dataclass(frozen=True)
class Folder:
    """What stands in a campaign's folder, by path: descriptions by id, prose."""

    path: str
    contenders: Mapping[str, str]  # id → path
    tests: Mapping[str, str]
    verdict: str  # path, "" where there is none
    prose: tuple[ProseFile, ...]


def look_into(ws: Workspace, path: str, told: list[Finding]) -> Folder:
    """The files there are. Two files of one id, and files whose ending keeps them unread, are errors."""
    inside = {posixpath.relpath(f, path) if path else f: f for f in list_files(ws, path)}
    for rel, file in inside.items():
        if rel.count("/") <= 1 and rel.endswith(".yml") and rel.split("/")[0] in ("contenders", "tests", "verdict.yml"):
            error(
                told,
                "wrong-ending",
                Place(file),
                f"{rel} ends in .yml and is not read",
                do="Rename it to end in .yaml.",
            )
    prose = []
    for rel, file in inside.items():
        folder = posixpath.dirname(rel)
        if rel.endswith(".md") and folder in ("", "tests", "contenders") and rel.lower() != "readme.md":
            try:
                prose.append(ProseFile(rel.removesuffix(".md"), file, read_text(ws, file)))
            except Refused as refused:
                told.extend(refused.findings)
    verdict = inside.get("verdict.yaml", "")
    return Folder(path, _by_id(inside, "contenders", told), _by_id(inside, "tests", told), verdict, tuple(prose))


def _by_id(inside: Mapping[str, str], folder: str, told: list[Finding]) -> dict[str, str]:
    found: dict[str, str] = {}
    for rel, file in inside.items():
        if posixpath.dirname(rel) != folder or not rel.endswith(".yaml"):
            continue
        id = as_id(posixpath.basename(rel).removesuffix(".yaml"))
        if not id:
            do = "Rename it; its title may hold any letters."
            error(told, "name-without-letters", Place(file), "the file's name has no plain letter or digit", do=do)
        elif id in found:
            says = f"this file and {found[id]} are both “{id}”"
            error(
                told, "described-twice", Place(file), says, "A file's name is the id of what is in it.", "Rename one."
            )
        else:
            found[id] = file
    return found


def read_file(ws: Workspace, path: str, written: type[T], told: list[Finding]) -> T | None:
    """One file as one record; None where it could not be read at all."""
    try:
        document = compose(read_text(ws, path), path)
    except Refused as refused:
        told.extend(refused.findings)
        return None
    record = read_record(document, written)
    told.extend(document.findings)
    return record
