"""Traces with stretches in which nothing was logged."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.met.by_column import told_by_column
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.wording.met import Met
from reportgen.wording.quoting import first_few
from reportgen.wording.traces import gap_of_whom


def gaps_in_traces(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """A caveat for each test and channel: whose trace has gaps, where, and how long."""
    title = {c.id: c.title for c in declared.campaign.contenders}

    def tell(heading: str, several: Iterable[Reading]) -> Met:
        told = [
            gap_of_whom(title[r.key.contender], begins, ends, r.series.clock)
            for r in several
            if r.series is not None
            for begins, ends in r.series.gaps
        ]
        return Met("gaps", {"what": heading, "gaps": first_few(told)})

    return told_by_column(declared, readings, lambda r: r.series is not None and bool(r.series.gaps), tell)
