"""A Parquet file → its rows, as the cells of a sheet without a name: row 0 holds the headings.

Read through DuckDB. Floating-point numbers come as the shortest text that is them, decimals with their scale.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from reportgen.finding import Place, Refused, refuse
from reportgen.intake.sheets.sheet import MOST_CELLS, Cell, Sheet, SheetRow, Sort
from reportgen.sources import plainly_named

if TYPE_CHECKING:
    from duckdb import DuckDBPyConnection

_MAGIC = b"PAR1"  # Apache Parquet, "File Format": the file begins and ends with it
_AT_ONCE = 4096  # rows fetched together
_SORTS: dict[str, Sort] = {
    "BOOLEAN": "truth value",
    "DATE": "date",
    "TIME": "time of day",
    "TIME WITH TIME ZONE": "time of day",
    "VARCHAR": "text",
    "ENUM": "text",
    "UUID": "text",
}
_WHOLE = ("TINYINT", "SMALLINT", "INTEGER", "BIGINT", "HUGEINT")
_NUMBERS = frozenset({"FLOAT", "DOUBLE", *_WHOLE, *(f"U{kind}" for kind in _WHOLE)})


def read_parquet(path: Path, data: bytes, file: str) -> Sheet:
    """The rows of a file: `path` is where it lies, `data` its bytes. Raises `Refused`."""
    check_whole(data, file)
    rows = tuple(parquet_rows(path, file))
    return Sheet("", rows)


def check_whole(data: bytes, file: str) -> None:
    """Raises `Refused` for what isn't a Parquet file, or only the beginning of one."""
    if data[:4] == b"PARE":
        raise _refused("password", file, "This Parquet file is encrypted.", "Save it without a key.")
    if data[:4] != _MAGIC:
        says = "This file is empty." if not data else "This file is no Parquet file, whatever its name says."
        raise _refused("no-parquet", file, says, "Write it again; if it is a CSV table, let its name end in .csv.")
    if len(data) < 12 or data[-4:] != _MAGIC:
        says = "This Parquet file is cut short: its end, which says what is in it, is missing."
        raise _refused("cut-short", file, says, "Copy or download it again.")


def parquet_rows(path: Path, file: str) -> Iterator[SheetRow]:
    """Row 0 with the headings, then every row from 1. An empty value (null) has no cell."""
    import duckdb

    with plainly_named(path) as plain, duckdb.connect(config=SHUT) as connection:
        try:
            yield from _rows(connection, str(plain), file)
        except (duckdb.Error, RuntimeError):  # RuntimeError: names that are no text
            says = "This Parquet file is damaged: it can't be read to its end."
            raise _refused("damaged-parquet", file, says, "Copy it again, or write it again.") from None


SHUT: dict[str, str | bool | int | float | list[str]] = {
    "autoinstall_known_extensions": False,
    "autoload_known_extensions": False,
    "threads": 1,  # rows in their order
}


def _rows(connection: DuckDBPyConnection, path: str, file: str) -> Iterator[SheetRow]:
    source = connection.read_parquet(path)
    columns = list(zip(source.columns, (str(t) for t in source.types), strict=True))
    sorts = [_sort(kind, name, file) for name, kind in columns]
    yield SheetRow(0, {i: Cell(name.strip()) for i, (name, _) in enumerate(columns, 1)})
    (count,) = connection.execute("SELECT count(*) FROM read_parquet(?)", [path]).fetchone() or (0,)
    if count * len(columns) > MOST_CELLS:
        raise _refused(
            "table-too-large",
            file,
            f"This Parquet file has {count} rows of {len(columns)} columns, more than {MOST_CELLS} cells.",
            "Keep the readings in a table of their own; a logger's file is read in pieces (`logger:`).",
        )
    quoted = ", ".join('CAST("{}" AS VARCHAR)'.replace("{}", name.replace('"', '""')) for name, _ in columns)
    found = connection.execute(f"SELECT {quoted} FROM read_parquet(?)", [path])
    line = 0
    while rows := found.fetchmany(_AT_ONCE):
        for row in rows:
            line += 1
            yield SheetRow(line, {i: _cell(text, sorts[i - 1]) for i, text in enumerate(row, 1) if text is not None})


def _cell(text: str, sort: Sort) -> Cell:
    if sort == "truth value":
        return Cell("yes" if text == "true" else "no", sort)
    return Cell(text.strip(), sort)


def _sort(kind: str, name: str, file: str) -> Sort:
    plain = kind.partition("(")[0]
    if kind in _NUMBERS:
        return "free number"
    if plain == "DECIMAL":
        return "number"
    if plain.startswith("TIMESTAMP"):
        return "date"
    if plain in _SORTS and not kind.endswith("]"):
        return _SORTS[plain]
    nested = kind.endswith("]") or plain in ("STRUCT", "MAP", "UNION")
    what = "holds several values in one cell" if nested else "is of a kind that is no text and no number"
    raise _refused(
        "column-without-cells",
        file,
        f"The column “{name}” {what} ({kind}).",
        "Give each of them a column of its own, or leave the column out.",
    )


def _refused(rule: str, file: str, says: str, do: str) -> Refused:
    return refuse(rule, Place(file), says, "Its readings would be lost, or be wrong.", do)
