"""The weighed verdict in the record: who is worth how often more than whom, and what that rests on."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from reportgen.judgement.verdict.overall import Lead, Overall, PairIndex
from reportgen.record.plain import number

Row = dict[str, Any]
Table = dict[str, dict[str, float | None]]


def pairwise(index: Sequence[PairIndex]) -> Table:
    """Contender → every other → how often it is worth more."""
    found: Table = {}
    for pair in index:
        found.setdefault(pair.first, {})[pair.second] = number(pair.index)
        found.setdefault(pair.second, {})[pair.first] = number(1.0 - pair.index)
    return found


def rank_shares(overall: Overall) -> dict[str, list[float | None]]:
    """Contender → its shares of first, second … place."""
    return {name: [number(x) for x in overall.places[name]] for name in overall.contenders}


def overall_row(overall: Overall | None) -> Row | None:
    """All of it that `pairwise` and `rank_shares` don't hold."""
    if overall is None:
        return None
    return {
        "contenders": list(overall.contenders),
        "out": dict(overall.out),
        "left_out": dict(overall.left_out),
        "past": {quantity: list(names) for quantity, names in overall.past.items()},
        "groups": list(overall.groups),
        "weights": overall.weights,
        "given": [number(w) for w in overall.given],
        "pairwise_known": pairwise(overall.index_known),
        "equal_first": {name: number(overall.equal_first[name]) for name in overall.contenders},
        "known_scatter": overall.with_repeats,
        "criteria": overall.criteria,
        "lead": _lead(overall.lead),
        "winner": overall.winner,
        "without": [{"quantity": w.quantity, **_lead(w.lead)} for w in overall.without],
        "turns": [
            {"group": t.group, "weight": number(t.weight), "before": t.before, "after": t.after} for t in overall.turns
        ],
        "readers": [
            {
                "name": r.name,
                "weights": [number(w) for w in r.weights],
                **_lead(r.lead),
                "pairwise": pairwise(r.index),
            }
            for r in overall.readers
        ],
        "map": _map(overall),
        "draws": overall.draws,
        "error": number(overall.error),
    }


def _lead(lead: Lead) -> Row:
    return {"leader": lead.leader, "index": number(lead.index), "firm": lead.firm}


def _map(overall: Overall) -> Row | None:
    if overall.map is None:
        return None
    cells = [{"weights": [number(w) for w in c.weights], **_lead(c.lead)} for c in overall.map.cells]
    return {"groups": list(overall.map.groups), "steps": overall.map.steps, "cells": cells}
