"""The traces of a campaign as pages show them: thinned, with where they passed a limit."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.evaluation.evaluated import Crossing, TraceShown
from reportgen.evaluation.traces_marked import marked
from reportgen.evaluation.workings import Workings
from reportgen.intake.reading import Reading
from reportgen.metrology.errors import NoValue
from reportgen.metrology.traces.apart import apart
from reportgen.metrology.traces.peak import highest, lowest
from reportgen.metrology.traces.thin import thinned
from reportgen.metrology.traces.trace import Trace


def traces_shown(workings: Workings) -> tuple[TraceShown, ...]:
    """Every trace, in the campaign's order of tests, channels and contenders."""
    campaign = workings.campaign
    traced = [r for r in workings.readings.values() if r.series is not None]
    tests = [t.id for t in campaign.tests]
    columns = {(t.id, c.name): i for t in campaign.tests for i, c in enumerate(t.columns)}
    people = {c.id: i for i, c in enumerate(campaign.contenders)}
    traced.sort(
        key=lambda r: (tests.index(r.key.test), columns[r.key.test, r.key.name], people[r.key.contender], r.order)
    )
    return tuple(_shown(workings, r) for r in traced)


def _shown(workings: Workings, reading: Reading) -> TraceShown:
    trace, key = workings.observer.trace(reading), reading.key
    assert reading.series is not None
    top, bottom = _end(trace, 1), _end(trace, -1)
    standing = apart(trace)
    crossings = tuple(dict.fromkeys(_crossings(workings, reading)))
    return TraceShown(
        key=key,
        unit=trace.unit.symbol,
        stretches=thinned(trace),
        samples=reading.series.samples,
        ends=reading.series.ends,
        highest=top[0],
        lowest=bottom[0],
        over=top[1],
        under=bottom[1],
        gaps=reading.series.gaps,
        crossings=crossings,
        marks=marked(trace, reading.series, crossings),
        clock=reading.series.clock,
        apart=standing.first,
        apart_in_all=standing.count,
    )


def _end(trace: Trace, sign: int) -> tuple[float | None, bool]:
    """The highest or lowest sample, and whether it is only a bound."""
    try:
        found = highest(trace) if sign > 0 else lowest(trace)
    except NoValue:
        return None, False
    return found.value, found.limit is not None


def _crossings(workings: Workings, reading: Reading) -> Iterable[Crossing]:
    """Where formulas of its own test looked for the trace passing a limit."""
    for quantity in workings.campaign.test(reading.key.test).quantities:
        for working in workings.by_part(quantity.id, reading.key.contender):
            yield from (c for c in working.crossings if c.key == reading.key)
