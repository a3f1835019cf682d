"""The campaign's answer in at most two sentences: first what it asks first, then everything else that was compared."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation, FirstPlace, Verdict
from reportgen.prose.asked_first import asked_clause
from reportgen.prose.places import Place, comes_first, placed, read_best, shares
from reportgen.prose.standing import name, names
from reportgen.wording.count import in_words
from reportgen.wording.language import say, say_of
from reportgen.wording.lead import bare, led
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import inside, paragraph, sentence

_NAMED_AT_MOST = 3  # quantities, or groups of those ahead; beyond these a count reads better


@dataclass(frozen=True)
class _Group:
    """Some contenders and all the quantities on which the same can be said of them."""

    who: tuple[str, ...]
    places: tuple[Place, ...]


def campaign_answer(campaign: Campaign, evaluation: Evaluation) -> str:
    """The answer in at most two sentences: first on what the campaign asks first, then on everything else."""
    return bare(campaign_answer_led(campaign, evaluation))


def campaign_answer_led(campaign: Campaign, evaluation: Evaluation) -> str:
    """The same, its words about who is ahead leading to the pairs that are their reason."""
    if all(r.missing for r in evaluation.results):
        return sentence(say("answer.not-tested"))
    if not evaluation.firsts:
        seen = all(r.kind == "order" for r in evaluation.results if not r.missing)
        return sentence(say("answer.order-only" if seen else "answer.unranked-only"))
    asked = _asked_first(campaign, evaluation.firsts)
    places = [placed(campaign, evaluation, f) for f in evaluation.firsts]
    first = next(p for p in places if p.first is asked)
    if overall := _overall(campaign, evaluation.verdict):
        return paragraph(overall, _joined(asked_clause(first), _others(campaign, places, first)))
    if len(places) > 1 and asked.winner and all(p.first.winner == asked.winner for p in places):
        return sentence(_all_of_it(campaign, places, asked.winner))
    return paragraph(asked_clause(first), _others(campaign, places, first))


def _asked_first(campaign: Campaign, firsts: Sequence[FirstPlace]) -> FirstPlace:
    """What the campaign asks first: the headline of its first test, else the first quantity that was compared."""
    headline = campaign.tests[0].headline
    return next((f for f in firsts if f.quantity == headline), firsts[0])


def _overall(campaign: Campaign, verdict: Verdict | None) -> str:
    """Who comes out first over all criteria weighed together; "" for nobody, and where nothing was weighed."""
    if verdict is None or verdict.overall is None or not verdict.overall.winner:
        return ""
    return say(f"answer.overall.{verdict.overall.weights}", winner=name(campaign, verdict.overall.winner))


def _all_of_it(campaign: Campaign, places: Sequence[Place], winner: str) -> str:
    many = len(places) > _NAMED_AT_MOST
    what = say("answer.all-things", count=in_words(len(places))) if many else _titles(places)
    where = led(what, places[0].s.reasons) if many else what
    return say("answer.comes-first", of=places[0].of_whom, winner=name(campaign, winner), quantities=where)


def _others(campaign: Campaign, places: Sequence[Place], asked: Place) -> str:
    """What was found on everything but what was asked first; "" where there is nothing else."""
    others = [p for p in places if p is not asked]
    if not others:
        return ""
    wins = _groups(p for p in others if comes_first(p))
    shared = _groups(p for p in others if shares(p))
    named = len(wins) + len(shared) <= _NAMED_AT_MOST
    once = [p for p in others if p.sort == "once"]
    said = _wins(campaign, wins, asked)
    if named:
        said += [say("answer.shared", names=names(campaign, g.who), quantities=_titles(g.places)) for g in shared]
    if not said and once and len(once) == len(others):
        return _in_these_runs(campaign, once)
    rest = [p for p in others if not comes_first(p) and not (named and shares(p))]
    return _joined(*said, _rest(rest, bool(said) or comes_first(asked) or shares(asked)))


def _wins(campaign: Campaign, groups: Sequence[_Group], asked: Place) -> list[str]:
    """Who comes first alone on what; whoever came first on what was asked first is told first."""
    again = asked.front if comes_first(asked) else ()
    said = []
    for n, group in enumerate(sorted(groups, key=lambda g: g.who != again)):
        key = "answer.best-on.also" if group.who == again else "answer.best-on.too" if n else "answer.best-on"
        said.append(say(key, winner=name(campaign, group.who[0]), quantities=_titles(group.places)))
    return said


def _rest(places: Sequence[Place], after: bool) -> str:
    """Where nobody is ahead; `after`: somebody was said to be ahead before."""
    if not places:
        return ""
    count, titles = len(places), _titles(places)
    return say_of(count, "answer.rest" if after else "answer.nobody", quantities=titles, count=in_words(count))


def _in_these_runs(campaign: Campaign, once: Sequence[Place]) -> str:
    """Who read best on what, where everything was read once."""
    groups = _groups(p for p in once if read_best(p))
    if not groups:
        return say_of(len(once), "answer.once.nobody", quantities=_titles(once), count=in_words(len(once)))
    said = []
    for n, group in enumerate(groups):
        key = "answer.once.too" if n else "answer.once"
        said.append(say(key, leader=name(campaign, group.who[0]), quantities=_titles(group.places)))
    return say("answer.once.all", said=say("answer.join").join(said))


def _groups(places: Iterable[Place]) -> list[_Group]:
    """Those of whom the same can be said, together; in the order they are first met."""
    by: dict[tuple[str, ...], list[Place]] = {}
    for p in places:
        by.setdefault(p.front, []).append(p)
    return [_Group(who, tuple(of)) for who, of in by.items()]


def _titles(places: Sequence[Place]) -> str:
    """The quantities by name, each leading to its pairs; a count where they are many."""
    if len({p.title for p in places}) > _NAMED_AT_MOST:
        return say("answer.things", count=in_words(len(places)))
    return and_list([led(inside(p.title), p.s.reasons) for p in places])


def _joined(*said: str) -> str:
    return say("answer.join").join(filter(None, said))
