"""The verdict over weighed criteria: the author's plan and the results, joined and handed to judgement."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from math import exp
from typing import TYPE_CHECKING

from reportgen.campaign.declared import Criterion as Planned
from reportgen.campaign.declared import Declared, VerdictPlan
from reportgen.evaluation.evaluated import MustOutcome, Result
from reportgen.evaluation.joint import Joint, rates, scattering_of, shares_of_yes
from reportgen.evaluation.passes_together import families
from reportgen.evaluation.standing import Standing, result_value, standing_of
from reportgen.evaluation.told import QuantityTold
from reportgen.finding import Finding, Refused
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Better, Measured
from reportgen.judgement.scale import in_logarithms
from reportgen.judgement.verdict.criteria import Criterion
from reportgen.judgement.verdict.overall import Overall
from reportgen.judgement.verdict.weighing import weigh_up
from reportgen.judgement.verdict.worth import ValueFunction
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import NUMBER, convert, parse_unit

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

UNSETTLED = ("sessions-apart", "no-scatter-known")


def overall_of(
    declared: Declared,
    told: Sequence[QuantityTold],
    readings: Mapping[ReadingKey, Reading],
    conditions: Sequence[MustOutcome],
) -> Overall | None:
    """The weighed verdict; None where the author set no value functions, or fewer than two can be weighed."""
    plan = declared.campaign.verdict
    if plan is None or not plan.groups:
        return None
    standing = standing_in(declared, told, conditions)
    if len(standing.contenders) < 2:
        return None
    planned = {c.quantity: (g.id, c) for g in plan.groups for c in g.criteria}
    parts = {q: _parts(told, q) for q in standing.quantities}
    joint = Joint(families([t for each in parts.values() for t in each if t.judged is not None], readings))
    criteria: list[Criterion] = []
    past: dict[str, tuple[str, ...]] = {}
    for quantity in standing.quantities:
        group, criterion = planned[quantity]
        function = _function(declared, criterion, parts[quantity][0])
        criteria += _one_a_part(group, criterion, function, parts[quantity], standing.contenders, joint)
        if beyond := _past(function, parts[quantity], standing.contenders):
            past[quantity] = beyond
    groups = [g for g in plan.groups if any(c.group == g.id for c in criteria)]
    given = [float(g.weight) for g in groups if g.weight is not None]
    if given and not sum(given):
        return None  # what is left weighs nothing
    found = weigh_up(
        criteria,
        standing.contenders,
        [g.id for g in groups],
        given,
        readers_of(plan, [g.id for g in groups]),
        standing.out,
    )
    return None if found is None else replace(found, left_out=standing.left_out, past=past)


def standing_in(declared: Declared, told: Sequence[QuantityTold], conditions: Sequence[MustOutcome]) -> Standing:
    """Who can be weighed on which of the author's criteria."""
    plan = declared.campaign.verdict
    planned = [c for g in plan.groups for c in g.criteria] if plan else []
    by_criterion = {c.quantity: _parts(told, c.quantity) for c in planned}
    ratios = frozenset(c.quantity for c in planned if c.ratio)
    return standing_of([c.id for c in declared.campaign.contenders], conditions, by_criterion, ratios)


def _parts(told: Sequence[QuantityTold], quantity: str) -> list[QuantityTold]:
    """The quantity, or each of its parts where they stay apart: those in which somebody has a result."""
    return [t for t in told if t.quantity == quantity and any(not r.missing for r in t.results)]


def value_function(criterion: Planned, told: QuantityTold) -> ValueFunction:
    """The author's anchors in the unit worked out: of a rise in temperature they are steps on the scale."""
    unit = told.unit or NUMBER
    rise = unit.kind == "difference"
    worst, best = (
        convert(float(a.value), parse_unit(a.unit), unit, difference=rise) for a in (criterion.worst, criterion.best)
    )
    return ValueFunction(worst, best, criterion.ratio)


def readers_of(plan: VerdictPlan, groups: Sequence[str]) -> dict[str, list[float]]:
    """Typical readers' weights of these groups; one that weighs none of them is left out."""
    found = {name: [float(weights.get(g, 0)) for g in groups] for name, weights in plan.readers.items()}
    return {name: weights for name, weights in found.items() if sum(weights) > 0.0}


def _function(declared: Declared, criterion: Planned, told: QuantityTold) -> ValueFunction:
    """The value function; raises `Refused` for anchors in a unit that doesn't fit what the formula came to."""
    try:
        return value_function(criterion, told)
    except UnitError as wrong:
        place = declared.at(f"verdict/criterion/{criterion.quantity}")
        says = f"The criterion {criterion.quantity}: {wrong.says}"
        raise Refused([Finding("error", "unit", place, says, do=wrong.do)]) from None


def _one_a_part(
    group: str,
    criterion: Planned,
    function: ValueFunction,
    parts: Sequence[QuantityTold],
    contenders: Sequence[str],
    joint: Joint,
) -> Iterable[Criterion]:
    """A criterion, or one a part where its parts stay apart: they share its weight."""
    weight = float(criterion.weight if criterion.weight is not None else 1) / len(parts)
    for told in parts:
        of = _measured if told.judged is not None else _counted
        yield replace(of(told, function, contenders, joint), quantity=criterion.quantity, group=group, weight=weight)


def _measured(told: QuantityTold, function: ValueFunction, contenders: Sequence[str], joint: Joint) -> Criterion:
    assert told.judged is not None
    assert told.rules is not None
    measured = {m.name: m for m in told.measured if m.name in contenders}
    scattering = {name: scattering_of(told, one, contenders) for name, one in measured.items()}
    unsettled = any(
        p.reason.code in UNSETTLED for p in told.judged.pairs if p.first in measured and p.second in measured
    )
    relative = told.rules.scatter == "relative"
    middle = {name: _middle(one, relative) for name, one in measured.items()}
    worth = {
        name: function.of_draws(middle[name], joint.off(told, one, scattering[name]), relative)
        for name, one in measured.items()
    }
    return Criterion(
        quantity=told.quantity,
        group="",
        worth=worth,
        estimate={name: function.of(middle[name]) for name, one in measured.items()},
        known=not unsettled and all(s is not None for s in scattering.values()),
        first=_first(told, contenders, "higher" if function.best > function.worst else "lower"),
    )


def _middle(one: Measured, relative: bool) -> float:
    """What draws lie about: the result, or where ratios are judged the mean of its passes' logarithms, taken back."""
    working = in_logarithms(one) if relative else one
    assert working.value is not None  # who has none is not weighed
    return exp(working.value) if relative else working.value


def _first(told: QuantityTold, contenders: Sequence[str], better: Better) -> str | None:
    """Who comes first by this criterion alone, among those weighed."""
    ranked = {m.name for m in told.measured if not m.blocked}
    if told.first is not None and ranked <= set(contenders):
        return told.first.winner
    if told.rules is None:
        return told.first.winner if told.first is not None and told.first.winner in contenders else None
    left = [m for m in told.measured if m.name in contenders]
    return judge(left, replace(told.rules, better=better)).first.winner


def _counted(told: QuantityTold, function: ValueFunction, contenders: Sequence[str], joint: Joint) -> Criterion:
    """Shares of yes, or events a pass. What is drawn for a count holds where events come independently of each other:
    only where the author says so is its scatter known, and then of a single pass too."""
    import numpy as np

    worth, estimate, tries = {}, {}, []
    for result in told.results:
        if result.contender not in contenders:
            continue
        names = (told.quantity, result.part, result.contender)
        drawn, middle, n = _of_counts(names, result)
        off = np.log(drawn / middle) * middle if function.ratio else drawn - middle
        worth[result.contender] = function.of_draws(middle, off, relative=False)
        estimate[result.contender] = function.of(middle)
        tries.append(n)
    counts = [r for r in told.results if r.kind == "count" and r.contender in contenders]
    known = all(r.covers == "events" for r in counts) if counts else all(n > 1 for n in tries)
    return Criterion(told.quantity, "", worth, estimate, known, first=_first(told, contenders, "lower"))


def _of_counts(names: Sequence[str], result: Result) -> tuple[Numbers, float, int]:
    """Draws, the middle of them, and how many tries or passes there were."""
    if result.kind == "yes/no":
        yes, of = result.yes or 0, result.of or 0
        return shares_of_yes(names, yes, of), (yes + 0.5) / (of + 1.0), of
    over = max(1, result.passes)
    total = (result_value(result) or 0.0) * over
    return rates(names, total, over), (total + 0.5) / over, over


def _past(function: ValueFunction, parts: Sequence[QuantityTold], contenders: Sequence[str]) -> tuple[str, ...]:
    """The contenders whose result lies beyond the anchors, in some part."""
    values = [
        (r.contender, r.estimate.value if r.kind == "measured" and r.estimate else result_value(r))
        for told in parts
        for r in told.results
    ]
    beyond = {c for c, value in values if value is not None and function.is_past(value)}
    return tuple(c for c in contenders if c in beyond)
