"""Two records of one reading that disagree: the one the author uses counts, and both stay known."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from reportgen.campaign.declared import Campaign, Declared, TwoRecords
from reportgen.campaign.declared.remarks import NOT_KNOWN
from reportgen.finding import Finding, Place
from reportgen.intake.names import names_of
from reportgen.intake.notations.cell import UnreadableError
from reportgen.intake.notations.notation import read_cell
from reportgen.intake.observe import expectations
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.intake.table import did_you_mean, key, spelt

By = Mapping[ReadingKey, Reading]


def with_records(declared: Declared, readings: By) -> tuple[By, tuple[Finding, ...]]:
    """The readings with what is used in the place of what the file says, and what doesn't fit."""
    kept = dict(readings)
    findings: list[Finding] = []
    settled_by: dict[ReadingKey, str] = {}
    for records in declared.campaign.two_records:
        at = declared.at(f"records/{records.id}")
        found = _meant(records, declared.campaign, readings, at)
        if isinstance(found, Finding):
            findings.append(found)
            continue
        twice = next((settled_by[one.key] for one in found if one.key in settled_by), "")
        if twice:
            findings.append(_twice(records, declared.at(f"records/{twice}"), at))
            continue
        settled_by |= dict.fromkeys((one.key for one in found), records.id)
        for one in found:
            settled = _settled(records, one, declared.campaign, at)
            if isinstance(settled, Finding):
                findings.append(settled)
            else:
                kept[one.key] = settled
    return kept, tuple(dict.fromkeys(findings))


def _twice(records: TwoRecords, before: Place, at: Place) -> Finding:
    says = f"the records of this reading “{records.reading}” stand here and already at {before}"
    why = "Which of the two is to be believed can't be known."
    return Finding("error", "records-twice", at, says, why, "Write all that was recorded of it in one entry.")


def as_said(said: str, reading: Reading, campaign: Campaign) -> Reading:
    """The reading with another record's text in its place; raises `UnreadableError`."""
    expected = expectations(campaign.test(reading.key.test), "refused", names_of(campaign))[reading.key.name]
    w = read_cell(said, replace(expected, unit=reading.unit or expected.unit))
    number = not w.word and not w.absent_because
    bare = w.unit and not reading.text.endswith(w.unit)  # the file gives the unit elsewhere
    unit = (w.unit or reading.unit) if number else ""
    return replace(
        reading, text=said.removesuffix(w.unit).strip() if bare else said, value=w.value, unit=unit, limit=w.limit,
        word=w.word, absent_because=w.absent_because, decimals=w.decimals, width=w.width, rough=w.rough,
        unweighed=w.unweighed, beside=w.beside, frames=w.frames, unfinished=w.unfinished,
    )  # fmt: skip


def _meant(records: TwoRecords, campaign: Campaign, readings: By, at: Place) -> tuple[Reading, ...] | Finding:
    """The reading meant; several only where they are one cell that several tests read."""
    headings = {(t.id, c.name): c.heading for t in campaign.tests for c in t.columns}
    named = [k for k, h in headings.items() if key(h) == key(records.reading) or key(k[1]) == key(records.reading)]
    if not named:
        near = did_you_mean(records.reading, headings.values())
        says = f"no test reads a column “{records.reading}”"
        known = "There is " + spelt(list(dict.fromkeys(headings.values()))) + "."
        return Finding("error", "unknown-reading", at, says, do=f"Did you mean “{near}”?" if near else known)
    about = records.about
    found = [
        r
        for k, r in readings.items()
        if (k.test, k.name) in named
        and (k.contender == about.contender if about.contender else r.for_all)
        and records.test in ("", k.test)
        and about.pass_ in ("", k.pass_)
        and about.part in ("", k.part)
        and about.specimen in ("", k.specimen)
    ]
    if not found:
        where = ", ".join(
            filter(None, (about.contender, about.pass_ and f"pass {about.pass_}", about.part and f"part {about.part}"))
        )
        says = f"there is no reading “{records.reading}” of {where or 'all contenders'}"
        do = "Check contender, pass, part and test against the table."
        return Finding("error", "no-such-reading", at, says, do=do)
    if len({r.at for r in found}) > 1:
        says = f"{len(found)} readings “{records.reading}” of {about.contender or 'all contenders'} could be meant"
        passes = ", ".join(dict.fromkeys(_told(r.key, found) for r in found))
        return Finding("error", "several-readings", at, says, do=f"Say which: {passes}.")
    return tuple(found)


def _told(k: ReadingKey, among: list[Reading]) -> str:
    said = []
    if len({r.key.test for r in among}) > 1:
        said.append(f"test: {k.test}")
    if len({r.key.pass_ for r in among}) > 1:
        said.append(f"pass {k.pass_}")
    if len({r.key.part for r in among}) > 1:
        said.append(f"part {k.part}")
    return " ".join(said)


def _settled(records: TwoRecords, reading: Reading, campaign: Campaign, at: Place) -> Reading | Finding:
    try:
        both = {said: as_said(said, reading, campaign) for said in records.said}
    except UnreadableError as wrong:
        return Finding("error", wrong.rule, at, wrong.says, wrong.why, wrong.do)
    if not any(_same(reading, other) for other in both.values()):
        says = f"{reading.at} says “{reading.text}”, and neither record does: {spelt(records.said)}"
        why = "One of the two records must be the one in the file."
        return Finding("error", "records-mismatch", at, says, why, "Correct `said:`, or which reading is meant.")
    if records.used == NOT_KNOWN:
        return _between(records, reading, list(both.values()), at)
    used = both.get(records.used, reading)
    if _same(reading, used):
        return replace(reading, records=records.id)
    return replace(used, records=records.id, was=reading.was or reading.text)


def _between(records: TwoRecords, reading: Reading, both: list[Reading], at: Place) -> Reading | Finding:
    """Nobody knows which is right: anything from the lowest to the highest, as likely as any other."""
    values = [r.value for r in both if r.value is not None and not (r.limit or r.rough or r.unweighed or r.beside)]
    if len(values) < len(both) or len({r.unit for r in both}) > 1:
        says = f"nobody knows which is right, and between {spelt(records.said)} lies no range"
        why = "A range needs plain numbers in one unit at both its ends."
        return Finding("error", "records-without-range", at, says, why, "Write them so, or say which one is used.")
    low, high = min(both, key=lambda r: r.value or 0), max(both, key=lambda r: r.value or 0)
    lowest, highest = min(values), max(values)
    return replace(
        low, text=f"{low.text} to {high.text}", value=(lowest + highest) / 2, width=(highest - lowest) / 2,
        rough="between", decimals=None, records=records.id, was=reading.was or reading.text,
    )  # fmt: skip


def _same(one: Reading, other: Reading) -> bool:
    return (one.value, one.unit, one.limit, one.word, one.absent_because, one.width) == (
        other.value, other.unit, other.limit, other.word, other.absent_because, other.width,
    )  # fmt: skip
