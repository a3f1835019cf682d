"""Who leads at some weights, and how firmly, in words that never make a winner of a coin's toss."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from reportgen.campaign.declared import Campaign
from reportgen.judgement.verdict.overall import FIRM_FROM, Lead
from reportgen.prose.standing import name
from reportgen.prose.weights import weights_in_words
from reportgen.wording.language import say
from reportgen.wording.of_hundred import of_hundred
from reportgen.wording.sentence import capital

Strength = Literal["firm", "nearly", "mostly", "often", "slightly", "level", "none"]
_BELOW_FIRM: tuple[tuple[float, Strength], ...] = ((0.9, "mostly"), (0.75, "often"), (0.55, "slightly"))


def strength(lead: Lead) -> Strength:
    """How firm a lead is. `nearly`: its indices would do, and what has repeats, or first place itself, won't."""
    if lead.leader is None:
        return "level" if lead.index else "none"
    return "firm" if lead.firm else strength_of(lead.index)


def strength_of(index: float) -> Strength:
    """The same of a pairwise index that is firm in no other way."""
    if index >= FIRM_FROM:
        return "nearly"
    return next((word for least, word in _BELOW_FIRM if index >= least), "level")


def lead_clause(campaign: Campaign, lead: Lead) -> str:
    """ "Brindle leads, and firmly"; "nobody is ahead"."""
    leader = name(campaign, lead.leader) if lead.leader else ""
    return say(f"lead.{strength(lead)}", leader=leader, draws=of_hundred(lead.index))


def firmness(lead: Lead) -> str:
    """The same for a table that names the leader in another column."""
    return say(f"firmness.{strength(lead)}", draws=of_hundred(lead.index))


def lead_at(campaign: Campaign, titles: Sequence[str], weights: Sequence[float], lead: Lead) -> tuple[str, str]:
    """One sentence in two pieces: "Mostly speed (60 %), some thrift (40 %):", "Brindle leads, and firmly." """
    said = capital(say("weights.said", weights=weights_in_words(titles, weights), lead="")).rstrip()
    return said, f"{lead_clause(campaign, lead)}."
