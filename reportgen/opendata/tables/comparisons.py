"""comparisons: each contender against each, and what was decided."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, get_args

from reportgen.campaign.declared import Campaign
from reportgen.intake.reading import Readings
from reportgen.judgement.measured import Decision
from reportgen.opendata.table import Column, Shape, Table, name_of, spaced, table_of

SHAPE = Shape(
    "comparisons",
    (
        Column("comparison", always=True),
        Column("test", always=True),
        Column("quantity", refers="quantities.quantity", always=True),
        Column("part"),
        Column("first", refers="contenders.contender", always=True),
        Column("second", refers="contenders.contender", always=True),
        Column("difference", "number"),
        Column("unit"),
        Column("u", "number"),
        Column("low", "number"),
        Column("high", "number"),
        Column("percent", "number", unit="%"),
        Column("percent_low", "number", unit="%"),
        Column("percent_high", "number", unit="%"),
        Column("decision", among=get_args(Decision), always=True),
        Column("favours", refers="contenders.contender"),
        Column("resolved", "boolean", always=True),
        Column("differed", "boolean"),
        Column("differed_low", "number"),
        Column("differed_high", "number"),
        Column("reason", always=True),
        Column("caveats"),
    ),
)


def comparisons(record: Mapping[str, Any], campaign: Campaign, read: Readings) -> Table:
    """The comparisons of results.json."""
    return table_of(SHAPE, [_row(c) for c in record["comparisons"]])


def _row(c: Mapping[str, Any]) -> dict[str, Any]:
    return {
        **c,
        "comparison": name_of(c["quantity"], c["first"], c["second"], c["part"]),
        "reason": c["reason"]["code"],
        "caveats": spaced(c["caveats"]),
    }
