"""How an interval was worked out: to first order, or by joint draws where that would be off, and by how much."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation, Result
from reportgen.judgement.drawn.draws import ByDraws
from reportgen.prose.standing import name, names, standing
from reportgen.wording import interval
from reportgen.wording.count import whole
from reportgen.wording.language import say, say_of
from reportgen.wording.sentence import paragraph


def draws_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """Under a table: whose interval comes from draws and why; empty where first order does for all."""
    drawn = [r for r in standing(campaign, evaluation, quantity, part).results if _used(r)]
    if not drawn:
        return ""
    told = [r.draws for r in drawn if r.draws is not None]
    unit = drawn[0].estimate.unit if drawn[0].estimate else ""
    return paragraph(
        say_of(
            len(drawn),
            "draws.table",
            names=names(campaign, [r.contender for r in drawn]),
            count=whole(max(d.draws for d in told)),
            off=interval.uncertainty(max(map(_off, told)), unit),
        ),
        *(say("draws.mean", name=name(campaign, r.contender), mean=_average(r, r.draws)) for r in drawn if _apart(r)),
        _still_open(campaign, [r for r in drawn if r.draws and not r.draws.settled], unit),
    )


def way_line(result: Result) -> str:
    """Beside one result: which way its interval was worked out; empty where it has none."""
    e, draws = result.estimate, result.draws
    if e is None or e.value is None or result.u is None or result.low is None or result.high is None:
        return ""
    if draws is None:
        return paragraph(say("draws.not-asked"))
    count = whole(draws.draws)
    if not draws.needed:
        return paragraph(say("draws.held", count=count, tolerance=interval.uncertainty(draws.tolerance, e.unit)))
    first = interval.between(e.value + draws.first_low, e.value + draws.first_high, e.unit, result.u)
    both = {"first": interval.uncertainty(draws.first_u, e.unit), "u": interval.uncertainty(draws.u, e.unit)}
    return paragraph(
        say("draws.used", count=count, first=first, off=interval.uncertainty(_off(draws), e.unit)),
        say("draws.middle") if draws.middle else "",
        _beside(draws, both),
    )


def _beside(draws: ByDraws, both: Mapping[str, str]) -> str:
    """Which u is printed, where the two aren't printed alike."""
    if draws.u_counts:
        return say("draws.budget", **both)
    return say("draws.beside", **both) if both["u"] != both["first"] else ""


def _used(result: Result) -> bool:
    return result.draws is not None and result.draws.needed and result.u is not None


def _off(draws: ByDraws) -> float:
    return max(abs(draws.low - draws.first_low), abs(draws.high - draws.first_high))


def _apart(result: Result) -> bool:
    """Whether the average of the draws shows as another number than the value."""
    return result.draws is not None and abs(result.draws.mean) > result.draws.tolerance


def _average(result: Result, draws: ByDraws | None) -> str:
    e = result.estimate
    if e is None or e.value is None or draws is None:
        return ""
    return interval.value_only(e.value + draws.mean, result.u, e.unit)


def _still_open(campaign: Campaign, results: Sequence[Result], unit: str) -> str:
    told = [r.draws for r in results if r.draws is not None]
    if not told:
        return ""
    return say(
        "draws.open",
        names=names(campaign, [r.contender for r in results]),
        count=whole(max(d.draws for d in told)),
        within=interval.uncertainty(max(d.within for d in told), unit),
    )
