"""What other prices of a contender would change: who is dearer, who is beaten at no higher price, who is cheapest."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Contender, Declared, Price
from reportgen.evaluation.evaluated import Beaten, CostOfUse, PriceOtherwise, ValueForMoney, Verdict
from reportgen.evaluation.money import price_of, value_for_money
from reportgen.evaluation.told import QuantityTold
from reportgen.judgement.money.break_even import Stretch, cheapest


def with_money(
    declared: Declared, told: Sequence[QuantityTold], verdict: Verdict, cost: CostOfUse | None
) -> Verdict:  # fmt: skip
    """The verdict with what using costs, who is cheapest of those that aren't out, and what other prices change."""
    out = {o.contender for o in verdict.conditions if o.outcome == "contradicted"}
    if cost is not None and out & {line.name for line in cost.lines}:
        cost = replace(cost, cheapest_in=cheapest_of(cost, out, {}))
    weighed = [q for q in told if q.quantity in {c.quantity for c in verdict.criteria}]
    found = []
    for contender in declared.campaign.contenders:
        for price in others_of(contender):
            for end in dict.fromkeys((price.low, price.high)):
                exact = replace(price, low=end, high=end)
                value = value_for_money(declared, weighed, verdict.overall, {contender.id: exact})
                change = _change(contender.id, price, float(end), verdict.value, value)
                change = replace(change, cheapest=_other_cheapest(cost, out, contender.id, exact))
                found += [change] if change.changes else []
    return replace(verdict, cost=cost, prices_otherwise=tuple(found))


def others_of(contender: Contender) -> tuple[Price, ...]:
    """Its prices besides the one that counts, in the same currency."""
    counts = price_of(contender)
    return tuple(p for p in contender.prices if counts and p is not counts and p.currency == counts.currency)


def cheapest_of(cost: CostOfUse, out: set[str], prices: Mapping[str, Price]) -> tuple[Stretch, ...]:
    """Over which stretch who of those that aren't out may be the cheapest, with `prices` in place of those that count;
    () where fewer than two have a line."""
    lines = [
        replace(line, price_low=float(prices[line.name].low), price_high=float(prices[line.name].high))
        if line.name in prices
        else line
        for line in cost.lines
        if line.name not in out
    ]
    return cheapest(lines, cost.slopes, (cost.low, cost.high)) if len(lines) > 1 else ()


def _other_cheapest(cost: CostOfUse | None, out: set[str], contender: str, price: Price) -> tuple[Stretch, ...]:
    """The stretches at another price where others may be the cheapest than now, or in another order; () else."""
    if cost is None or price.currency != cost.currency:
        return ()
    now, then = cheapest_of(cost, out, {}), cheapest_of(cost, out, {contender: price})
    return () if [s.may_be for s in now] == [s.may_be for s in then] else then


def _change(
    contender: str, price: Price, at: float, before: Sequence[ValueForMoney], after: Sequence[ValueForMoney]
) -> PriceOtherwise:
    now = {v.contender: v for v in before}
    own = now[contender]
    others = [v for v in before if v.contender != contender and v.currency == own.currency]
    dearer = tuple(v.contender for v in others if _no_dearer(own, v) and v.high is not None and at > v.high)
    cheaper = tuple(v.contender for v in others if _no_dearer(v, own) and v.low is not None and at < v.low)
    was, then = set(_beaten(before)), set(_beaten(after))
    return PriceOtherwise(
        contender, price, at, dearer, cheaper,
        tuple(b for b in _beaten(before) if b not in then), tuple(b for b in _beaten(after) if b not in was),
    )  # fmt: skip


def _no_dearer(one: ValueForMoney, other: ValueForMoney) -> bool:
    return one.high is not None and other.low is not None and one.high <= other.low


def _beaten(value: Sequence[ValueForMoney]) -> Iterable[Beaten]:
    for v in value:
        for quantity, by in v.on.items():
            yield from (Beaten(v.contender, better, quantity) for better in by)
        yield from (Beaten(v.contender, better, "") for better in v.on_verdict)
