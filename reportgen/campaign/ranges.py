"""Two numbers in one text: an instrument's range, a price or a price range, a number of uses."""

from __future__ import annotations

import dataclasses
import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from reportgen.campaign.declared import Amount
from reportgen.campaign.given import Given
from reportgen.campaign.scalar import AMOUNT, NUMBER, amount, number, weight
from reportgen.campaign.shape import NotThat, Scalar

_PLAIN = NUMBER.removeprefix("[-+−]?")


@dataclass(frozen=True)
class Span:
    """From `low` to `high`; None where it is open."""

    low: Amount | None
    high: Amount | None


def span(text: str) -> Span:
    """`0 g to 2000 g`, `0 to 2000 g`, `up to 130 dB`, `from 30 dB`. Raises NotThat."""
    said = text.strip()
    if said.startswith("up to "):
        return Span(None, amount(said.removeprefix("up to ")))
    if said.startswith("from ") and " to " not in said:
        return Span(amount(said.removeprefix("from ")), None)
    first, to, second = said.removeprefix("from ").partition(" to ")
    if not to:
        raise NotThat(f"“{said}” is not a range")
    low, high = amount(first), amount(second)
    if not low.unit:
        low = dataclasses.replace(low, unit=high.unit)
    if low.unit == high.unit and low.value >= high.value:
        raise NotThat(f"“{said}” ends before it begins", "Write the smaller value first.")
    return Span(low, high)


@dataclass(frozen=True)
class Money:
    """An amount or a range of a currency (ISO 4217)."""

    low: Decimal
    high: Decimal
    currency: str


def money(text: str) -> Money:
    """`89.00 EUR`, `90 to 120 USD`. Raises NotThat."""
    said = text.strip()
    found = re.fullmatch(rf"({_PLAIN})(?:\s*(?:to|–)\s*({_PLAIN}))?\s*([A-Z]{{3}})", said)
    if found is None:
        raise NotThat(f"“{said}” is not a price", "Write it like this: 89.00 EUR · 90 to 120 USD.")
    low, high = weight(found[1]), weight(found[2] or found[1])
    if high < low:
        raise NotThat(f"“{said}” ends below its beginning", "Write the lower price first.")
    return Money(low, high, found[3])


def times(text: str) -> tuple[Decimal, Decimal]:
    """`0 to 500`. Raises NotThat."""
    first, to, second = text.strip().partition(" to ")
    if not to:
        raise NotThat(f"“{text.strip()}” is not a range of numbers")
    low, high = number(first), number(second)
    if low < 0 or high <= low:
        raise NotThat(f"“{text.strip()}” does not go upward from 0 or more", "Write the smaller number first.")
    return low, high


RangeOf = Annotated[
    Given[Span],
    Scalar("a range", span, rf"^\s*(?:up to {AMOUNT}|from {AMOUNT}|(?:from )?{AMOUNT} to {AMOUNT})\s*$",
           Span(None, None), ("0 g to 2000 g", "up to 130 dB")),
]  # fmt: skip
MoneyOf = Annotated[
    Given[Money],
    Scalar("a price", money, rf"^\s*{_PLAIN}(?:\s*(?:to|–)\s*{_PLAIN})?\s*[A-Z]{{3}}\s*$",
           Money(Decimal(0), Decimal(0), ""), ("89.00 EUR", "90 to 120 USD")),
]  # fmt: skip
TimesOf = Annotated[
    Given[tuple[Decimal, Decimal]],
    Scalar("a range of numbers", times, rf"^\s*{_PLAIN} to\s+{_PLAIN}\s*$", (Decimal(0), Decimal(1)), ("0 to 500",)),
]  # fmt: skip
