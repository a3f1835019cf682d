"""A sheet is read as far as there is room for it: what would fill the memory is refused, never cut off."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from reportgen.finding import Place, Refused, refuse
from reportgen.intake.sheets.sheet import MOST_CELLS, SheetRow


def bounded(rows: Iterable[SheetRow], file: str, name: str) -> Iterator[SheetRow]:
    """The rows as they come; raises `Refused` at the cell that is one too many."""
    cells = 0
    for row in rows:
        cells += len(row.cells)
        if cells > MOST_CELLS:
            raise too_large(file, name, row.line)
        yield row


def too_large(file: str, name: str, line: int) -> Refused:
    """More cells than a table of readings has."""
    return refuse(
        "table-too-large",
        Place(file, line, 0, name),
        f"Up to here there are more than {MOST_CELLS // 1_000_000} million filled cells.",
        "A table of readings is read whole; so many would fill the memory.",
        "Keep the readings in a table of their own; a logger's file is read in pieces (`logger:`).",
    )
