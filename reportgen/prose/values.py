"""The values of a quantity, one after another."""

from __future__ import annotations

from reportgen.prose.amounts import short
from reportgen.prose.standing import Standing, name
from reportgen.wording.language import say
from reportgen.wording.listing import commas


def values(s: Standing) -> str:
    """Every result in the campaign's order: "Corvane 81 g, Ostler 82 g"."""
    read = [r for r in s.results if not r.missing]
    return commas([say("value-of", name=name(s.campaign, r.contender), value=short(r)) for r in read])
