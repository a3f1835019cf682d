"""Prices, what using costs and break-evens, as rows of the record."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from reportgen.evaluation.evaluated import CostOfUse, ValueForMoney
from reportgen.record.plain import number

Row = dict[str, Any]


def value_rows(value: Sequence[ValueForMoney]) -> list[Row]:
    """Each contender with a price, and who beats it at no higher one: on some criterion and worse on none, on each,
    over all that is weighed."""
    return [
        {
            "contender": v.contender,
            "price": v.price,
            "low": number(v.low),
            "high": number(v.high),
            "currency": v.currency,
            "dominated_by": list(v.dominated_by),
            "on": {quantity: list(by) for quantity, by in v.on.items()},
            "on_verdict": list(v.on_verdict),
        }
        for v in value
    ]


def cost_row(cost: CostOfUse | None, caveats: Sequence[str]) -> Row | None:
    """What a use costs each, and who may be the cheapest over which stretch; None where no use is stated."""
    if cost is None:
        return None
    return {
        "per": cost.per,
        "formula": cost.formula,
        "from": number(cost.low),
        "to": number(cost.high),
        "currency": cost.currency,
        "lines": [
            {
                "contender": line.name,
                "price_low": number(line.price_low),
                "price_high": number(line.price_high),
                "cost": number(line.cost),
                "low": number(line.low),
                "high": number(line.high),
                "limit": line.limit,
            }
            for line in cost.lines
        ],
        "left_out": dict(cost.left_out),
        "cheapest": [{"from": number(s.low), "to": number(s.high), "may_be": list(s.may_be)} for s in cost.cheapest],
        "cheapest_in": [
            {"from": number(s.low), "to": number(s.high), "may_be": list(s.may_be)} for s in cost.cheapest_in
        ],
        "why": cost.why or None,
        "caveats": list(caveats),
    }


def break_even_rows(cost: CostOfUse | None) -> list[Row]:
    """Each pair's number of uses from which on `later` is the cheaper; null where there is none, and `why`."""
    return [
        {
            "first": b.first,
            "second": b.second,
            "why": b.why,
            "at": number(b.at),
            "low": number(b.low),
            "high": number(b.high),
            "sooner": b.sooner,
            "later": b.later,
        }
        for b in (cost.break_evens if cost else ())
    ]
