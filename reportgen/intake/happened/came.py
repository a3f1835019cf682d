"""What came to the readings of a campaign after they were taken: one call for all accidents, in their order."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from reportgen.campaign.declared import Declared, Test
from reportgen.finding import Finding
from reportgen.intake.happened.amended import Righted, amends_nothing, with_amendments
from reportgen.intake.happened.counted import counting, misfits, told_of
from reportgen.intake.happened.incidents import happened_in, log_of
from reportgen.intake.happened.running import with_running
from reportgen.intake.happened.two_records import with_records
from reportgen.intake.layouts.missing import Look
from reportgen.intake.opening import name_of
from reportgen.intake.reading import Happened, RawFile, Reading, ReadingKey
from reportgen.intake.table import Spot
from reportgen.sources import Workspace, digest, exists, read_bytes


@dataclass(frozen=True)
class Came:
    """The readings as they count, the incidents of logs, for whom incidents are counted, and what doesn't fit."""

    readings: Mapping[ReadingKey, Reading]
    incidents: tuple[Happened, ...] = ()
    counted_for: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    findings: tuple[Finding, ...] = ()


def come_to(
    declared: Declared,
    readings: Mapping[ReadingKey, Reading],
    righted: Righted,
    looks: Mapping[str, Sequence[Look]],
) -> Came:
    """Amendments marked, records settled, runs still going bounded, incidents of logs told and counted."""
    marked = with_amendments(readings, righted, [look for each in looks.values() for look in each])
    spare = tuple(amends_nothing(declared, righted, marked))
    settled, disagreeing = with_records(declared, marked)
    growing = with_running(declared, settled)
    log, unclear = _logs(declared, growing, looks)
    told = told_of(declared, log)
    counted, counted_for = counting(declared, growing, told)
    findings = (*spare, *disagreeing, *unclear, *misfits(declared, told))
    return Came({**growing, **counted}, log, counted_for, findings)


def written_in(ws: Workspace, readings: Mapping[ReadingKey, Reading], files: Sequence[RawFile]) -> tuple[RawFile, ...]:
    """Further files that readings stand in: YAML that declares a counted incident or a run still going."""
    known = {f.path for f in files}
    more = sorted({r.at.file for r in readings.values()} - known)
    return tuple(RawFile(p, digest(data), len(data)) for p in more if exists(ws, p) for data in (read_bytes(ws, p),))


def _logs(
    declared: Declared, readings: Mapping[ReadingKey, Reading], looks: Mapping[str, Sequence[Look]]
) -> tuple[tuple[Happened, ...], tuple[Finding, ...]]:
    campaign = declared.campaign
    by_table: dict[Spot, list[tuple[Test, Look]]] = {}
    for test in campaign.tests:
        for look in looks[test.id]:
            by_table.setdefault(look[0].spot, []).append((test, look))
    roles = {name_of(campaign, s): s.roles for t in campaign.tests for s in t.sources}
    found: list[Happened] = []
    findings: list[Finding] = []
    for seen in by_table.values():
        table, tests = seen[0][1][0], [test for test, _ in seen]
        frame = log_of(table, roles.get(f"{table.file}, sheet {table.sheet}", roles.get(table.file, {})), tests)
        if frame is not None:
            happened, unclear = happened_in(table, frame, tests, campaign, readings)
            found.extend(happened)
            findings.extend(unclear)
    return tuple(found), tuple(findings)
