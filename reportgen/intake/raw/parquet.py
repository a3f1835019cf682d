"""A Parquet file as its page shows it: fetched by row, so that a long one is never held whole."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from reportgen.finding import Place
from reportgen.intake.raw.rows import AROUND, HEAD, MOST_CELLS, MOST_COLUMNS, TAIL, RawRow, RawSheet
from reportgen.intake.sheets.parquet import SHUT
from reportgen.sources import plainly_named


def parquet_sheet(path: Path, spots: Iterable[Place]) -> RawSheet:
    """The one table of the file at `path`: rows from 1, texts as the intake reads them.

    All rows are there up to `MOST_CELLS`, else the first, the last and those around `spots`.
    """
    import duckdb

    spots = tuple(spots)
    with plainly_named(path) as plain, duckdb.connect(config=SHUT) as connection:
        source = connection.read_parquet(str(plain))
        columns = list(zip(source.columns, (str(t) for t in source.types), strict=True))
        width = min(len(columns), max((MOST_COLUMNS, *(spot.column for spot in spots))))
        (total,) = connection.execute("SELECT count(*) FROM read_parquet(?)", [str(plain)]).fetchone() or (0,)
        wanted = _wanted(total, MOST_CELLS // max(width, 1), {spot.line for spot in spots})
        texts = ", ".join(_text(name, kind) for name, kind in columns[:width])
        found = connection.execute(
            f"SELECT file_row_number + 1, {texts} FROM read_parquet(?, file_row_number=true)"
            " WHERE file_row_number + 1 IN (SELECT unnest(?)) ORDER BY file_row_number",
            [str(plain), wanted],
        ).fetchall()
    rows = tuple(RawRow(number, tuple(cell or "" for cell in cells)) for number, *cells in found)
    return RawSheet("", tuple(name for name, _ in columns[:width]), rows, total, len(columns) - width)


def _wanted(total: int, whole: int, spots: Iterable[int]) -> list[int]:
    if total <= whole:
        return list(range(1, total + 1))
    near = {n for spot in spots for n in range(spot - AROUND, spot + AROUND + 1)}
    ends = {*range(1, HEAD + 1), *range(total - TAIL + 1, total + 1)}
    return sorted(n for n in near | ends if 1 <= n <= total)


def _text(name: str, kind: str) -> str:
    """A column as text, in SQL; a truth value as the intake has it."""
    quoted = '"' + name.replace('"', '""') + '"'
    return f"CASE {quoted} WHEN true THEN 'yes' WHEN false THEN 'no' END" if kind == "BOOLEAN" else (
        f"trim(CAST({quoted} AS VARCHAR))"
    )  # fmt: skip
