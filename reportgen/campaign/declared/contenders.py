"""Contenders: what was bought, what it cost, what its maker claims."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from reportgen.campaign.declared.amounts import Amount, Day
from reportgen.campaign.declared.remarks import Moment


@dataclass(frozen=True)
class Price:
    """One dated purchase or listing; `high` differs from `low` for a range. Amounts in `currency` (ISO 4217)."""

    low: Decimal
    high: Decimal
    currency: str
    sort: Literal["paid", "listed"]
    date: Day | None = None
    where: str = ""
    text: str = ""


@dataclass(frozen=True)
class Claim:
    """What the maker states. `says` maps a source to its words (one entry where there is one source)."""

    id: str  # c1, c2 … in the contender's order
    says: Mapping[str, str]
    quantity: str = ""  # id, "" where it names none
    at_most: Amount | None = None
    at_least: Amount | None = None
    nominal: Amount | None = None
    within: Amount | None = None  # tolerance of a nominal
    part: str = ""  # the part it is about, as typed
    under: str = ""  # the condition it is claimed under
    tested_so: str = ""  # whether the test was run under it: begins with yes or no, else what was held the same decides
    looked: str = ""  # settled by looking: "no, foam only"
    testable: bool = True
    included: str = ""  # an item of the box, whose being there answers the claim
    why: str = ""
    name: str = ""  # what its address ends with: a declared id, else its quantity, else the maker's first words


@dataclass(frozen=True)
class Specimen:
    """One unit of a contender, where several were bought; the id is what stands in the column `specimen`."""

    id: str
    serial: str = ""
    bought_where: str = ""
    bought_on: Day | None = None
    as_received: tuple[str, ...] = ()
    put_right: str = ""  # what was done about damage seen on arrival


@dataclass(frozen=True)
class Contender:
    """One product under test, as bought."""

    id: str
    title: str
    maker: str = ""
    model: str = ""
    bought_where: str = ""
    bought_on: Day | None = None
    supplied_by: str = ""  # "" bought at retail
    prices: tuple[Price, ...] = ()
    as_received: tuple[str, ...] = ()
    claims: tuple[Claim, ...] = ()
    also_called: tuple[str, ...] = ()
    facts: Mapping[str, str] = field(default_factory=dict)
    says: str = ""  # CommonMark
    specimens: tuple[Specimen, ...] = ()
    usual_specimen: str = ""  # the specimen of rows that name none
    in_the_box: Mapping[str, str] = field(default_factory=dict)  # item → "there", "missing" or the author's words
    photos: tuple[str, ...] = ()  # ids, on arrival
    film: Moment | None = None  # that shows its arrival
    firmware: str = ""
    settings: str = ""  # "as shipped", or what was changed
    put_right: str = ""  # what was done about damage seen on arrival
    gtin: str = ""  # the number under its bar code
    formerly: tuple[str, ...] = ()  # ids it had before

    @property
    def there(self) -> tuple[str, ...]:
        """Items of the box that were there."""
        return tuple(item for item, said in self.in_the_box.items() if first_word(said) == "there")

    @property
    def missing(self) -> tuple[str, ...]:
        """Items that the box should have held and didn't."""
        return tuple(item for item, said in self.in_the_box.items() if first_word(said) == "missing")


def first_word(said: str) -> str:
    """What decides where an author writes what was seen: `missing, and replaced by the shop` is missing."""
    return next(iter(re.findall(r"\w+", said.casefold())), "")
