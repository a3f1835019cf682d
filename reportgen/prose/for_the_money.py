"""The contender that the author calls best for the money, held against prices and what is weighed."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation, ValueForMoney, Verdict
from reportgen.judgement.verdict.overall import Overall
from reportgen.prose.money import costs_beside, things_compared
from reportgen.prose.out import missed, out_by
from reportgen.prose.overall import against, is_firmly_above
from reportgen.prose.standing import name, names
from reportgen.wording.language import say
from reportgen.wording.of_hundred import of_hundred
from reportgen.wording.sentence import paragraph, sentence


def held_for_the_money(campaign: Campaign, evaluation: Evaluation, best: str) -> str:
    """Whether prices and readings bear out `best` as best for the money; "" where none is called so.

    Borne out: of all that aren't out nobody costs less, and it is firmly worth more than each. Contradicted: one that
    costs no more beats it. Between them it leans or stays open, as no price is weighed against merit.
    """
    verdict = evaluation.verdict
    if not best or verdict is None:
        return ""
    gaps = {"best": name(campaign, best)}
    if out := out_by(campaign, evaluation, best):
        return sentence(say("for.out", out=out, **gaps))
    own = next((v for v in verdict.value if v.contender == best), None)
    if own is None:
        return sentence(say("for.no-price", **gaps))
    left = [v for v in verdict.value if not missed(evaluation, v.contender)]
    rivals = [v for v in left if v.contender != best and v.currency == own.currency]
    if not rivals:
        return sentence(say("for.alone", currency=own.currency, **gaps))
    beaten = _beaten(campaign, evaluation, own, rivals)
    return beaten or _unbeaten(campaign, evaluation, verdict, own, rivals)


def _in(evaluation: Evaluation, campaign: Campaign) -> int:
    """How many contenders aren't out."""
    return sum(not missed(evaluation, c.id) for c in campaign.contenders)


def _beaten(campaign: Campaign, evaluation: Evaluation, own: ValueForMoney, rivals: Sequence[ValueForMoney]) -> str:
    """By whom it is beaten at no higher price, of those that aren't out; "" where by nobody."""
    rival = {v.contender for v in rivals}
    quantities = evaluation.verdict.value_quantities if evaluation.verdict else ()
    for by, key in ((own.on_verdict, ".overall"), (own.dominated_by, ".one" if len(quantities) == 1 else "")):
        better = tuple(c for c in by if c in rival)
        if better:
            costs = costs_beside(campaign, evaluation, own, better)
            gaps = {"best": name(campaign, own.contender), "costs": costs}
            gaps |= {} if key == ".overall" else {"things": things_compared(campaign, quantities)}
            return sentence(say(f"for.beaten{key}", **gaps))
    return ""


def _unbeaten(
    campaign: Campaign, evaluation: Evaluation, verdict: Verdict, own: ValueForMoney, rivals: Sequence[ValueForMoney]
) -> str:
    best, overall = own.contender, verdict.overall
    gaps = {"best": name(campaign, best)}
    weighed = overall.contenders if overall and best in overall.contenders else ()
    held = [v for v in rivals if v.contender in weighed]
    unheld = tuple(v.contender for v in rivals if v.contender not in weighed)
    still_in = _in(evaluation, campaign)
    among = ".in" if still_in < len(campaign.contenders) else ""
    if overall is None or not held:
        return paragraph(say(f"for.unbeaten{among}", **gaps), say("for.open"))
    said = [_beside(campaign, overall, own, v) for v in held]
    missing = say("for.not-weighed", names=names(campaign, unheld)) if unheld else ""
    cheapest = len(rivals) + 1 == still_in and not unheld and all(_no_dearer(own, v) for v in rivals)
    if cheapest and all(is_firmly_above(overall, best, v.contender) for v in held):
        end = say("for.borne-out", **gaps)
    elif cheapest and all(against(overall.index, best, v.contender) >= 0.5 for v in held):
        end = say("for.leans", **gaps)
    else:
        end = say("for.open")
    return paragraph(say(f"for.unbeaten.weighed{among}", **gaps), *said, missing, end)


def _beside(campaign: Campaign, overall: Overall, own: ValueForMoney, other: ValueForMoney) -> str:
    """What it costs beside another, and how often it is worth more."""
    key = "less" if _cheaper(own, other) else "more" if _cheaper(other, own) else "like"
    draws = of_hundred(against(overall.index, own.contender, other.contender))
    names_ = {"best": name(campaign, own.contender), "other": name(campaign, other.contender)}
    return say(f"for.{key}", draws=draws, **names_)


def _cheaper(one: ValueForMoney, other: ValueForMoney) -> bool:
    return one.high is not None and other.low is not None and one.high < other.low


def _no_dearer(one: ValueForMoney, other: ValueForMoney) -> bool:
    return one.high is not None and other.low is not None and one.high <= other.low
