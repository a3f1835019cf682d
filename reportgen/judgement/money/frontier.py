"""Price against one quantity or against the weighed verdict: who is dominated. No merit per price is formed; merit has
no true zero."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.judgement.measured import Pair
from reportgen.judgement.verdict.overall import FIRM_FROM, PairIndex

Prices = Mapping[str, tuple[float, float]]


def dominated(prices: Prices, pairs: Iterable[Pair]) -> Mapping[str, tuple[str, ...]]:
    """By name, those that dominate it: as cheap or cheaper, and resolved better.

    `prices` holds (low, high) of each priced contender, all in one currency; one price is a range of no width. Of two
    ranges, one is as cheap or cheaper only where its high end does not exceed the other's low end. Contenders without
    a price neither dominate nor are dominated. Names come in the order of `prices`.

    >>> from reportgen.judgement import Rules, from_passes, judge
    >>> found = judge([from_passes("cheap", 1.0, 1.1, 0.9), from_passes("dear", 9.0, 9.1, 8.9)], Rules("lower"))
    >>> dominated({"cheap": (60.0, 60.0), "dear": (60.0, 80.0)}, found.pairs)
    {'cheap': (), 'dear': ('cheap',)}
    """
    found: list[tuple[str, str]] = []
    for pair in pairs:
        if pair.resolved and pair.favours is not None:
            found.append((pair.favours, pair.second if pair.favours == pair.first else pair.first))
    return _by_those_no_dearer(prices, found)


def dominated_over_all(prices: Prices, index: Iterable[PairIndex]) -> Mapping[str, tuple[str, ...]]:
    """The same over all that a verdict weighs: worth more is a pairwise index of `FIRM_FROM` or more.

    >>> prices = {"a": (60.0, 60.0), "b": (80.0, 80.0), "c": (50.0, 65.0)}
    >>> index = [PairIndex("a", "b", 0.98), PairIndex("a", "c", 0.99), PairIndex("b", "c", 0.6)]
    >>> dominated_over_all(prices, index)["b"], dominated_over_all(prices, index)["c"]
    (('a',), ())
    """
    index = tuple(index)
    found = [(i.first, i.second) for i in index if i.index >= FIRM_FROM]
    found += [(i.second, i.first) for i in index if 1.0 - i.index >= FIRM_FROM]
    return _by_those_no_dearer(prices, found)


def _by_those_no_dearer(prices: Prices, beats: Iterable[tuple[str, str]]) -> Mapping[str, tuple[str, ...]]:
    """By name those that beat it and are as cheap or cheaper; `beats` holds (better, worse)."""
    found: dict[str, list[str]] = {name: [] for name in prices}
    for better, worse in beats:
        if better in prices and worse in prices and prices[better][1] <= prices[worse][0]:
            found[worse].append(better)
    order = list(prices)
    return {name: tuple(sorted(by, key=order.index)) for name, by in found.items()}
