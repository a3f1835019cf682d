"""The answer to what a campaign asks first, as one sentence: as much as was found, and no more."""

from __future__ import annotations

from reportgen.evaluation.evaluated import Comparison
from reportgen.prose import amounts
from reportgen.prose.known_of_ties import largest_gap_hidden, none_that_matters
from reportgen.prose.places import Place, leader_once
from reportgen.prose.standing import Standing, name, names
from reportgen.wording.count import in_words
from reportgen.wording.language import say
from reportgen.wording.sentence import inside


def asked_clause(p: Place) -> str:
    """What was found on one quantity, without a full stop."""
    return {"winner": _winner, "shared": _shared, "tied": _tied, "once": _once, "nothing": _nothing}[p.sort](p)


def _on(p: Place) -> str:
    return p.s.led(inside(p.title))


def _winner(p: Place) -> str:
    best = p.front[0]
    gaps = {"of": p.of_whom, "winner": name(p.s.campaign, best), "quantities": _on(p)}
    nearest = _nearest(p.s, best)
    if nearest is None:
        return say("answer.comes-first", **gaps)
    pair, other = nearest
    size = amounts.gap(pair, p.s.of_pair(pair)).size
    said = say(
        "answer.comes-first.by",
        gap=size,
        than=say(f"beside.{p.s.quantity.better}"),
        next=p.s.led_to(name(p.s.campaign, other), best, other),
        **gaps,
    )
    if p.s.quantity.matters is None or pair.beyond is not False:
        return said
    return say("answer.but-small", said=said, matters=amounts.typed_apart(p.s.quantity.matters))


def _nearest(s: Standing, best: str) -> tuple[Comparison, str] | None:
    """The pair with the narrowest gap behind the winner, and who it is; None where a gap isn't known."""
    others = [r.contender for r in s.ranked if r.contender != best]
    pairs = [(p, c) for c in others if (p := s.pair(best, c)) is not None and p.difference is not None]
    bounds = [r for r in s.ranked if r.contender == best and r.estimate and r.estimate.limit]
    return min(pairs, key=lambda found: abs(found[0].difference or 0.0)) if pairs and not bounds else None


def _shared(p: Place) -> str:
    s, front = p.s, p.front
    others = tuple(r.contender for r in s.ranked if r.contender not in front)
    gaps = {"of": p.of_whom, "names": names(s.campaign, front), "quantities": _on(p)}
    ahead = all((c := s.pair(a, b)) is not None and c.favours == a for a in front for b in others)
    if not others or not ahead:
        return say("answer.share", **gaps)
    if len(others) == 1:
        return say("answer.share.ahead", others=name(s.campaign, others[0]), **gaps)
    return say("answer.share.ahead", others=say("first.others", count=in_words(len(others))), **gaps)


def _tied(p: Place) -> str:
    s, gaps = p.s, {"whom": p.whom, "quantities": _on(p)}
    if none_that_matters(s) and s.quantity.matters is not None:
        return say("answer.tied.nothing-matters", matters=amounts.typed_apart(s.quantity.matters), **gaps)
    hidden = largest_gap_hidden(s)
    return say("answer.tied.hidden", gap=hidden, **gaps) if hidden else say("answer.tied", **gaps)


def _once(p: Place) -> str:
    s = p.s
    front = leader_once(s)
    if not front:
        return say("answer.asked-once", quantities=_on(p))
    nearest = _nearest(s, front[0])
    gaps = {
        "leader": name(s.campaign, front[0]),
        "place": say(f"place.{s.quantity.better}"),
        "quantities": _on(p),
    }
    if nearest is None:
        return say("answer.asked-once.leads", **gaps)
    pair, other = nearest
    return say(
        "answer.asked-once.leads-by",
        gap=amounts.gap_alone(pair, s.of_pair(pair)),
        beside=say(f"beside.{s.quantity.better}"),
        next=s.led_to(name(s.campaign, other), front[0], other),
        **gaps,
    )


def _nothing(p: Place) -> str:
    if len(p.s.ranked) == 1:
        return say("answer.only-one", name=name(p.s.campaign, p.s.ranked[0].contender), quantities=_on(p))
    return say("answer.nobody-ranked", quantities=_on(p))
