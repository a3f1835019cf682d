"""quantities: what was measured, a row each."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, get_args

from reportgen.campaign.declared import Better, Campaign, Quantity, Test
from reportgen.intake.reading import Readings
from reportgen.opendata.table import Column, Shape, Table, table_of
from reportgen.record.plain import number

SHAPE = Shape(
    "quantities",
    (
        Column("quantity", always=True),
        Column("title", always=True),
        Column("test", always=True),
        Column("test_title", always=True),
        Column("kind"),
        Column("unit"),
        Column("better", among=get_args(Better), always=True),
        Column("matters", "number"),
        Column("matters_unit"),
        Column("formula"),
        Column("method"),
        Column("method_version", "integer"),
    ),
)


def quantities(record: Mapping[str, Any], campaign: Campaign, read: Readings) -> Table:
    """The quantities as declared, in the order of the campaign's tests."""
    return table_of(SHAPE, [_row(t, q) for t in campaign.tests for q in t.quantities])


def _row(test: Test, q: Quantity) -> dict[str, Any]:
    return {
        "quantity": q.id,
        "title": q.title,
        "test": test.id,
        "test_title": test.title,
        "kind": q.kind,
        "unit": q.unit,
        "better": q.better,
        "matters": number(float(q.matters.value)) if q.matters else None,
        "matters_unit": q.matters.unit if q.matters else None,
        "formula": q.formula,
        "method": test.method,
        "method_version": test.method_version if test.method else None,
    }
