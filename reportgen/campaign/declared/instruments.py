"""Instruments, methods and constants: what campaigns share."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from reportgen.campaign.declared.amounts import Amount, Day
from reportgen.campaign.declared.pictures import Photo

ScatterRule = Literal["common", "own", "relative"]
OrderRule = Literal["rounds", "random", "as it came", ""]


@dataclass(frozen=True)
class Accuracy:
    """What the maker of an instrument states: ±(absolute + percent of reading + digits), or unknown.

    Half-widths of a uniform distribution (JCGM 100, 4.3.7). All None and `known` False: unknown.
    """

    known: bool
    absolute: Amount | None = None
    percent: Decimal | None = None
    digits: int | None = None
    text: str = "unknown"


@dataclass(frozen=True)
class Instrument:
    id: str
    title: str
    resolution: Amount | None = None
    low: Amount | None = None  # range
    high: Amount | None = None
    accuracy: Accuracy = Accuracy(known=False)
    by_hand: bool = False
    shared: Literal["offset", "gain", "both", "nothing"] = "both"
    model: str = ""
    serial: str = ""
    calibrated: Day | None = None
    calibrated_by: str = ""
    source: str = ""  # where its figures come from
    notes: str = ""
    frame_rate: Fraction | None = None  # frames a second, exact; readings in frames become seconds
    photo: Photo | None = None
    origin: str = ""  # the file it stands in, from the workspace, or "ready-made"


@dataclass(frozen=True)
class Repeatability:
    """Scatter of one pass, declared: standard deviation with its degrees of freedom (a guess has 8)."""

    sd: Amount
    degrees: int
    source: str


@dataclass(frozen=True)
class Method:
    id: str
    version: int
    title: str
    scatter: ScatterRule = "common"
    order: OrderRule = ""
    repeatability: Mapping[str, Repeatability] = field(default_factory=dict)  # quantity id → sd
    between_sessions: Amount | None = None
    chained: bool = False
    steps: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    cannot_tell: tuple[str, ...] = ()
    says: str = ""  # CommonMark
    changed: str = ""  # what this version changed
    origin: str = ""


@dataclass(frozen=True)
class Constant:
    id: str
    value: Amount
    within: Amount | None  # half-width, uniform; None: taken as exact
    u: Amount | None  # standard uncertainty, where that is what the source gives
    source: str
    origin: str = ""
