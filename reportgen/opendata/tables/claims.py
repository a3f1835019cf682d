"""claims: what makers state, held against what was measured."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from reportgen.addresses import claim_anchor
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
        Column("unit"),
        Column("outcome", among=("supported", "contradicted", "undecided", "not tested"), always=True),
        Column("probability", "number", unit="1"),
        Column("scope", among=("repeat", "this run")),
        Column("reason", always=True),
        Column("caveats"),
    ),
)


def claims(record: Mapping[str, Any], campaign: Campaign, read: Readings) -> Table:
    """The claims of results.json, each named as the address of its place on the site is."""
    units = {r["quantity"]: r["unit"] for r in record["results"]}
    return table_of(SHAPE, [_row(c, units.get(c["quantity"], "")) for c in record["claims"]])


def _row(c: Mapping[str, Any], unit: str) -> dict[str, Any]:
    first, last = c["accept"] or (None, None)
    return {
        **c,
        "claim": name_of(c["contender"], c["anchor"].removeprefix(claim_anchor(""))),
        "says": c["claim"],
        "sources": "; ".join(source for source in c["sources"] if source),
        "accept_from": first,
        "accept_to": last,
        "unit": unit if c["accept"] else None,
        "reason": c["reason"]["code"],
        "caveats": spaced(c["caveats"]),
    }
