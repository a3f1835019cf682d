"""The cells of one sheet, as a spreadsheet or a Parquet file holds them, each with its place.

Comes from a reader of one format (`xlsx.py`, `ods.py`, `parquet.py`); `sheet_table.py` makes a table of it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

MOST_CELLS = 2_000_000  # filled cells of one sheet; each is kept as text with its place
MOST_LINES, MOST_COLUMNS = 1_048_576, 16_384  # rows and columns that spreadsheets hold

Sort = Literal["text", "number", "free number", "time of day", "date", "truth value", "error", "not worked out"]


@dataclass(frozen=True)
class Cell:
    """One cell. `text` is what it says, in our notation: a point as decimal sign, dates and times as ISO 8601 writes
    them.

    `number` has the digits its number format shows; `free number` has none that anybody wrote (format General, a
    floating-point number of Parquet). `not worked out`: a formula without a saved value. `shown` is what the
    spreadsheet shows where that is less than what it holds, else "".
    """

    text: str
    sort: Sort = "text"
    shown: str = ""


@dataclass(frozen=True)
class SheetRow:
    """One row that isn't empty: its number from 1, and its cells by column from 1."""

    line: int
    cells: Mapping[int, Cell]


@dataclass(frozen=True, order=True)
class Block:
    """Cells merged into one: first and last row, first and last column."""

    top: int
    bottom: int
    left: int
    right: int


@dataclass(frozen=True)
class Sheet:
    """A sheet; `name` is "" in a Parquet file, whose headings then stand in row 0."""

    name: str
    rows: tuple[SheetRow, ...]
    merged: tuple[Block, ...] = ()
    hidden_rows: frozenset[int] = field(default_factory=frozenset)
    hidden_columns: frozenset[int] = field(default_factory=frozenset)
    hidden: bool = False
