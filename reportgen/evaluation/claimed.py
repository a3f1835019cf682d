"""What became of a maker's claim, and of a condition of the verdict, frozen."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from reportgen.evaluation.caveat import Keys
from reportgen.judgement.measured import Reason


@dataclass(frozen=True)
class ClaimOutcome:
    contender: str
    claim: str
    quantity: str
    outcome: Literal["supported", "contradicted", "undecided", "not tested"]
    probability: float | None
    scope: Literal["repeat", "this run", ""]
    reason: Reason
    rests_on: Keys
    at_odds: tuple[str, ...] = ()  # claims of this contender it can't be true beside; itself, where its sources differ
    accept: tuple[float | None, float | None] | None = None  # from where to where a value would count as shown


@dataclass(frozen=True)
class MustOutcome:
    contender: str
    quantity: str
    outcome: Literal["supported", "contradicted", "undecided", "not tested"]
    probability: float | None
    rests_on: Keys
