"""How a result came of its passes: their mean with its numbers, the scatter used, where its interval comes from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import fsum, hypot, isinf

from reportgen.campaign.declared import Campaign, Quantity
from reportgen.evaluation.evaluated import Contribution, Estimate, PassValue, Result, ScatterUsed
from reportgen.metrology.type_a import student
from reportgen.prose import amounts
from reportgen.prose.standing import name
from reportgen.wording import budget
from reportgen.wording.count import counted, degrees, whole
from reportgen.wording.language import say
from reportgen.wording.listing import and_list

SHOWN_PASSES = 12  # so many are written out
EVEN = 1e-6  # of the half-width: ends this alike are as far on both sides
PICKED: Mapping[str, str] = {"least": "together.least", "most": "together.most", "middle": "together.middle"}


def together_lines(quantity: Quantity, result: Result) -> tuple[str, ...]:
    """The steps from the values of passes to the result and its scatter; empty where one pass is all there is."""
    e = result.estimate
    if e is None or e.limit or e.value is None or result.kind != "measured":
        return ()
    return (*_joined(quantity, result, e), *_scattered(result, e))


def _used(result: Result) -> list[PassValue]:
    return [p for p in result.by_pass if not p.excluded and p.value is not None]


def _joined(quantity: Quantity, result: Result, e: Estimate) -> Iterator[str]:
    used = _used(result)
    if len(used) < 2:
        return
    n, value = counted("pass", len(used)), amounts.short(result)
    of_each = _of_each_specimen(used)
    if quantity.over_passes in PICKED:
        yield say(PICKED[quantity.over_passes], count=n, value=value)
    elif len(of_each) > 1 and quantity.over_passes == "energy mean":
        yield say("together.specimens.energy", count=counted("specimen", len(of_each)), value=value)
    elif len(of_each) > 1:
        yield from _of_specimens(result, of_each, value)
    elif quantity.over_passes == "energy mean":
        yield say("together.energy", count=n, value=value)
    elif len(used) > SHOWN_PASSES:
        yield say("together.mean.many", count=n, value=value)
    else:
        values = " + ".join(budget.worked(p.value, result.u, "") for p in used if p.value is not None)
        yield say("together.mean", count=n, values=values, n=whole(len(used)), value=value)


def _of_each_specimen(used: Sequence[PassValue]) -> Mapping[str, Sequence[float]]:
    found: dict[str, list[float]] = {}
    for p in used:
        if p.value is not None:
            found.setdefault(p.specimen, []).append(p.value)
    return found


def _of_specimens(result: Result, of_each: Mapping[str, Sequence[float]], value: str) -> Iterator[str]:
    """The mean of each specimen with its passes, then their mean: a calculator redoes either from what is printed."""
    means = {id: fsum(values) / len(values) for id, values in of_each.items()}
    for id, values in of_each.items():
        if 1 < len(values) <= SHOWN_PASSES:
            passes = " + ".join(budget.worked(x, result.u, "") for x in values)
            mean = budget.worked(means[id], result.u, "")
            yield say("together.specimen", id=id, values=passes, n=whole(len(values)), value=mean)
    if len(means) <= SHOWN_PASSES:
        each = " + ".join(budget.worked(x, result.u, "") for x in means.values())
        count = counted("specimen", len(means))
        yield say("together.specimens", count=count, values=each, n=whole(len(means)), value=value)
    else:
        yield say("together.specimens.many", count=counted("specimen", len(means)), value=value)


def scatter_line(e: Estimate) -> Contribution | None:
    """The line of the scatter between passes, where the result has one."""
    return next((c for c in e.contributions if c.source.sort == "scatter" and c.source.of == "passes"), None)


def _scattered(result: Result, e: Estimate) -> Iterator[str]:
    line = scatter_line(e)
    if line is None or line.degrees is None or e.value is None:
        return
    if e.scatter is not None and not result.by_specimens:
        yield say("together.own", s=budget.worked(e.scatter, result.u, e.unit))
    used, mean = line.behind, budget.worked(line.size, result.u, e.unit)
    told = degrees(line.degrees)
    if used is None:
        yield say("together.used.more", s=mean, degrees=told)
    elif used.count == 1:
        yield say("together.used.one", s=mean, degrees=told)
    else:
        s = budget.worked(used.u, result.u, e.unit)
        yield say("together.used", s=s, degrees=told, n=whole(used.count), mean=mean)


def range_line(result: Result) -> str:
    """Where the 95 % interval comes from; empty where there is none."""
    e = result.estimate
    if e is None or e.value is None or result.low is None or result.high is None or not e.contributions:
        return ""
    if result.draws is not None and result.draws.needed:
        return ""  # draws have it, and the line on them says so
    level = say("level.at-least" if result.at_least else "level")
    below, above = e.value - result.low, result.high - e.value
    if abs(above - below) > EVEN * (above + below):
        scale = abs(e.value)  # the scatter goes with the value: both ends are as far off in its logarithm
        return say("range.ratio", level=level, factor=budget.worked(result.high / e.value, (result.u or 1) / scale, ""))
    half = budget.size((above + below) / 2, result.u or 1.0, e.unit)
    line = scatter_line(e)
    if line is None or line.degrees is None or isinf(line.degrees):
        return say("range.known", level=level, half=half)
    t, told = budget.figure(student(0.975, line.degrees)), degrees(line.degrees)
    with_t = [c for c in e.contributions if c is line or c.source.sort == "step"]
    u = result.u or 1.0
    root = budget.size(hypot(*(c.size for c in with_t)), u, e.unit, budget.digits_beyond(u))
    if len(with_t) == len(e.contributions):
        return say("range.student", level=level, half=half, t=t, degrees=told, root=root)
    if len(with_t) > 1:
        return say("range.mixed.step", level=level, half=half, t=t, degrees=told, root=root)
    return say("range.mixed", level=level, half=half, t=t, degrees=told)


def pooled_line(campaign: Campaign, results: list[Result], used: ScatterUsed | None) -> str:
    """How one scatter for all was joined from each contender's own; empty where it wasn't, or from one alone."""
    if used is None or used.found.origin != "passes" or any(r.by_specimens for r in results):
        return ""
    own = [(r, r.estimate) for r in results if r.estimate and r.estimate.scatter is not None and not r.estimate.limit]
    if len(own) < 2:
        return ""
    plain = sum(r.passes - 1 for r, _ in own)
    each = and_list(
        [
            say(
                "together.own.each",
                name=name(campaign, r.contender),
                s=budget.worked(e.scatter or 0.0, r.u, e.unit),
                passes=counted("pass", r.passes),
            )
            for r, e in own
        ]
    )
    line = next((c for _, e in own if (c := scatter_line(e)) is not None), None)
    if line is None or line.degrees is None or line.degrees == plain:
        return say("together.pooled", each=each)
    s = budget.worked(line.behind.u if line.behind else 0.0, own[0][0].u, own[0][1].unit)
    return say("together.pooled.rounds", sd=s, each=each, degrees=degrees(line.degrees), plain=whole(plain))
