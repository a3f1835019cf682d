"""The kinds of measurement: what each writes, expects, and can get wrong. One table for all who need it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import get_args

from reportgen.addresses import in_formula
from reportgen.campaign.declared import Kind


@dataclass(frozen=True)
class KindOf:
    """A ready-made measurement of one quantity X.

    `columns` are the endings of the headings it reads ("" for X itself); `formula` holds `{x}` where the name
    goes. `needs_unit`: there is no result without one; `usual_unit` and `instrument` (an id of a ready-made one,
    "" for none) are what a new campaign is offered. `numeric` False: readings are words. `ranked` False: results
    are shown and not yet ranked. `beware` is one sentence about what goes wrong with it. `read_alike` False: its
    readings are in another unit than it, that of their instrument where nobody says.
    """

    formula: str
    columns: tuple[str, ...]
    needs_unit: bool
    usual_unit: str
    instrument: str
    ranked: bool
    numeric: bool
    means: str
    beware: str
    read_alike: bool = True

    def headings(self, label: str) -> tuple[str, ...]:
        """The headings it expects for a quantity of this name: `gas burned before`, `gas burned after`."""
        return tuple(f"{label} {ending}".strip() for ending in self.columns)

    def writes(self, label: str) -> str:
        """The formula it writes for a quantity of this name."""
        return self.formula.format(x=in_formula(label))


KINDS: Mapping[Kind, KindOf] = {
    "one reading": KindOf(
        "{x}", ("",), False, "", "", True, True,
        "One value read off an instrument.",
        "A single reading says nothing about how far a second one would differ; repeat it, or declare a repeatability.",
    ),
    "timed": KindOf(
        "{x}", ("",), True, "s", "stopwatch", True, True,
        "A duration, by hand or by machine.",
        "The hand on the watch adds about 0.2 s, and start and end must be the same event for every contender.",
    ),
    "weighed before and after": KindOf(
        "{x}_before - {x}_after", ("before", "after"), True, "g", "bench-scale", True, True,
        "What was used up: the weight before less the weight after.",
        "Anything else that comes or goes between the two weighings (water, soot, a forgotten lid) counts as used.",
    ),
    "share lost": KindOf(
        "({x}_before - {x}_after) / {x}_before", ("before", "after"), True, "%", "bench-scale", True, True,
        "What was lost in percent of what was there before: weight lost in drying, charge lost in storage.",
        "Its base is the value before; in percent of the value after, the same loss is another figure.",
        read_alike=False,
    ),
    "rise": KindOf(
        "{x}_end - {x}_start", ("start", "end"), True, "°C", "kitchen-thermometer", True, True,
        "How far something rose from its start to its end, such as a temperature.",
        "What the surroundings add or take meanwhile counts as well; start every contender from the same value.",
    ),
    "peak": KindOf(
        "{x}", ("",), True, "kgf", "pull-scale", True, True,
        "The highest value an instrument held, such as a pull.",
        "A jerk reads higher than a steady pull; pull at the same speed each time.",
    ),
    "level": KindOf(
        "{x}", ("",), True, "dB", "sound-meter", True, True,
        "A level in decibels.",
        "Distance, walls and other noise can move the level more than the product does; measure the room alone.",
    ),
    "level over background": KindOf(
        "less_background({x}, {x}_background)", ("", "background"), True, "dB", "sound-meter", True, True,
        "A level in decibels, freed from the background read in the same place without the product.",
        "A background that changes between the two readings is taken off as if it hadn't; within 6 dB of it only an "
        "upper bound is left.",
    ),
    "run to a limit": KindOf(
        "{x}", ("",), True, "min", "stopwatch", True, True,
        "How long it ran until a stated limit was reached.",
        "A run stopped before the limit is only “over” its time; and one run says little about the next.",
    ),
    "count": KindOf(
        "{x}", ("",), False, "", "", False, True,
        "How many times something happened.",
        "Small counts scatter by about their square root, so 3 against 5 shows nothing.",
    ),
    "yes/no": KindOf(
        "{x}", ("",), False, "", "", False, False,
        "Whether it did, each time it was tried.",
        "One success leaves a failure chance of up to 97.5 %; only many tries tell how often.",
    ),
    "grade": KindOf(
        "{x}", ("",), False, "", "", False, False,
        "A judgement in ordered words, such as poor, fair, good.",
        "Grades are opinions: write down what each word means, and judge without knowing which product it is.",
    ),
    "order": KindOf(
        "{x}", ("",), False, "", "", False, False,
        "Only an order was seen, heard or smelt: less than, more than or about like another contender.",
        "Contenders never put side by side stay uncompared, and one look says nothing about a second.",
    ),
    "laboratory": KindOf(
        "{x}", ("",), True, "mg/kg", "", True, True,
        "What a laboratory found in a sample, with its report and page.",
        "A laboratory answers for the sample it got: how it was taken, kept and sent is yours to say.",
    ),
    "logged": KindOf(
        "highest({x})", ("",), True, "°C", "", True, True,
        "A value worked out from the trace of a logger: its peak, mean, area, or when it passed a limit.",
        "A logger sees only what happens between its samples by luck; a short peak can fall between two.",
    ),
}  # fmt: skip

assert set(KINDS) == set(get_args(Kind)), "every kind has its line"
