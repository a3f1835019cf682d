"""A table of cells as they were written, each with its place.

Headings and names are compared by `key`, so `Gas burned`, `gas-burned` and `gas_burned` are one heading.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from typing import Literal

from reportgen.finding import Finding, Place, letters
from reportgen.intake.sheets.sheet import Sort

Spot = tuple[str, str, int]
Comma = Literal["refused", "decimal", "doubtful", "mixed"]

_UNIT_IN_HEADING = re.compile(r"^(?P<name>.*\S)\s*[(\[](?P<unit>[^()\[\]]+(?:\([^()]*\))?)[)\]]$")


@dataclass(frozen=True)
class Row:
    """One record: `line` is the first line it stands on (from 1), `cells` are as many as the table has headings."""

    line: int
    cells: tuple[str, ...]


@dataclass(frozen=True)
class Table:
    """Rows under one heading. `comma` says whether `12,5` is a number here: see `reportgen.intake.dialect`.

    A place's column counts cells from 1, as a spreadsheet counts them. In a spreadsheet `sheet` is set; its cells, and
    those of a Parquet file, are of `sorts` (line and column → sort) where they are not plain text.
    """

    file: str
    headings: tuple[str, ...]
    heading_line: int
    rows: tuple[Row, ...]
    comma: Comma = "refused"
    sheet: str = ""
    sorts: Mapping[tuple[int, int], Sort] = field(default_factory=dict)

    def at(self, line: int, column: int | None = None) -> Place:
        """The place of a cell; `column` is its index from 0, None for the whole row. Line 0 is the file."""
        return Place(self.file, line, 0 if column is None or not line else column + 1, self.sheet)

    @property
    def spot(self) -> Spot:
        """What tells this table from every other one."""
        return self.file, self.sheet, self.heading_line

    def find(self, heading: str) -> int | None:
        """The index of a heading: as written, else the one that is it with a unit in brackets behind."""
        keys = [key(h) for h in self.headings]
        if key(heading) in keys:
            return keys.index(key(heading))
        bare = [key(without_unit(h)[0]) for h in self.headings]
        return bare.index(key(heading)) if bare.count(key(heading)) == 1 else None


def key(name: str) -> str:
    """What makes two headings one: case, spaces, hyphens, underscores and what can't be seen don't count, every other
    sign does."""
    if not name.isascii():
        name = unicodedata.normalize("NFC", "".join(c for c in name if unicodedata.category(c) != "Cf"))
    return re.sub(r"[\s_-]+", "-", name.casefold().strip()).strip("-")


def without_unit(heading: str) -> tuple[str, str]:
    """`noise (dB)` and `noise [dB]` give `noise` and `dB`; a heading without a unit gives itself and ""."""
    found = _UNIT_IN_HEADING.match(heading.strip())
    return (found["name"], found["unit"].strip()) if found else (heading.strip(), "")


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """The known name nearest to a misspelt one, or ""."""
    by_key = {key(k): k for k in known}
    near = get_close_matches(key(name), list(by_key), n=1, cutoff=0.7)
    return by_key[near[0]] if near else ""


def make_table(
    file: str, records: Iterable[tuple[int, tuple[str, ...]]], empty_at: Place | None = None, sheet: str = ""
) -> tuple[Table | None, tuple[Finding, ...]]:
    """Records (line, cells) become a table: the first is the heading, wholly empty ones are passed over.

    Findings: no records at all, a heading twice, cells without a heading, rows shorter or longer than the heading.
    The table is None only where there is no heading to read by.
    """
    filled = [(line, tuple(c.strip() for c in cells)) for line, cells in records if any(c.strip() for c in cells)]
    if not filled:
        at = empty_at or Place(file, 0, 0, sheet)
        return None, (
            Finding(
                "error",
                "empty-table",
                at,
                "There is nothing in this table, not even headings.",
                "An empty file can mean a lost one.",
                "Write the headings in its first line; a table with headings alone counts as not yet tested.",
            ),
        )
    heading_line, headings = filled[0]
    while headings and not headings[-1]:
        headings = headings[:-1]
    bare = Table(file, headings, heading_line, (), sheet=sheet)
    found = [*_headings_twice(bare)]
    rows = []
    for line, cells in filled[1:]:
        while len(cells) > len(headings) and not cells[-1]:
            cells = cells[:-1]
        if len(cells) != len(headings) and not sheet:
            found.append(_ragged(Place(file, line), len(cells), len(headings)))
        else:
            found.extend(_without_heading(bare, line, cells))
            rows.append(Row(line, cells[: len(headings)]))
    return replace(bare, rows=tuple(rows)), tuple(found)


def _called(table: Table, column: int) -> str:
    """A column as its file counts it, from 1: a letter in a spreadsheet."""
    return letters(column) if table.sheet else str(column)


def _headings_twice(table: Table) -> Iterable[Finding]:
    seen: dict[str, int] = {}
    for i, heading in enumerate(table.headings):
        if not heading:
            continue
        first = seen.setdefault(key(heading), i)
        if first != i:
            yield Finding(
                "error",
                "heading-twice",
                table.at(table.heading_line, i),
                f"The heading “{heading}” stands twice: columns {_called(table, first + 1)} and "
                f"{_called(table, i + 1)}.",
                "Which of the two is meant can't be known.",
                "Give each column a heading of its own.",
            )


def _without_heading(table: Table, line: int, cells: tuple[str, ...]) -> Iterable[Finding]:
    for i, cell in enumerate(cells):
        if cell and not "".join(table.headings[i : i + 1]):
            yield Finding(
                "error",
                "no-heading",
                table.at(line, i),
                f"“{cell}” stands in a column without a heading.",
                "What it is can't be known.",
                f"Give column {_called(table, i + 1)} a heading.",
            )


def _ragged(at: Place, cells: int, headings: int) -> Finding:
    more = cells > headings
    return Finding(
        "error",
        "ragged-row",
        at,
        f"This row has {cells} {'cell' if cells == 1 else 'cells'}, the headings are {headings}.",
        "From here on every value could stand under the wrong heading.",
        "Put a text that holds the separator into double quotes."
        if more
        else "Fill the row up with separators; write `none (reason)` for what was not read.",
    )


def spelt(names: Collection[str]) -> str:
    """Names for a message: quoted and with commas between, the first dozen of them."""
    shown = [f"“{n}”" for n in names if n]
    return ", ".join(shown[:12]) + (" …" if len(shown) > 12 else "")
