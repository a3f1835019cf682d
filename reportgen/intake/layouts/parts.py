"""Parts of a run that one pass lacks and others have, and passes that are whole and in parts at once."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reportgen.campaign.declared import Campaign, Test
from reportgen.finding import Finding
from reportgen.intake.notations.notation import NO_REASON
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.intake.table import spelt

MISSING = "part-missing"
JOINED = frozenset({"sum", "mean", "energy mean", "energy sum"})

Pass = tuple[str, str, str]  # contender, specimen, pass


def parts_missing(campaign: Campaign, readings: Mapping[ReadingKey, Reading]) -> Iterable[Finding]:
    """A warning for each contender and column that lack parts others have; what was not read and why is no lack.

    A pass without any part is a whole run. It lacks nothing where parts are joined; where they stay apart there is no
    place for it, which is told. A pass that is read whole and in parts is an error: which is it?
    """
    for test in campaign.tests:
        of = [r for k, r in readings.items() if k.test == test.id and not r.incident]
        named = {_pass(r) for r in of if r.key.part}
        if not named:
            continue
        for column in test.columns:
            rows = [r for r in of if r.key.name == column.name]
            over = {q.over_parts for q in test.quantities if column.name in q.reads}
            if over & JOINED:
                yield from _both(test, column.heading, rows)
            if any(over):
                yield from _lacking(test, column.heading, [r for r in rows if r.key.part])
            if over and not over & JOINED and any(r.key.part for r in rows):
                yield from _whole(test, column.heading, [r for r in rows if not r.key.part and _pass(r) not in named])


def _pass(reading: Reading) -> Pass:
    return reading.key.contender, reading.key.specimen, reading.key.pass_


def _lacking(test: Test, heading: str, rows: Sequence[Reading]) -> Iterable[Finding]:
    every = list(dict.fromkeys(r.key.part for r in rows))
    for contender in dict.fromkeys(r.key.contender for r in rows):
        mine = [r for r in rows if r.key.contender == contender]
        passes = {of: [r for r in mine if _pass(r) == of] for of in dict.fromkeys(_pass(r) for r in mine)}
        never = [part for part in every if part not in {r.key.part for r in mine}]
        if never:
            yield _missing(test, contender, heading, never, mine[-1])
            continue
        for (_, _, pass_), own in passes.items():
            lacking = [part for part in every if part not in {r.key.part for r in own}]
            if lacking:
                yield _missing(test, contender, heading, lacking, own[-1], f" in pass {pass_}")


def _missing(
    test: Test, contender: str, heading: str, lacking: Sequence[str], last: Reading, in_pass: str = ""
) -> Finding:
    others = "other passes" if in_pass else "others"
    return Finding(
        "warning",
        MISSING,
        last.at,
        f"{contender} has no reading of “{heading}” for {spelt(lacking)}{in_pass}, and {others} have.",
        "A total of fewer parts isn't compared with a whole one: it has no result.",
        "Add the reading, or a row with `none (reason)`; a run without parts leaves `part` empty.",
        f"test/{test.id}",
        contender,
    )


def _both(test: Test, heading: str, rows: Sequence[Reading]) -> Iterable[Finding]:
    """A pass of which one row names no part and others do: the whole run, or one more piece of it?"""
    rows = [r for r in rows if r.absent_because != NO_REASON]  # an empty cell beside others of its row
    in_parts = {_pass(r) for r in rows if r.key.part}
    for row in (r for r in rows if not r.key.part and _pass(r) in in_parts):
        contender, _, pass_ = _pass(row)
        yield Finding(
            "error",
            "part-unclear",
            row.at,
            f"Pass {pass_} of {contender} has “{heading}” in parts, and here once more without a part.",
            "It may be the whole run or one more piece of it.",
            "Give this row its part, or the pass it belongs to; take it out where it is only their total.",
            f"test/{test.id}",
            contender,
        )


def _whole(test: Test, heading: str, rows: Sequence[Reading]) -> Iterable[Finding]:
    """Whole runs of a column whose parts stay apart: none of the results takes them."""
    for contender in dict.fromkeys(r.key.contender for r in rows):
        mine = [r for r in rows if r.key.contender == contender]
        yield Finding(
            "warning",
            MISSING,
            mine[0].at,
            f"{contender} has “{heading}” here without a part, and others have it in parts.",
            "Each part has a result of its own, and a reading without one counts in none.",
            "Give its `part`, or join the parts: with `over parts: sum` or `mean` a run without parts is a whole one.",
            f"test/{test.id}",
            contender,
        )
