"""Parts of a run that some contenders have and one hasn't: its total would be of less than theirs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.campaign.declared import Campaign, Test
from reportgen.finding import Finding
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.intake.table import spelt


def parts_missing(campaign: Campaign, readings: Mapping[ReadingKey, Reading]) -> Iterable[Finding]:
    """A warning for each contender and column that lack parts others have; what was not read and why is no lack."""
    for test in campaign.tests:
        if any(q.over_parts for q in test.quantities):
            yield from _in_test(test, [r for k, r in readings.items() if k.test == test.id and k.part])


def _in_test(test: Test, readings: list[Reading]) -> Iterable[Finding]:
    for column in test.columns:
        of = [r for r in readings if r.key.name == column.name]
        every = list(dict.fromkeys(r.key.part for r in of))
        for contender in dict.fromkeys(r.key.contender for r in of):
            mine = [r for r in of if r.key.contender == contender]
            lacking = [part for part in every if part not in {r.key.part for r in mine}]
            if lacking:
                yield Finding(
                    "warning",
                    "part-missing",
                    mine[-1].at,
                    f"{contender} has no reading of “{column.heading}” for {spelt(lacking)}, and others have.",
                    "A total of fewer parts isn't compared with a whole one: it has no result.",
                    "Add the reading, or a row with `none (reason)`.",
                    f"test/{test.id}",
                )
