"""Yes/no answers and grades: words, not numbers; each reading is a pass as it stands."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.campaign.declared import Quantity, Test
from reportgen.evaluation.evaluated import Caveat, bears_on
from reportgen.evaluation.feeds import Feeds
from reportgen.evaluation.working import PassKey, Working
from reportgen.intake.reading import Reading, ReadingKey


def word_workings(
    test: Test,
    quantity: Quantity,
    contender: str,
    readings: Mapping[ReadingKey, Reading],
    exclusions: Sequence[Caveat],
    feeds: Feeds,
) -> tuple[Working, ...]:
    """One working a reading, in the order of the file, holding the word."""
    mine = [r for r in readings.values() if (r.key.test, r.key.contender) == (test.id, contender)]
    mine = sorted((r for r in mine if r.key.name in quantity.reads), key=lambda r: (r.at.file, r.order))
    return tuple(_working(quantity, r, exclusions, feeds) for r in mine)


def _working(quantity: Quantity, reading: Reading, exclusions: Sequence[Caveat], feeds: Feeds) -> Working:
    keys = (reading.key,)
    excluded = next((e.id for e in exclusions if bears_on(e, feeds.upstream(quantity.id), frozenset(keys))), "")
    key = PassKey(reading.key.specimen, reading.key.pass_, reading.key.part)
    return Working(key, None, keys, excluded, word=reading.word, absent_because=reading.absent_because)
