"""caveats: what limits the results, a row each; other tables name them by their id."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, get_args

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import CaveatSort
from reportgen.intake.reading import Readings
from reportgen.opendata.table import Column, Shape, Table, spaced, table_of

SHAPE = Shape(
    "caveats",
    (
        Column("caveat", always=True),
        Column("number", "integer", always=True),
        Column("sort", among=get_args(CaveatSort), always=True),
        Column("says", always=True),
        Column("pushes", among=("up", "down", "unknown")),
        Column("blocks", "boolean", always=True),
        Column("contender", refers="contenders.contender"),
        Column("specimen"),
        Column("pass"),
        Column("part"),
        Column("quantities"),
        Column("decided"),
        Column("file"),
        Column("line", "integer"),
    ),
)


def caveats(record: Mapping[str, Any], campaign: Campaign, read: Readings) -> Table:
    """The caveats, incidents and exclusions of results.json, in their numbers' order."""
    return table_of(
        SHAPE, [{**c, "caveat": c["id"], "quantities": spaced(c["quantities"])} for c in record["caveat_list"]]
    )
