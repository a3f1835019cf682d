"""passes: each quantity pass by pass, before passes are put together."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from reportgen.campaign.declared import Campaign
from reportgen.intake.reading import Readings
from reportgen.opendata.table import Column, Shape, Table, name_of, table_of

SHAPE = Shape(
    "passes",
    (
        Column("pass_of", always=True),
        Column("result", refers="results.result", always=True),
        Column("quantity", refers="quantities.quantity", always=True),
        Column("contender", refers="contenders.contender", always=True),
        Column("specimen", always=True),
        Column("pass", always=True),
        Column("part"),
        Column("value", "number"),
        Column("unit"),
        Column("limit", among=("above", "below")),
        Column("word"),
        Column("excluded"),
        Column("absent_because"),
    ),
)


def passes(record: Mapping[str, Any], campaign: Campaign, read: Readings) -> Table:
    """Every pass of every result; what was worked out from whole quantities at once has none of its own."""
    return table_of(
        SHAPE,
        [_row(result, one) for result in record["results"] for one in result["by_pass"] if not one["together"]],
    )


def _row(result: Mapping[str, Any], one: Mapping[str, Any]) -> dict[str, Any]:
    of = name_of(result["quantity"], result["contender"], result["part"])
    return {
        **one,
        "pass_of": f"{of}:{name_of(one['specimen'], one['pass'], one['part'])}",
        "result": of,
        "quantity": result["quantity"],
        "contender": result["contender"],
        "unit": result["unit"],
    }
