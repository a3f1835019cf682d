"""A raw file as its page shows it: its rows as they stand, all of them or, where it is long, what matters of them.

A short file is shown whole. Of a long one the head, the end, and some rows around every place that something was read
from: so a trace ends on a row that is there, and neither a page nor the memory grows with the file.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from reportgen.finding import Place
from reportgen.intake.reading import FileForm, RawFile, Reading
from reportgen.sources import Workspace, lines, path_of

WHOLE = 2000  # rows: so many are shown without a gap
MOST_CELLS, MOST_COLUMNS = 40_000, 60  # of a sheet: a page that still opens on a phone
HEAD, TAIL, AROUND = 30, 3, 3  # what a logger writes above its first sample is rarely longer


@dataclass(frozen=True)
class RawRow:
    """A row by its number in the file, from 1. A line of text is one cell, as it stands."""

    number: int
    cells: tuple[str, ...]


@dataclass(frozen=True)
class RawSheet:
    """A sheet, or the one table of a file without sheets (`name` is then "").

    `headings` are those of a file that holds them apart from its rows (Parquet), else empty. `total` counts all rows,
    `beyond` the columns to the right of those shown.
    """

    name: str
    headings: tuple[str, ...]
    rows: tuple[RawRow, ...]
    total: int
    beyond: int = 0


@dataclass(frozen=True)
class RawView:
    """What is shown of a raw file."""

    form: FileForm
    sheets: tuple[RawSheet, ...]

    @property
    def whole(self) -> bool:
        """Whether every row is shown (columns may lie beyond)."""
        return all(len(sheet.rows) == sheet.total for sheet in self.sheets)


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
        from reportgen.intake.raw_parquet import parquet_sheet

        return RawView(file.form, (parquet_sheet(path_of(ws, file.path), spots),))
    from reportgen.intake.raw_sheets import raw_sheets

    return RawView(file.form, raw_sheets(ws, file, spots))


def chosen(rows: Iterable[RawRow], spots: Collection[int], whole: int = WHOLE) -> tuple[tuple[RawRow, ...], int]:
    """The rows to show, and how many there are: all, up to `whole`. Rows come in order and are gone through once."""
    near = {n for spot in spots for n in range(spot - AROUND, spot + AROUND + 1)}
    short: list[RawRow] = []
    kept: list[RawRow] = []
    end: deque[RawRow] = deque(maxlen=TAIL)
    total = 0
    for row in rows:
        total += 1
        if total <= whole:
            short.append(row)
        else:
            end.append(row)
        if total <= HEAD or row.number in near:
            kept.append(row)
    if total <= whole:
        return tuple(short), total
    apart = {row.number: row for row in (*kept, *end)}
    return tuple(apart[n] for n in sorted(apart)), total
