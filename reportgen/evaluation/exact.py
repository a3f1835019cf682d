"""Readings that were counted: whole times, of which none is a half."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.campaign.declared import Campaign
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.metrology.uncertain import Source

COUNTED = Source("accuracy", "counted", "", "normal")  # known to be nothing: it says that nothing is missing
PLAIN = ("", "1", "count", "times", "cycles", "laps", "pieces")  # units under which a run to a limit is counted


def counted(campaign: Campaign, readings: Mapping[ReadingKey, Reading]) -> frozenset[ReadingKey]:
    """Whole numbers of a run to a limit in `times` and the like, off no instrument: a count is exact."""
    runs = {
        (t.id, name)
        for t in campaign.tests
        for q in t.quantities
        if q.kind == "run to a limit" and q.unit in PLAIN
        for name in q.reads
    }
    return frozenset(k for k, r in readings.items() if (k.test, k.name) in runs and _is_whole(r))


def _is_whole(reading: Reading) -> bool:
    whole = reading.value is not None and reading.value == reading.value.to_integral_value()
    return whole and not (reading.instrument or reading.rough or reading.unweighed or reading.beside)
