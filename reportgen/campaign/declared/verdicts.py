"""What the author's verdict rests on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from reportgen.campaign.declared.amounts import Amount
from reportgen.campaign.declared.deciding import WhenDecided


@dataclass(frozen=True)
class Must:
    quantity: str
    at_most: Amount | None = None
    at_least: Amount | None = None
    decided: WhenDecided | None = None


@dataclass(frozen=True)
class Criterion:
    quantity: str
    worst: Amount
    best: Amount
    weight: Decimal | None = None
    ratio: bool = False
    decided: WhenDecided | None = None


@dataclass(frozen=True)
class Group:
    id: str
    title: str
    weight: Decimal | None
    criteria: tuple[Criterion, ...]


@dataclass(frozen=True)
class WeSay:
    best: str = ""  # contender id
    best_for_the_money: str = ""
    because: tuple[str, ...] = ()  # quantity ids
    words: str = ""


@dataclass(frozen=True)
class Use:
    per: str
    cost: str  # a formula
    low: Decimal
    high: Decimal


@dataclass(frozen=True)
class VerdictPlan:
    must: tuple[Must, ...] = ()
    groups: tuple[Group, ...] = ()
    we_say: WeSay | None = None
    readers: Mapping[str, Mapping[str, Decimal]] = field(default_factory=dict)
    use: Use | None = None
    decided: WhenDecided | None = None  # what counts and how much
