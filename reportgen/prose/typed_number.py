"""Numbers as authors type them, and whether they agree with what was computed."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from reportgen.wording.number import exact

_NUMBER = re.compile(
    r"(?<![\w.,/:-])(?P<sign>[-\u2212+]?)(?P<whole>\d{1,3}(?:[\u00a0\u202f\u2009 ,]\d{3})+(?!\d)|\d+)"
    r"(?:[.,](?P<part>\d+))?(?![\d:]|[.,-]\d)"
)
_UNIT = re.compile(r"[\u00a0\u202f ]?(?P<unit>%|°?[A-Za-zµμΩ][\wµμΩ²³⁻¹·/^*-]*|[°Ω]\w?)")


@dataclass(frozen=True)
class TypedNumber:
    """A number in a text: as typed, its value and decimals, the word that follows it (a unit, or not), where it is."""

    text: str
    value: Decimal
    decimals: int
    unit: str
    start: int
    end: int


def typed_in(text: str) -> Iterator[TypedNumber]:
    """Every number of a text, in order. Dates, times of day, versions and parts of names are left out."""
    for found in _NUMBER.finditer(text):
        whole = re.sub(r"[^\d]", "", found["whole"])
        part = found["part"] or ""
        sign = "-" if found["sign"] in ("-", "\u2212") else ""
        after = _UNIT.match(text, found.end())
        end = after.end() if after else found.end()
        number = Decimal(f"{sign}{whole}.{part}" if part else f"{sign}{whole}")
        yield TypedNumber(
            text[found.start() : end], number, len(part), after["unit"] if after else "", found.start(), end
        )


def agrees(typed: TypedNumber, computed: float) -> bool:
    """Whether a computed number rounds to what was typed: they differ by no more than half its last digit."""
    return abs(exact(computed) - typed.value) * 2 <= Decimal(1).scaleb(-typed.decimals)
