"""claims: what makers state, held against what was measured."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from reportgen.campaign.declared import Campaign
from reportgen.intake.reading import Readings
from reportgen.opendata.table import Column, Shape, Table, name_of, spaced, table_of

SHAPE = Shape(
    "claims",
    (
        Column("claim", always=True),
        Column("contender", refers="contenders.contender", always=True),
        Column("says", always=True),
        Column("sources"),
        Column("quantity", refers="quantities.quantity"),
        Column("part"),
        Column("under"),
        Column("accept_from", "number"),
        Column("accept_to", "number"),
        Column("outcome", among=("supported", "contradicted", "undecided", "not tested"), always=True),
        Column("probability", "number", unit="1"),
        Column("scope", among=("repeat", "this run")),
        Column("reason", always=True),
        Column("caveats"),
    ),
)


def claims(record: Mapping[str, Any], campaign: Campaign, read: Readings) -> Table:
    """The claims of results.json."""
    return table_of(SHAPE, [_row(c) for c in record["claims"]])


def _row(c: Mapping[str, Any]) -> dict[str, Any]:
    first, last = c["accept"] or (None, None)
    return {
        **c,
        "claim": name_of(c["contender"], c["id"]),
        "says": c["claim"],
        "sources": "; ".join(source for source in c["sources"] if source),
        "accept_from": first,
        "accept_to": last,
        "reason": c["reason"]["code"],
        "caveats": spaced(c["caveats"]),
    }
