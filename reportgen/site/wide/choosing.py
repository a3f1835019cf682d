"""The choice among comparisons that the archive offers where scripts run: what can be chosen, and every sentence that
tells how many fit. The script puts nothing into words."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.site.card import Card
from reportgen.site.wide.facets import facets_of, key_of, years_of
from reportgen.site.words import words, words_of
from reportgen.wording.count import whole


@dataclass(frozen=True)
class Option:
    """What may be chosen: its key and what it says, with the number of comparisons that have it."""

    key: str
    says: str


@dataclass(frozen=True)
class Chooser:
    """One thing to choose by."""

    name: str
    title: str
    options: tuple[Option, ...]


@dataclass(frozen=True)
class Choosing:
    """`said` is JSON: for each number of comparisons that fit, from none on, the sentence that says so; `all` is the
    one for all of them. `currencies` are those of prices, none where no price is noted."""

    choosers: tuple[Chooser, ...]
    currencies: tuple[str, ...]
    said: str
    all: str


def choosing_among(cards: Sequence[Card]) -> Choosing | None:
    """The choice among these; None where there is nothing to choose."""
    facets = {facet.name: facet for facet in facets_of(cards)}
    currencies = sorted({price.currency for c in cards for p in c.products for price in p.prices})
    choosers = tuple(
        Chooser(
            name,
            words(f"choose.{name}"),
            tuple(Option(v.key, words("choose.option", title=v.title, n=whole(len(v.uses)))) for v in facet.values),
        )
        for name, facet in facets.items()
        if name != "price"
    )
    if len(cards) < 2 or not choosers:
        return None
    said = [_said(n, len(cards)) for n in range(len(cards) + 1)]
    return Choosing(choosers, tuple(currencies), _json(said), said[-1])


def found_by(card: Card) -> str:
    """By what a comparison is found, as JSON for the script; prices stand with the product and its maker, so that both
    chosen together mean one product."""
    return _json(
        {
            "kind": [key_of(card.kind)] if card.kind else [],
            "year": years_of(card),
            "method": sorted({use.method.id for use in card.methods if use.tests}),
            "measured": sorted({m.id for m in card.measured if m.read}),
            "products": [
                {"maker": key_of(p.maker), "prices": [[q.currency, str(q.low), str(q.high)] for q in p.prices]}
                for p in card.products
            ],
        }
    )


def _said(n: int, of: int) -> str:
    if n == of:
        return words_of(n, "choose.all", n=whole(n))
    if not n:
        return words("choose.none")
    return words_of(n, "choose.some", n=whole(n), of=whole(of))


def _json(of: object) -> str:
    return json.dumps(of, ensure_ascii=False, separators=(",", ":"))
