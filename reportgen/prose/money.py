"""Prices in sentences: who is beaten at no higher price, over what that was asked, and what the table leaves out."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign, Contender, Price
from reportgen.evaluation.evaluated import Evaluation, ValueForMoney
from reportgen.evaluation.money import price_of
from reportgen.prose.out import missed, name_or_out, names_or_out
from reportgen.prose.standing import name, names, standing
from reportgen.wording.count import in_words
from reportgen.wording.day import day
from reportgen.wording.language import say, say_of
from reportgen.wording.lead import bare
from reportgen.wording.listing import and_list, commas
from reportgen.wording.money import amount_noted
from reportgen.wording.sentence import inside, paragraph, sentence

_LISTED = 4  # things named one by one; beyond these a count reads better


def currencies(value: Sequence[ValueForMoney]) -> tuple[str, ...]:
    """The currencies prices are given in, in their order."""
    return tuple(dict.fromkeys(v.currency for v in value))


def money_notes(campaign: Campaign, value: Sequence[ValueForMoney]) -> tuple[str, ...]:
    """A sentence for each thing the table of prices can't show."""
    used, priced = currencies(value), {v.contender for v in value}
    left = [c.id for c in campaign.contenders if c.id not in priced]
    several = [say("money.currencies", currencies=and_list(used))] if len(used) > 1 else []
    without = [say("money.no-price", names=names(campaign, left))] if left and priced else []
    return tuple(sentence(s) for s in (*several, *without))


def price_noted(price: Price) -> str:
    """The amount as it was noted: "62 to 79 EUR"."""
    return amount_noted(price.low, price.high, price.currency)


def price_dated(price: Price) -> str:
    """ "paid, 2 May 2026, by post": how and when a price stood."""
    when = day(price.date.first, price.date.last, price.date.text) if price.date else ""
    return commas([x for x in (say(f"money.{price.sort}"), when, price.where) if x])


def other_prices(contender: Contender) -> tuple[str, ...]:
    """Its further prices, each with how and when it stood."""
    counts = price_of(contender)
    return tuple(
        say("money.other-price", price=price_noted(price), dated=price_dated(price))
        for price in contender.prices
        if price is not counts
    )


def beaten_on(campaign: Campaign, value: ValueForMoney, quantity: str, evaluation: Evaluation | None = None) -> str:
    """By whom it is beaten on one quantity at no higher price, in a word or two."""
    by = value.on.get(quantity, ())
    if by:
        return say("money.on.beaten", names=names_or_out(campaign, evaluation, by))
    if evaluation is None:
        return say("money.on.unbeaten")
    if _uncompared(evaluation, value.contender, (quantity,)):
        return say("money.on.uncompared")
    return say("money.on.open" if _open(evaluation, value, quantity) else "money.on.unbeaten")


def _uncompared(evaluation: Evaluation, contender: str, quantities: Sequence[str]) -> bool:
    """Whether it has no result on these that may be ranked: none at all, or one that a caveat keeps out."""
    of = [r for r in evaluation.results if r.contender == contender and r.quantity in quantities]
    return bool(of) and all(r.missing or r.blocked for r in of)


def _open(evaluation: Evaluation, value: ValueForMoney, quantity: str) -> bool:
    """Whether some cost no more, and of none of them the readings can say who is ahead on a quantity."""
    among = evaluation.verdict.value if evaluation.verdict else ()
    rivals = {v.contender for v in among if v.currency == value.currency and _no_dearer(v, value)}
    pairs = [c for c in evaluation.comparisons if c.quantity == quantity and value.contender in (c.first, c.second)]
    met = [c for c in pairs if rivals & {c.first, c.second}]
    return bool(rivals) and all(c.decision == "not enough to say" for c in met)


def _no_dearer(one: ValueForMoney, other: ValueForMoney) -> bool:
    known = one.high is not None and other.low is not None
    return one.contender != other.contender and known and (one.high or 0.0) <= (other.low or 0.0)


def costs_beside(campaign: Campaign, evaluation: Evaluation | None, value: ValueForMoney, better: Sequence[str]) -> str:
    """That it costs more than those that beat it at no higher price, or as much as they do or more."""
    among = evaluation.verdict.value if evaluation and evaluation.verdict else ()
    highs = [v.high for v in among if v.contender in better]
    more = bool(highs) and all(h is not None and value.low is not None and value.low > h for h in highs)
    key = "money.costs-more" if more else "money.costs-no-less"
    return say(key, better=names_or_out(campaign, evaluation, better))


def all_round_line(campaign: Campaign, quantities: Sequence[str], value: Sequence[ValueForMoney]) -> str:
    """What beating all round means, where more than one thing was compared and somebody else has a price."""
    asked = len(quantities) > 1 and len(value) > 1
    return sentence(say("money.all-round", things=things_compared(campaign, quantities))) if asked else ""


def beaten_over_all(
    campaign: Campaign, value: Sequence[ValueForMoney], evaluation: Evaluation | None = None
) -> tuple[str, ...]:
    """A sentence for each that costs as much as another or more and is worth less over all that is weighed."""
    found = [v for v in value if v.on_verdict and len(v.on) > 1]  # of one thing alone its own line says so
    return tuple(
        sentence(
            say(
                "money.on-verdict",
                name=name_or_out(campaign, evaluation, v.contender),
                costs=costs_beside(campaign, evaluation, v, v.on_verdict),
            )
        )
        for v in found
    )


def money_line(
    campaign: Campaign, quantities: Sequence[str], value: ValueForMoney, evaluation: Evaluation | None = None
) -> str:
    """The sentences of `money_line_led` as plain words."""
    return bare(money_line_led(campaign, quantities, value, evaluation))


def money_line_led(
    campaign: Campaign, quantities: Sequence[str], value: ValueForMoney, evaluation: Evaluation | None = None
) -> str:
    """Whether someone else costs no more and is resolved better on something and worse on nothing; sentences.

    `quantities` are those it was asked of, and the sentence says so: all that was compared, or what the verdict weighs.
    With `evaluation` only those are named on which it was beaten, and where it is better outside them.
    """
    who = name_or_out(campaign, evaluation, value.contender)
    if not value.dominated_by:
        return paragraph(
            _unbeaten(campaign, quantities, value, evaluation),
            _no_better(campaign, value, evaluation),
            _cheapest_in(campaign, value, evaluation),
        )
    lost = _better_than(evaluation, value, False) if evaluation else ()
    beaten_on = tuple(q for q in quantities if q in lost)
    gaps = {"name": who, "things": things_compared(campaign, quantities)}
    gaps |= {"costs": costs_beside(campaign, evaluation, value, value.dominated_by)}
    gaps |= {"quantity": _titles(campaign, beaten_on or quantities, evaluation)}
    one = ".one" if len(quantities) == 1 else "" if beaten_on else ".some"
    return paragraph(say(f"money.dominated{one}", **gaps), _elsewhere(campaign, quantities, value, evaluation))


def _unbeaten(
    campaign: Campaign, quantities: Sequence[str], value: ValueForMoney, evaluation: Evaluation | None
) -> str:
    """That nobody who costs no more is shown to be better, and over what that was asked."""
    among = evaluation.verdict.value if evaluation and evaluation.verdict else ()
    others = [v for v in among if v.contender != value.contender and v.currency == value.currency]
    gaps = {"name": name_or_out(campaign, evaluation, value.contender), "currency": value.currency}
    gaps |= {"things": things_compared(campaign, quantities)}
    foreign = ".currency" if len(currencies(among)) > 1 else ""
    if among and not others:
        return say(f"money.alone{foreign}", **gaps)
    if others and value.high is not None and all(v.low is not None and v.low > value.high for v in others):
        return say(f"money.cheapest{foreign}", **gaps)
    if evaluation and _uncompared(evaluation, value.contender, quantities):
        return say_of(len(quantities), "money.uncompared", **gaps)
    return say_of(len(quantities), f"money.frontier{foreign}", **gaps)


def _no_better(campaign: Campaign, value: ValueForMoney, evaluation: Evaluation | None) -> str:
    """That it is shown to be better on nothing than any that costs less; "" where it is, or where none costs less."""
    among = evaluation.verdict.value if evaluation and evaluation.verdict else ()
    cheaper = {
        v.contender
        for v in among
        if v.currency == value.currency and v.high is not None and value.low is not None and v.high < value.low
    }
    pairs = [c for c in evaluation.comparisons if value.contender in (c.first, c.second)] if evaluation else []
    beside = [c for c in pairs if cheaper & {c.first, c.second}]
    better = any(c.favours == value.contender for c in beside)
    return say("money.no-better", name=name(campaign, value.contender)) if beside and not better else ""


def _cheapest_in(campaign: Campaign, value: ValueForMoney, evaluation: Evaluation | None) -> str:
    """That it costs least of those that aren't out, where one that costs less is out; "" else."""
    among = evaluation.verdict.value if evaluation and evaluation.verdict else ()
    others = [v for v in among if v.contender != value.contender and v.currency == value.currency]
    left = [v for v in others if not missed(evaluation, v.contender)]
    if missed(evaluation, value.contender) or not left or len(left) == len(others) or value.high is None:
        return ""
    high = value.high
    least_of = {True: left, False: others}
    cheapest = {k: all(v.low is not None and v.low > high for v in of) for k, of in least_of.items()}
    found = cheapest[True] and not cheapest[False]
    return say("money.cheapest-in", name=name(campaign, value.contender)) if found else ""


def things_compared(campaign: Campaign, quantities: Sequence[str]) -> str:
    """ "seven things compared"; where the author chose what the verdict weighs, those."""
    weighed = bool(campaign.verdict and campaign.verdict.groups)
    titles = _titles(campaign, quantities)
    if len(quantities) == 1:
        return say("money.thing.weighed" if weighed else "money.thing", quantity=titles)
    if not weighed:
        return say("money.things", count=in_words(len(quantities)))
    key = "money.things.weighed" if len(quantities) <= _LISTED else "money.things.weighed.many"
    return say(key, count=in_words(len(quantities)), quantities=titles)


def _elsewhere(
    campaign: Campaign, quantities: Sequence[str], value: ValueForMoney, evaluation: Evaluation | None
) -> str:
    """On what else it is shown to be better than those that beat it; "" where on nothing."""
    won = _better_than(evaluation, value, True) if evaluation else ()
    outside = [q for q in dict.fromkeys(won) if q not in quantities]
    if not outside:
        return ""
    gaps = {"name": name_or_out(campaign, evaluation, value.contender)}
    gaps |= {"better": names_or_out(campaign, evaluation, value.dominated_by)}
    key = "money.elsewhere" if len(value.dominated_by) == 1 else "money.elsewhere.some"
    return say(key, quantity=_titles(campaign, outside, evaluation), **gaps)


def _better_than(evaluation: Evaluation, value: ValueForMoney, own: bool) -> tuple[str, ...]:
    """The quantities on which it (`own`) or one of those that beat it is resolved better, in the campaign's order."""
    pairs = [{value.contender, d} for d in value.dominated_by]
    return tuple(
        c.quantity
        for c in evaluation.comparisons
        if {c.first, c.second} in pairs
        and c.favours is not None
        and (c.favours == value.contender) == own
        and c.resolved
    )


def _titles(campaign: Campaign, quantities: Sequence[str], evaluation: Evaluation | None = None) -> str:
    """Their titles in a list; with `evaluation` each leads to its pairs."""
    titles = {q: inside(campaign.quantity(q).title) for q in quantities}
    if evaluation is None:
        return and_list(list(titles.values()))
    return and_list([standing(campaign, evaluation, q).led(title) for q, title in titles.items()])
