"""What makers claim, and what a campaign demands, held against the results."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import get_args

from reportgen.campaign.declared import Amount, Claim, Contender, Declared, Must
from reportgen.campaign.declared.contenders import first_word
from reportgen.evaluation.at_odds import at_odds
from reportgen.evaluation.evaluated import ClaimOutcome, Keys, MustOutcome
from reportgen.evaluation.told import QuantityTold
from reportgen.finding import Finding, Refused
from reportgen.judgement.claim import Conformance, Outcome, conformance
from reportgen.judgement.measured import Reason
from reportgen.metrology.errors import UnitError
from reportgen.metrology.formulas.near_nothing import Doubt
from reportgen.metrology.unit import Unit, convert, parse_unit

NOTHING: Keys = frozenset()
Bounds = tuple[float | None, float | None]  # at least, at most, in the quantity's unit


def claim_outcomes(
    declared: Declared, told: Sequence[QuantityTold], units: Mapping[str, Unit]
) -> tuple[ClaimOutcome, ...]:
    """Every claim of every contender, in their order. Raises `Refused` for bounds in a unit that doesn't fit."""
    outcomes: list[ClaimOutcome] = []
    findings: list[Finding] = []
    for contender in declared.campaign.contenders:
        odds = at_odds(contender.claims, [q for q, unit in units.items() if unit.kind == "difference"])
        for claim in contender.claims:
            try:
                found, keys = _weigh(contender, claim, told, units)
            except UnitError as wrong:
                place = declared.at(f"claim/{contender.id}/{claim.id}")
                says = f"A claim of {contender.title} about {claim.quantity}: {wrong.says}"
                findings.append(Finding("error", "unit", place, says, do=wrong.do))
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
        for contender in declared.campaign.contenders:
            found, keys = _held_against(must.quantity, contender.id, claimed, told)
            outcomes.append(MustOutcome(contender.id, must.quantity, found.outcome, found.probability, keys))
    return tuple(outcomes)


def _weigh(
    contender: Contender, claim: Claim, told: Sequence[QuantityTold], units: Mapping[str, Unit]
) -> tuple[Conformance, Keys]:
    if claim.included:
        return _seen(contender.in_the_box[claim.included], "there", "missing", "in-the-box"), NOTHING
    if claim.looked:
        return _seen(claim.looked, "yes", "no", "looked"), NOTHING
    if not claim.testable:
        return Conformance("not tested", None, "", Reason("not-testable")), NOTHING
    if not claim.quantity:
        return Conformance("not tested", None, "", Reason("no-quantity")), NOTHING
    if claim.under:
        return Conformance("not tested", None, "", Reason("other-condition")), NOTHING
    exact = claim.nominal is not None and claim.within is None  # no measurement is exact: nothing says how near is near
    if claim.quantity not in units or exact or all(a is None for a in (claim.at_most, claim.at_least, claim.nominal)):
        return Conformance("not tested", None, "", Reason("no-bound")), NOTHING
    return _held_against(claim.quantity, contender.id, _claimed(claim, units[claim.quantity]), told)


def _seen(said: str, yes: str, no: str, code: str) -> Conformance:
    """What was seen of the one we bought: the first word decides, and other words leave it open."""
    first = first_word(said)
    outcome: Outcome = "supported" if first == yes else "contradicted" if first == no else "undecided"
    return Conformance(outcome, None, "this run", Reason(code))


def _held_against(
    quantity: str, contender: str, claimed: Bounds, told: Sequence[QuantityTold]
) -> tuple[Conformance, Keys]:
    mine = [q for q in told if q.quantity == quantity]
    if len(mine) != 1:
        return Conformance("not tested", None, "", Reason("parts-apart")), NOTHING
    result = next(r for r in mine[0].results if r.contender == contender)
    measured = next((m for m in mine[0].measured if m.name == contender), None)
    if result.blocked:
        return Conformance("not tested", None, "", Reason("blocked")), result.rests_on
    if result.why_no_u in get_args(Doubt):
        return Conformance("not tested", None, "", Reason("no-interval")), result.rests_on
    if measured is None or mine[0].judged is None:
        return Conformance("not tested", None, "", Reason("no-result")), result.rests_on
    at_least, at_most = claimed
    single = mine[0].judged.singles[contender]
    return conformance(measured, single, at_least=at_least, at_most=at_most), result.rests_on


def _claimed(bound: Claim | Must, unit: Unit) -> Bounds:
    """The bounds in the unit worked out: of a rise in temperature they are steps, not points on the scale."""
    rise = unit.kind == "difference"

    def size(amount: Amount | None) -> float | None:
        return convert(float(amount.value), parse_unit(amount.unit), unit, difference=rise) if amount else None

    nominal = bound.nominal if isinstance(bound, Claim) else None
    if nominal is None or not isinstance(bound, Claim):
        return size(bound.at_least), size(bound.at_most)
    within = bound.within
    width = convert(float(within.value), parse_unit(within.unit), unit, difference=True) if within else 0.0
    middle = size(nominal) or 0.0
    return middle - width, middle + width
