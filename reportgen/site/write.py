"""Puts a site in place whole: built beside the old one, then exchanged with it. Nothing else here touches the disk.

Whoever looks sees the old site or the new one, never a half: where the system can swap two folders in one step
(Linux, renameat2) it does; elsewhere two renames do it, and what a stop between them leaves is mended at the next
start. Files that did not change are linked, not written again.
"""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path, PurePosixPath

from reportgen.finding import Place, refuse
from reportgen.site.swap import swap

MARKER = "site.json"  # by this file a folder is known as a site that may be replaced
VERSION = 1
PIECE = 1 << 20  # bytes
_WRITTEN = json.dumps({"what": "a site made by reportgen", "version": VERSION}) + "\n"


def exchange(out: Path, outputs: Mapping[str, bytes | Path], sources: Iterable[Path] = ()) -> bool:
    """Put `outputs` (address → bytes, or a file to be copied) at `out` in one step; True where anything changed.

    A file is copied in pieces: however long a logger ran, what it wrote is never held whole.

    `sources` are folders of the author's: `out` may not be, hold or lie in one of them. Raises `Refused` for that,
    for a folder that holds something other than a site of ours, and for two addresses that differ only in case;
    OSError where the disk is full or can't be written. The old site then stands untouched.
    """
    out = out.absolute()
    out = out.resolve() if out.is_symlink() else out
    _check_addresses(outputs)
    _check_apart(out, sources)
    new, old = out.with_name(f".{out.name}.new"), out.with_name(f".{out.name}.old")
    out.parent.mkdir(parents=True, exist_ok=True)
    with _alone(out.parent):
        recover(out)
        for folder in (out, new, old):
            _check_replaceable(folder, out)
        shutil.rmtree(new, ignore_errors=True)
        try:
            changed = _build(new, out, outputs)
            if changed:
                swap(new, out, old)
        finally:
            shutil.rmtree(new, ignore_errors=True)
            if out.exists():
                shutil.rmtree(old, ignore_errors=True)
    return changed


def recover(out: Path) -> None:
    """Mend what a stop between the two renames left: the old site goes back to its place."""
    old = out.with_name(f".{out.name}.old")
    if not out.exists() and is_site(old):
        old.rename(out)


def is_site(folder: Path) -> bool:
    """Whether a folder bears the mark of a site of ours."""
    try:
        told = json.loads((folder / MARKER).read_text("utf-8"))
    except (OSError, ValueError):
        return False
    return (
        isinstance(told, dict)
        and isinstance(told.get("version"), int)
        and told.get("what") == json.loads(_WRITTEN)["what"]
    )


def _check_replaceable(folder: Path, out: Path) -> None:
    """Nothing is replaced or removed but nothing, an empty folder, or a site of ours."""
    if not folder.exists() and not folder.is_symlink():
        return
    if folder.is_dir() and not folder.is_symlink() and (is_site(folder) or not any(folder.iterdir())):
        return
    raise refuse(
        "not-a-site",
        Place(str(folder)),
        f"“{folder}” is there already and isn't a site that this program made",
        "the site takes the whole place of a folder, and what is in this one would be lost",
        "name another folder, or empty this one yourself" if folder == out else "move it elsewhere",
    )


def _check_apart(out: Path, sources: Iterable[Path]) -> None:
    for source in (s.resolve() for s in sources):
        here = out.resolve()
        if here == source or here in source.parents or source in here.parents:
            raise refuse(
                "site-in-sources",
                Place(str(out)),
                f"the site can't stand at “{out}”: that is where the author's files are (“{source}”)",
                "it would take their place, or be read as if it were one of them",
                "name a folder beside them",
            )


def _check_addresses(outputs: Mapping[str, bytes | Path]) -> None:
    seen: dict[str, str] = {MARKER: MARKER}
    for address in outputs:
        path = PurePosixPath(address)
        if path.is_absolute() or ".." in path.parts or str(path) != address or "\\" in address:
            raise ValueError(f"not an address on a site: {address!r}")
        other = seen.setdefault(address.casefold(), address)
        if other != address or address == MARKER:
            raise refuse(
                "addresses-alike",
                Place(address),
                f"“{other}” and “{address}” would be one file on many computers",
                "they differ in nothing but capitals, or one of them is the site's own",
                "rename one of them",
            )


def _build(new: Path, before: Path, outputs: Mapping[str, bytes | Path]) -> bool:
    """Write the whole site into `new`, linking what `before` has already; whether the two differ."""
    new.mkdir()
    (new / MARKER).write_text(_WRITTEN, "utf-8")  # first, so that a stop leaves nothing that can't be told as ours
    changed = not is_site(before)
    made: set[Path] = set()
    for address, data in sorted(outputs.items(), key=lambda output: output[0]):
        target, stands = new / address, before / address
        if target.parent not in made:
            target.parent.mkdir(parents=True, exist_ok=True)
            made.add(target.parent)
        if not (_same(stands, data) and _linked(stands, target)):
            changed = changed or not _same(stands, data)
            _write(target, data)
    return changed or _files(before) != {*outputs, MARKER}


def _write(target: Path, data: bytes | Path) -> None:
    if isinstance(data, bytes):
        target.write_bytes(data)
    else:
        shutil.copyfile(data, target)


def _same(path: Path, data: bytes | Path) -> bool:
    try:
        if isinstance(data, Path):
            return not path.is_symlink() and path.stat().st_size == data.stat().st_size and _alike(path, data)
        return not path.is_symlink() and path.stat().st_size == len(data) and path.read_bytes() == data
    except OSError:
        return False


def _alike(one: Path, other: Path) -> bool:
    """Whether two files of one size hold the same, looked at in pieces."""
    with one.open("rb") as first, other.open("rb") as second:
        while piece := first.read(PIECE):
            if piece != second.read(PIECE):
                return False
    return True


def _linked(stands: Path, target: Path) -> bool:
    """Whether the file could be linked; not every file system can."""
    try:
        os.link(stands, target)
    except OSError:
        return False
    return True


def _files(folder: Path) -> set[str]:
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*") if not path.is_dir() or path.is_symlink()}


@contextmanager
def _alone(parent: Path) -> Iterator[None]:
    """One exchange at a time beside each other, where the system can hold others off."""
    try:
        import fcntl
    except ImportError:  # not on Windows
        yield
        return
    held = os.open(parent, os.O_RDONLY)
    try:
        fcntl.flock(held, fcntl.LOCK_EX)
        yield
    finally:
        os.close(held)
