"""What passes show of their scatter, and where it is known from if not from them: sentences for page and audit."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.addresses import campaign_page
from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation, LookedBack, ScatterUsed
from reportgen.judgement.passes.seen import AtOdds
from reportgen.judgement.passes.stood_apart import Apart, Uneven
from reportgen.prose.amounts import size
from reportgen.prose.standing import Standing, name, standing
from reportgen.wording.count import degrees
from reportgen.wording.interval import value_only
from reportgen.wording.language import say
from reportgen.wording.lead import led
from reportgen.wording.listing import and_list
from reportgen.wording.percent import apart
from reportgen.wording.sentence import paragraph

LEFT_OUT = {
    "undated": "past.left-out.undated",
    "another procedure": "past.left-out.another-procedure",
    "another unit": "past.left-out.another-unit",
    "another rule": "past.left-out.another-rule",
}


def scatter_seen(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """All that passes show against what was assumed of them, in a few sentences; "" where they don't."""
    used = _used(evaluation, quantity, part)
    if used is None or used.seen is None:
        return ""
    s = standing(campaign, evaluation, quantity, part)
    return paragraph(uneven_line(s, used), trend_line(s, used), apart_line(s, used), at_odds_line(s, used))


def past_led(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """Which past campaigns tell how far passes scatter, leading to them; "" where the method asks none."""
    back = next((b for b in evaluation.looked_back if b.quantity == quantity), None)
    used = _used(evaluation, quantity, part)
    if back is None or used is None:
        return ""
    if not back.campaigns:
        return paragraph(say("past.none")) if used.found.origin == "none" else ""
    places = dict.fromkeys((p.campaign, p.title) for p in back.campaigns)
    campaigns = and_list([led(f"“{title}”", campaign_page(id)) for id, title in places])
    if used.found.declared_by != "past campaigns":
        return paragraph(say("past.unused", campaigns=campaigns, degrees=degrees(back.degrees)))
    known = used.found.degrees or 0.0
    return paragraph(say(f"past.{used.found.origin}", campaigns=campaigns, degrees=degrees(known)))


def left_out_lines(back: LookedBack) -> Iterable[str]:
    """Why campaigns with the same method are not among those that tell; and where this one isn't dated itself."""
    if back.undated:
        yield say("past.undated")
    for one in dict.fromkeys(back.left_out):
        yield say(LEFT_OUT[one.why], title=one.title)


def trend_line(s: Standing, used: ScatterUsed) -> str:
    """That all climb or fall together; "" where nothing shows it."""
    trend = used.seen.trend if used.seen else None
    if trend is None:
        return ""
    rounds = ".rounds" if s.campaign.test(s.quantity.test).order == "rounds" and _in_rounds(used) else ""
    way = "up" if trend.slope > 0.0 else "down"
    return say(f"seen.trend.{way}{rounds}", slope=_wide(s, abs(trend.slope)))


def _in_rounds(used: ScatterUsed) -> bool:
    """Whether rounds were taken out of what differences scatter by."""
    return used.seen is not None and used.seen.degrees < used.seen.within_degrees


def uneven_line(s: Standing, used: ScatterUsed) -> str:
    """Who scatters further than the others, and what that does to first place; "" where nobody does."""
    uneven = used.seen.uneven if used.seen else None
    if uneven is None:
        return ""
    found = say("seen.uneven", name=name(s.campaign, uneven.name), **_scatters(s, uneven))
    return paragraph(found, _by_own(s, used)).removesuffix(".")


def _scatters(s: Standing, uneven: Uneven) -> dict[str, str]:
    return {"sd": _wide(s, uneven.sd), "others": _wide(s, uneven.others)}


def _by_own(s: Standing, used: ScatterUsed) -> str:
    if s.first is None or s.campaign.test(s.quantity.test).scatter != "common":
        return ""
    now, then = s.first.winner, used.winner_if_own
    if then is None:
        return say("seen.uneven.nobody" if now else "seen.uneven.nobody-either")
    return say("seen.uneven.stays" if now == then else "seen.uneven.turns", winner=name(s.campaign, then))


def apart_line(s: Standing, used: ScatterUsed) -> str:
    """Which pass stands apart from the others; "" where none does."""
    found = used.seen.apart if used.seen else None
    if found is None:
        return ""
    result = s.result(found.name)
    said = [p for p in result.by_pass if p.value is not None and not p.excluded and not p.limit]
    gaps = {"name": name(s.campaign, found.name), "value": _value(s, found)}
    if result.by_specimens:
        specimens = list(dict.fromkeys(p.specimen for p in said))
        return say("seen.apart.specimen", n=specimens[found.at], **gaps)
    return say("seen.apart", n=said[found.at].pass_, **gaps)


def _value(s: Standing, found: Apart) -> str:
    result, value = s.result(found.name), found.value
    if s.campaign.test(s.quantity.test).scatter == "relative":
        from math import exp

        value = exp(value)
    unit = result.estimate.unit if result.estimate else s.quantity.unit
    return value_only(value, result.u, unit)


def at_odds_line(s: Standing, used: ScatterUsed) -> str:
    """That passes scatter otherwise than was known beforehand, and what counts; "" where they agree."""
    found = used.seen.at_odds if used.seen else None
    if found is None:
        return ""
    way = "wider" if found.sd > found.declared else "narrower"
    line = say(f"seen.at-odds.{way}", sd=_wide(s, found.sd), declared=_stated(s, found))
    return paragraph(line, say(f"seen.at-odds.{'both' if used.found.origin == 'both' else 'passes'}")).removesuffix(".")


def _stated(s: Standing, found: AtOdds) -> str:
    return _wide(s, found.declared)


def two_passes(s: Standing) -> str:
    """Under own scatter, that two passes each say next to nothing; "" elsewhere."""
    own = s.campaign.test(s.quantity.test).scatter == "own" and s.scatter is not None and s.scatter.origin == "passes"
    return say("seen.two-passes") if own and s.ranked and max(r.passes for r in s.ranked) == 2 else ""


def _wide(s: Standing, x: float) -> str:
    """A standard deviation or a slope; of logarithms, in percent of the value."""
    if s.campaign.test(s.quantity.test).scatter == "relative":
        return size(100.0 * x, "%")
    return size(x, apart(s.quantity.unit))


def _used(evaluation: Evaluation, quantity: str, part: str) -> ScatterUsed | None:
    return next((s for s in evaluation.scatters if (s.quantity, s.part) == (quantity, part)), None)
