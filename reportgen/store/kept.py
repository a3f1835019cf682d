"""A folder of entries, each under the digest of what it was made from.

An entry carries the digest of its own bytes, so a torn or altered one is a miss and never a wrong answer. Writing is
by exchange of whole files. Where the folder can't be written, everything is a miss and nothing fails.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import tempfile
from dataclasses import dataclass
from pathlib import Path

SHOWN_TO_OTHERS = ".gitignore"
LARGEST = 256 * 1024 * 1024  # bytes kept in all; the least recently used go first


@dataclass(frozen=True)
class Kept:
    """Where entries lie; `folder` None keeps nothing."""

    folder: Path | None


def kept_in(folder: Path) -> Kept:
    """The store in `folder`, made if it isn't there; one that keeps nothing if it can't be made or written."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
        ignore = folder / SHOWN_TO_OTHERS
        if not ignore.exists():
            ignore.write_text("*\n", encoding="ascii")
    except OSError:
        return Kept(None)
    return Kept(folder if os.access(folder, os.W_OK) else None)


def key_of(*parts: str | bytes) -> str:
    """One key (sha256, hex) of an ordered list of parts; no two lists share one by running together."""
    whole = hashlib.sha256()
    for part in parts:
        data = os.fsencode(part) if isinstance(part, str) else part
        whole.update(f"{len(data)}:".encode() + data)
    return whole.hexdigest()


def get(kept: Kept, key: str) -> bytes | None:
    """What was put under `key`, or None: never put, unreadable, or no longer what was put."""
    if kept.folder is None:
        return None
    place = _place(kept.folder, key)
    try:
        stored = place.read_bytes()
        os.utime(place)
    except OSError:
        return None
    digest, _, data = stored.partition(b"\n")
    return data if hashlib.sha256(data).hexdigest().encode() == digest else None


def put(kept: Kept, key: str, data: bytes) -> None:
    """Keep `data` under `key`; a full or read-only disk is no error."""
    if kept.folder is None:
        return
    place = _place(kept.folder, key)
    with contextlib.suppress(OSError):
        place.parent.mkdir(exist_ok=True)
        handle, beside = tempfile.mkstemp(dir=place.parent)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(hashlib.sha256(data).hexdigest().encode() + b"\n" + data)
            Path(beside).replace(place)
        except OSError:
            Path(beside).unlink(missing_ok=True)
            raise


def tidy(kept: Kept, largest: int = LARGEST) -> None:
    """Let go of the least recently used entries until no more than `largest` bytes are kept."""
    if kept.folder is None:
        return
    with contextlib.suppress(OSError):
        seen = [(entry.stat(), entry) for entry in kept.folder.glob("??/*")]
        room = largest - sum(stat.st_size for stat, _ in seen)
        for stat, entry in sorted(seen, key=lambda pair: pair[0].st_mtime_ns):
            if room >= 0:
                return
            entry.unlink(missing_ok=True)
            room += stat.st_size


def _place(folder: Path, key: str) -> Path:
    return folder / key[:2] / key[2:]
