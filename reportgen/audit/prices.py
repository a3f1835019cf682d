"""Rules on prices and what is sold: two that are one product, prices of nothing, of other days, in other money."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from itertools import combinations

from reportgen.addresses import as_id
from reportgen.audit.case import Case, Seen
from reportgen.campaign.declared import Contender, Price
from reportgen.evaluation.money import price_of
from reportgen.finding import Place

YEAR = 365  # days


def sold_as_one(case: Case) -> Iterable[Seen]:
    """Two contenders with one maker's name and one model."""
    for one, other in combinations(case.declared.campaign.contenders, 2):
        if one.maker and one.model and _sold_as(one) == _sold_as(other):
            says = f"{one.title} and {other.title} are both {one.maker} {one.model}. Are they two of one product?"
            yield Seen(case.declared.at(f"contender/{other.id}"), says, contender=other.id)


def _sold_as(c: Contender) -> tuple[str, str]:
    return as_id(c.maker), as_id(c.model)


def priced_at_nothing(case: Case) -> Iterable[Seen]:
    """A price of zero."""
    for c in case.declared.campaign.contenders:
        for n, price in enumerate(c.prices, 1):
            if not price.low:
                yield Seen(_at(case, c, n), f"{c.title} is {price.sort} at {price.text}.", contender=c.id)


def without_a_price(case: Case) -> Iterable[Seen]:
    """No price, where others have one or the cost of a use is asked for."""
    campaign = case.declared.campaign
    asked = campaign.verdict is not None and campaign.verdict.use is not None
    if not asked and not any(c.prices for c in campaign.contenders):
        return
    for c in campaign.contenders:
        if not c.prices:
            yield Seen(case.declared.at(f"contender/{c.id}"), f"No price is noted for {c.title}.", contender=c.id)


def priced_on_other_days(case: Case) -> Iterable[Seen]:
    """Prices that are compared, and stood more than a year apart."""
    dated = [(c, p, _days(p)) for c in case.declared.campaign.contenders if (p := price_of(c))]
    known = [(c, p, days) for c, p, days in dated if days is not None]
    if not known:
        return
    newest, latest, last = max(known, key=lambda one: one[2][1])
    for c, price, days in known:
        if price.currency == latest.currency and last[0] - days[1] > YEAR:
            said = (price.date.text if price.date else "", latest.date.text if latest.date else "")
            says = (
                f"The price of {c.title} is of {said[0]}, that of {newest.title} of {said[1]}: more than a year apart."
            )
            yield Seen(_at(case, c, c.prices.index(price) + 1), says, contender=c.id)


def use_in_other_money(case: Case) -> Iterable[Seen]:
    """A cost of a use in a currency that a price isn't in."""
    verdict = case.evaluation.verdict
    cost = verdict.cost if verdict else None
    others = [c for c, why in cost.left_out.items() if why == "other-currency"] if cost else []
    if cost and others:
        campaign = case.declared.campaign
        names = ", ".join(campaign.contender(c).title for c in others)
        says = f"A use is reckoned in {cost.currency}, and these have prices in other money: {names}."
        yield Seen(case.declared.at("verdict/use"), says)


def _days(price: Price) -> tuple[int, int] | None:
    """First and last day of a price, counted; None where none is noted."""
    if price.date is None or not price.date.first:
        return None
    first, last = (date.fromisoformat(d).toordinal() for d in (price.date.first, price.date.last or price.date.first))
    return first, last


def _at(case: Case, c: Contender, n: int) -> Place:
    """Where a contender's price stands, counted as in its `prices`; one in short form stands with the contender."""
    short = len(c.prices) - sum(key.startswith(f"price/{c.id}/") for key in case.declared.places)
    own = f"price/{c.id}/{n - short}"
    return case.declared.at(own) if own in case.declared.places else case.declared.at(f"contender/{c.id}")
