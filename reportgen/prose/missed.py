"""Who misses a condition of the verdict, beside an answer that may name it first on something else."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation
from reportgen.prose.claim import bound
from reportgen.prose.standing import names
from reportgen.wording.language import say_of
from reportgen.wording.sentence import inside, paragraph


def missed(campaign: Campaign, evaluation: Evaluation, contender: str = "") -> str:
    """A sentence for each condition that somebody (or `contender`) is shown to miss; "" where nobody is."""
    musts = campaign.verdict.must if campaign.verdict else ()
    outcomes = evaluation.verdict.conditions if evaluation.verdict else ()
    said = []
    for must in musts:
        out = {o.contender for o in outcomes if o.quantity == must.quantity and o.outcome == "contradicted"}
        who = tuple(c.id for c in campaign.contenders if c.id in out and contender in ("", c.id))
        if who:
            quantity = campaign.quantity(must.quantity)
            gaps = {"names": names(campaign, who), "quantity": inside(quantity.title)}
            said.append(say_of(len(who), "firm.missed", bound=bound(must.at_most, must.at_least), **gaps))
    return paragraph(*said)
