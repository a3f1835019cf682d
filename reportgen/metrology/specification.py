"""What is known of an instrument: the figures its maker states, and what a calibration found.

Plain data without uncertainty of its own; `stated.py` and `calibration.py` make contributions of it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from reportgen.metrology.unit import Unit

Shared = Literal["offset", "gain", "both", "nothing"]


@dataclass(frozen=True)
class Size:
    """A plain number in a unit: what is stated about an instrument, itself without uncertainty."""

    value: float
    unit: Unit


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
