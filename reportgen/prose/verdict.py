"""The conditions of a verdict, in sentences."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign, Must
from reportgen.evaluation.evaluated import Evaluation, MustOutcome
from reportgen.prose import amounts
from reportgen.prose.claim import bound
from reportgen.prose.standing import name
from reportgen.wording.language import say
from reportgen.wording.sentence import inside, sentence


def must_line(campaign: Campaign, evaluation: Evaluation, outcome: MustOutcome) -> str:
    """A condition of the verdict and whether a contender meets it."""
    must = _must(campaign, outcome.quantity)
    result = evaluation.of(outcome.quantity, outcome.contender)
    unit, step = campaign.quantity(outcome.quantity).unit, bool(result and result.estimate and result.estimate.step)
    return sentence(
        say(
            f"must.{outcome.outcome}".replace(" ", "-"),
            name=name(campaign, outcome.contender),
            quantity=inside(campaign.quantity(outcome.quantity).title),
            bound=bound(must.at_most, must.at_least, unit=unit, step=step) if must else "",
            value=amounts.full(result) if result else say("reference.no-result"),
        )
    )


def _must(campaign: Campaign, quantity: str) -> Must | None:
    conditions = campaign.verdict.must if campaign.verdict else ()
    return next((m for m in conditions if m.quantity == quantity), None)
