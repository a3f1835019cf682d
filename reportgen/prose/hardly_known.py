"""Whose result is hardly known at all, in a sentence under the table."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation
from reportgen.evaluation.hardly_known import hardly_known
from reportgen.prose.standing import names, standing
from reportgen.wording.language import say_of
from reportgen.wording.sentence import paragraph


def hardly_known_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """Those whose uncertainty is larger than their value, and those of which little more than the side is known."""
    results = standing(campaign, evaluation, quantity, part).results
    neither = [r.contender for r in results if hardly_known(r) == "not even the side"]
    side = [r.contender for r in results if hardly_known(r) == "side alone"]
    return paragraph(
        say_of(len(neither), "hardly-known.nothing", names=names(campaign, neither)) if neither else "",
        say_of(len(side), "hardly-known.side", names=names(campaign, side)) if side else "",
    )
