"""What keeps a sheet from being read truthfully: errors, merged cells, what is hidden, a second table."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence

from reportgen.finding import Finding, letters
from reportgen.intake.sheets.framed import Framed
from reportgen.intake.sheets.sheet import Block, Cell
from reportgen.intake.table import key

_NAMED = 5  # cells or rows named in one message


def errors_in(framed: Framed) -> Iterator[Finding]:
    """Error values, and formulas that were never worked out, among what the campaign may ask for."""
    for line, column, cell in _cells(framed):
        if cell.sort == "error":
            yield Finding(
                "error",
                "error-value",
                framed.at(line, column),
                f"There is an error value in this cell: {cell.text}.",
                "A formula could not be worked out, so there is no reading.",
                "Mend the formula, or write `none (reason)` in its place.",
            )
        elif cell.sort == "not worked out":
            yield Finding(
                "error",
                "not-worked-out",
                framed.at(line, column),
                "There is a formula in this cell whose value was not saved with it.",
                "Formulas are read by their saved values; none is worked out here.",
                "Open the file in a spreadsheet program and save it, or write the value itself.",
            )


def merged_cells(framed: Framed) -> Iterator[Finding]:
    """Merged cells among the headings, or in columns that the campaign may ask for."""
    last = framed.body[-1].line if framed.body else framed.heading.line
    for block in framed.sheet.merged:
        in_heading = block.top <= framed.heading.line <= block.bottom
        columns = range(block.left, block.right + 1)
        in_body = framed.heading.line < block.bottom and block.top <= last and any(c in framed.asked for c in columns)
        if in_heading or in_body:
            yield Finding(
                "error",
                "merged-cells",
                framed.at(block.top, block.left),
                f"The cells {_range(block)} are merged into one.",
                "Whether its text belongs to one row and column or to all of them can't be known.",
                "Split the cell, and write the text into every cell that it is meant for.",
            )


def hidden_cells(framed: Framed) -> Iterator[Finding]:
    """Hidden rows and columns: they are read, and that is said."""
    rows = [row.line for row in framed.body if row.line in framed.sheet.hidden_rows]
    if rows:
        yield _hidden(framed, rows[0], 0, f"{_named('row', [str(n) for n in rows])} hidden in the spreadsheet")
    columns = sorted(framed.asked & framed.sheet.hidden_columns)
    if columns:
        names = [f"{letters(n)} ({framed.heading.cells[n].text})" for n in columns]
        yield _hidden(framed, framed.heading.line, columns[0], f"{_named('column', names)} hidden in the spreadsheet")


def hidden_sheet(framed: Framed) -> Iterator[Finding]:
    """A hidden sheet that was asked for by name."""
    if framed.sheet.hidden:
        yield _hidden(framed, 0, 0, f"The sheet “{framed.sheet.name}” is hidden in the spreadsheet")


def hidden_digits(framed: Framed) -> Iterator[Finding]:
    """Numbers of which the sheet shows fewer digits than it holds: all that it holds are read."""
    less = [(line, column, cell) for line, column, cell in _cells(framed) if cell.shown]
    if not less:
        return
    line, column, cell = less[0]
    others = f" The same in {_list([framed.called(n, c) for n, c, _ in less[1:]])}." if less[1:] else ""
    yield Finding(
        "warning",
        "digits-hidden",
        framed.at(line, column),
        f"This cell shows {cell.shown} and holds {cell.text}, which is what is read.{others}",
        "A reader who opens the spreadsheet sees another number than the one on the page.",
        "Show all digits that were read off, or round the value in the cell.",
    )


def above_headings(framed: Framed) -> Iterator[Finding]:
    """Rows over the headings, such as a title."""
    if framed.above:
        lines = [str(row.line) for row in framed.above]
        yield Finding(
            "note",
            "above-headings",
            framed.at(framed.above[0].line),
            f"{_named('row', lines)} above the headings in row {framed.heading.line}: nothing is read there.",
            "A title is no reading; a reading there would be lost.",
            "Nothing, if these rows are a title.",
        )


def second_table(framed: Framed, known: Collection[str]) -> Iterator[Finding]:
    """A row below an empty one that repeats a heading and holds others: the headings of another table."""
    headings = {key(cell.text) for cell in framed.heading.cells.values()}
    before = framed.heading.line
    for row in framed.body:
        names = {key(cell.text) for cell in row.cells.values() if cell.sort == "text"}
        if row.line > before + 1 and names & headings and len(names & {*known, *headings}) > 1:
            yield Finding(
                "error",
                "second-table",
                framed.at(row.line),
                f"Another table begins in row {row.line} of this sheet, with headings of its own.",
                "Its rows would be read under the headings of the first.",
                "Move it to a sheet of its own, and list the file once for each sheet with `sheet:`.",
            )
            return
        before = row.line


def _cells(framed: Framed) -> Iterator[tuple[int, int, Cell]]:
    """The headings, and the cells in columns that the campaign may ask for."""
    for column, cell in framed.heading.cells.items():
        yield framed.heading.line, column, cell
    for row in framed.body:
        for column, cell in row.cells.items():
            if column in framed.asked:
                yield row.line, column, cell


def _hidden(framed: Framed, line: int, column: int, says: str) -> Finding:
    return Finding(
        "warning",
        "hidden-cells",
        framed.at(line, column),
        f"{says}; what is in there is read like the rest.",
        "A reader who opens the spreadsheet doesn't see where these readings come from.",
        "Show them, or take out of the table what doesn't belong to it.",
    )


def _range(block: Block) -> str:
    return f"{letters(block.left)}{block.top}:{letters(block.right)}{block.bottom}"


def _named(what: str, names: Sequence[str]) -> str:
    """`Row 4 is`, `Rows 4, 7 and 9 are`; only the verb tells how many."""
    one = len(names) == 1
    return f"{what.capitalize()}{'' if one else 's'} {_list(names)} {'is' if one else 'are'}"


def _list(names: Iterable[str]) -> str:
    every = list(names)
    if len(every) > _NAMED:
        return f"{', '.join(every[:_NAMED])} and {len(every) - _NAMED} more"
    return " and ".join(filter(None, (", ".join(every[:-1]), every[-1])))
