"""The finding of a quantity in a few words, for a chart's subtitle and its text alternative."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation
from reportgen.prose import amounts
from reportgen.prose.by_chance import is_by_chance
from reportgen.prose.once import in_front, not_told_apart, open_in_front
from reportgen.prose.orders import found
from reportgen.prose.standing import Standing, name, names, standing
from reportgen.prose.unranked import untouched
from reportgen.prose.yardstick import scatter_unknown
from reportgen.wording.count import in_words
from reportgen.wording.language import say, say_of

NOT_RANKED = ("sessions-apart", "off-scale-both", "not-above-zero", "no-answer")


def finding_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """The finding in a few words, without a full stop: "Corvane Sol is lowest, by 2.60 g"."""
    s = standing(campaign, evaluation, quantity, part)
    if all(r.missing for r in s.results):
        return say("finding.not-tested" if untouched(s) else "finding.no-result")
    if s.results[0].kind == "order":
        return found(s)
    if s.first is None:
        return say("finding.shown")
    if is_by_chance(s) and s.first.winner:
        return say("finding.chance.winner", winner=name(campaign, s.first.winner))
    if s.first.reason.code == "never-enough":
        return say("finding.chance.never")
    if s.first.winner:
        return _winner(s, s.first.winner)
    if len(s.ranked) == 1:
        return say("finding.one", name=name(campaign, s.ranked[0].contender))
    if not s.ranked or s.first.reason.code in NOT_RANKED:
        return say("finding.not-ranked")
    if scatter_unknown(s):
        return _once(s)
    if len(s.first.may_be_first) == len(s.ranked) > 2:
        return say("finding.tie.all", count=in_words(len(s.ranked)))
    if len(s.first.may_be_first) == len(s.ranked):
        return say("finding.tie.two", names=names(campaign, s.first.may_be_first))
    return say("finding.tie", names=names(campaign, s.first.may_be_first))


def _winner(s: Standing, best: str) -> str:
    who, place = name(s.campaign, best), say(f"place.{s.quantity.better}")
    pairs = [p for r in s.ranked if (p := s.pair(best, r.contender)) and p.difference is not None]
    if not pairs:
        return say("finding.winner.plain", winner=who, place=place)
    nearest = min(pairs, key=lambda p: abs(p.difference or 0.0))
    if s.quantity.matters and nearest.beyond is False:
        return say("finding.winner.small", winner=who, place=place)
    return say("finding.winner", winner=who, place=place, gap=amounts.gap(nearest, s.of_pair(nearest)).size)


def _once(s: Standing) -> str:
    front = in_front(s)
    if not front:
        return say("finding.not-ranked")
    leader = front[0].contender
    place = say(f"place.{s.quantity.better}")
    if open_ := open_in_front(s, leader):
        bound = front[0].estimate is not None and front[0].estimate.limit is not None
        unsure = [r.contender for r in s.ranked if r.contender in open_ or (bound and r.contender == leader)]
        return say_of(len(unsure), "finding.once.open", names=names(s.campaign, unsure), place=place)
    alike = not_told_apart(s, leader)
    if len(alike) > 1:
        return say("finding.once.alike", names=names(s.campaign, alike))
    return say("finding.once", leader=names(s.campaign, [r.contender for r in front]), place=place)
