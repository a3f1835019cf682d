"""Which weights, or which criterion left out, would change who leads."""

from __future__ import annotations

from itertools import pairwise

from reportgen.campaign.declared import Campaign
from reportgen.judgement.verdict.overall import Lead, Overall, WithoutCriterion
from reportgen.prose.leads import lead_clause, strength
from reportgen.prose.standing import name
from reportgen.prose.weights import group_titles
from reportgen.wording.interval import percent
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import and_list, commas
from reportgen.wording.of_hundred import of_hundred
from reportgen.wording.sentence import inside, paragraph, sentence

HALF = 0.5  # of draws: nobody leads
_MUCH = 0.1  # a lead that loses one draw in ten is another lead


def turn_lines(campaign: Campaign, overall: Overall) -> tuple[str, ...]:
    """A sentence for each weight of one group at which the leader changes; one that says so where there is none."""
    if len(overall.groups) < 2:
        return ()
    if not overall.turns:
        return (sentence(say("turn.none")),)
    return tuple(said for group in overall.groups if (said := _along(campaign, overall, group)))


def turn_intro(overall: Overall) -> str:
    """What is changed in those sentences; "" where no change of one group's weight changes who leads."""
    return f"{say('turn.intro.given' if overall.weights == 'given' else 'turn.intro.all')}:" if overall.turns else ""


def _along(campaign: Campaign, overall: Overall, group: str) -> str:
    """Who leads along the weight of one group, from none of it to all: a sentence."""
    (title,) = group_titles(campaign, [group])
    turns = sorted((t for t in overall.turns if t.group == group), key=lambda t: t.weight)
    if not turns:
        steady = overall.lead.leader if overall.weights == "given" and overall.lead.index != HALF else None
        return sentence(say("turn.never", group=title, name=name(campaign, steady))) if steady else ""
    leads = [say("turn.up-to", name=name(campaign, turns[0].before), percent=percent(turns[0].weight))]
    leads += [
        say("turn.between", name=name(campaign, now.after), percent=percent(then.weight))
        for now, then in pairwise(turns)
    ]
    leads.append(say("turn.beyond", name=name(campaign, turns[-1].after)))
    return sentence(say("turn.along", group=title, leads=commas(leads)))


def without_line(campaign: Campaign, overall: Overall) -> str:
    """Whether leaving one criterion out changes who leads or whether that is firm; "" with one criterion alone."""
    if len(overall.without) < 2:
        return ""
    lead = overall.lead
    less = [w for w in overall.without if _drops(lead, w.lead)]
    changed = [w for w in overall.without if w not in less and _changes(lead, w.lead)]
    if not less and not changed:
        return sentence(say("without.nothing"))
    by_lead: dict[str, list[str]] = {}
    for w in changed:
        by_lead.setdefault(_short(campaign, w.lead), []).append(inside(campaign.quantity(w.quantity).title))
    said = [_without(titles, found) for found, titles in by_lead.items()]
    said += [_less(campaign, lead, w) for w in less]
    rest = len(overall.without) - len(changed) - len(less)
    return paragraph(*said, say_of(rest, "without.rest") if rest else "")


def _without(titles: list[str], lead: str) -> str:
    gaps = {"quantities": and_list(titles), "lead": lead}
    return say("without.leader.two", **gaps) if len(titles) == 2 else say_of(len(titles), "without.leader", **gaps)


def _less(campaign: Campaign, lead: Lead, without: WithoutCriterion) -> str:
    """One and the same leads, and in far fewer draws."""
    return say(
        "without.less",
        quantities=inside(campaign.quantity(without.quantity).title),
        leader=name(campaign, without.lead.leader or ""),
        draws=of_hundred(without.lead.index),
        before=of_hundred(lead.index),
    )


def _drops(lead: Lead, other: Lead) -> bool:
    """Whether the same one leads, but in so many fewer draws that it has to be said."""
    same = lead.leader is not None and lead.leader == other.leader and strength(other) != "level"
    return same and lead.index - other.index >= _MUCH


def _short(campaign: Campaign, lead: Lead) -> str:
    """Who leads and whether firmly; how nearly so is the table's."""
    if lead.leader is None or strength(lead) in ("firm", "level"):
        return lead_clause(campaign, lead)
    return say("lead.open", leader=name(campaign, lead.leader))


def _changes(lead: Lead, other: Lead) -> bool:
    return _who(lead) != _who(other)


def _who(lead: Lead) -> tuple[str, bool]:
    """Who is said to lead, and whether firmly; nobody where it is level."""
    return ("", False) if lead.leader is None or strength(lead) == "level" else (lead.leader, lead.firm)
