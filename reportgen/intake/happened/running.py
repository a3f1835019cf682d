"""Runs still going: what was read so far is only "more than"."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from reportgen.campaign.declared import Declared, Quantity, Test
from reportgen.intake.reading import Reading, ReadingKey

SO_FAR = ("run to a limit", "timed")  # kinds that only grow while the run goes on

By = Mapping[ReadingKey, Reading]


def with_running(declared: Declared, readings: By) -> By:
    """The last reading of each run still going as a bound; `over unknown` where nothing was read yet."""
    kept = dict(readings)
    for test in declared.campaign.tests:
        for contender, since in test.running.items():
            for quantity in test.quantities:
                if quantity.kind in SO_FAR:
                    for reading in _so_far(declared, test, quantity, contender, readings):
                        kept[reading.key] = replace(reading, running=since.text)
    return kept


def _so_far(declared: Declared, test: Test, quantity: Quantity, contender: str, readings: By) -> list[Reading]:
    columns = {c.name: c for c in test.columns}
    found = []
    for name in quantity.reads:
        mine = [r for k, r in readings.items() if (k.test, k.contender, k.name) == (test.id, contender, name)]
        if not mine:
            at = declared.at(f"running/{test.id}/{contender}")
            key = ReadingKey(test.id, contender, "1", "1", "", name)
            found.append(Reading(key, "", None, columns[name].unit, columns[name].instrument, at, limit="above"))
            continue
        last = max(mine, key=lambda r: r.order)
        if last.limit is None and last.series is None:
            last = replace(last, limit="above", absent_because="", unit=last.unit or columns[name].unit)
        found.append(last)
    return found
