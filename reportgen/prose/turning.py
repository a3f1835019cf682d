"""Which weights, or which criterion left out, would change who leads."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.judgement.verdict.overall import Lead, Overall, Turn
from reportgen.prose.leads import lead_clause, strength
from reportgen.prose.standing import name
from reportgen.prose.weights import group_titles
from reportgen.wording.interval import percent
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import or_list
from reportgen.wording.sentence import inside, paragraph, sentence


def turn_lines(campaign: Campaign, overall: Overall) -> tuple[str, ...]:
    """A sentence for each weight of one group at which the leader changes; one that says so where there is none."""
    if len(overall.groups) < 2:
        return ()
    if not overall.turns:
        return (sentence(say("turn.none")),)
    return tuple(_turn(campaign, turn) for turn in overall.turns)


def turn_intro(overall: Overall) -> str:
    """What is changed in those sentences; "" where no change of one group's weight changes who leads."""
    return f"{say('turn.intro.given' if overall.weights == 'given' else 'turn.intro.all')}:" if overall.turns else ""


def _turn(campaign: Campaign, turn: Turn) -> str:
    (group,) = group_titles(campaign, [turn.group])
    before, after = name(campaign, turn.before), name(campaign, turn.after)
    return sentence(say("turn.rises", group=group, percent=percent(turn.weight), before=before, after=after))


def without_line(campaign: Campaign, overall: Overall) -> str:
    """Whether leaving one criterion out changes who leads or whether that is firm; "" with one criterion alone."""
    if len(overall.without) < 2:
        return ""
    changed = [w for w in overall.without if _changes(overall.lead, w.lead)]
    if not changed:
        return sentence(say("without.nothing"))
    by_lead: dict[str, list[str]] = {}
    for w in changed:
        by_lead.setdefault(_short(campaign, w.lead), []).append(inside(campaign.quantity(w.quantity).title))
    said = [say("without.leader", quantities=or_list(titles), lead=lead) for lead, titles in by_lead.items()]
    rest = len(overall.without) - len(changed)
    return paragraph(*said, say_of(rest, "without.rest") if rest else "")


def _short(campaign: Campaign, lead: Lead) -> str:
    """Who leads and whether firmly; how nearly so is the table's."""
    if lead.leader is None or strength(lead) in ("firm", "level"):
        return lead_clause(campaign, lead)
    return say("lead.open", leader=name(campaign, lead.leader))


def _changes(lead: Lead, other: Lead) -> bool:
    return (lead.leader, lead.firm) != (other.leader, other.firm)
