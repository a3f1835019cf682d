"""One reading that serves every contender: an empty jar weighed once, the room's temperature.

A row of the contender `all`, or a column `all` of a wide table. Without a pass it serves every pass; with one, that
pass of each contender. A contender's own reading of the same thing counts before it, and so does its own
`none (reason)`; an empty cell does not.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Campaign, Test
from reportgen.finding import Finding
from reportgen.intake.names import EVERYONE
from reportgen.intake.notations.notation import NO_REASON
from reportgen.intake.reading import Reading, ReadingKey

Pass = tuple[str, str]  # specimen, pass


def served(
    readings: Sequence[Reading], test: Test, campaign: Campaign
) -> tuple[tuple[Reading, ...], tuple[Finding, ...]]:
    """The readings of one test, those for all of them handed to each contender they serve."""
    shared = [r for r in readings if r.key.contender == EVERYONE]
    if not shared:
        return tuple(readings), ()
    named = {(r.key.name, r.key.part) for r in shared}
    own = [r for r in readings if r.key.contender != EVERYONE and not (_is_empty(r) and _slot(r) in named)]
    taken = {r.key for r in own}
    passes = _passes(own, test, campaign)
    findings = [*_twice(shared)]
    unclear = {f.place for f in findings}
    handed: list[Reading] = []
    for reading in (r for r in shared if r.at not in unclear):
        keys = tuple(_keys(reading, passes))
        if not keys:
            findings.append(_nobody(reading))
        handed += [replace(reading, key=key, for_all=True) for key in keys if key not in taken]
    return (*own, *_left_empty(readings, own, handed), *handed), tuple(findings)


def _slot(reading: Reading) -> tuple[str, str]:
    return reading.key.name, reading.key.part


def _is_empty(reading: Reading) -> bool:
    return not reading.text and reading.absent_because == NO_REASON


def _left_empty(readings: Iterable[Reading], own: Iterable[Reading], handed: Iterable[Reading]) -> Iterator[Reading]:
    """Empty cells that no reading for all fills after all: they stay what they are."""
    filled = {r.key for r in (*own, *handed)}
    return (r for r in readings if r.key.contender != EVERYONE and r.key not in filled)


def _passes(own: Sequence[Reading], test: Test, campaign: Campaign) -> Mapping[str, tuple[Pass, ...]]:
    """The passes that each contender has readings of its own for; where the test has none at all, one pass each."""
    found: dict[str, dict[Pass, None]] = {}
    for r in own:
        found.setdefault(r.key.contender, {})[r.key.specimen, r.key.pass_] = None
    if found:
        return {contender: tuple(passes) for contender, passes in found.items()}
    return {c.id: () for c in campaign.contenders if c.id not in test.not_yet_tested}


def _keys(reading: Reading, passes: Mapping[str, tuple[Pass, ...]]) -> Iterator[ReadingKey]:
    key = reading.key
    for contender, mine in passes.items():
        for specimen, pass_ in mine or ((key.specimen or "1", key.pass_ or "1"),):
            if key.pass_ in ("", pass_) and key.specimen in ("", specimen):
                yield replace(key, contender=contender, specimen=specimen, pass_=pass_)


def _twice(shared: Sequence[Reading]) -> Iterator[Finding]:
    first: dict[tuple[str, str, str, str], Reading] = {}
    for reading in shared:
        key = reading.key
        known = first.setdefault((key.name, key.part, key.pass_, key.specimen), reading)
        others = [k[2] for k in first if (k[0], k[1], k[3]) == (key.name, key.part, key.specimen)]
        if known is not reading or any((pass_ == "") != (key.pass_ == "") for pass_ in others):
            yield Finding(
                "error",
                "reading-twice",
                reading.at,
                f"“{key.name}” is read for all contenders here and already in line {known.at.line}."
                if known is not reading
                else f"“{key.name}” is read for all contenders in every pass and again in one.",
                "Which of them serves a pass can't be known.",
                "Give each its pass, or keep one for all passes.",
                f"test/{key.test}",
            )


def _nobody(reading: Reading) -> Finding:
    of = f"a pass {reading.key.pass_}" if reading.key.pass_ else "a reading"
    return Finding(
        "error",
        "reading-for-nobody",
        reading.at,
        f"This reading is for all contenders, and none has {of} of its own here.",
        "It would be used nowhere.",
        "Correct the pass, or leave it empty: then it serves every pass.",
        f"test/{reading.key.test}",
    )
