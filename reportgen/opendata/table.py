"""A table for others to take: one observation a row, one variable a column."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal
from urllib.parse import quote

from reportgen.wording.language import has, say

Type = Literal["string", "number", "integer", "boolean"]
Cell = str | float | int | bool | None


@dataclass(frozen=True)
class Column:
    """One variable. `unit` where all of its values have the same one; `among`: no other text stands there;
    `refers` names table and column whose values it takes ("contenders.contender")."""

    name: str
    type: Type = "string"
    unit: str = ""
    among: tuple[str, ...] = ()
    refers: str = ""
    always: bool = False  # no cell of it is empty


@dataclass(frozen=True)
class Shape:
    """What a table is, before it has rows; the first column holds the name of the row, which no other has."""

    name: str
    columns: tuple[Column, ...]

    @property
    def key(self) -> str:
        """The column that names each row."""
        return self.columns[0].name

    @property
    def title(self) -> str:
        """What it is called, in the language spoken."""
        return say(f"opendata.table.{self.name}")

    @property
    def holds(self) -> str:
        """One sentence on what a row is, in the language spoken."""
        return say(f"opendata.holds.{self.name}")

    def describes(self, column: Column) -> str:
        """What stands in a column: the words for this very table, else those for any."""
        own = f"opendata.column.{self.name}.{column.name}"
        return say(own) if has(own) else say(f"opendata.column.{column.name}")


@dataclass(frozen=True)
class Table:
    """A shape with its rows, in the order of the campaign."""

    shape: Shape
    rows: tuple[tuple[Cell, ...], ...]


def table_of(shape: Shape, rows: Sequence[Mapping[str, Any]]) -> Table:
    """A table from rows by name; a name that a row lacks, null and "" are empty cells."""
    made = tuple(tuple(_cell(row.get(column.name)) for column in shape.columns) for row in rows)
    return Table(shape, made)


def name_of(*parts: str | None) -> str:
    """The name of a row from what tells it from others: `boil-time/corvane`; what is empty is left out.

    Each part is percent-encoded (RFC 3986, 2.1), so that no two rows run together.
    """
    return "/".join(quote(part, safe=" ") for part in parts if part)


def spaced(ids: Sequence[str]) -> str:
    """Several ids in one cell."""
    return " ".join(ids)


def _cell(value: Any) -> Cell:
    return None if value == "" else value
