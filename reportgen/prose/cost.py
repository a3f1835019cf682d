"""What using costs, in sentences: from how many uses on which of two is the cheaper, and who is cheapest where."""

from __future__ import annotations

from math import ceil, floor

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import CostOfUse
from reportgen.judgement.money.break_even import BreakEven, CostLine, Stretch
from reportgen.prose.standing import name
from reportgen.wording.count import whole
from reportgen.wording.interval import printed
from reportgen.wording.language import say
from reportgen.wording.listing import or_list
from reportgen.wording.money import amount
from reportgen.wording.sentence import sentence


def use_line(cost: CostOfUse) -> str:
    """What one use is and what it costs."""
    written = " ".join(cost.formula.replace("_", " ").replace("*", " × ").split())
    return sentence(say("cost.use", per=cost.per, formula=written))


def cheapest_line(campaign: Campaign, cost: CostOfUse) -> str:
    """Who is the cheapest over which stretch of the use; "" where there are no two lines."""
    found = cost.cheapest
    if not found:
        return ""
    if len(found) == 1:
        (one,) = found
        gaps = {"from_": whole(floor(one.low)), "to": whole(ceil(one.high))}
        if len(one.may_be) == 1:
            return sentence(say("cost.cheapest", name=name(campaign, one.may_be[0]), **gaps))
        return sentence(say("cost.cheapest.open", names=_any(campaign, one), **gaps))
    return sentence("; ".join(_stretch(campaign, s) for s in found))


def break_even_lines(campaign: Campaign, cost: CostOfUse) -> tuple[str, ...]:
    """A sentence a pair."""
    return tuple(sentence(_pair(campaign, cost, b)) for b in cost.break_evens)


def left_out_lines(campaign: Campaign, cost: CostOfUse) -> tuple[str, ...]:
    """Why some have no line, and what the others rest on."""
    said = [
        say(f"cost.left-out.{why}", names=name(campaign, c), currency=cost.currency)
        if why == "other-currency"
        else say(f"cost.left-out.{why}", names=name(campaign, c))
        for c, why in cost.left_out.items()
    ]
    said += [say("cost.once")] if cost.once else []
    said += [say("cost.parts-apart")] if cost.why else []
    return tuple(sentence(s) for s in said)


def of_one_use(line: CostLine, currency: str) -> str:
    """ "0.384 EUR (0.371 to 0.397)"."""
    return printed(line.cost, None, line.low, line.high, currency, line.limit)


def in_all(line: CostLine, uses: float, currency: str) -> str:
    """What so many uses cost with the price: from what to what, in the smallest coin."""
    low, high = line.total(uses)
    if line.limit == "above":
        return say("cost.from", low=amount(low, currency))
    if line.limit == "below":
        return say("cost.up-to", high=amount(high, currency))
    return say("cost.range", low=amount(low, like=currency), high=amount(high, currency))


def _stretch(campaign: Campaign, s: Stretch) -> str:
    gaps = {"from_": whole(round(s.low)), "to": whole(round(s.high))}
    if len(s.may_be) == 1:
        return say("cost.stretch", name=name(campaign, s.may_be[0]), **gaps)
    return say("cost.stretch.pair" if len(s.may_be) == 2 else "cost.stretch.open", names=_any(campaign, s), **gaps)


def _any(campaign: Campaign, s: Stretch) -> str:
    return or_list([name(campaign, c) for c in s.may_be])


def _pair(campaign: Campaign, cost: CostOfUse, b: BreakEven) -> str:
    first, second = name(campaign, b.first), name(campaign, b.second)
    if b.why == "cheaper-throughout" and b.later:
        other = b.second if b.later == b.first else b.first
        return say("cost.throughout", later=name(campaign, b.later), other=name(campaign, other))
    if b.later is None or b.sooner is None or b.low is None or b.high is None:
        return say(f"cost.{b.why}", first=first, second=second)
    gaps = {"later": name(campaign, b.later), "sooner": name(campaign, b.sooner), "high": whole(ceil(b.high))}
    low = whole(floor(b.low))
    if b.why == "beyond-the-use":
        if b.high < cost.low or (b.at is not None and b.at < cost.low):
            return say("cost.beyond.before", low=low, from_=whole(ceil(cost.low)), **gaps)
        return say("cost.beyond.after", low=low, to=whole(floor(cost.high)), **gaps)
    if b.at is not None:
        return say("cost.crosses", low=low, at=whole(max(1, round(b.at))), **gaps)
    return say("cost.crosses.loose", low=low, **gaps) if b.low > 0.0 else say("cost.crosses.latest", **gaps)
