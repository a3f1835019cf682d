"""A table as Parquet, written by DuckDB, whose bytes rest on the table and the library's version alone."""

from __future__ import annotations

import tempfile
from collections.abc import Iterable, Iterator
from pathlib import Path

from reportgen.opendata.table import Table, Type

TYPES: dict[Type, str] = {"string": "VARCHAR", "number": "DOUBLE", "integer": "BIGINT", "boolean": "BOOLEAN"}
AT_ONCE = 10_000  # rows


def as_parquet(tables: Iterable[Table]) -> Iterator[bytes]:
    """Each table's bytes. One thread, so that rows keep their order and groups their size."""
    import duckdb

    settings: dict[str, str | bool | int | float | list[str]] = {"threads": 1}
    with duckdb.connect(":memory:", config=settings) as db, tempfile.TemporaryDirectory(prefix="parquet-") as folder:
        for table in tables:
            target = Path(folder) / f"{table.shape.name}.parquet"
            _load(db, table)
            db.execute(f"COPY made TO '{str(target).replace(chr(39), chr(39) * 2)}' (FORMAT parquet)")
            yield target.read_bytes()


def _load(db: object, table: Table) -> None:
    columns = table.shape.columns
    db.execute("CREATE OR REPLACE TABLE made (" + ", ".join(f'"{c.name}" {TYPES[c.type]}' for c in columns) + ")")  # type: ignore[attr-defined]
    insert = "INSERT INTO made SELECT " + ", ".join(f"unnest(?::{TYPES[c.type]}[])" for c in columns)
    for first in range(0, len(table.rows), AT_ONCE):
        piece = table.rows[first : first + AT_ONCE]
        db.execute(insert, [list(cells) for cells in zip(*piece, strict=True)])  # type: ignore[attr-defined]
