"""Pieces of a row that only some kinds have: how contenders stood where an order was seen, and the laboratory."""

from __future__ import annotations

from typing import Any

from reportgen.campaign.declared import Amount, Laboratory
from reportgen.evaluation.evaluated import Stands
from reportgen.judgement.orders.partial_order import Between
from reportgen.record.plain import number

Row = dict[str, Any]


def stands_row(stands: Stands) -> Row:
    """How a contender stood to one other: less than it, more, about like it, or seen both ways."""
    return {
        "other": stands.other,
        "told": stands.told,
        "degree": stands.degree or None,
        "follows": stands.follows,
    }


def observed_row(pair: Between) -> Row:
    """What all looks say of a pair, from its first's side. `looks`: in how many they were set against each other."""
    return {
        "told": pair.told,
        "degree": pair.degree or None,
        "follows": pair.follows,
        "through": list(pair.through),
        "looks": pair.looks,
    }


def laboratory_row(laboratory: Laboratory) -> Row:
    """Who stated it, where, and from which limits on. The report's path is from the campaign's folder;
    `taken` and `diluted` are by contender, or under `all`."""
    return {
        "name": laboratory.name,
        "report": laboratory.report,
        "number": laboratory.number or None,
        "date": laboratory.date.text if laboratory.date else None,
        "accredited": laboratory.accredited or None,
        "page": laboratory.page,
        "taken": {c or "all": day.text for c, day in laboratory.taken.items()},
        "diluted": {c or "all": said for c, said in laboratory.diluted.items()},
        "detection_limit": _amount(laboratory.detection_limit),
        "report_limit": _amount(laboratory.report_limit),
        "uncertainty": _amount(laboratory.uncertainty),
        "coverage_factor": number(
            float(laboratory.coverage_factor) if laboratory.coverage_factor is not None else None
        ),
    }


def _amount(amount: Amount | None) -> Row | None:
    return {"value": number(float(amount.value)), "unit": amount.unit} if amount else None
