"""What is known of an instrument: the figures its maker states, and what a calibration found.

Plain data without uncertainty of its own; `stated.py` and `calibration.py` make contributions of it. What no instrument
can have is refused where it is made: a size below nothing, points that don't rise, degrees of freedom below one.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.unit import Unit

Shared = Literal["offset", "gain", "both", "nothing"]


@dataclass(frozen=True)
class Size:
    """A plain number in a unit: what is stated about an instrument, itself without uncertainty."""

    value: float
    unit: Unit

    def __post_init__(self) -> None:
        if not math.isfinite(self.value):
            raise MetrologyError(f"a size of {self.value}", "write a number")


@dataclass(frozen=True)
class Relative:
    """A part of the reading, in percent of it."""

    percent: float


@dataclass(frozen=True)
class Points:
    """A table of corrections: at each reading `at`, which rise, what is added (`add`), both in `unit` (steps of it).

    `line`: one straight line is fitted to the points; else straight lines join them, and beyond the first and the last
    theirs holds.
    """

    unit: Unit
    at: tuple[float, ...]
    add: tuple[float, ...]
    line: bool = False

    def __post_init__(self) -> None:
        if not self.at or len(self.at) != len(self.add):
            says = f"a table of corrections with {len(self.at)} readings and {len(self.add)} corrections"
            raise MetrologyError(says, "give a correction for every reading")
        if not all(map(math.isfinite, (*self.at, *self.add))):
            raise MetrologyError("a table of corrections with something in it that is no number", "write numbers")
        if not all(low < high for low, high in pairwise(self.at)):
            raise MetrologyError("the readings of a table of corrections don't rise", "put them in order, each once")


@dataclass(frozen=True)
class Calibration:
    """What a calibration found. `correction` is added to every reading.

    `u` is its standard uncertainty, common to all readings, with the `degrees` of freedom it is known by. `drift` is
    how far at most the instrument may have moved in a year since, either way.
    """

    correction: Size | Relative | Points | None = None
    u: Size | Relative | None = None
    degrees: float = math.inf
    drift: Size | Relative | None = None

    def __post_init__(self) -> None:
        for what, size in (("an uncertainty", self.u), ("a drift", self.drift)):
            if size is not None:
                _not_below_nothing(what, size.percent if isinstance(size, Relative) else size.value)
        _one_degree(self.degrees)


@dataclass(frozen=True)
class Instrument:
    """What took a reading. Accuracy is ±(absolute + percent of the reading + percent of the range + digits·resolution).

    `percent` is in percent of the reading as shown, `of_range` in percent of what lies between `low` and `high`.
    `known` False: the accuracy is unknown, nothing is assumed and the caller says so. `shared` names which parts all
    readings of a session have in common. `repeatability` is the standard deviation of its readings of one and the same
    thing, with its degrees of freedom; `reaction` the half-width of the hand where it is `by_hand`, None for the usual.
    `clock` is how far at most its own clock may be fast or slow, as a part of any time; None where nobody says.
    """

    id: str
    resolution: Size | None = None
    low: Size | None = None
    high: Size | None = None
    absolute: Size | None = None
    percent: float | None = None
    digits: int | None = None
    known: bool = True
    by_hand: bool = False
    shared: Shared = "both"
    of_range: float | None = None
    repeatability: Size | None = None
    repeatability_degrees: float = math.inf
    reaction: Size | None = None
    calibration: Calibration | None = None
    clock: float | None = None

    def __post_init__(self) -> None:
        sizes = {"resolution": self.resolution, "accuracy": self.absolute, "repeatability": self.repeatability,
                 "reaction": self.reaction}  # fmt: skip
        parts = {"accuracy": self.percent, "accuracy of its range": self.of_range, "digits": self.digits,
                 "clock": self.clock}  # fmt: skip
        for what, size in sizes.items():
            if size is not None:
                _not_below_nothing(f"a {what} of {self.id}", size.value)
        for what, part in parts.items():
            if part is not None:
                _not_below_nothing(f"{what} of {self.id}", part)
        _one_degree(self.repeatability_degrees)


def _not_below_nothing(what: str, size: float) -> None:
    if not (math.isfinite(size) and size >= 0.0):
        raise MetrologyError(f"{what} of {size}", "write a size, nought or above")


def _one_degree(degrees: float) -> None:
    if not degrees >= 1.0:
        raise MetrologyError(
            f"{degrees} degrees of freedom: a size known so badly carries no uncertainty",
            "take a larger size that is known better",
        )
