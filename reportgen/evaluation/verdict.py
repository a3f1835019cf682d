"""The plain verdict: conditions, criteria, price against what was resolved, a winner only where all agree."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.campaign.declared import Declared
from reportgen.evaluation.claims import must_outcomes
from reportgen.evaluation.evaluated import CriterionUse, FirstPlace, Keys, Verdict
from reportgen.evaluation.money import value_for_money
from reportgen.evaluation.told import QuantityTold
from reportgen.evaluation.weighed import overall_of
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.metrology.unit import Unit


def verdict_of(
    declared: Declared,
    told: Sequence[QuantityTold],
    units: Mapping[str, Unit],
    readings: Mapping[ReadingKey, Reading],
) -> Verdict:
    """What the results support of an overall judgement; criteria are the author's, or every ranked quantity.

    Where the author weighs criteria, the winner is that of the weighed verdict; without, the one contender whose lead
    is resolved on every ranked quantity.
    """
    firsts = [q.first for q in told if q.first]
    conditions = must_outcomes(declared, told, units)
    criteria = _criteria(declared, told)
    deciding = {c.quantity for c in criteria}
    out = {m.contender for m in conditions if m.outcome == "contradicted"}
    overall = overall_of(declared, told, readings, conditions)
    winner = overall.winner if overall else _winner([f for f in firsts if f.quantity in deciding])
    rests_on: Keys = frozenset().union(*(f.rests_on for f in firsts), *(m.rests_on for m in conditions))
    return Verdict(
        conditions=conditions,
        criteria=criteria,
        value=value_for_money(declared, [q for q in told if q.quantity in deciding], overall),
        value_quantities=tuple(dict.fromkeys(f.quantity for f in firsts if f.quantity in deciding)),
        winner=None if winner in out else winner,
        rests_on=rests_on,
        overall=overall,
    )


def _criteria(declared: Declared, told: Sequence[QuantityTold]) -> tuple[CriterionUse, ...]:
    known = {q.quantity: _has_repeats(q) for q in told if q.quantity}
    plan = declared.campaign.verdict
    if plan is None or not plan.groups:
        ranked = dict.fromkeys(q.first.quantity for q in told if q.first)
        return tuple(CriterionUse(q, "", None, known[q]) for q in ranked)
    total = sum(float(g.weight) for g in plan.groups if g.weight is not None)
    uses = []
    for group in plan.groups:
        share = float(group.weight) / total if group.weight is not None and total else None
        inside = sum(float(c.weight if c.weight is not None else 1) for c in group.criteria)
        for c in group.criteria:
            part = float(c.weight if c.weight is not None else 1) / inside if inside else 0.0
            uses.append(
                CriterionUse(
                    c.quantity, group.id, None if share is None else share * part, known.get(c.quantity, False)
                )
            )
    return tuple(uses)


def _has_repeats(told: QuantityTold) -> bool:
    """Whether it is known how far a repeat would differ: from the scatter, or else from several tries;
    of events counted, only where it was said beforehand that they come independently of each other."""
    if told.scatter is not None:
        return told.scatter.found.origin != "none"
    shown = [r for r in told.results if not r.missing]
    if any(r.kind == "count" for r in shown):
        return all(r.covers == "events" for r in shown)
    return bool(shown) and all((r.of or r.passes) > 1 for r in shown)


def _winner(firsts: Sequence[FirstPlace]) -> str | None:
    """The one contender whose lead over every other is resolved on every criterion; None where they differ."""
    winners = {f.winner for f in firsts}
    return winners.pop() if len(winners) == 1 else None
