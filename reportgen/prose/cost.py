"""What using costs, in sentences: what a use is, who is cheapest where, and who has no line."""

from __future__ import annotations

import re
from collections.abc import Sequence
from math import ceil, floor

from reportgen.addresses import as_id, quantity_anchor, test_page
from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import CostOfUse, Evaluation
from reportgen.judgement.money.break_even import CostLine, Stretch
from reportgen.prose.out import name_or_out
from reportgen.prose.standing import name
from reportgen.wording.count import whole
from reportgen.wording.interval import printed
from reportgen.wording.language import say
from reportgen.wording.lead import led
from reportgen.wording.listing import or_list, semicolons
from reportgen.wording.money import amount
from reportgen.wording.sentence import paragraph, sentence


def use_line(campaign: Campaign, cost: CostOfUse) -> str:
    """What one use is and what it costs; the quantities of its formula lead to where they are told."""
    test_of = {q.id: q.test for t in campaign.tests for q in t.quantities}

    def said(word: re.Match[str]) -> str:
        shown, id = word[0].replace("_", " "), as_id(word[0])
        place = f"{test_page(campaign.id, test_of[id])}#{quantity_anchor(id)}" if id in test_of else ""
        return led(shown, place)

    written = re.sub(r"[^\W\d]\w*", said, cost.formula)
    return sentence(say("cost.use", per=cost.per, formula=" ".join(written.replace("*", " × ").split())))


def cheapest_line(campaign: Campaign, evaluation: Evaluation, cost: CostOfUse) -> str:
    """Who is the cheapest over which stretch of the use, and of those that aren't out; "" where there are no two
    lines."""
    said = stretches(campaign, evaluation, cost.cheapest)
    of_the_rest = stretches(campaign, evaluation, cost.cheapest_in)
    return paragraph(said, say("cost.cheapest.in", cheapest=of_the_rest) if of_the_rest else "")


def stretches(campaign: Campaign, evaluation: Evaluation, found: Sequence[Stretch]) -> str:
    """Who may be the cheapest where, as a clause; "" for no stretch."""
    if len(found) == 1:
        (one,) = found
        gaps = {"from_": whole(floor(one.low)), "to": whole(ceil(one.high))}
        if len(one.may_be) == 1:
            return say("cost.cheapest", name=name_or_out(campaign, evaluation, one.may_be[0]), **gaps)
        return say("cost.cheapest.open", names=_any(campaign, evaluation, one), **gaps)
    return semicolons([_stretch(campaign, evaluation, s) for s in found])


def left_out_lines(campaign: Campaign, cost: CostOfUse) -> tuple[str, ...]:
    """Why some have no line, and what the others rest on."""
    said = [
        say(f"cost.left-out.{why}", names=name(campaign, c), currency=cost.currency)
        if why == "other-currency"
        else say(f"cost.left-out.{why}", names=name(campaign, c))
        for c, why in cost.left_out.items()
    ]
    said += [say("cost.once")] if cost.once else []
    said += [say("cost.parts-apart")] if cost.why else []
    return tuple(sentence(s) for s in said)


def of_one_use(line: CostLine, currency: str) -> str:
    """ "0.384 EUR (0.371 to 0.397)"."""
    return printed(line.cost, None, line.low, line.high, currency, line.limit)


def in_all(line: CostLine, uses: float, currency: str) -> str:
    """What so many uses cost with the price: from what to what, in the smallest coin."""
    low, high = line.total(uses)
    if line.limit == "above":
        return say("cost.from", low=amount(low, currency))
    if line.limit == "below":
        return say("cost.up-to", high=amount(high, currency))
    return say("cost.range", low=amount(low, like=currency), high=amount(high, currency))


def _stretch(campaign: Campaign, evaluation: Evaluation, s: Stretch) -> str:
    gaps = {"from_": whole(round(s.low)), "to": whole(round(s.high))}
    if len(s.may_be) == 1:
        return say("cost.stretch", name=name_or_out(campaign, evaluation, s.may_be[0]), **gaps)
    key = "cost.stretch.pair" if len(s.may_be) == 2 else "cost.stretch.open"
    return say(key, names=_any(campaign, evaluation, s), **gaps)


def _any(campaign: Campaign, evaluation: Evaluation, s: Stretch) -> str:
    return or_list([name_or_out(campaign, evaluation, c) for c in s.may_be])
