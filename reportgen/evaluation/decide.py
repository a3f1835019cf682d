"""Results of one quantity handed to judgement, and its answer carried back with what it rests on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from reportgen.campaign.declared import Campaign, Quantity, Test
from reportgen.evaluation.declared_scatter import between_sessions, of_passes
from reportgen.evaluation.evaluated import Comparison, FirstPlace, Keys, PairWithout
from reportgen.evaluation.gathered import Gathered
from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Judged, Measured, Pair, Rules
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


def decide(test: Test, quantity: Quantity, part: str, everyone: Sequence[Gathered], rules: Rules) -> Decided:
    """Judge one quantity (and part): every pair in the campaign's order, first place, ranks and intervals.

    Of `everyone` those that have a result; one without may have one once what was left out is put back.
    """
    gathered = [g for g in everyone if g.mean is not None]
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
    again = _with_all(everyone, rules)
    ranks = again.ranks if again else {}
    place = FirstPlace(
        test.id, quantity.id, part, first.winner, first.may_be_first, first.unranked, first.reason, everything,
        order_changes_without=None if again is None else dict(ranks) != dict(judged.ranks),
        ranks_without={c: r for c, r in ranks.items() if r is not None and r != judged.ranks.get(c)},
        pairs_without=pairs_otherwise(judged.pairs, again.pairs) if again else (),
    )  # fmt: skip
    return Decided(judged, comparisons, place)


def _with_all(everyone: Sequence[Gathered], rules: Rules) -> Judged | None:
    """Judged with all excluded passes put back; None where none was left out."""
    if all(g.with_all is None for g in everyone):
        return None
    return judge([g.with_all or g.measured for g in everyone if g.with_all or g.mean is not None], rules)


def pairs_otherwise(now: Sequence[Pair], again: Sequence[Pair]) -> tuple[PairWithout, ...]:
    """The pairs that would be decided otherwise: another decision, or the other of the two ahead."""
    then = {(p.first, p.second): p for p in again}
    turned = ((p, then[p.first, p.second]) for p in now if (p.first, p.second) in then)
    return tuple(
        PairWithout(p.first, p.second, other.decision, other.favours)
        for p, other in turned
        if (p.decision, p.favours) != (other.decision, other.favours)
    )
