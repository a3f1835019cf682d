"""Open data as it is kept: tables written as Parquet once for what stands in them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from reportgen.store.kept import Kept, get, key_of, put

if TYPE_CHECKING:
    from reportgen.campaign.declared import Campaign, Publication
    from reportgen.intake.reading import Readings
    from reportgen.opendata import OpenData, PassedOn
    from reportgen.opendata.table import Table


def open_data(
    campaign: Campaign,
    publication: Publication,
    readings: Readings,
    record: str,
    raw: Sequence[PassedOn],
    issue: int,
    program: str,
    kept: Kept,
) -> OpenData:
    """A campaign's open data. `program` is the digest of the code and its libraries."""
    from reportgen.opendata import open_data

    def in_parquet(tables: Sequence[Table]) -> Iterable[bytes]:
        return _in_parquet(tables, program, kept)

    return open_data(campaign, publication, readings, record, raw, issue, in_parquet)


def _in_parquet(tables: Sequence[Table], program: str, kept: Kept) -> list[bytes]:
    """Each table as Parquet; only those are written that aren't as when they were kept, for that loads DuckDB."""
    keys = [key_of("table as Parquet", program, repr(table)) for table in tables]
    made = {key: data for key in keys if (data := get(kept, key)) is not None}
    missing = [(key, table) for key, table in zip(keys, tables, strict=True) if key not in made]
    if missing:
        from reportgen.opendata.parquet_form import as_parquet

        for (key, _), data in zip(missing, as_parquet(table for _, table in missing), strict=True):
            put(kept, key, data)
            made[key] = data
    return [made[key] for key in keys]
