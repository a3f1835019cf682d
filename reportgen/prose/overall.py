"""The verdict over weighed criteria in sentences: who is worth more, how firmly, who was left out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.addresses import campaign_page
from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Verdict
from reportgen.judgement.verdict.overall import FIRM_FROM, Overall, PairIndex
from reportgen.prose.leads import lead_clause, strength, strength_of
from reportgen.prose.standing import name, names
from reportgen.prose.weights import group_titles, weights_in_words
from reportgen.wording.count import whole
from reportgen.wording.language import say, say_of
from reportgen.wording.lead import led
from reportgen.wording.listing import and_list, or_list
from reportgen.wording.of_hundred import least_of_hundred, of_hundred
from reportgen.wording.sentence import paragraph, sentence

_ALIKE = 0.03  # shares no further apart than this are called one and the same


def overall_answer(campaign: Campaign, overall: Overall) -> str:
    """Who is worth more and how firmly, or that nobody is, with what was learned all the same."""
    leader = overall.lead.leader
    how = say("overall.with" if overall.weights == "given" else "overall.all")
    if leader is None or len(overall.contenders) < 2:
        return sentence(say("overall.several", how=how) if overall.lead.index else say("overall.none"))
    rivals = {c: against(overall.index, leader, c) for c in overall.contenders if c != leader}
    nearest = min(rivals, key=lambda c: rivals[c])
    gaps = {
        "how": how,
        "leader": name(campaign, leader),
        "nearest": name(campaign, nearest),
        "others": or_list([name(campaign, c) for c in rivals]),
        "draws": of_hundred(rivals[nearest]),
        "least": least_of_hundred(rivals[nearest]),
    }
    if overall.winner:
        return sentence(say("overall.winner.two" if len(rivals) == 1 else "overall.winner", **gaps))
    learned = _depends(campaign, overall) or _behind(campaign, overall, leader)
    if strength(overall.lead) == "level":
        level = [
            c for c in overall.contenders if c == leader or strength_of(max(rivals[c], 1.0 - rivals[c])) == "level"
        ]
        return paragraph(say_of(len(level) - 1, "overall.level", how=how, names=names(campaign, level)), learned)
    known = min((against(overall.index_known, leader, c) for c in rivals), default=0.0) if overall.index_known else 0.0
    said = say(_open_key(overall, known), **gaps, known=of_hundred(known))
    return paragraph(said, learned)


def overall_in_short(campaign: Campaign, overall: Overall) -> str:
    """Who leads over all that is weighed, and how firmly, leading to the verdict; "" where somebody wins, and where
    nobody can be weighed."""
    lead = overall.lead
    if overall.winner or not lead.index or len(overall.contenders) < 2:
        return ""
    how = say("overall.with" if overall.weights == "given" else "overall.all")
    unsure = lead.leader is not None and strength(lead) in ("firm", "nearly")
    clause = say("lead.open", leader=name(campaign, lead.leader or "")) if unsure else lead_clause(campaign, lead)
    return sentence(say("overall.in-short", how=led(how, f"{campaign_page(campaign.id)}#verdict"), lead=clause))


def _open_key(overall: Overall, known: float) -> str:
    """Which sentence says that nobody is called ahead; `known` is the leader's least index on criteria with repeats."""
    how = strength(overall.lead)
    if how in ("firm", "nearly"):
        by_known = "overall.unrepeated" if overall.index_known else "overall.no-repeats"
        return "overall.first-open" if known >= FIRM_FROM else by_known
    return f"overall.{how}"


def _behind(campaign: Campaign, overall: Overall, leader: str) -> str:
    """Who is firmly behind the leader, where nobody is ahead of all."""
    firmly = [c for c in overall.contenders if c != leader and is_firmly_above(overall, leader, c)]
    if firmly and len(firmly) < len(overall.contenders) - 1:
        above = [c for c in overall.contenders if c not in firmly]
        ahead = [c for c in above if all(is_firmly_above(overall, c, behind) for behind in firmly)]
        gaps = {"names": and_list([name(campaign, c) for c in firmly]), "ahead": names(campaign, ahead)}
        both = len(ahead) == 2
        return say("overall.behind.two", **gaps) if both else say_of(len(ahead), "overall.behind", **gaps)
    if any(is_firm(overall, p) for p in overall.index):
        return ""
    return say_of(len(overall.contenders) - 1, "overall.nobody-behind")


def _depends(campaign: Campaign, overall: Overall) -> str:
    """Who leads firmly where one group counts alone, where that isn't one and the same; "" where it is."""
    cells = overall.map.cells if overall.map else ()
    alone = {cell.weights.index(1.0): cell.lead for cell in cells if 1.0 in cell.weights}
    firm = {n: lead.leader for n, lead in sorted(alone.items()) if lead.leader and strength(lead) == "firm"}
    if len(set(firm.values())) < 2:
        return ""
    groups = group_titles(campaign, overall.groups)
    leads = [say("overall.depends.on", group=groups[n], leader=name(campaign, who)) for n, who in firm.items()]
    return say("overall.depends", leads=say("overall.depends.join").join(leads))


def said_against(campaign: Campaign, overall: Overall, best: str) -> str:
    """Whether what is weighed bears out the contender that the author calls best; "" where none is called so."""
    if not best:
        return ""
    if best not in overall.contenders:
        return sentence(say("said.not-weighed", best=name(campaign, best)))
    if overall.winner == best:
        return sentence(say("said.borne-out", best=name(campaign, best)))
    against_each = {c: against(overall.index, best, c) for c in overall.contenders if c != best}
    worst = min(against_each, key=lambda c: against_each[c])
    if against_each[worst] >= 0.5:
        return sentence(say("said.leans", best=name(campaign, best)))
    gaps = {"best": name(campaign, best), "other": name(campaign, worst), "draws": of_hundred(against_each[worst])}
    return sentence(say("said.not-borne-out", **gaps))


def against(index: Sequence[PairIndex], one: str, other: str) -> float:
    """The chance that `one` is worth more than `other`, whichever of them stands first in the pair."""
    for pair in index:
        if (pair.first, pair.second) == (one, other):
            return pair.index
        if (pair.second, pair.first) == (one, other):
            return 1.0 - pair.index
    raise KeyError(f"{one} and {other} were not weighed against each other")


def is_firm(overall: Overall, pair: PairIndex) -> bool:
    """Whether one of the two is worth more firmly: with and without the criteria of unknown scatter."""
    ahead, behind = (pair.first, pair.second) if pair.index >= 0.5 else (pair.second, pair.first)
    return is_firmly_above(overall, ahead, behind)


def is_firmly_above(overall: Overall, one: str, other: str) -> bool:
    """Whether `one` is worth more than `other`, with and without the criteria of unknown scatter."""
    indices = (overall.index, overall.index_known)
    return all(index and against(index, one, other) >= FIRM_FROM for index in indices)


def pair_firmness(overall: Overall, pair: PairIndex) -> str:
    """How firm a pair is, in a word or two; the number stands beside it."""
    word = "firm" if is_firm(overall, pair) else strength_of(max(pair.index, 1.0 - pair.index))
    return say(f"pair.{word}")


def left_out(campaign: Campaign, out: Mapping[str, str]) -> str:
    """Who isn't weighed, and why."""
    said = []
    for why in ("must", "no-value", "bound", "not-above-zero", "blocked"):
        who = [c.id for c in campaign.contenders if out.get(c.id) == why]
        said.append(say_of(len(who), f"overall.out.{why}", names=names(campaign, who)) if who else "")
    return paragraph(*said)


def not_weighed(campaign: Campaign, verdict: Verdict) -> str:
    """Why nothing is weighed though criteria are set: conditions that leave nobody or one, or values that lack."""
    out = {o.contender: "must" for o in verdict.conditions if o.outcome == "contradicted"}
    left = [c.id for c in campaign.contenders if c.id not in out]
    if len(left) > 1:
        return paragraph(say("overall.too-few"), left_out(campaign, out))
    why = say("overall.alone", name=name(campaign, left[0])) if left else say("overall.nobody")
    return paragraph(why, left_out(campaign, out))


def how_weighed(campaign: Campaign, overall: Overall) -> str:
    """What a draw is, in plain words, and what counts as firm."""
    drawn = whole(overall.draws)
    some_once = overall.with_repeats < overall.criteria
    once, firm = say("weighed.unrepeated") if some_once else "", say(f"weighed.firm{'.known' if some_once else ''}")
    if overall.weights == "given":
        weights = weights_in_words(group_titles(campaign, overall.groups), overall.given)
        return paragraph(say("weighed.given", weights=weights, draws=drawn), once, firm)
    return paragraph(say("weighed.all", draws=drawn), once, firm)


def how_shared(overall: Overall) -> str:
    """How shares of first place read, and what they would be, had all been equal."""
    least, most = min(overall.equal_first.values()), max(overall.equal_first.values())
    if most - least < _ALIKE:
        return sentence(say("weighed.shares", each=of_hundred(1 / len(overall.equal_first))))
    return sentence(say("weighed.shares.between", least=of_hundred(least), most=of_hundred(most)))
