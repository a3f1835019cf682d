"""Bytes and text of the workspace's files, never of a file outside it."""

from __future__ import annotations

import difflib
import errno
import hashlib
import os
import posixpath
from pathlib import Path

from reportgen.finding import Finding, Place, Refused, refuse
from reportgen.sources.workspace import Workspace

TOO_LARGE = 512 * 1024 * 1024


def digest(data: bytes) -> str:
    """SHA-256 (FIPS 180-4) in hexadecimal, as `sha256sum` prints it."""
    return hashlib.sha256(data).hexdigest()


def exists(ws: Workspace, rel: str) -> bool:
    """Whether there is such a file inside the workspace; a path that leaves it, or that no system takes, is none."""
    try:
        return _inside(ws, rel).is_file()
    except (Refused, OSError):
        return False


def list_files(ws: Workspace, folder: str) -> tuple[str, ...]:
    """Every file in and under `folder`, as paths from the workspace, sorted; dot-files aside; () if there is none.

    Raises Refused for a name that is not UTF-8: no page could link to it.
    """
    top = _inside(ws, folder) if folder else ws.root.resolve()
    found = []
    for here, folders, files in _walk(top):
        folders[:] = [f for f in folders if not f.startswith(".")]
        found += [(here / f).relative_to(ws.root.resolve()).as_posix() for f in files if not f.startswith(".")]
    if strange := [rel for rel in sorted(found) if not _is_text(rel)]:
        raise Refused(_name_of_another_encoding(rel) for rel in strange)
    return tuple(sorted(found))


def read_bytes(ws: Workspace, rel: str) -> bytes:
    """The file as it stands. Raises Refused: outside the workspace, missing, not readable."""
    place = Place(rel)
    try:
        path = _inside(ws, rel)
        if path.is_dir():
            raise refuse("not-a-file", place, f"{rel} is a folder, not a file", do="Name the file in it.")
        if not path.is_file():
            raise _missing(ws, rel, path)
        if path.stat().st_size > TOO_LARGE:
            raise refuse("file-too-large", place, f"{rel} is larger than 512 MB", do="Split it, or leave columns out.")
        return path.read_bytes()
    except OSError as error:
        do = "Check the path and the disk it lies on, and who may read it."
        raise refuse("unreadable-file", place, f"{rel} can't be read: {error.strerror}", do=do) from error


def path_of(ws: Workspace, rel: str) -> Path:
    """Where the file lies, for a library that reads it in pieces. Raises Refused: outside the workspace, missing."""
    path = _inside(ws, rel)
    if not path.is_file():
        raise _missing(ws, rel, path)
    return path


def read_text(ws: Workspace, rel: str) -> str:
    """The file as text: UTF-8, with or without a byte order mark. Raises Refused with line and column otherwise."""
    return as_text(read_bytes(ws, rel), rel)


def as_text(data: bytes, rel: str) -> str:
    """Bytes as UTF-8 text; `rel` is for the message alone."""
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        if data[:4] in (b"\xff\xfe\0\0", b"\0\0\xfe\xff"):
            says = "the file is saved as UTF-32, not as UTF-8"
        elif data[:2] in (b"\xff\xfe", b"\xfe\xff"):
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
    path = root if leaves else _followed(root / clean)
    if leaves or not path.is_relative_to(root):
        raise refuse(
            "leaves-workspace",
            Place(rel.replace("\0", "?")),
            "this path leads out of the workspace",
            "A site must be made from files that travel with it.",
            "Copy the file into the campaign's folder and name it from there.",
        )
    return path


def _followed(path: Path) -> Path:
    """The path behind all links. Raises OSError for links that lead round in a circle."""
    try:
        return path.resolve()
    except RuntimeError:  # what Python 3.11 says of a circle
        raise OSError(errno.ELOOP, os.strerror(errno.ELOOP), str(path)) from None


def _is_text(rel: str) -> bool:
    try:
        rel.encode()
    except UnicodeEncodeError:
        return False
    return True


def _name_of_another_encoding(rel: str) -> Finding:
    shown = rel.encode("utf-8", "surrogateescape").decode("utf-8", "replace")
    return Finding(
        "error",
        "name-not-utf-8",
        Place(shown),
        f"the name of the file {shown} is not UTF-8",
        "Another computer would show another name, and no page could link to it.",
        "Rename the file.",
    )


def _missing(ws: Workspace, rel: str, path: Path) -> Refused:
    if path.exists():
        says = f"{rel} is a pipe or a device, not a file"
        return refuse("not-a-file", Place(rel), says, do="Put a file in its place.")
    return refuse("missing-file", Place(rel), f"there is no file {rel}", do=_nearby(ws, rel))


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
    if "://" in rel:
        return "Download it, put it beside the campaign's other files and name it from there."
    if "\\" in rel:
        return "Write / between the parts of a path."
    folder, name = posixpath.split(posixpath.normpath(rel))
    there = ws.root / folder
    if not there.is_dir():
        return f"There is no folder {folder} either: check the path, with / between its parts."
    names = sorted(p.name for p in there.iterdir() if p.is_file())
    folded = {known.casefold(): known for known in names if _is_text(known)}
    alike = [folded[n] for n in difflib.get_close_matches(name.casefold(), folded, n=1, cutoff=0.6)]
    return f"Did you mean {posixpath.join(folder, alike[0])}?" if alike else "Put the file there, or correct its name."
