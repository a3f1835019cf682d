"""Price against one quantity, in words: who is beaten on it by whom, and who has no place in the picture."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign, Quantity
from reportgen.charts import money
from reportgen.charts.figure import Figure
from reportgen.charts.money import Offer
from reportgen.charts.telling import alternative, printed
from reportgen.charts.words import words
from reportgen.evaluation.evaluated import Evaluation
from reportgen.evaluation.money import price_of
from reportgen.prose.money import price_noted
from reportgen.prose.out import name_or_out, names_or_out, out_by
from reportgen.prose.standing import name
from reportgen.wording.language import say
from reportgen.wording.listing import commas
from reportgen.wording.sentence import in_a_row, inside


def figure(campaign: Campaign, evaluation: Evaluation) -> Figure | str:
    """The chart of prices, or why there is none.

    It tells of the quantity drawn and of nothing else: what the money buys over all that was compared is the table's.
    """
    quantity, shown = money.offers(campaign, evaluation)
    if quantity is None or len(shown) < 2:
        return words("absent.no-prices")
    if len({o.price.currency for o in shown}) > 1:
        return words("absent.currencies")
    title = words("money.title", what=inside(quantity.title))
    found = _found(campaign, evaluation, quantity, shown)
    told = [(name_or_out(campaign, evaluation, o.contender.id), commas((_price(o), printed(o.result)))) for o in shown]
    alt = alternative(title, found, told)
    table = tuple(
        (
            name_or_out(campaign, evaluation, o.contender.id),
            _price(o),
            printed(o.result),
            _by(campaign, evaluation, o),
        )
        for o in shown
    )
    headings = (words("contender"), words("price"), quantity.title, words("beaten"))
    met = {o.contender.id: words("alt.row", name=name, said=said) for o, (name, said) in zip(shown, told, strict=True)}
    picture, key = money.drawing(quantity, shown, met, alt), money.key(shown, _out(campaign, evaluation, shown))
    return Figure("money", picture.svg, alt, title, found, table, headings, key, explored=picture.explored)


def _found(campaign: Campaign, evaluation: Evaluation, quantity: Quantity, shown: Sequence[Offer]) -> str:
    what = inside(quantity.title)
    beaten = [
        words(
            "money.beaten",
            what=what,
            name=name_or_out(campaign, evaluation, o.contender.id),
            by=_by(campaign, evaluation, o),
        )
        for o in shown
        if o.beaten_by
    ]
    left = [*_not_drawn(campaign, evaluation, quantity, shown)]
    missing = [words("money.not-drawn", names=commas(left))] if left else []
    return in_a_row((*(beaten or [words("money.none-beaten", what=what)]), *missing))


def _price(offer: Offer) -> str:
    price = price_of(offer.contender)
    return price_noted(price) if price else ""


def _out(campaign: Campaign, evaluation: Evaluation, shown: Sequence[Offer]) -> tuple[str, ...]:
    """Who of those drawn is out, and by what."""
    found = {o.contender.id: out_by(campaign, evaluation, o.contender.id) for o in shown}
    return tuple(say("cost.chart.key.out", name=name(campaign, c), out=why) for c, why in found.items() if why)


def _by(campaign: Campaign, evaluation: Evaluation, offer: Offer) -> str:
    return names_or_out(campaign, evaluation, offer.beaten_by)


def _not_drawn(campaign: Campaign, evaluation: Evaluation, quantity: Quantity, shown: Sequence[Offer]) -> Sequence[str]:
    """Each contender without a mark, with the reason: no price, no value, or a value known from one side only."""
    drawn = {o.contender.id for o in shown}
    priced = {v.contender for v in evaluation.verdict.value} if evaluation.verdict else set()
    said = []
    for c in campaign.contenders:
        result = evaluation.of(quantity.id, c.id)
        if c.id not in drawn:
            why = words("money.no-price") if c.id not in priced else printed(result) if result else words("not read")
            said.append(words("money.not-drawn.of", name=c.title, why=why))
    return said
