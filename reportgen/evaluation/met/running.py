"""Runs still going: all that rests on what was read so far says so."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from reportgen.campaign.declared import Day, Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.day import day
from reportgen.wording.interval import so_far
from reportgen.wording.met import Met


def running(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """One caveat for each contender whose run in a test goes on. What is no bound is only so far, and has no rank."""
    for test in declared.campaign.tests:
        for contender, since in test.running.items():
            mine = {k: r for k, r in readings.items() if (k.test, k.contender) == (test.id, contender)}
            bounded = {k: r for k, r in mine.items() if r.running}
            yield Caveat(
                f"running-{test.id}-{contender}", 0, "running", "", "", bool(mine) and not bounded,
                frozenset(bounded or mine), (),
                contender, declared.at(f"running/{test.id}/{contender}"),
                met=_met(since, test.running_as_of.get(contender), tuple(bounded.values())),
            )  # fmt: skip


def _met(since: Day, as_of: Day | None, bounded: tuple[Reading, ...]) -> Met:
    told = _since(since, bounded)
    if as_of is None or not as_of.first:
        return told
    return replace(told, then=(Met("running.as-of", {"day": day(as_of.first, as_of.last, as_of.text)}),))


def _since(since: Day, bounded: tuple[Reading, ...]) -> Met:
    gaps = {"day": day(since.first, since.last, since.text)}
    read = [r for r in bounded if r.value is not None]
    if read:
        value = so_far(read[0].value, read[0].unit)
        return Met("running" if since.first else "running.undated", {**gaps, "value": value})
    code = "running.nothing" if bounded else "running.plain"
    return Met(code if since.first else f"{code}.undated", gaps)
