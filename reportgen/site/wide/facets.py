"""By what a reader may look for a comparison: kind of product, maker, year, method, what was measured, price."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal

from reportgen.site.card import Card, CardTest
from reportgen.wording.money import amount_noted


@dataclass(frozen=True)
class Value:
    """One thing to look for, and the cards that have it, each with those of its pages that are meant.

    `key` is the same wherever the same is meant; `title` is as the first card has it.
    """

    key: str
    title: str
    uses: tuple[tuple[Card, tuple[CardTest, ...]], ...]


@dataclass(frozen=True)
class Facet:
    """One way to look, and what there is to look for."""

    name: str  # kind, maker, year, method, measured, price
    values: tuple[Value, ...]


Had = tuple[str, str, CardTest | None]  # key, title, and the page that is meant


def facets_of(cards: Iterable[Card]) -> tuple[Facet, ...]:
    """Every way that leads somewhere, values in the order of the alphabet, years from the latest, prices from the
    lowest of each currency; `cards` in the order in which they are to be shown."""
    cards = tuple(cards)
    by_title = {
        "kind": (_kinds, lambda v: v.title.casefold()),
        "maker": (_makers, lambda v: v.title.casefold()),
        "year": (_years, lambda v: -int(v.key)),
        "method": (_methods, lambda v: v.title.casefold()),
        "measured": (_measured, lambda v: v.title.casefold()),
        "price": (_prices, None),
    }
    found = []
    for name, (had_by, order) in by_title.items():
        values = _grouped((card, had) for card in cards for had in had_by(card))
        found.append(Facet(name, tuple(sorted(values, key=order) if order else _by_price(values, cards))))
    return tuple(facet for facet in found if facet.values)


def key_of(text: str) -> str:
    """An author's words as a key: capitals and spaces aside."""
    return " ".join(text.casefold().split())


def years_of(card: Card) -> list[str]:
    """The years of its date."""
    if card.date is None or not card.date.first:
        return []
    return [str(year) for year in range(int(card.date.first[:4]), int(card.date.last[:4]) + 1)]


def _grouped(found: Iterable[tuple[Card, Had]]) -> list[Value]:
    titles: dict[str, str] = {}
    uses: dict[str, dict[str, tuple[Card, list[CardTest]]]] = {}
    for card, (key, title, page) in found:
        titles.setdefault(key, title)
        pages = uses.setdefault(key, {}).setdefault(card.id, (card, []))[1]
        if page is not None and page not in pages:
            pages.append(page)
    return [
        Value(key, title, tuple((card, tuple(pages)) for card, pages in uses[key].values()))
        for key, title in titles.items()
    ]


def _kinds(card: Card) -> Iterator[Had]:
    if card.kind:
        yield key_of(card.kind), card.kind, None


def _makers(card: Card) -> Iterator[Had]:
    for p in card.products:
        if p.maker:
            yield key_of(p.maker), p.maker, CardTest(p.id, p.title, p.sheet)


def _years(card: Card) -> Iterator[Had]:
    for year in years_of(card):
        yield year, year, None


def _methods(card: Card) -> Iterator[Had]:
    for use in card.methods:
        for test in use.tests:
            yield use.method.id, use.method.title, test


def _measured(card: Card) -> Iterator[Had]:
    for m in card.measured:
        if m.read:
            yield m.id, m.title, CardTest(m.id, m.title, m.address)


def _prices(card: Card) -> Iterator[Had]:
    for p in card.products:
        for price in p.prices:
            said = amount_noted(price.low, price.high, price.currency)
            yield price.text, said, CardTest(p.id, p.title, p.sheet)


def _by_price(values: Iterable[Value], cards: Iterable[Card]) -> list[Value]:
    """Currency after currency, from the lowest price."""
    worth: dict[str, tuple[str, Decimal, Decimal]] = {
        price.text: (price.currency, price.low, price.high) for c in cards for p in c.products for price in p.prices
    }
    return sorted(values, key=lambda v: worth[v.key])
