"""Readings that were not taken or were lost, beside others of the same contender that count."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.met.by_column import told_by_column
from reportgen.intake.notations.notation import NO_REASON
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.met import Met
from reportgen.wording.quoting import first_few, lost_of_whom


def lost_readings(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """`none (spilled)`: a caveat for each column that has such readings.

    Where a contender has nothing else in that column, the reason stands in place of its result and is not told twice.
    Of an empty cell without a reason the audit asks.
    """
    taken = {_whose(k) for k, r in readings.items() if not r.absent_because}
    title = {c.id: c.title for c in declared.campaign.contenders}

    def tell(heading: str, several: Sequence[Reading]) -> Met:
        told = [lost_of_whom(title[r.key.contender], r.key.pass_, r.key.part, r.absent_because) for r in several]
        return Met("lost", {"what": heading, "whose": first_few(told)})

    return told_by_column(declared, readings, lambda r: _with_reason(r) and _whose(r.key) in taken, tell)


def _with_reason(reading: Reading) -> bool:
    return bool(reading.absent_because) and reading.absent_because != NO_REASON and not reading.unfinished


def _whose(key: ReadingKey) -> tuple[str, str, str]:
    return key.test, key.name, key.contender
