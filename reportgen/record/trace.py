"""From a result back to the cells it came from."""

from __future__ import annotations

import posixpath
from collections.abc import Iterable, Mapping
from typing import Any

from reportgen.intake.reading import Reading, ReadingKey


def trace(keys: Iterable[ReadingKey], readings: Mapping[ReadingKey, Reading], folder: str) -> list[dict[str, Any]]:
    """The places of readings, merged: a file each, with its lines and its cells (line, column) in order, each once.

    Files are named from the campaign's folder, as the author names them. An entry of its own has each sheet of a
    spreadsheet, each page of an attachment, and each channel that was read of a logger's file, with its `span` (first
    and last line) instead of single cells.
    """
    found: dict[tuple[Any, ...], list[Reading]] = {}
    for key in keys:
        if key in readings:
            r = readings[key]
            span = (r.series.first, r.series.last, r.series.heading) if r.series is not None else (0, 0, "")
            found.setdefault((r.at.file, r.at.sheet, span, r.attachment, r.page or 0), []).append(r)
    entries = [(from_folder(at[0], folder), at, found[at]) for at in found]
    return [_entry(file, read) for file, _, read in sorted(entries, key=lambda entry: entry[:2])]


def from_folder(path: str, folder: str) -> str:
    """A path from the workspace, as seen from the campaign's folder."""
    return posixpath.relpath(path, folder or ".")


def _entry(file: str, read: list[Reading]) -> dict[str, Any]:
    """All of `read` stand in one file, on one sheet, in one span, on one page."""
    r = read[0]
    entry: dict[str, Any] = {"file": file}
    if r.at.sheet:
        entry["sheet"] = r.at.sheet
    if r.series is not None:
        entry |= {"channel": r.series.heading, "span": [r.series.first, r.series.last]}
    places = sorted({one.at for one in read})
    entry["lines"] = sorted({p.line for p in places})
    entry["cells"] = [[p.line, p.column] for p in places if p.column] if r.series is None else []
    if r.attachment:
        entry["attachment"] = r.attachment
    if r.page is not None:
        entry["page"] = r.page
    return entry
