"""What a contender is by the papers that came with it: maker, model, where bought, for how much."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.campaign.declared import Contender
from reportgen.pages.words import words
from reportgen.prose.box import found_in
from reportgen.prose.money import price_noted
from reportgen.prose.specimens import as_noted, where_and_when
from reportgen.wording.listing import or_list, with_aside


@dataclass(frozen=True)
class Fact:
    """A name and what there is to say to it."""

    name: str
    says: str


def identity_of(c: Contender) -> tuple[Fact, ...]:
    """Its facts in a fixed order, without those nobody noted; a price a line."""
    bought = where_and_when(c.bought_where, c.bought_on)
    told = [
        (words("fact.maker"), c.maker),
        (words("fact.model"), c.model),
        (words("fact.gtin"), c.gtin),
        (words("fact.called"), or_list(c.also_called)),
        (words("fact.bought"), bought),
        (words("fact.supplied"), c.supplied_by),
        (words("fact.box"), found_in(c)),
        (words("fact.firmware"), c.firmware),
        (words("fact.settings"), c.settings),
    ]
    for price in c.prices:
        when = where_and_when(price.where, price.date)
        aside = when if when != bought else ""  # what stands a line above isn't said again
        told.append((words(f"fact.{price.sort}"), with_aside(price_noted(price), aside)))
    return tuple(Fact(name, as_noted(says)) for name, says in told if says)
