"""Which campaigns used a method or an instrument, and in which tests."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from reportgen.addresses import from_to
from reportgen.prose.specimens import day_of
from reportgen.site.card import Card, CardTest
from reportgen.theme import Link


@dataclass(frozen=True)
class Use:
    """One campaign and those of its tests that are meant."""

    campaign: Link
    date: str
    tests: tuple[Link, ...]


def uses(page: str, found: Iterable[tuple[Card, tuple[CardTest, ...]]]) -> tuple[Use, ...]:
    """As the page at `page` shows them, in the order given."""
    return tuple(
        Use(
            Link(card.title, from_to(page, card.address)),
            day_of(card.date),
            tuple(Link(test.title, from_to(page, test.address)) for test in tests),
        )
        for card, tests in found
    )
