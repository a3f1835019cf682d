"""What first place hangs on, in words."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import FirstPlace
from reportgen.evaluation.hanging import WithoutPass
from reportgen.prose.specimens import specimen_name
from reportgen.prose.standing import name
from reportgen.wording.language import say


def hangs(campaign: Campaign, first: FirstPlace | None) -> str:
    """The one pass that decides who is alone in first place, and what would be without it; "" where none does."""
    found = first.hangs_on if first else None
    alone = found.lone_pass if found else None
    if found is None or alone is None:
        return ""
    key = "hangs.winner" if found.winner else "hangs.open"
    return say(key, without=pass_named(campaign, alone), then=then_first(campaign, alone.winner))


def then_first(campaign: Campaign, winner: str | None) -> str:
    """What would be of first place: “Ostler Mk II would be alone in first place”, or nobody would."""
    return say("hangs.alone", name=name(campaign, winner)) if winner else say("hangs.nobody")


def pass_named(campaign: Campaign, one: WithoutPass) -> str:
    """“pass 2 of Corvane Sol”, with its specimen where several were bought."""
    contender = campaign.contender(one.contender)
    if len(contender.specimens) > 1:
        specimen = specimen_name(contender, one.specimen)
        return say("hangs.pass.specimen", pass_=one.pass_, name=name(campaign, one.contender), specimen=specimen)
    return say("hangs.pass", pass_=one.pass_, name=name(campaign, one.contender))
