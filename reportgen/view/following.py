"""The author's files watched for changes."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from reportgen.finding import Refused

TICK = 500  # ms between two looks for campaigns that have come or gone
LONGEST = 400  # ms in which a burst of changes counts as one


def changes(path: Path, out: Path, stop: threading.Event | None = None) -> Iterator[None]:
    """Once as soon as the files are watched, then each time the author's files change, until `stop`.

    The first is for what changed before anyone watched. What is made from the files doesn't count.
    """
    from watchfiles import watch

    while stop is None or not stop.is_set():
        folders = _watched(path)
        counts = partial(_counts, folders, out)
        watched = False
        for changed in watch(
            *folders,
            watch_filter=counts,
            stop_event=stop,
            yield_on_timeout=True,
            rust_timeout=TICK,
            debounce=LONGEST,
        ):
            if changed or not watched:
                watched = True
                yield
            elif _watched(path) != folders:
                break
        else:
            return


def _watched(path: Path) -> tuple[Path, ...]:
    """The folders whose files bear on the site."""
    from reportgen.sources import find_workspace

    try:
        workspace = find_workspace(path)
    except Refused:
        return (path,)
    named = (*workspace.campaigns, "content", "shared", "themes")
    return tuple(dict.fromkeys(place for name in named if (place := workspace.root / name).is_dir()))


def _counts(folders: tuple[Path, ...], out: Path, change: object, changed: str) -> bool:
    path = Path(changed)
    folder = next((f for f in folders if path.is_relative_to(f)), None)
    if folder is None or path.is_relative_to(out):
        return False
    return not any(part.startswith(".") or part.endswith("~") for part in path.relative_to(folder).parts)
