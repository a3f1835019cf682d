"""The tables of a campaign, a file each, in one list. Another one is a file here, a line below and its words in
`wording/english/open_data.py`."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from reportgen.campaign.declared import Campaign
from reportgen.intake.reading import Readings
from reportgen.opendata.table import Table
from reportgen.opendata.tables.caveats import caveats
from reportgen.opendata.tables.claims import claims
from reportgen.opendata.tables.comparisons import comparisons
from reportgen.opendata.tables.contenders import contenders
from reportgen.opendata.tables.passes import passes
from reportgen.opendata.tables.quantities import quantities
from reportgen.opendata.tables.readings import readings
from reportgen.opendata.tables.results import results

Record = Mapping[str, Any]  # what results.json holds

TABLES: tuple[Callable[[Record, Campaign, Readings], Table], ...] = (
    results,
    comparisons,
    claims,
    passes,
    readings,
    contenders,
    quantities,
    caveats,
)


def tables_of(record: Record, campaign: Campaign, read: Readings) -> tuple[Table, ...]:
    """Every table, whether it has rows or not: an address that is there today is there in the next issue."""
    return tuple(table(record, campaign, read) for table in TABLES)
