"""What is told of logger files: times that can't be, gaps and changes of rate, columns and contenders not found."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from reportgen.campaign.declared import Column, Test
from reportgen.finding import Finding, Place
from reportgen.intake.logger.layout import Layout
from reportgen.intake.logger.pace import Pace
from reportgen.intake.reading import Series
from reportgen.intake.table import spelt
from reportgen.wording.traces import gap_of, since, time_of


def impossible(file: str, pace: Pace, line: Callable[[int], int]) -> Iterable[Finding]:
    """Times that can't be: what was logged when can't be known."""
    if pace.backwards is not None:
        yield Finding(
            "error",
            "time-backwards",
            Place(file, line(pace.backwards)),
            "Time runs backwards here: this sample's is before the one above it.",
            "Two runs may stand in one file, or the clock was set; what came when can't be known.",
            "Give each run a file of its own, or give `rate:` where samples came evenly and the clock alone is wrong.",
        )
    if pace.twice is not None:
        yield Finding(
            "error",
            "time-twice",
            Place(file, line(pace.twice)),
            "This sample has the same time as the one above it.",
            "Which came first, and when, can't be known.",
            "Export times with more digits, or give `rate:` where samples came evenly.",
        )


def notes(series: Series, test: Test, column: Column, contender: str, pace: Pace) -> Iterable[Finding]:
    """Gaps and changes of rate, each with where and how long."""
    subject, file = f"test/{test.id}", series.file
    if pace.gaps:
        told = ", ".join(gap_of(a, b, series.clock) for a, b in pace.gaps[:5])
        more = f" and {len(pace.gaps) - 5} more" if len(pace.gaps) > 5 else ""
        yield Finding(
            "note",
            "gap-in-a-trace",
            Place(file),
            f"“{column.heading}” has no samples for {told}{more}; usual are {time_of(pace.interval)} between two.",
            "Nobody knows what happened in a gap: means and areas bridge it by a straight line and say so.",
            "Say what happened under `caveats:` or `incidents:`, or repeat the run.",
            subject,
            contender,
        )
    if pace.drops:
        missing = "one sample is" if pace.dropped == 1 else f"{pace.dropped} samples are"
        yield Finding(
            "note",
            "samples-dropped",
            Place(file),
            f"“{column.heading}” has samples every {time_of(pace.interval)}, and {missing} missing among them.",
            "A logger that is busy leaves samples out; what they would have shown is taken from those beside them.",
            "Look whether what you measure lies there; log more slowly where the logger can't keep up.",
            subject,
            contender,
        )
    for at, before, after in pace.rates[:5]:
        yield Finding(
            "note",
            "rate-changes",
            Place(file),
            f"“{column.heading}”: from {since(at, series.clock)} on, samples come every {time_of(after)}, "
            f"before every {time_of(before)}.",
            "A peak that falls between two samples is missed, and more easily where they are rare.",
            "Say whether that was meant.",
            subject,
            contender,
        )


def no_column(file: str, layout: Layout, heading: str) -> Finding:
    return Finding(
        "error",
        "missing-column",
        Place(file, layout.heading_line),
        f"There is no column “{heading}” in this logger file; there are {spelt(layout.headings)}.",
        "Its readings would be lost.",
        "Correct the heading.",
    )


def nobody(file: str, layout: Layout) -> Finding:
    return Finding(
        "error",
        "nobody-in-a-logger",
        Place(file, layout.heading_line),
        "Nothing says which contender this logger file is of.",
        "A reading of nobody can't be used.",
        "Put {contender} into the name (`logger: raw/run-{contender}-{pass}.csv`), list a file for each contender, "
        "or name the column with `contender:`.",
    )
