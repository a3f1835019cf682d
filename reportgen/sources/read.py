"""Bytes and text of the workspace's files, never of a file outside it."""

from __future__ import annotations

import difflib
import hashlib
import posixpath
from pathlib import Path

from reportgen.finding import Place, Refused, refuse
from reportgen.sources.workspace import Workspace

TOO_LARGE = 512 * 1024 * 1024


def digest(data: bytes) -> str:
    """SHA-256 (FIPS 180-4) in hexadecimal, as `sha256sum` prints it."""
    return hashlib.sha256(data).hexdigest()


def exists(ws: Workspace, rel: str) -> bool:
    """Whether there is such a file inside the workspace; a path that leaves it is no file."""
    try:
        return _inside(ws, rel).is_file()
    except Refused:
        return False


def list_files(ws: Workspace, folder: str) -> tuple[str, ...]:
    """Every file in and under `folder`, as paths from the workspace, sorted; dot-files aside; () if there is none."""
    top = _inside(ws, folder) if folder else ws.root.resolve()
    found = []
    for here, folders, files in _walk(top):
        folders[:] = [f for f in folders if not f.startswith(".")]
        found += [(here / f).relative_to(ws.root.resolve()).as_posix() for f in files if not f.startswith(".")]
    return tuple(sorted(found))


def read_bytes(ws: Workspace, rel: str) -> bytes:
    """The file as it stands. Raises Refused: outside the workspace, missing, not readable."""
    path = _inside(ws, rel)
    place = Place(rel)
    if path.is_dir():
        raise refuse("not-a-file", place, f"{rel} is a folder, not a file", do="Name the file in it.")
    if not path.is_file():
        raise refuse("missing-file", place, f"there is no file {rel}", do=_nearby(ws, rel))
    try:
        if path.stat().st_size > TOO_LARGE:
            raise refuse("file-too-large", place, f"{rel} is larger than 512 MB", do="Split it, or leave columns out.")
        return path.read_bytes()
    except OSError as error:
        raise refuse("unreadable-file", place, f"{rel} can't be read: {error.strerror}") from error


def read_text(ws: Workspace, rel: str) -> str:
    """The file as text: UTF-8, with or without a byte order mark. Raises Refused with line and column otherwise."""
    return as_text(read_bytes(ws, rel), rel)


def as_text(data: bytes, rel: str) -> str:
    """Bytes as UTF-8 text; `rel` is for the message alone."""
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
            says = "the file is saved as UTF-16, not as UTF-8"
        else:
            says = f"the byte 0x{data[error.start]:02X} is not UTF-8: the file was saved in another encoding"
        before = data[: error.start]
        column = len(before[before.rfind(b"\n") + 1 :].decode("utf-8", "ignore")) + 1
        place = Place(rel, before.count(b"\n") + 1, column)
        do = "Save it again as UTF-8 (in a spreadsheet: “CSV UTF-8”)."
        raise refuse("not-utf-8", place, says, "Letters with accents, ° and ± would come out wrong.", do) from error


def _inside(ws: Workspace, rel: str) -> Path:
    root = ws.root.resolve()
    clean = posixpath.normpath(rel)
    leaves = (
        posixpath.isabs(rel) or clean == ".." or clean.startswith("../") or "\0" in rel or rel[1:3] in (":\\", ":/")
    )
    path = root if leaves else (root / clean).resolve()
    if leaves or not path.is_relative_to(root):
        raise refuse(
            "leaves-workspace",
            Place(rel.replace("\0", "?")),
            "this path leads out of the workspace",
            "A site must be made from files that travel with it.",
            "Copy the file into the campaign's folder and name it from there.",
        )
    return path


def _walk(top: Path) -> list[tuple[Path, list[str], list[str]]]:
    found = []
    waiting = [top] if top.is_dir() else []
    while waiting:
        here = waiting.pop()
        entries = sorted(here.iterdir())
        folders = [e.name for e in entries if e.is_dir() and not e.is_symlink() and not e.name.startswith(".")]
        found.append((here, folders, [e.name for e in entries if e.is_file()]))
        waiting += [here / f for f in folders]
    return found


def _nearby(ws: Workspace, rel: str) -> str:
    folder, name = posixpath.split(posixpath.normpath(rel.replace("\\", "/")))
    there = ws.root / folder
    if not there.is_dir():
        return f"There is no folder {folder} either: check the path, with / between its parts."
    names = sorted(p.name for p in there.iterdir() if p.is_file())
    alike = difflib.get_close_matches(name, names, n=1, cutoff=0.6)
    return f"Did you mean {posixpath.join(folder, alike[0])}?" if alike else "Put the file there, or correct its name."
