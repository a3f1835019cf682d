"""The order in which comparisons are listed."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.site.card import Card


def newest_first(cards: Iterable[Card]) -> list[Card]:
    """By date, the latest first; those without one last; then by title."""
    by_title = sorted(cards, key=lambda c: (c.title.casefold(), c.id))
    return sorted(by_title, key=lambda c: c.date.last if c.date else "", reverse=True)
