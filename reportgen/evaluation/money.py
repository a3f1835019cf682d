"""Price against each criterion and against the weighed verdict: who is beaten at no higher price, by whom, on what."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.campaign.declared import Contender, Declared, Price
from reportgen.evaluation.evaluated import ValueForMoney
from reportgen.evaluation.told import QuantityTold
from reportgen.judgement.money.frontier import dominated, dominated_over_all
from reportgen.judgement.verdict.overall import Overall

Prices = Mapping[str, tuple[float, float]]


def price_of(contender: Contender) -> Price | None:
    """The price that counts: the latest paid, else the latest listed, as written last."""
    paid = [p for p in contender.prices if p.sort == "paid"]
    return next(reversed(paid or contender.prices), None)


def value_for_money(
    declared: Declared,
    told: Sequence[QuantityTold],
    overall: Overall | None = None,
    instead: Mapping[str, Price] | None = None,
) -> tuple[ValueForMoney, ...]:
    """Of every contender with a price, who costs no more and is resolved better: on each of the quantities `told`, on
    some and worse on none, and over all that is weighed. Prices of one currency alone are compared; those of `instead`
    stand in place of the ones that count."""
    prices = {c.id: p for c in declared.campaign.contenders if (p := price_of(c))}
    prices |= instead or {}
    pairs = [pair for q in told if q.judged for pair in q.judged.pairs]
    beaten = {
        (pair.second if pair.favours == pair.first else pair.first, pair.favours) for pair in pairs if pair.favours
    }

    def of(contender: str) -> ValueForMoney:
        price = prices[contender]
        same = {c: (float(p.low), float(p.high)) for c, p in prices.items() if p.currency == price.currency}
        better = dict.fromkeys(b for b in dominated(same, pairs)[contender] if (b, contender) not in beaten)
        on: dict[str, tuple[str, ...]] = {}
        for q in told:
            found = dominated(same, q.judged.pairs)[contender] if q.judged else ()
            on[q.quantity] = tuple(dict.fromkeys((*on.get(q.quantity, ()), *found)))
        # firm is what holds with and without the criteria that nobody repeated
        each = [dominated_over_all(same, i)[contender] for i in (overall.index, overall.index_known)] if overall else []
        whole = tuple(c for c in each[0] if c in each[1]) if each else ()
        low, high = float(price.low), float(price.high)
        return ValueForMoney(contender, price.text, low, high, price.currency, tuple(better), on, whole)

    return tuple(of(c) for c in prices)
