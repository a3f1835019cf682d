"""contenders: what was tested, a row each."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from reportgen.campaign.declared import Campaign
from reportgen.intake.reading import Readings
from reportgen.opendata.table import Column, Shape, Table, table_of

SHAPE = Shape(
    "contenders",
    (
        Column("contender", always=True),
        Column("title", always=True),
        Column("maker"),
        Column("model"),
        Column("gtin"),
        Column("specimens", "integer", always=True),
        Column("price_low", "number"),
        Column("price_high", "number"),
        Column("currency"),
        Column("price_sort", among=("paid", "listed")),
        Column("price_date"),
        Column("firmware"),
        Column("settings"),
    ),
)


def contenders(record: Mapping[str, Any], campaign: Campaign, read: Readings) -> Table:
    """The contenders as declared; of several prices the first, which is the one pages show first."""
    return table_of(SHAPE, [_row(c) for c in record["contenders"]])


def _row(c: Mapping[str, Any]) -> dict[str, Any]:
    price = c["prices"][0] if c["prices"] else {}
    return {
        **c,
        "contender": c["id"],
        "specimens": max(1, len(c["specimens"])),
        "price_low": price.get("low"),
        "price_high": price.get("high"),
        "currency": price.get("currency"),
        "price_sort": price.get("sort"),
        "price_date": price.get("date"),
    }
