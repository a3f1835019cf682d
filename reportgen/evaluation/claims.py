"""What makers claim, and what a campaign demands, held against the results."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.addresses import as_id
from reportgen.campaign.declared import Amount, Campaign, Claim, Contender, Declared, Must
from reportgen.campaign.declared.contenders import first_word
from reportgen.evaluation.at_odds import at_odds
from reportgen.evaluation.claims_held import NOTHING, Bounds, NotThat, held_against
from reportgen.evaluation.evaluated import ClaimOutcome, Keys, MustOutcome
from reportgen.evaluation.told import QuantityTold
from reportgen.finding import Finding, Refused
from reportgen.judgement.claim import Conformance, Outcome
from reportgen.judgement.measured import Reason
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import Unit, convert, parse_unit


def claim_outcomes(
    declared: Declared, told: Sequence[QuantityTold], units: Mapping[str, Unit]
) -> tuple[ClaimOutcome, ...]:
    """Every claim of every contender, in their order. Raises `Refused` for bounds in a unit that doesn't fit."""
    outcomes: list[ClaimOutcome] = []
    findings: list[Finding] = []
    for contender in declared.campaign.contenders:
        odds = at_odds(contender.claims, [q for q, unit in units.items() if unit.kind == "difference"])
        for claim in contender.claims:
            place, of = declared.at(f"claim/{contender.id}/{claim.id}"), f"A claim of {contender.title}"
            try:
                found, keys = _weigh(declared.campaign, contender, claim, told, units)
            except UnitError as wrong:
                says = f"{of} about {claim.quantity}: {wrong.says}"
                findings.append(Finding("error", "unit", place, says, do=wrong.do))
                continue
            except NotThat as wrong:
                findings.append(Finding("error", wrong.rule, place, f"{of}: {wrong.says}", do=wrong.do))
                continue
            outcomes.append(
                ClaimOutcome(
                    contender.id,
                    claim.id,
                    claim.quantity,
                    found.outcome,
                    found.probability,
                    found.scope,
                    found.reason,
                    keys,
                    odds[claim.id],
                    found.accept,
                )
            )
    if findings:
        raise Refused(findings)
    return tuple(outcomes)


def must_outcomes(
    declared: Declared, told: Sequence[QuantityTold], units: Mapping[str, Unit]
) -> tuple[MustOutcome, ...]:
    """Each condition of the verdict for each contender. Raises `Refused` for a bound in a unit that doesn't fit."""
    plan = declared.campaign.verdict
    outcomes = []
    for must in plan.must if plan else ():
        try:
            claimed = _claimed(must, units[must.quantity])
        except UnitError as wrong:
            place, says = declared.at(f"verdict/must/{must.quantity}"), f"A condition on {must.quantity}: {wrong.says}"
            raise Refused([Finding("error", "unit", place, says, do=wrong.do)]) from None
        except NotThat as wrong:
            place, says = declared.at(f"verdict/must/{must.quantity}"), f"A condition on {must.quantity}: {wrong.says}"
            raise Refused([Finding("error", "condition-upside-down", place, says, do=wrong.do)]) from None
        for contender in declared.campaign.contenders:
            found, keys = held_against(must.quantity, contender.id, claimed, told)
            outcomes.append(MustOutcome(contender.id, must.quantity, found.outcome, found.probability, keys))
    return tuple(outcomes)


def _weigh(
    campaign: Campaign, contender: Contender, claim: Claim, told: Sequence[QuantityTold], units: Mapping[str, Unit]
) -> tuple[Conformance, Keys]:
    if claim.included:
        return _seen(contender.in_the_box[claim.included], "there", "missing", "in-the-box"), NOTHING
    if claim.looked:
        return _seen(claim.looked, "yes", "no", "looked"), NOTHING
    if not claim.testable:
        return Conformance("not tested", None, "", Reason("not-testable")), NOTHING
    if not claim.quantity:
        return Conformance("not tested", None, "", Reason("no-quantity")), NOTHING
    if claim.under and not tested_so(campaign, claim):
        return Conformance("not tested", None, "", Reason("other-condition")), NOTHING
    exact = claim.nominal is not None and claim.within is None  # no measurement is exact: nothing says how near is near
    if claim.quantity not in units or exact or all(a is None for a in (claim.at_most, claim.at_least, claim.nominal)):
        return Conformance("not tested", None, "", Reason("no-bound")), NOTHING
    return held_against(claim.quantity, contender.id, _claimed(claim, units[claim.quantity]), told, claim.part)


def tested_so(campaign: Campaign, claim: Claim) -> bool:
    """Whether the test was run under the condition that a claim names: the author says so, or what was held the same
    for all, in the campaign or in the quantity's test, is that very condition."""
    if claim.tested_so:
        return first_word(claim.tested_so) == "yes"
    test = next((t for t in campaign.tests if any(q.id == claim.quantity for q in t.quantities)), None)
    held = (*campaign.held_the_same, *(test.held_the_same if test else ()))
    return as_id(claim.under) in {as_id(h) for h in held}


def _seen(said: str, yes: str, no: str, code: str) -> Conformance:
    """What was seen of the one we bought: the first word decides, and other words leave it open."""
    first = first_word(said)
    outcome: Outcome = "supported" if first == yes else "contradicted" if first == no else "undecided"
    return Conformance(outcome, None, "this run", Reason(code))


def _claimed(bound: Claim | Must, unit: Unit) -> Bounds:
    """The bounds in the unit worked out: of a rise in temperature they are steps, not points on the scale."""
    rise = unit.kind == "difference"

    def size(amount: Amount | None) -> float | None:
        return convert(float(amount.value), parse_unit(amount.unit), unit, difference=rise) if amount else None

    nominal = bound.nominal if isinstance(bound, Claim) else None
    if nominal is None or not isinstance(bound, Claim):
        least, most = size(bound.at_least), size(bound.at_most)
        if least is not None and most is not None and least > most:
            rule = "claim-upside-down" if isinstance(bound, Claim) else "condition-upside-down"
            raise NotThat(rule, "`at least` lies above `at most`: nothing could meet that", "Exchange the two.")
        return least, most
    within = bound.within
    width = convert(float(within.value), parse_unit(within.unit), unit, difference=True) if within else 0.0
    middle = size(nominal) or 0.0
    return middle - width, middle + width
