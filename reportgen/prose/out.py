"""Who is out by a condition of the verdict, said wherever it stands beside prices."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation
from reportgen.prose.standing import name
from reportgen.wording.language import say
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import inside


def missed(evaluation: Evaluation | None, contender: str) -> tuple[str, ...]:
    """The quantities of the conditions that a contender is shown not to meet; () where it isn't out."""
    conditions = evaluation.verdict.conditions if evaluation and evaluation.verdict else ()
    return tuple(o.quantity for o in conditions if (o.contender, o.outcome) == (contender, "contradicted"))


def out_by(campaign: Campaign, evaluation: Evaluation | None, contender: str) -> str:
    """ "out: carbon monoxide"; "" where it isn't out."""
    found = missed(evaluation, contender)
    titles = [inside(campaign.quantity(q).title) for q in found]
    return say("out.by", quantities=and_list(titles)) if found else ""


def name_or_out(campaign: Campaign, evaluation: Evaluation | None, contender: str) -> str:
    """ "Brindle (out: carbon monoxide)"; the bare name of one that isn't out."""
    out = out_by(campaign, evaluation, contender)
    return say("out.named", name=name(campaign, contender), out=out) if out else name(campaign, contender)


def names_or_out(campaign: Campaign, evaluation: Evaluation | None, contenders: Sequence[str]) -> str:
    """The same of several, as a list in a sentence."""
    return and_list([name_or_out(campaign, evaluation, c) for c in contenders])
