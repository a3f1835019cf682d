"""A share of draws, as so many of a hundred."""

from __future__ import annotations

from decimal import Decimal

from reportgen.wording import number
from reportgen.wording.language import say


def of_hundred(share: float) -> str:
    """ "97 of 100"; what is nearer to all or none than one in a hundred is never called all or none.

    0.975, from which a lead is firm, reads 98, and what lies below it 97 at most.
    """
    exact = number.exact(share)
    if exact > Decimal("0.99"):
        return say("of-hundred.over")
    if exact < Decimal("0.01"):
        return say("of-hundred.under")
    return say("of-hundred", n=number.fixed(exact * 100, 0))


def least_of_hundred(share: float) -> str:
    """The same of the least among several shares: "98 or more of 100", "over 99 of 100"."""
    over = number.exact(share) > Decimal("0.99")
    return of_hundred(share) if over else say("of-hundred.least", n=number.fixed(number.exact(share) * 100, 0))
