"""A maker's claim against what was measured, always of the one we bought."""

from __future__ import annotations

from reportgen.campaign.declared import Amount, Campaign, Claim, Contender
from reportgen.evaluation.evaluated import ClaimOutcome, Evaluation, Result
from reportgen.prose import amounts
from reportgen.prose.box import item_found
from reportgen.wording.interval import probability
from reportgen.wording.language import say
from reportgen.wording.listing import commas
from reportgen.wording.reason import why_blocked
from reportgen.wording.sentence import capital, paragraph, sentence


def claim_line(campaign: Campaign, evaluation: Evaluation, outcome: ClaimOutcome) -> str:
    """The claim, its outcome for the one we bought, and the evidence; one or two sentences."""
    contender = campaign.contender(outcome.contender)
    claim = next(c for c in contender.claims if c.id == outcome.claim)
    key = f"claim.line.{outcome.outcome}".replace(" ", "-")
    said = say(key, says=claimed(claim))
    return paragraph(said, evidence(contender, claim, outcome, _result(evaluation, outcome)))


def claimed(claim: Claim) -> str:
    """The maker's words with where they stand: "“Boils a litre …” (printed on the box)"."""
    return commas([say("claim.says", says=words, source=source) if source else say("claim.quoted", says=words)
                   for source, words in claim.says.items()])  # fmt: skip


def evidence(contender: Contender, claim: Claim, outcome: ClaimOutcome, result: Result | None) -> str:
    """What the outcome rests on, or why there is none; where the maker contradicts itself, that comes first."""
    return paragraph(*_odds(contender, outcome), _evidence(contender, claim, outcome, result))


def _odds(contender: Contender, outcome: ClaimOutcome) -> list[str]:
    others = [c for c in contender.claims if c.id in outcome.at_odds and c.id != outcome.claim]
    said = []
    if outcome.claim in outcome.at_odds:
        own = next((c.says for c in contender.claims if c.id == outcome.claim), {})
        said = [say("claim.at-odds.itself.both" if len(own) == 2 else "claim.at-odds.itself")]
    return said + [say("claim.at-odds.other", says=claimed(other)) for other in others]


def _evidence(contender: Contender, claim: Claim, outcome: ClaimOutcome, result: Result | None) -> str:
    if claim.included:
        return say(f"claim.box.{outcome.outcome}", item=item_found(contender, claim.included))
    if claim.looked:
        return say("claim.looked", looked=claim.looked)
    if not claim.testable:
        return say("claim.untestable", why=capital(claim.why)) if claim.why else say("claim.untestable.plain")
    if not claim.quantity:
        return say("claim.no-quantity.why", why=capital(claim.why)) if claim.why else say("claim.no-quantity")
    if outcome.outcome == "not tested" and claim.under:
        if result is None or result.missing or result.blocked:
            return say("claim.under", under=claim.under)
        return say("claim.under.measured", under=claim.under, value=amounts.full(result))
    if result is None or result.missing:
        return say("claim.no-result")
    unit, step = (result.estimate.unit, result.estimate.step) if result.estimate else ("", False)
    bounds = (claim.at_most, claim.at_least, claim.nominal, claim.within)
    gaps = {"value": amounts.full(result), "bound": bound(*bounds, unit=unit, step=step)}
    if not gaps["bound"]:
        return say("claim.no-bound", value=gaps["value"])
    if result.blocked and outcome.outcome == "not tested":
        return say("claim.blocked", why=why_blocked(result.blocked).rstrip("."))
    if outcome.outcome == "not tested" and claim.nominal is not None and claim.within is None:
        return say("claim.exact", **gaps)
    if outcome.probability is None:
        return say("claim.evidence", **gaps)
    key = "claim.evidence.p.this-run" if outcome.scope == "this run" else "claim.evidence.p"
    found = say(key, probability=probability(outcome.probability), **gaps)
    unknown = result.estimate is not None and bool(result.estimate.unknown_accuracy)
    if result.laboratory and result.laboratory.uncertainty is None:
        return say("claim.evidence.laboratory", found=found)
    return say("claim.evidence.unknown-accuracy", found=found) if unknown else found


def bound(
    at_most: Amount | None,
    at_least: Amount | None,
    nominal: Amount | None = None,
    within: Amount | None = None,
    *,
    unit: str = "",
    step: bool = False,
) -> str:
    """A claim's or condition's bound: "at most 4 min (240 s)", "at least 2 h", "6 kW ± 0.5 kW".

    `unit` is the result's: a bound in another unit is given in both, so that the two can be compared by eye; `step`
    says that the result is a step on a scale.
    """

    def put(amount: Amount) -> str:
        return amounts.in_both(amount, unit, step=step)

    if at_least is not None and at_most is not None:
        return say("claim.bound.both", low=put(at_least), high=put(at_most))
    if at_most is not None:
        return say("claim.bound.at-most", amount=put(at_most))
    if at_least is not None:
        return say("claim.bound.at-least", amount=put(at_least))
    if nominal is None:
        return ""
    if within is None:
        return put(nominal)
    return say("claim.bound.within", amount=put(nominal), within=amounts.typed(within))


def claim_in_short(claim: Claim) -> str:
    """The bound a claim sets, as a sentence fragment with a capital; empty where it sets none."""
    return sentence(bound(claim.at_most, claim.at_least, claim.nominal, claim.within)).rstrip(".")


def _result(evaluation: Evaluation, outcome: ClaimOutcome) -> Result | None:
    return evaluation.of(outcome.quantity, outcome.contender)
