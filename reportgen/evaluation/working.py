"""One pass of one quantity worked out: the value with its uncertainty, what it rests on, how it came about."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

from reportgen.evaluation.evaluated import Crossing, PassValue, Step
from reportgen.intake.reading import ReadingKey
from reportgen.metrology.combine import energy_mean, energy_sum, mean_of, sum_of
from reportgen.metrology.formulas.near_nothing import Doubt
from reportgen.metrology.uncertain import Uncertain


@dataclass(frozen=True)
class PassKey:
    specimen: str
    pass_: str
    part: str


@dataclass(frozen=True)
class Whole:
    """A quantity taken over all its passes at once."""

    quantity: str
    contender: str
    passes: tuple[Working, ...]
    value: Uncertain


@dataclass(frozen=True)
class OfSpecimen:
    """The passes of one of several specimens, which a mean over passes takes as one value: their mean."""

    answers: tuple[Answer, ...]


Answer: TypeAlias = "Uncertain | Working | Whole | OfSpecimen"


@dataclass(frozen=True)
class Heard:
    """What a quantity's formula was told on one pass, in the order it asked: one entry a question, of several answers
    where it asked for passes or parts. Another engine can work the same pass out from it."""

    quantity: str
    answers: tuple[tuple[Answer, ...], ...]


@dataclass(frozen=True)
class Working:
    """A pass (and part) of a quantity on one contender. `value` is None where it is absent or only a word."""

    key: PassKey
    value: Uncertain | None
    keys: tuple[ReadingKey, ...]
    excluded: str = ""
    word: str = ""
    absent_because: str = ""
    steps: tuple[Step, ...] = ()
    crossings: tuple[Crossing, ...] = ()
    together: bool = False  # of quantities of other tests, each over all its passes
    of_parts: tuple[Working, ...] = ()  # those it was joined from
    joined_by: str = ""  # and how
    heard: Heard | None = None
    doubt: Doubt | Literal[""] = ""  # why no uncertainty can be stated, where first derivatives say nothing

    @property
    def used(self) -> bool:
        """Does it count towards the result?"""
        return self.value is not None and not self.excluded

    def told(self) -> PassValue:
        """The same without its uncertainty, for the page."""
        value = self.value.value if self.value else None
        limit = self.value.limit if self.value else None
        return PassValue(
            self.key.specimen, self.key.pass_, self.key.part, value, limit,
            self.keys, self.excluded, self.word, self.absent_because, self.steps, self.together,
            tuple(w.told() for w in self.of_parts),
        )  # fmt: skip


def doubt_of(workings: Iterable[Working]) -> Doubt | Literal[""]:
    """Why what is made of them has no uncertainty that can be stated; "" where it has."""
    return next((w.doubt for w in workings if w.doubt and w.used), "")


JOINS = {"sum": sum_of, "mean": mean_of, "energy mean": energy_mean, "energy sum": energy_sum}


def join_parts(workings: Sequence[Working], how: str, parts: Sequence[str]) -> tuple[Working, ...]:
    """Join the parts of each pass into one working by `how` (sum, mean, energy mean); `parts` are those expected.

    A pass that names no part is a whole run by itself. One that names parts and lacks some has no value, and says which
    is missing. An exclusion of a part excludes the pass.
    """
    by_pass: dict[PassKey, list[Working]] = {}
    for w in workings:
        by_pass.setdefault(replace(w.key, part=""), []).append(w)
    return tuple(_join(key, _of_parts(found), how, parts) for key, found in by_pass.items())


def _of_parts(found: Sequence[Working]) -> Sequence[Working]:
    """Those that name a part; what was read once for all of them has no part, and stands behind each already."""
    return [w for w in found if w.key.part] or found


def _join(key: PassKey, found: Sequence[Working], how: str, parts: Sequence[str]) -> Working:
    keys = tuple(k for w in found for k in w.keys)
    steps = tuple(s for w in found for s in w.steps)
    excluded = next((w.excluded for w in found if w.excluded), "")
    absent = next((w.absent_because for w in found if w.value is None), "")
    here = {w.key.part for w in found}
    missing = [p for p in parts if p not in here] if here != {""} else []
    if missing or absent:
        return Working(
            key, None, keys, excluded, absent_because=absent or f"part {missing[0]} was not read", steps=steps
        )
    value = JOINS[how]([w.value for w in found if w.value is not None])
    return Working(key, value, keys, excluded, steps=steps, of_parts=tuple(found), joined_by=how, doubt=doubt_of(found))
