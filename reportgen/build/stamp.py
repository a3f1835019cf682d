"""How a site that still stands is known without making it again.

A stamp holds the digest of every file that went in (the author's, the program's own), the libraries that were there,
and of every file that came out. Where all of it is as it was, there is nothing to do, and nothing heavy is loaded to
find that out.
"""

from __future__ import annotations

import json
import sys
import time
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import reportgen
from reportgen.build.progress import Built
from reportgen.finding import Finding, Place
from reportgen.store.kept import Kept, get, key_of, put
from reportgen.store.snapshot import Seen, Snapshot, contents, files_under, take

if TYPE_CHECKING:
    from reportgen.sources.carried import CarriedKind

FOLDERS = ("content", "shared", "themes")  # what campaigns may draw on, beside their own folders
CARRIED: tuple[CarriedKind, ...] = ("themes", "shared", "handbook")


@dataclass(frozen=True)
class Stamp:
    """`inputs` and `outputs` by path; `also` are inputs that lie elsewhere in the workspace; the rest is told again."""

    libraries: str
    inputs: Snapshot
    outputs: Snapshot
    also: tuple[str, ...]
    findings: tuple[Finding, ...]
    campaigns: int
    pages: int


@dataclass(frozen=True)
class Look:
    """What is there now."""

    libraries: str
    inputs: Snapshot
    outputs: Snapshot


def read(kept: Kept, out: Path) -> Stamp | None:
    """The stamp of the last compile into `out`, if one is kept and can be read."""
    data = get(kept, _key(out))
    try:
        return _from_json(json.loads(data)) if data else None
    except (ValueError, KeyError, TypeError):
        return None


def look(root: Path, campaigns: Iterable[str], out: Path, before: Stamp | None, also: Iterable[str] = ()) -> Look:
    """Files in and out as they are now; only what changed since `before` is read."""
    now = time.time_ns()
    last_in = before.inputs if before else {}
    elsewhere = (root / path for path in (*also, *(before.also if before else ())))
    inputs = take((*_inputs(root, campaigns, out), *elsewhere), last_in, now)
    outputs = take(files_under(out), before.outputs, now) if before else {}
    return Look(_libraries(), inputs, outputs)


def program(now: Look) -> str:
    """One digest of the program as it is: its code, Python and the libraries."""
    package = f"{Path(reportgen.__file__).parent}/"
    return key_of(
        now.libraries, *(seen.digest for path, seen in sorted(now.inputs.items()) if path.startswith(package))
    )


def stands(before: Stamp, now: Look) -> bool:
    """Whether nothing that went in and nothing that came out has changed."""
    return (
        before.libraries == now.libraries
        and contents(before.inputs) == contents(now.inputs)
        and bool(now.outputs)
        and contents(before.outputs) == contents(now.outputs)
    )


def refresh(kept: Kept, out: Path, before: Stamp, now: Look) -> None:
    """Note newer times of the same contents, so that they needn't be read next time."""
    if (before.inputs, before.outputs) != (now.inputs, now.outputs):
        same = Stamp(now.libraries, now.inputs, now.outputs, before.also, *_told(before))
        put(kept, _key(out), _as_json(same))


def keep(kept: Kept, out: Path, went_in: Look, root: Path, also: Iterable[str], built: Built) -> None:
    """Stamp what has just been built. `went_in` was looked at before the first file was read: a file changed since
    then makes the next compile do it again. `also` are paths from `root` that were read besides."""
    if kept.folder is None:
        return
    now = time.time_ns()
    elsewhere = tuple(sorted(path for path in set(also) if str(root / path) not in went_in.inputs))
    inputs = {**went_in.inputs, **take((root / path for path in elsewhere), {}, now)}
    outputs = take(files_under(out), {}, now)
    stamp = Stamp(went_in.libraries, inputs, outputs, elsewhere, built.findings, built.campaigns, built.pages)
    put(kept, _key(out), _as_json(stamp))


def _inputs(root: Path, campaigns: Iterable[str], out: Path) -> Iterable[Path]:
    """Every file that may bear on the site, once each, but for what is found by following the declarations."""
    from reportgen.sources import carried

    package = Path(reportgen.__file__).parent
    folders = [root / name for name in (*campaigns, *FOLDERS)]
    own = [package, *(carried(kind) for kind in CARRIED)]
    beside = sorted(path for path in root.iterdir() if path.is_file())
    leave_out = frozenset({out, out.resolve()})
    return dict.fromkeys((*beside, *(file for folder in (*folders, *own) for file in files_under(folder, leave_out))))


def _libraries() -> str:
    """Python and every distribution installed beside it, by name and version: folder names say both, and listing
    folders costs far less than asking for metadata."""
    places = {Path(place) for place in sys.path if place.endswith("-packages")}
    names = sorted(entry.name for place in places if place.is_dir() for entry in place.glob("*-info"))
    return key_of(sys.version, *names)


def _key(out: Path) -> str:
    return key_of("stamp", str(out))


def _told(stamp: Stamp) -> tuple[tuple[Finding, ...], int, int]:
    return stamp.findings, stamp.campaigns, stamp.pages


def _as_json(stamp: Stamp) -> bytes:
    return json.dumps(
        {
            "libraries": stamp.libraries,
            "inputs": _rows(stamp.inputs),
            "outputs": _rows(stamp.outputs),
            "also": stamp.also,
            "findings": [asdict(finding) for finding in stamp.findings],
            "campaigns": stamp.campaigns,
            "pages": stamp.pages,
        }
    ).encode()


def _from_json(told: Mapping[str, Any]) -> Stamp:
    return Stamp(
        told["libraries"],
        {path: Seen(*row) for path, row in told["inputs"].items()},
        {path: Seen(*row) for path, row in told["outputs"].items()},
        tuple(told["also"]),
        tuple(Finding(**{**finding, "place": Place(**finding["place"])}) for finding in told["findings"]),
        told["campaigns"],
        told["pages"],
    )


def _rows(snapshot: Snapshot) -> dict[str, list[int | str]]:
    return {path: [seen.size, seen.changed, seen.looked, seen.digest] for path, seen in snapshot.items()}
