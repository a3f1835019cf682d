"""Facts of single passes, such as the wind: what was written of each pass, and whether contenders met the same."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from itertools import combinations
from math import sqrt
from statistics import fmean, variance
from typing import Literal

from reportgen.campaign.declared import Test
from reportgen.intake.reading import Reading

FAR = 2.0  # standard deviations of single passes; our convention

Met = Literal["same", "varied", "differed", ""]


@dataclass(frozen=True)
class PassConditions:
    """What was written beside one pass; a condition of which nothing was written is absent."""

    contender: str
    specimen: str
    pass_: str
    part: str
    said: Mapping[str, str]


def conditions_of(test: Test, readings: Iterable[Reading]) -> tuple[PassConditions, ...]:
    """The passes of a test that have conditions, in the order of their readings."""
    found: dict[tuple[str, str, str, str], dict[str, dict[str, None]]] = {}
    for r in readings:
        of_pass = found.setdefault((r.key.contender, r.key.specimen, r.key.pass_, r.key.part), {})
        for name, said in conditions_beside(test, r).items():
            of_pass.setdefault(name, {})[said] = None
    return tuple(
        PassConditions(*key, {name: ", ".join(said) for name, said in names.items()})
        for key, names in found.items()
        if names
    )


def conditions_beside(test: Test, reading: Reading) -> dict[str, str]:
    """What was written beside one reading under the test's conditions (other columns are kept there, too)."""
    return {name: said for name, said in reading.conditions if name in test.conditions}


def how_met(name: str, passes: Sequence[PassConditions]) -> Met:
    """Whether a condition was the same in every pass, varied from pass to pass, or differed between contenders.

    It differed where two contenders have no value in common, or, of numbers, where their ranges lie apart. "" where
    nothing was written.
    """
    by_contender: dict[str, list[str]] = {}
    for p in passes:
        if name in p.said:
            by_contender.setdefault(p.contender, []).append(p.said[name])
    every = {said for each in by_contender.values() for said in each}
    if not every:
        return ""
    if len(every) == 1:
        return "same"
    return "differed" if any(_apart(a, b) for a, b in combinations(by_contender.values(), 2)) else "varied"


def met_apart(name: str, passes: Sequence[PassConditions]) -> tuple[tuple[str, str], ...]:
    """The pairs of contenders that met a condition differently: nothing in common, numbers whose ranges lie apart, or
    means more than `FAR` standard deviations of their passes from each other (from three passes each on).
    """
    by_contender: dict[str, list[str]] = {}
    for p in passes:
        if name in p.said:
            by_contender.setdefault(p.contender, []).append(p.said[name])
    return tuple(
        (a, b)
        for (a, said), (b, other) in combinations(by_contender.items(), 2)
        if _apart(said, other) or _far(said, other)
    )


def _far(one: Sequence[str], other: Sequence[str]) -> bool:
    a, b = ([float(x) for s in said if (x := _number(s)) is not None] for said in (one, other))
    if len(a) < len(one) or len(b) < len(other) or min(len(a), len(b)) < 3:
        return False
    spread = sqrt((variance(a) * (len(a) - 1) + variance(b) * (len(b) - 1)) / (len(a) + len(b) - 2))
    return abs(fmean(a) - fmean(b)) > FAR * spread


def _apart(one: Sequence[str], other: Sequence[str]) -> bool:
    a, b = [_number(s) for s in one], [_number(s) for s in other]
    numbers_a, numbers_b = [x for x in a if x is not None], [x for x in b if x is not None]
    if len(numbers_a) == len(a) and len(numbers_b) == len(b):
        return max(numbers_a) < min(numbers_b) or max(numbers_b) < min(numbers_a)
    return not set(one) & set(other)


def _number(said: str) -> Decimal | None:
    """The number a text begins with, its unit aside; None where it begins with none."""
    try:
        number = Decimal(said.split()[0].replace("−", "-"))
    except (InvalidOperation, IndexError):
        return None
    return number if number.is_finite() else None
