"""Results of one quantity handed to judgement, and its answer carried back with what it rests on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from reportgen.campaign.declared import Campaign, Quantity, Test
from reportgen.evaluation.evaluated import Comparison, FirstPlace, Keys
from reportgen.evaluation.gathered import Gathered
from reportgen.judgement.judge import judge
from reportgen.judgement.measured import DeclaredScatter, Judged, Measured, Rules
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import NUMBER, Unit, alike, convert, parse_unit


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
    method = campaign.methods.get(f"{test.method}.{test.method_version}")

    def size(value: float, symbol: str) -> float:
        return convert(value, parse_unit(symbol), unit, difference=True)

    def scatter(value: float, symbol: str) -> float:
        return _relative(value, symbol) if test.scatter == "relative" else size(value, symbol)

    declared = None
    if method and quantity.id in method.repeatability:
        found = method.repeatability[quantity.id]
        declared = DeclaredScatter(scatter(float(found.sd.value), found.sd.unit), found.degrees, found.source)
    between = method.between_sessions if method else None
    if between and test.scatter != "relative" and not alike(parse_unit(between.unit), unit, difference=True):
        between = None  # it was stated for another quantity of the test
    return Rules(
        better=quantity.better if quantity.better != "neither" else "lower",
        scatter=test.scatter,
        rounds=test.order == "rounds" and rounds_recorded,
        matters=size(float(quantity.matters.value), quantity.matters.unit) if quantity.matters else None,
        declared=declared,
        between_sessions=scatter(float(between.value), between.unit) if between else None,
    )


def specimens_apart(campaign: Campaign, test: Test, unit: Unit) -> float:
    """The scatter between specimens that the test's method declares: in `unit`, or as a part of the value where the
    test's scatter is relative. 0 where none is declared for such a quantity."""
    method = campaign.methods.get(f"{test.method}.{test.method_version}")
    declared = method.between_specimens if method else None
    if declared is None:
        return 0.0
    if test.scatter == "relative":
        return _relative(float(declared.value), declared.unit)
    if not alike(parse_unit(declared.unit), unit, difference=True):
        return 0.0  # it was stated for another quantity of the test
    return convert(float(declared.value), parse_unit(declared.unit), unit, difference=True)


def _relative(value: float, symbol: str) -> float:
    """A scatter in proportion to the value, as a plain number; raises `UnitError` for one in the quantity's unit."""
    unit = parse_unit(symbol)
    if not alike(unit, NUMBER):
        raise UnitError(
            f"the method's scatter is relative, but one of its repeatability, sessions or specimens is in {symbol}",
            "state it in percent",
        )
    return convert(value, unit, NUMBER, difference=True)


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
