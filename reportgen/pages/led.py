"""A sentence as a page sets it: words that say who is ahead lead to the pairs that are their reason."""

from __future__ import annotations

from reportgen.addresses import from_to
from reportgen.theme import Link
from reportgen.wording.lead import pieces


def led_on(page: str, text: str) -> tuple[Link, ...]:
    """The stretches of a led text as `page` shows them; `href` is "" where words lead nowhere."""
    return tuple(Link(p.text, from_to(page, p.to) if p.to else "") for p in pieces(text))
