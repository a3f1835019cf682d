"""Readings of one sort gathered by test and column, so that one sentence tells of all of them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.met import Met


def by_column(readings: Iterable[Reading]) -> Mapping[tuple[str, str], Sequence[Reading]]:
    """(test, name) → its readings in the order of their file."""
    found: dict[tuple[str, str], list[Reading]] = {}
    for reading in sorted(readings, key=lambda r: (r.at.file, r.order, r.at)):
        found.setdefault((reading.key.test, reading.key.name), []).append(reading)
    return found


def told_by_column(
    declared: Declared,
    readings: Mapping[ReadingKey, Reading],
    wanted: Callable[[Reading], bool],
    tell: Callable[[str, Sequence[Reading]], Met],
) -> Iterable[Caveat]:
    """A caveat for each test and column that has readings of the `wanted` sort; `tell` gets the heading and them."""
    for (test, name), several in by_column(r for r in readings.values() if wanted(r)).items():
        heading = next((c.heading for c in declared.campaign.test(test).columns if c.name == name), name)
        met = tell(heading, several)
        who = {r.key.contender for r in several}
        yield Caveat(
            id=f"{met.code}/{test}/{name}", number=0, sort="reading", says="", pushes="", blocks=False,
            touches=frozenset(r.key for r in several), quantities=(), contender=who.pop() if len(who) == 1 else "",
            at=several[0].at, met=met,
        )  # fmt: skip
