"""Criteria in sentences: whose value lies beyond what was called worst or best, and what isn't weighed."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign, Criterion
from reportgen.evaluation.anchors import beyond_anchors
from reportgen.evaluation.evaluated import Evaluation
from reportgen.prose.standing import names
from reportgen.wording.language import say, say_of
from reportgen.wording.sentence import inside, sentence


def criterion_lines(campaign: Campaign, evaluation: Evaluation, criterion: Criterion) -> tuple[str, ...]:
    """A sentence for each end that some values lie beyond, and why a criterion isn't weighed at all."""
    overall = evaluation.verdict.overall if evaluation.verdict else None
    if overall is None:
        return ()
    why = overall.left_out.get(criterion.quantity)
    if why:
        what = campaign.quantity(criterion.quantity).title
        return (sentence(say(f"criterion.left-out.{why}", quantity=what)),)
    found = beyond_anchors(evaluation, criterion, overall.past.get(criterion.quantity, ()))
    said = []
    for end in ("worst", "best"):
        who = [c for c, beyond in found if beyond == end]
        if who:
            what = inside(campaign.quantity(criterion.quantity).title)
            said.append(
                sentence(say_of(len(who), f"criterion.beyond.{end}", names=names(campaign, who), quantity=what))
            )
    return tuple(said)
