"""Which files a campaign's steps can see, as digests: what they give can change only when one of these does."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from reportgen.store.kept import key_of
from reportgen.store.snapshot import Snapshot

PROSE = ".md"


@dataclass(frozen=True)
class InReach:
    """Digests (sha256, hex) over the files one campaign can see; `data` leaves out what stands in texts.

    A text that comes or goes changes both, its words only `everything`.
    """

    everything: str
    data: str


def in_reach(root: Path, folder: str, campaigns: Iterable[str], files: Snapshot) -> InReach:
    """Of the campaign in `folder`: all `files` under `root` but those of other campaigns."""
    others = tuple(f"{root / other}/" for other in campaigns if other not in ("", folder))
    seen = [
        (path.removeprefix(f"{root}/"), file.digest)
        for path, file in sorted(files.items())
        if path.startswith(f"{root}/") and not path.startswith(others)
    ]
    return InReach(
        key_of(*(part for row in seen for part in row)),
        key_of(*(part for path, digest in seen for part in (path, "" if path.endswith(PROSE) else digest))),
    )
