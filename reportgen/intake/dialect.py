"""Bytes of a CSV or TSV file → records with their line, after RFC 4180.

RFC 4180 leaves the separator at a comma; spreadsheets of countries with a decimal comma write semicolons. Which one
a file uses is told from its headings, and refused where two would do.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Collection, Iterator

from reportgen.finding import Place, Refused, refuse
from reportgen.intake.encoding import decoded
from reportgen.intake.table import Comma, Table, key, without_unit

_NOT_NUMBERS = frozenset({"time", "date", "note", "film", "photo"})
_NAMES = {",": "comma", ";": "semicolon", "\t": "tab"}
_COMMA_NUMBER = re.compile(r"[+−-]?(?:0,[0-9]+|[0-9]+,(?:[0-9]{1,2}|[0-9]{4,}))")
_POINT_NUMBER = re.compile(r"[+−-]?[0-9]+\.[0-9]+")


def decode(data: bytes, file: str, encoding: str = "") -> tuple[str, str]:
    """The text of a table and its encoding (`reportgen.intake.encoding`); else `Refused` with the line and what to
    do."""
    text, codec = decoded(data, file, encoding)
    if "\0" in text:
        line = len(text[: text.index("\0") + 1].splitlines())
        raise refuse(
            "nul-character",
            Place(file, line),
            "There is a NUL character in this file.",
            "It is damaged, or not a text table (a spreadsheet saved under a name that ends in .csv?).",
            "Export the table as “CSV UTF-8”.",
        )
    return text, codec


def records(text: str, file: str, separator: str) -> Iterator[tuple[int, tuple[str, ...]]]:
    """Each record with the line it begins on; a quoted field may hold line breaks (RFC 4180, 2.6).

    Raises `Refused` where the quotes are wrong.
    """
    csv.field_size_limit(max(len(text), csv.field_size_limit()))  # where a quotation mark is missing, all is one cell
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    begins = 1
    while True:
        try:
            cells = next(reader, None)
        except csv.Error as wrong:
            raise refuse(
                "quotes",
                Place(file, begins),
                f"The quotes in this row don't fit: {wrong}.",
                "Where a cell ends can't be known.",
                'Put the whole cell into double quotes, and write a quote inside it twice: "a 5"" pot".',
            ) from None
        if cells is None:
            return
        yield begins, tuple(cells)
        begins = reader.line_num + 1


def separator_of(text: str, file: str, known: Collection[str]) -> str:
    """Comma, semicolon or tab: the one that splits the heading into the most known headings.

    `known` are the headings and contenders the campaign asks for. Where two do equally well, a name that ends in
    .tsv speaks for tabs; otherwise `Refused`.
    """
    wanted = {key(k) for k in known}
    heads = {s: _heading(text, file, s) for s in _NAMES}
    scores = {
        s: (sum(1 for c in cells if {key(c), key(without_unit(c)[0])} & wanted), len(cells))
        for s, cells in heads.items()
    }
    hits = max(score[0] for score in scores.values())
    likely = [s for s in _NAMES if scores[s][0] == hits]
    if not hits:
        widest = max(score[1] for score in scores.values())
        likely = [s for s in likely if scores[s][1] == widest]
    usual = "\t" if file.lower().endswith((".tsv", ".tab")) else ","
    if all(scores[s][1] <= 1 for s in likely) or (usual == "\t" and usual in likely):
        return usual
    if len(likely) > 1:
        names = " and ".join(_NAMES[s] for s in likely)
        raise refuse(
            "separator",
            Place(file, 1),
            f"What separates the cells of this table is unclear: {names} would do.",
            "Every value could stand under the wrong heading.",
            "Use one of them only, and put a text that holds it into double quotes.",
        )
    return likely[0]


def _heading(text: str, file: str, separator: str) -> tuple[str, ...]:
    """The first record that isn't empty, as this separator splits it; nothing where its quotes don't fit."""
    try:
        return next((c for _, c in records(text, file, separator) if any(x.strip() for x in c)), ())
    except Refused:
        return ()


def comma_of(separator: str, table: Table) -> Comma:
    """Whether `12,5` is a number in this table, judged over all its cells but times, notes and moments in a film.

    Never where commas separate the cells. With semicolons it is. With tabs `12,5` is, while `1,250` is doubtful
    unless another cell shows that the comma is the decimal sign. Where another cell has a decimal point, none is.
    """
    if separator == ",":
        return "refused"
    skip = {i for i, h in enumerate(table.headings) if key(h) in _NOT_NUMBERS}
    cells = [c for row in table.rows for i, c in enumerate(row.cells) if i not in skip]
    if any(_POINT_NUMBER.fullmatch(c) for c in cells):
        return "mixed"
    if separator == ";" or any(_COMMA_NUMBER.fullmatch(c) for c in cells):
        return "decimal"
    return "doubtful"
