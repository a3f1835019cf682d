"""The tables of a campaign, a file each, in one list. Another one is a file here, a line below and its words in
`wording/english/open_data.py`."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from reportgen.campaign.declared import Campaign
from reportgen.intake.reading import Readings
from reportgen.opendata.table import Shape, Table
from reportgen.opendata.tables.caveats import SHAPE as CAVEATS
from reportgen.opendata.tables.caveats import caveats
from reportgen.opendata.tables.claims import SHAPE as CLAIMS
from reportgen.opendata.tables.claims import claims
from reportgen.opendata.tables.comparisons import SHAPE as COMPARISONS
from reportgen.opendata.tables.comparisons import comparisons
from reportgen.opendata.tables.contenders import SHAPE as CONTENDERS
from reportgen.opendata.tables.contenders import contenders
from reportgen.opendata.tables.passes import SHAPE as PASSES
from reportgen.opendata.tables.passes import passes
from reportgen.opendata.tables.quantities import SHAPE as QUANTITIES
from reportgen.opendata.tables.quantities import quantities
from reportgen.opendata.tables.readings import SHAPE as READINGS
from reportgen.opendata.tables.readings import readings
from reportgen.opendata.tables.results import SHAPE as RESULTS
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

SHAPES: tuple[Shape, ...] = (
    RESULTS,
    COMPARISONS,
    CLAIMS,
    PASSES,
    READINGS,
    CONTENDERS,
    QUANTITIES,
    CAVEATS,
)


def tables_of(record: Record, campaign: Campaign, read: Readings) -> tuple[Table, ...]:
    """Every table, whether it has rows or not: an address that is there today is there in the next issue."""
    return tuple(table(record, campaign, read) for table in TABLES)
