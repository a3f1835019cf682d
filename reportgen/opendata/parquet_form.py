"""A table as Parquet, written by DuckDB, whose bytes rest on the table and the library's version alone."""

from __future__ import annotations

import tempfile
from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path
from typing import Any

from reportgen.opendata.table import Table, Type

TYPES: dict[Type, str] = {"string": "VARCHAR", "number": "DOUBLE", "integer": "BIGINT", "boolean": "BOOLEAN"}


def as_parquet(tables: Iterable[Table]) -> Iterator[bytes]:
    """Each table's bytes."""
    with tempfile.TemporaryDirectory(prefix="parquet-") as folder:
        target = Path(folder) / "table.parquet"
        into = str(target).replace("'", "''")
        for table in tables:
            columns = table.shape.columns
            cells = [[row[n] for row in table.rows] for n in range(len(columns))]
            taken = ", ".join(f'unnest(?::{TYPES[column.type]}[]) AS "{column.name}"' for column in columns)
            _db().execute(f"COPY (SELECT {taken}) TO '{into}' (FORMAT parquet)", cells)
            yield target.read_bytes()


@cache
def _db() -> Any:
    """One for all campaigns, with one thread, so that rows keep their order and groups their size."""
    import duckdb

    return duckdb.connect(":memory:", config={"threads": 1})
