"""Price against one quantity: who is dominated. No merit per price is formed; merit has no true zero."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.judgement.measured import Pair


def dominated(prices: Mapping[str, tuple[float, float]], pairs: Iterable[Pair]) -> Mapping[str, tuple[str, ...]]:
    """By name, those that dominate it: as cheap or cheaper, and resolved better.

    `prices` holds (low, high) of each priced contender, all in one currency; one price is a range of no width. Of two
    ranges, one is as cheap or cheaper only where its high end does not exceed the other's low end. Contenders without
    a price neither dominate nor are dominated. Names come in the order of `prices`.
    """
    found: dict[str, list[str]] = {name: [] for name in prices}
    for pair in pairs:
        if not pair.resolved or pair.favours is None:
            continue
        worse = pair.second if pair.favours == pair.first else pair.first
        if pair.favours in prices and worse in prices and prices[pair.favours][1] <= prices[worse][0]:
            found[worse].append(pair.favours)
    order = list(prices)
    return {name: tuple(sorted(by, key=order.index)) for name, by in found.items()}
