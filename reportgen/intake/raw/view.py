"""A raw file as its page shows it: its rows as they stand, all of them or, where it is long, what matters of them.

A short file is shown whole. Of a long one the head, the end, and some rows around every place that something was read
from: so a trace ends on a row that is there, and neither a page nor the memory grows with the file.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.finding import Place
from reportgen.intake.raw.parquet import parquet_sheet
from reportgen.intake.raw.rows import RawRow, RawSheet, RawView, chosen
from reportgen.intake.raw.sheets import raw_sheets
from reportgen.intake.reading import RawFile, Reading
from reportgen.sources import Workspace, lines, path_of


def raw_views(
    ws: Workspace, files: Iterable[RawFile], readings: Iterable[Reading], more: Iterable[Place] = ()
) -> Mapping[str, RawView]:
    """Path from the workspace → its view, of every file that readings came from. Raises `Refused`.

    `more` are places to be shown besides those of the readings.
    """
    spots = spots_of(readings, more)
    return {file.path: view_of(ws, file, spots.get(file.path, ())) for file in files}


def spots_of(readings: Iterable[Reading], more: Iterable[Place] = ()) -> Mapping[str, tuple[Place, ...]]:
    """File → the places in it that readings came from; of a series its first and its last line."""
    found: dict[str, dict[Place, None]] = {}
    for place in more:
        found.setdefault(place.file, {})[place] = None
    for r in readings:
        found.setdefault(r.at.file, {})[r.at] = None
        if r.series is not None and r.series.named_in is not None:
            found.setdefault(r.series.named_in.file, {})[r.series.named_in] = None
        if r.series is not None:
            for line in (r.series.first, r.series.last):
                found.setdefault(r.series.file, {})[Place(r.series.file, line)] = None
    return {file: tuple(places) for file, places in found.items()}


def view_of(ws: Workspace, file: RawFile, spots: Iterable[Place]) -> RawView:
    """The view of one file. `spots` are the places that must be in it."""
    spots = tuple(spots)
    if file.form == "text":
        numbered = (RawRow(n, (line,)) for n, line in enumerate(lines(ws, file.path, file.encoding), 1))
        rows, total = chosen(numbered, {spot.line for spot in spots if spot.line})
        return RawView(file.form, (RawSheet("", (), rows, total),))
    if file.form == "parquet":
        return RawView(file.form, (parquet_sheet(path_of(ws, file.path), spots),))
    return RawView(file.form, raw_sheets(ws, file, spots))
