"""The sole first place in words."""

from __future__ import annotations

from reportgen.prose import amounts
from reportgen.prose.standing import Standing, name
from reportgen.prose.within import within
from reportgen.prose.yardstick import ran_once, yardstick
from reportgen.wording.language import say


def winner(s: Standing, best: str) -> list[str]:
    """The sole first: its value, its lead over the nearest other, and whether that lead matters."""
    result = s.result(best)
    bound = result.estimate is not None and result.estimate.limit is not None
    place = s.led(say(f"place.{s.quantity.better}"))
    who = name(s.campaign, best)
    opening = (
        say("first.winner.off", winner=who, place=place, bound=amounts.short(result))
        if bound
        else say("first.winner", winner=who, place=place, value=amounts.full(result))
    )
    pairs = [(p, r) for r in s.ranked if (p := s.pair(best, r.contender)) and p.difference is not None]
    alike = s.campaign.test(s.quantity.test).scatter == "common"
    plain = say("first.lead.plain.alike" if alike else "first.lead.plain")
    if not pairs:
        return [opening, plain]
    pair, nearest = min(pairs, key=lambda found: abs(found[0].difference or 0.0))
    lead = amounts.gap(pair, s.of_pair(pair))
    if not lead.half:
        return [opening, plain]
    held = say(
        "first.lead.alike" if alike else "first.lead",
        gap=lead.size,
        next=s.led_to(name(s.campaign, nearest.contender), best, nearest.contender),
        yardstick=yardstick(s, (best, nearest.contender)),
        half=lead.half,
    )
    past = s.scatter is not None and s.scatter.declared_by == "past campaigns"
    unseen = say("first.lead.unseen.past" if past else "first.lead.unseen") if ran_once(s) else ""
    return [opening, held, unseen, matters(s, pair.beyond), within(s, pair)]


def matters(s: Standing, beyond: bool | None) -> str:
    """Whether a resolved lead is one that matters; nothing where the author stated no such amount."""
    if s.quantity.matters is None:
        return ""
    answer = {True: "yes", False: "no", None: "open"}[beyond]
    return say(f"first.matters.{answer}", matters=amounts.typed_apart(s.quantity.matters))
