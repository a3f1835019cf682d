"""What files are there and what is in them, quickly: a file whose size and time are as last seen isn't read again.

Times only shorten the way to a digest. A file changed so shortly before it was last seen that its time can't tell a
later change is read again.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from stat import S_ISREG

UNSURE = 2_000_000_000  # nanoseconds: the coarsest clock of a file system in common use
TOO_LARGE_TO_READ = 64 * 1024 * 1024  # bytes: films beside the readings; size and time stand for their content
PASSED_OVER = frozenset({"__pycache__", "node_modules"})


@dataclass(frozen=True)
class Seen:
    """One file as it was: size in bytes, modification time in ns, when it was looked at in ns, sha256 in hex."""

    size: int
    changed: int
    looked: int
    digest: str


Snapshot = Mapping[str, Seen]


def take(files: Iterable[Path], before: Snapshot, now: int) -> dict[str, Seen]:
    """Every file of `files` that is there, by its path as text. `now` in ns since the epoch; `before` saves reading."""
    found = {}
    for path in files:
        try:
            stat = path.stat()
            if not S_ISREG(stat.st_mode):
                continue  # reading a pipe waits for ever, and some devices have no end
            last = before.get(str(path))
            if last and (last.size, last.changed) == (stat.st_size, stat.st_mtime_ns) and _sure(last):
                found[str(path)] = last
                continue
            found[str(path)] = Seen(stat.st_size, stat.st_mtime_ns, now, _digest(path, stat))
        except OSError:
            continue
    return found


def contents(snapshot: Snapshot) -> dict[str, str]:
    """Path → digest, which is all that two snapshots need to agree in."""
    return {path: seen.digest for path, seen in snapshot.items()}


def files_under(folder: Path, leave_out: frozenset[Path] = frozenset()) -> Iterator[Path]:
    """Every file in `folder` and below, in order, but for hidden folders, `leave_out` and what tools leave behind."""
    for here, folders, files in os.walk(folder):
        folders[:] = sorted(
            name
            for name in folders
            if not name.startswith(".") and name not in PASSED_OVER and Path(here, name) not in leave_out
        )
        yield from (Path(here, name) for name in sorted(files))


def _sure(seen: Seen) -> bool:
    return seen.looked - seen.changed > UNSURE


def _digest(path: Path, stat: os.stat_result) -> str:
    if stat.st_size > TOO_LARGE_TO_READ:
        return f"{stat.st_size} bytes at {stat.st_mtime_ns}"
    return hashlib.sha256(path.read_bytes()).hexdigest()
