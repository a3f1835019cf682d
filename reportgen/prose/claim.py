"""A maker's claim against what was measured, always of the one we bought."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial

from reportgen.addresses import part_called
from reportgen.campaign.declared import Amount, Campaign, Claim, Contender
from reportgen.evaluation.evaluated import ClaimOutcome, Evaluation, Result
from reportgen.prose import amounts
from reportgen.prose.box import item_found
from reportgen.wording.count import in_words
from reportgen.wording.decision import outcome as outcome_in_a_word
from reportgen.wording.interval import probability
from reportgen.wording.language import say
from reportgen.wording.limit import at_the_limit, share
from reportgen.wording.listing import and_list, commas
from reportgen.wording.reason import why_blocked
from reportgen.wording.sentence import capital, paragraph, sentence

SHORT = 2  # things held the same that a claim's line names; more stand on the page by themselves


def claim_line(campaign: Campaign, evaluation: Evaluation, outcome: ClaimOutcome) -> str:
    """The claim, its outcome for the one we bought, and the evidence; one or two sentences."""
    contender = campaign.contender(outcome.contender)
    claim = next(c for c in contender.claims if c.id == outcome.claim)
    result = result_for(evaluation, outcome, claim)
    key, count = f"claim.line.{outcome.outcome}".replace(" ", "-"), _specimens(result)
    if outcome.outcome == "not tested":
        said = say(key, says=claimed(claim))
    else:
        several = {"count": in_words(count)} if count > 1 else {}
        of = f"{'.several' if several else ''}{_tested(contender, count)}"
        said = _reach(claim, outcome, say(f"{key}{of}", says=claimed(claim), **several))
    return paragraph(said, evidence(campaign, contender, claim, outcome, result))


def outcome_line(contender: Contender, claim: Claim, outcome: ClaimOutcome, result: Result | None) -> str:
    """The outcome, and how far it reaches: "supported for the one we bought, as we tested it", "not tested"."""
    word = outcome_in_a_word(outcome.outcome)
    if outcome.outcome == "not tested":
        return word
    count = _specimens(result)
    tested = _tested(contender, count)
    if count > 1:
        return _reach(claim, outcome, say(f"claim.of.several{tested}", outcome=word, count=in_words(count)))
    return _reach(claim, outcome, say(f"claim.of{tested or '.one'}", outcome=word))


def _tested(contender: Contender, count: int) -> str:
    """Of which words that say "the one we bought" have to say "the one we tested": of what was supplied, and where more
    were bought than this rests on."""
    return ".tested" if contender.supplied_by or count < len(contender.specimens) else ""


def _reach(claim: Claim, outcome: ClaimOutcome, said: str) -> str:
    """Under our conditions, unless they are those of the claim; in this run alone where no repeat is known. What was
    in the box or was looked at needs neither."""
    if claim.included or claim.looked or not outcome.scope or (outcome.scope == "repeat" and claim.under):
        return said
    return say(f"claim.reach.{outcome.scope.replace(' ', '-')}", said=said)


def claimed(claim: Claim) -> str:
    """The maker's words with where they stand: "“Boils a litre …” (printed on the box)"."""
    return commas([say("claim.says", says=words, source=source) if source else say("claim.quoted", says=words)
                   for source, words in claim.says.items()])  # fmt: skip


def evidence(
    campaign: Campaign, contender: Contender, claim: Claim, outcome: ClaimOutcome, result: Result | None
) -> str:
    """What the outcome rests on, or why there is none; where the maker contradicts itself, that comes first."""
    so = claim.under and outcome.outcome != "not tested"
    under = [say("claim.tested-so", under=claim.under)] if so else []
    found = _evidence(campaign, contender, claim, outcome, result)
    return paragraph(*_odds(contender, claim, outcome), *under, found, would_show(outcome, result))


def would_show(outcome: ClaimOutcome, result: Result | None) -> str:
    """Of a claim that isn't shown, what would have had to be measured for that; "" of others."""
    if outcome.outcome not in ("undecided", "contradicted") or outcome.probability is None or result is None:
        return ""
    if outcome.reason.code != "conforms" or result.estimate is None:
        return ""
    if outcome.accept is None:
        return say("claim.too-narrow") if {"at_least", "at_most"} <= outcome.reason.numbers.keys() else ""
    low, high = outcome.accept
    put = partial(at_the_limit, u=result.u, unit=result.estimate.unit)
    if low is not None and high is not None:
        return say("claim.would-show.range", low=put(low, side="least"), high=put(high, side="most"))
    if high is not None:
        return say("claim.would-show.at-most", amount=put(high, side="most"))
    return say("claim.would-show.at-least", amount=put(low, side="least")) if low is not None else ""


def _specimens(result: Result | None) -> int:
    return len({p.specimen for p in result.by_pass if not p.excluded}) if result else 0


def _odds(contender: Contender, claim: Claim, outcome: ClaimOutcome) -> list[str]:
    """That the maker contradicts itself; where one claim does, which of its figures the outcome is about."""
    others = [c for c in contender.claims if c.id in outcome.at_odds and c.id != outcome.claim]
    said = []
    if outcome.claim in outcome.at_odds:
        said = [say("claim.at-odds.itself.both" if len(claim.says) == 2 else "claim.at-odds.itself")]
        held = bound(claim.at_most, claim.at_least, claim.nominal, claim.within)
        said += [say("claim.at-odds.held", bound=held)] if held and outcome.outcome != "not tested" else []
    return said + [say("claim.at-odds.other", says=claimed(other)) for other in others]


def _evidence(
    campaign: Campaign, contender: Contender, claim: Claim, outcome: ClaimOutcome, result: Result | None
) -> str:
    if claim.included:
        return say(f"claim.box.{outcome.outcome}", item=item_found(contender, claim.included))
    if claim.looked:
        return say("claim.looked", looked=claim.looked)
    if not claim.testable:
        return say("claim.untestable", why=capital(claim.why)) if claim.why else say("claim.untestable.plain")
    if not claim.quantity:
        return say("claim.no-quantity.why", why=capital(claim.why)) if claim.why else say("claim.no-quantity")
    if outcome.reason.code == "other-condition":
        if result is None or result.missing or result.blocked:
            return say("claim.under", under=claim.under)
        ours = _ours(campaign, claim)
        key = "claim.under.measured.ours" if ours else "claim.under.measured"
        return say(key, under=claim.under, value=amounts.full(result), **({"ours": ours} if ours else {}))
    if result is None or result.missing:
        return say("claim.no-result")
    unit, step = (result.estimate.unit, result.estimate.step) if result.estimate else ("", False)
    bounds = (claim.at_most, claim.at_least, claim.nominal, claim.within)
    gaps = {"value": amounts.full(result), "bound": bound(*bounds, unit=unit, step=step)}
    if not gaps["bound"]:
        return say("claim.no-bound", value=gaps["value"])
    if outcome.reason.code in ("counted-share", "counted-events", "no-number"):
        return _counted(outcome, gaps)
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


def _counted(outcome: ClaimOutcome, gaps: Mapping[str, str]) -> str:
    """What was counted, and how much it leaves open."""
    code, numbers = outcome.reason.code, outcome.reason.numbers
    if code == "no-number":
        return say("claim.no-number", **gaps)
    if code == "counted-events":
        upper = at_the_limit(numbers["upper"], numbers["upper"] / 10, "", "least")
        found = say("claim.counted", **gaps)
        return paragraph(found, say("claim.none-counted", upper=upper)) if not numbers["events"] else found
    low, high = share(numbers["lower"], "down"), share(numbers["upper"], "up")
    said = say("claim.share", **gaps)
    if numbers["yes"] == numbers["of"]:
        never = numbers.get("at_least") == 1.0
        return paragraph(said, say("claim.share.all", low=low), say("claim.share.never") if never else "")
    if not numbers["yes"]:
        return paragraph(said, say("claim.share.none", high=high))
    return paragraph(said, say("claim.share.between", low=low, high=high))


def _ours(campaign: Campaign, claim: Claim) -> str:
    """Under which condition it was tested, in the author's words; else what was held the same, where that is short."""
    _, _, said = claim.tested_so.partition(",")
    if said.strip():
        return said.strip().rstrip(".")
    held = campaign.held_the_same
    return and_list([h.rstrip(".") for h in held]) if 0 < len(held) <= SHORT else ""


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


def result_for(evaluation: Evaluation, outcome: ClaimOutcome, claim: Claim) -> Result | None:
    """The result that a claim is about: the whole, or the part that it names."""
    if not claim.part:
        return evaluation.of(outcome.quantity, outcome.contender)
    of = [r for r in evaluation.results if (r.quantity, r.contender) == (outcome.quantity, outcome.contender)]
    asked = part_called(claim.part, (r.part for r in of))
    return next((r for r in of if r.part == asked), None)
