"""Amounts of money as text."""

from __future__ import annotations

from decimal import Decimal

from reportgen.wording.language import say
from reportgen.wording.number import Number, as_written, fixed
from reportgen.wording.unit import joined

COINS = {"JPY": 0, "KRW": 0, "ISK": 0, "CLP": 0, "VND": 0, "KWD": 3, "BHD": 3, "TND": 3, "OMR": 3, "JOD": 3}
"""Decimals of currencies whose smallest part isn't a hundredth (ISO 4217, minor units; from memory)."""


def amount(value: Number, currency: str = "", like: str = "") -> str:
    """To the smallest part of the currency: "112.40 EUR"; `like`: the currency, where it isn't printed."""
    return joined(fixed(value, COINS.get(currency or like, 2)), currency)


def amount_noted(low: Decimal, high: Decimal, currency: str) -> str:
    """A price with the digits it was noted with: "89.00 EUR", "62 to 79 EUR"."""
    said = as_written(low) if low == high else say("interval.range", low=as_written(low), high=as_written(high))
    return joined(said, currency)
