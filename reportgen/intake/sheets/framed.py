"""A sheet whose headings are found."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.finding import Place, letters
from reportgen.intake.sheets.sheet import Sheet, SheetRow


@dataclass(frozen=True)
class Framed:
    """`heading` is the row of the headings, `above` the rows over it, `body` those below it.

    `asked` are the columns that the campaign may ask for.
    """

    file: str
    sheet: Sheet
    heading: SheetRow
    above: tuple[SheetRow, ...]
    body: tuple[SheetRow, ...]
    asked: frozenset[int]

    def at(self, line: int, column: int = 0) -> Place:
        """The place of a cell; headings of a Parquet file have no row."""
        return Place(self.file, line, column if line else 0, self.sheet.name)

    def called(self, line: int, column: int) -> str:
        """A cell as a message names it beside others: `C5`, or `row 5, column 3` where there are no letters."""
        return f"{letters(column)}{line}" if self.sheet.name else f"row {line}, column {column}"
