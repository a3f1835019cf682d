"""Other prices of a contender in sentences: which price counts, and what the others would change."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Beaten, Evaluation, PriceOtherwise
from reportgen.evaluation.prices_otherwise import others_of
from reportgen.prose.cost import stretches
from reportgen.prose.money import price_dated
from reportgen.prose.out import missed, name_or_out, names_or_out
from reportgen.wording.language import say
from reportgen.wording.listing import and_list
from reportgen.wording.money import amount
from reportgen.wording.sentence import inside, paragraph, sentence


def other_price_lines(campaign: Campaign, evaluation: Evaluation) -> tuple[str, ...]:
    """Which of several prices counts, and a paragraph for each other price that would change something."""
    if not any(others_of(c) for c in campaign.contenders):
        return ()
    found = evaluation.verdict.prices_otherwise if evaluation.verdict else ()
    changes = tuple(_change(campaign, evaluation, p) for p in found)
    return (paragraph(say("money.paid-last"), "" if changes else say("money.otherwise.none")), *changes)


def _change(campaign: Campaign, evaluation: Evaluation, p: PriceOtherwise) -> str:
    who = name_or_out(campaign, evaluation, p.contender)
    said = [
        say(f"money.otherwise.{how}", name=who, others=names_or_out(campaign, evaluation, others))
        for how, others in (("dearer", p.dearer_than), ("cheaper", p.cheaper_than))
        if others
    ]
    for how, beaten in (("no-longer", p.no_longer), ("newly", p.newly)):
        said += list(_beaten(campaign, evaluation, how, beaten))
    told = say("money.otherwise.join").join(said or [say("money.otherwise.only-cost")])
    price = amount(p.at, p.price.currency)
    first = sentence(say("money.otherwise", price=price, dated=price_dated(p.price), changes=told))
    some_out = ".in" if any(missed(evaluation, c.id) for c in campaign.contenders) else ""
    costs = stretches(campaign, evaluation, p.cheapest)
    return paragraph(first, say(f"money.otherwise.cheapest{some_out}", cheapest=costs) if costs else "")


def _beaten(campaign: Campaign, evaluation: Evaluation, how: str, beaten: Sequence[Beaten]) -> Iterable[str]:
    """For each two of whom one beats the other, on what."""
    for worse, better in dict.fromkeys((b.worse, b.better) for b in beaten):
        on = [b.quantity for b in beaten if (b.worse, b.better) == (worse, better)]
        titles = [inside(campaign.quantity(q).title) if q else say("money.otherwise.overall") for q in on]
        yield say(
            f"money.otherwise.{how}",
            worse=name_or_out(campaign, evaluation, worse),
            better=name_or_out(campaign, evaluation, better),
            quantities=and_list(titles),
        )
