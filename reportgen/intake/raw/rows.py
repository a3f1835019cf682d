"""What a page shows of a raw file: rows by their number, sheets of them, and which rows of a long file."""

from __future__ import annotations

from collections import deque
from collections.abc import Collection, Iterable
from dataclasses import dataclass

from reportgen.intake.reading import FileForm

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
