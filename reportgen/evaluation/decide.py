"""Results of one quantity handed to judgement, and its answer carried back with what it rests on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from reportgen.campaign.declared import Campaign, Quantity, Test
from reportgen.evaluation.declared_scatter import between_sessions, of_passes
from reportgen.evaluation.evaluated import Comparison, FirstPlace, Keys
from reportgen.evaluation.gathered import Gathered
from reportgen.judgement.judge import judge
from reportgen.judgement.measured import Judged, Measured, Rules
from reportgen.metrology.unit import Unit, convert, parse_unit


@dataclass(frozen=True)
class Decided:
    judged: Judged
    comparisons: tuple[Comparison, ...]
    first: FirstPlace | None


def is_ranked(quantity: Quantity) -> bool:
    """Has the quantity a direction and a rule? Least, most and middle of passes are shown and never ranked."""
    return quantity.better != "neither" and quantity.over_passes not in ("least", "most", "middle")


def rules_for(campaign: Campaign, test: Test, quantity: Quantity, unit: Unit, rounds_recorded: bool) -> Rules:
    """What was fixed before the data: direction, scatter, rounds, what matters, declared repeatability."""
    matters = quantity.matters
    return Rules(
        better=quantity.better if quantity.better != "neither" else "lower",
        scatter=test.scatter,
        rounds=test.order == "rounds" and rounds_recorded,
        matters=convert(float(matters.value), parse_unit(matters.unit), unit, difference=True) if matters else None,
        declared=of_passes(campaign, test, quantity, unit),
        between_sessions=between_sessions(campaign, test, unit),
    )


def _shown_only(one: Measured) -> Measured:
    """The least, most or middle pass is one pass: how far passes scatter is no interval of it."""
    return replace(one, values=(), rounds=(), sessions_by_pass=())


def decide(test: Test, quantity: Quantity, part: str, gathered: Sequence[Gathered], rules: Rules) -> Decided:
    """Judge one quantity (and part): every pair in the campaign's order, first place, ranks and intervals."""
    if quantity.over_passes in ("least", "most", "middle"):
        return Decided(judge([_shown_only(g.measured) for g in gathered], replace(rules, declared=None)), (), None)
    judged = judge([g.measured for g in gathered], rules)
    if not is_ranked(quantity):
        return Decided(judged, (), None)
    rests_on = {g.contender: g.rests_on for g in gathered}
    comparisons = tuple(
        Comparison(
            test.id,
            quantity.id,
            part,
            p.first,
            p.second,
            p.difference,
            p.u,
            p.low,
            p.high,
            quantity.unit,
            p.decision,
            p.resolved,
            p.differed,
            p.differed_low,
            p.differed_high,
            p.favours,
            p.beyond,
            p.reason,
            p.settle,
            rests_on[p.first] | rests_on[p.second],
            p.within,
            percent=p.percent,
            draws=p.draws,
        )
        for p in judged.pairs
    )
    first = judged.first
    everything: Keys = frozenset().union(*rests_on.values())
    again = _ranks_with_all(gathered, rules)
    place = FirstPlace(
        test.id, quantity.id, part, first.winner, first.may_be_first, first.unranked, first.reason, everything,
        order_changes_without=None if again is None else dict(again) != dict(judged.ranks),
        ranks_without={c: r for c, r in (again or {}).items() if r is not None and r != judged.ranks.get(c)},
    )  # fmt: skip
    return Decided(judged, comparisons, place)


def _ranks_with_all(gathered: Sequence[Gathered], rules: Rules) -> Mapping[str, tuple[int, int] | None] | None:
    """The ranks with all excluded passes put back; None where none was left out."""
    if all(g.with_all is None for g in gathered):
        return None
    return judge([g.with_all or g.measured for g in gathered], rules).ranks
