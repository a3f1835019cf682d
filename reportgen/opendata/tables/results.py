"""results: each quantity of each contender, with its interval."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, get_args

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import ResultKind
from reportgen.intake.reading import Readings
from reportgen.opendata.table import Column, Shape, Table, name_of, spaced, table_of

SHAPE = Shape(
    "results",
    (
        Column("result", always=True),
        Column("test", always=True),
        Column("quantity", refers="quantities.quantity", always=True),
        Column("contender", refers="contenders.contender", always=True),
        Column("part"),
        Column("kind", among=get_args(ResultKind), always=True),
        Column("value", "number"),
        Column("unit"),
        Column("u", "number"),
        Column("low", "number"),
        Column("high", "number"),
        Column("coverage", "number"),
        Column("limit", among=("above", "below")),
        Column("at_least", "boolean", always=True),
        Column("printed", always=True),
        Column("passes", "integer", always=True),
        Column("excluded", "integer", always=True),
        Column("without_exclusions", "number"),
        Column("yes", "integer"),
        Column("of", "integer"),
        Column("grade"),
        Column("rank_from", "integer"),
        Column("rank_to", "integer"),
        Column("not_ranked_because"),
        Column("no_u_because"),
        Column("missing"),
        Column("running"),
        Column("caveats"),
    ),
)


def results(record: Mapping[str, Any], campaign: Campaign, read: Readings) -> Table:
    """The results of results.json, without their budgets and passes."""
    return table_of(SHAPE, [_row(r) for r in record["results"]])


def _row(r: Mapping[str, Any]) -> dict[str, Any]:
    first, last = r["rank"] or (None, None)
    return {
        **r,
        "result": name_of(r["quantity"], r["contender"], r["part"]),
        "rank_from": first,
        "rank_to": last,
        "not_ranked_because": r["blocked"],
        "no_u_because": r["why_no_u"],
        "caveats": spaced(r["caveats"]),
    }
