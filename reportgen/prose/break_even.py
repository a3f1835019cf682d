"""From how many uses on one of two is the cheaper, in sentences, and how that stands to the uses that were stated."""

from __future__ import annotations

from math import ceil, floor

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import CostOfUse, Evaluation
from reportgen.judgement.money.break_even import BreakEven, Slope
from reportgen.prose.out import name_or_out
from reportgen.wording.count import whole
from reportgen.wording.interval import printed
from reportgen.wording.language import say
from reportgen.wording.sentence import sentence


def break_even_lines(campaign: Campaign, evaluation: Evaluation, cost: CostOfUse) -> tuple[str, ...]:
    """A sentence a pair."""
    return tuple(sentence(_pair(campaign, evaluation, cost, b)) for b in cost.break_evens)


def _pair(campaign: Campaign, evaluation: Evaluation, cost: CostOfUse, b: BreakEven) -> str:
    named = {c: name_or_out(campaign, evaluation, c) for c in (b.first, b.second)}
    if b.why == "cheaper-throughout" and b.later:
        other = b.second if b.later == b.first else b.first
        return say("cost.throughout", later=named[b.later], other=named[other])
    if b.later is None or b.sooner is None or b.low is None or b.high is None:
        return say(f"cost.{b.why}", first=named[b.first], second=named[b.second])
    gaps = {"later": named[b.later], "sooner": named[b.sooner]}
    low, high, at = floor(b.low), ceil(b.high), None if b.at is None else max(1, round(b.at))
    gaps |= {"low": whole(low), "high": whole(high)}
    if at is not None:
        said = say("cost.crosses", at=whole(at), saves=_saved(cost, b.later, b.sooner), **gaps)
    elif b.low > 0.0:
        said = say("cost.crosses.loose", **gaps)
    else:
        said = say(f"cost.crosses.latest{'' if _dearer(cost, b) else '.perhaps'}", **gaps)
    return said + _beside_the_use(cost, low if at is not None or b.low > 0.0 else None, at, high)


def differ_from_the_table(cost: CostOfUse) -> str:
    """That what a use saves isn't the one cost less the other, where that moves some break-even by a use; "" else."""
    of = {line.name: line.cost for line in cost.lines}
    for b in cost.break_evens:
        if b.at is None or b.later is None or b.sooner is None:
            continue
        value = _saving(cost, b.later, b.sooner).value
        apart = of[b.sooner] - of[b.later]
        if value is not None and abs(b.at * (value / apart - 1.0) if apart else 1.0) >= 1.0:
            return sentence(say("cost.gaps"))
    return ""


def _saved(cost: CostOfUse, later: str, sooner: str) -> str:
    """ "0.100 EUR (0.077 to 0.122)": what a use of `later` saves."""
    saving = _saving(cost, later, sooner)
    return printed(saving.value, None, saving.low, saving.high, cost.currency)


def _saving(cost: CostOfUse, later: str, sooner: str) -> Slope:
    slope = cost.slopes.get((sooner, later)) or cost.slopes[(later, sooner)]
    if slope is None:
        raise ValueError("a break-even stands on a gap that is known")
    return slope if (sooner, later) in cost.slopes else slope.turned()


def _dearer(cost: CostOfUse, b: BreakEven) -> bool:
    """Whether the later of the two costs more to buy for sure."""
    of = {line.name: line for line in cost.lines}
    return of[b.later or ""].price_low > of[b.sooner or ""].price_high


def _beside_the_use(cost: CostOfUse, low: int | None, at: int | None, high: int) -> str:
    """What of it lies outside the uses that the author asked about; "" where all lies within."""
    first, last = ceil(cost.low), floor(cost.high)
    gaps = {"from_": whole(first), "to": whole(last)}
    if low is not None and low > last:
        return say("cost.beside.beyond", **gaps)
    if high < first:
        return say("cost.beside.before", **gaps)
    early = "all-but-latest" if at is not None and at < first else "earliest" if low is not None and low < first else ""
    late = "all-but-earliest" if at is not None and at > last else "latest" if high > last else ""
    sides = [say(f"cost.beside.{side}", **gaps) for side in (early, late) if side]
    return "".join(sides)
