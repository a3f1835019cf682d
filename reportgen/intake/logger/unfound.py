"""Contenders of whom no logger's file was found: a slip in a file's name must not read as a test that wasn't run."""

from __future__ import annotations

import posixpath
from collections.abc import Collection, Iterable, Mapping
from contextlib import suppress
from difflib import get_close_matches

from reportgen.campaign.declared import Campaign, Source, Test
from reportgen.finding import Finding, Refused
from reportgen.intake.logger.read import channel_columns
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.sources import Workspace, list_files

_FOR_WHOM = "{contender}"
_LIKE = 0.6  # names as alike as this are told


def without_a_file(ws: Workspace, campaign: Campaign, readings: Mapping[ReadingKey, Reading]) -> Iterable[Finding]:
    """A warning for each contender that a pattern of names finds no file of, though it finds some of others."""
    taken = {r.series.file for r in readings.values() if r.series}
    for test in campaign.tests:
        source = next((s for s in test.sources if s.logger and _FOR_WHOM in s.file), None)
        if source is None:
            continue
        channels = {c.name for c in channel_columns(test)}
        seen = {k.contender for k in readings if k.test == test.id and k.name in channels}
        waiting = seen | set(test.not_yet_tested) | set(test.running)
        for contender in campaign.contenders if seen else ():
            if contender.id not in waiting:
                yield _no_file(ws, campaign, test, source, contender.id, taken)


def _no_file(
    ws: Workspace, campaign: Campaign, test: Test, source: Source, contender: str, taken: Collection[str]
) -> Finding:
    pattern = posixpath.normpath(posixpath.join(campaign.folder, source.file))
    wanted = pattern.replace(_FOR_WHOM, contender).replace("{pass}", "1")
    spare: list[str] = []
    with suppress(Refused):
        spare = [f for f in list_files(ws, posixpath.dirname(pattern[: pattern.index("{")])) if f not in taken]
    near = get_close_matches(wanted, spare, n=1, cutoff=_LIKE)
    inside = posixpath.relpath(near[0], campaign.folder or ".") if near else ""
    return Finding(
        "warning",
        "no-file-of-a-contender",
        source.place,
        f"No file is named like {source.file} for {contender}" + (f"; the nearest is {inside}." if inside else "."),
        "The page says that it is not yet tested.",
        "Rename its files, or give them an entry of their own under `readings:`; "
        "where it wasn't tested, name it under `not yet tested:`.",
        f"test/{test.id}",
        contender,
    )
