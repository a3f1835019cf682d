"""The author's verdict in words, held against what the readings support."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.audit.case import Case, Seen
from reportgen.campaign.declared import Campaign
from reportgen.prose.standing import name
from reportgen.wording.sentence import inside


def verdict_not_borne_out(case: Case) -> Iterable[Seen]:
    """The author's verdict in words, held against what the readings support."""
    plan = case.declared.campaign.verdict
    if plan is None or plan.we_say is None or not plan.we_say.best:
        return
    best, because = plan.we_say.best, plan.we_say.because
    firsts = [f for f in case.evaluation.firsts if not because or f.quantity in because]
    worse = {
        f.quantity: c.favours
        for f in firsts
        for c in case.evaluation.comparisons
        if c.quantity == f.quantity and c.favours not in (None, best) and best in (c.first, c.second)
    }
    out = case.evaluation.verdict and [
        m for m in case.evaluation.verdict.conditions if m.contender == best and m.outcome == "contradicted"
    ]
    campaign = case.declared.campaign
    place = case.declared.at("verdict/we-say")
    who_is = name(campaign, best)
    if out:
        condition = _told(campaign, out[0].quantity)
        yield Seen(place, f"“best: {best}”, but {who_is} doesn't meet a condition ({condition}).", severity="error")
    elif firsts and len(worse) == len(firsts):
        told = ", ".join(f"{_told(campaign, q)} ({name(campaign, who)} is better)" for q, who in worse.items())
        yield Seen(place, f"“best: {best}” is contradicted by everything it rests on: {told}.", severity="error")
    elif worse:
        told = ", ".join(f"{_told(campaign, q)} ({name(campaign, who)} is better)" for q, who in worse.items())
        yield Seen(place, f"“best: {best}”: the readings show another to be better on {told}.")
    elif open_ := list(dict.fromkeys(_told(campaign, f.quantity) for f in firsts if f.winner != best)):
        yield Seen(place, f"“best: {best}”: the readings don't decide first place on {', '.join(open_)}.")


def _told(campaign: Campaign, quantity: str) -> str:
    return inside(campaign.quantity(quantity).title)
