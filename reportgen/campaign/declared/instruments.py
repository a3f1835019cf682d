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
UnfinishedRule = Literal["not ranked", "worst place"]


@dataclass(frozen=True)
class Accuracy:
    """What the maker of an instrument states: ±(absolute + percent of reading, of range + digits), or unknown.

    Half-widths of a uniform distribution (JCGM 100, 4.3.7). All None and `known` False: unknown; `known` True
    without a text: known by the calibration. A class is so many percent of the range (EN 837-1 for pressure gauges,
    IEC 60051 for pointer meters).
    """

    known: bool
    absolute: Amount | None = None
    percent: Decimal | None = None
    digits: int | None = None
    text: str = "unknown"
    of_range: Decimal | None = None


@dataclass(frozen=True)
class Repeats:
    """The standard deviation of an instrument's readings of one thing; `degrees` None where it is taken as known."""

    sd: Amount
    degrees: int | None


@dataclass(frozen=True)
class Calibration:
    """What a calibration found: `correction` is added to every reading, or what stands at each of `points`.

    Points are (reading, what is added there), joined by straight lines, or with `line` by one line fitted to all.
    `uncertainty` is that of the correction, `k` times the standard uncertainty. Parts of the reading have the unit
    `%` or `% of reading`.
    """

    reference: str = ""
    correction: Amount | None = None
    points: tuple[tuple[Amount, Amount], ...] = ()
    line: bool = False
    uncertainty: Amount | None = None
    k: Decimal = Decimal(1)
    degrees: int | None = None
    expires: Day | None = None

    @property
    def corrects(self) -> bool:
        """Whether anything is added to a reading."""
        return bool(self.points) or (self.correction is not None and self.correction.value != 0)


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
    calibration: Calibration | None = None  # its day and who did it are `calibrated` and `calibrated_by`
    drift: Amount | None = None  # at most in a year, either way
    repeatability: Repeats | None = None
    reaction: Amount | None = None  # half-width of the hand, where it is by hand; None: the usual
    clock: Amount | None = None  # how fast or slow at most, as a part of any time; None: nobody says
    formerly: tuple[str, ...] = ()  # ids it had before


@dataclass(frozen=True)
class Repeatability:
    """Scatter of one pass, declared: standard deviation with its degrees of freedom (a guess has 8)."""

    sd: Amount
    degrees: int
    source: str
    past: bool = False  # found from past campaigns, rather than written in the method


EVERY = "every quantity"


@dataclass(frozen=True)
class Method:
    """One version of a written procedure, with what it laid down before testing."""

    id: str
    version: int
    title: str
    scatter: ScatterRule = "common"
    order: OrderRule = ""
    repeatability: Mapping[str, Repeatability] = field(default_factory=dict)  # quantity id → sd
    between_sessions: Amount | None = None
    between_specimens: Amount | None = None
    chained: bool = False
    did_not_finish: UnfinishedRule = "not ranked"  # what becomes of a run that did not finish
    steps: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    cannot_tell: tuple[str, ...] = ()
    says: str = ""  # CommonMark
    changed: str = ""  # what this version changed
    origin: str = ""
    from_past: tuple[str, ...] = ()  # quantity ids whose repeatability past campaigns tell; EVERY for all others
    formerly: tuple[str, ...] = ()  # ids it had before

    def looks_back(self, quantity: str) -> bool:
        """Whether past campaigns by this version tell how far passes of a quantity scatter."""
        return quantity in self.from_past or (EVERY in self.from_past and quantity not in self.repeatability)


@dataclass(frozen=True)
class Constant:
    id: str
    value: Amount
    within: Amount | None  # half-width, uniform; None: taken as exact
    u: Amount | None  # k times its standard uncertainty, where that is what the source gives
    source: str
    origin: str = ""
    k: Decimal = Decimal(1)
    degrees: int | None = None  # of its uncertainty; None: taken as known
