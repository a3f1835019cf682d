"""What pages take from prose, in one place: a finding, the answer, a comparison, an exclusion."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Comparison, Evaluation

STAND_IN: Mapping[str, str] = {}


def finding(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """What was found about a quantity, in one to three sentences."""
    return ""


def answer(campaign: Campaign, evaluation: Evaluation) -> str:
    """The answer to the campaign's question, in at most two sentences."""
    return ""


def how_firm(campaign: Campaign, evaluation: Evaluation) -> str:
    """On what the answer rests."""
    return ""


def means(campaign: Campaign, evaluation: Evaluation, c: Comparison) -> str:
    """What a comparison's decision means for its two contenders."""
    return ""


def exclusions(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> tuple[str, ...]:
    """Results with and without what was left out, a sentence each."""
    return ()
