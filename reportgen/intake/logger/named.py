"""Logger files that cells of a table name: the pass, session, notes and photographs of the row are then the trace's."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from reportgen.campaign.channels import channels_of
from reportgen.campaign.declared import Campaign, Column, Declared, Logger, Source, Test
from reportgen.campaign.scalar import NUMBER
from reportgen.campaign.seeing import Shown
from reportgen.finding import Finding, Place, Refused, refuse
from reportgen.intake.layouts.seen import Seen
from reportgen.intake.logger.read import Logged, One, trace_of_one
from reportgen.intake.logger.samples import Samples
from reportgen.intake.names import EVERYONE
from reportgen.intake.reading import RawFile, Reading
from reportgen.intake.table import did_you_mean
from reportgen.sources import exists, list_files

_NUMBER = re.compile(rf"{NUMBER}|[0-9]+,[0-9]+")
_ABSENT = re.compile(r"none\b.*|", re.IGNORECASE | re.DOTALL)


@dataclass(frozen=True)
class Named:
    """A cell that names a logger's file, the source whose table it stands in, and what its row shows."""

    test: Test
    source: Source
    seen: Seen
    shown: Shown


def by_their_names(test: Test) -> Test:
    """The test as its tables are read: there a channel's column is headed by the channel's name, not by what the
    logger calls it."""
    channels = channels_in_tables(test)
    columns = (replace(c, heading=c.name.replace("_", " ")) if c.name in channels else c for c in test.columns)
    return replace(test, columns=tuple(columns)) if channels else test


def channels_in_tables(test: Test) -> frozenset[str]:
    """The channels whose files tables name: those of a test that lists no logger's files itself."""
    if any(s.logger for s in test.sources):
        return frozenset()
    return frozenset(name for q in test.quantities for name in channels_of(q.formula))


def apart(
    cells: Iterable[Seen], test: Test, source: Source, shown: Mapping[int, Shown]
) -> tuple[tuple[Seen, ...], tuple[Named, ...]]:
    """Cells of readings, and those that name files. What says that nothing was read stays a reading."""
    channels = channels_in_tables(test)
    plain: list[Seen] = []
    named: list[Named] = []
    for cell in cells:
        if cell.column.name in channels and not _ABSENT.fullmatch(cell.text.strip()):
            named.append(Named(test, source, cell, shown.get(cell.order, Shown((), None))))
        else:
            plain.append(cell)
    return tuple(plain), tuple(named)


def read_named(samples: Samples, campaign: Campaign, named: Sequence[Named]) -> Logged:
    """The traces of files that cells name; what is wrong is told at the cell, or in the file where it stands there."""
    readings: list[Reading] = []
    findings: list[Finding] = []
    files: dict[str, RawFile] = {}
    first: dict[tuple[str, str, str], Place] = {}
    for one in named:
        try:
            path = _path(samples, campaign, one.seen)
            already = first.setdefault((one.test.id, one.seen.column.name, path), one.seen.at)
            if already is not one.seen.at:
                raise _twice(one.seen, already)
            made = _made(samples, campaign, one, path)
        except Refused as refused:
            findings += refused.findings
            continue
        readings += made.readings
        findings += made.findings
        files |= {f.path: f for f in made.files}
    return Logged(tuple(readings), tuple(dict.fromkeys(findings)), tuple(files.values()))


def without_numbers(declared: Declared, named: Sequence[Named]) -> tuple[tuple[Named, ...], tuple[Finding, ...]]:
    """Cells without the columns that hold numbers alone, and what is told of each: its formula takes it for a trace."""
    found: dict[tuple[str, str], list[Named]] = {}
    for one in named:
        found.setdefault((one.test.id, one.seen.column.name), []).append(one)
    mistaken = {key: own for key, own in found.items() if all(_NUMBER.fullmatch(o.seen.text.strip()) for o in own)}
    kept = tuple(one for one in named if (one.test.id, one.seen.column.name) not in mistaken)
    return kept, tuple(_numbers(declared, own[0]) for own in mistaken.values())


def _numbers(declared: Declared, first: Named) -> Finding:
    name = first.seen.column.name
    quantity = next(q for q in first.test.quantities if name in channels_of(q.formula))
    do = f"Name a logger's file in each cell; or write {name} without the function that looks along it."
    if "slope" in quantity.formula:
        do = f"The slope through parts of a pass is `slope_of_parts({name}, …)`, against another column. Else: {do}"
    return Finding(
        "error",
        "numbers-for-a-trace",
        declared.at(f"quantity/{quantity.id}/formula"),
        f"`{quantity.formula}` looks along a trace, and “{name.replace('_', ' ')}” holds numbers: “{first.seen.text}” "
        f"in {first.seen.at}.",
        "A trace is many samples over time, out of a logger's file.",
        do,
        f"quantity/{quantity.id}",
    )


def unasked(sources: Iterable[Source], named: Sequence[Named]) -> Iterable[Finding]:
    """Sources that say how their logger's files are read, and whose tables name none."""
    for source in dict.fromkeys(s.place for s in sources if s.named and all(n.source != s for n in named)):
        yield Finding(
            "error",
            "readings-without-place",
            source,
            "`rate:`, and `time:` with a unit, tell of a logger's files, and no cell of this table names one.",
            "What the table holds could be taken for something else.",
            "Write `logger:` in place of `file:`, name files in the column of a channel, or take it out.",
        )


def _path(samples: Samples, campaign: Campaign, seen: Seen) -> str:
    path = posixpath.normpath(posixpath.join(campaign.folder, seen.text.strip()))
    if seen.contender == EVERYONE:
        says = f"“{seen.text}” stands with all contenders, and a trace is of one."
        raise refuse("trace-of-all", seen.at, says, do="Name the file with each contender it is of.")
    if exists(samples.ws, path):
        return path
    there = [] if path.startswith("../") else list_files(samples.ws, posixpath.dirname(path))
    near = did_you_mean(seen.text.strip(), [posixpath.relpath(p, campaign.folder or ".") for p in there])
    name = seen.column.name.replace("_", " ")
    raise refuse(
        "missing-file",
        seen.at,
        f"{name}: there is no logger's file “{seen.text}”.",
        f"“{name}” is a trace, so each of its cells names a file from the campaign's folder.",
        f"Did you mean “{near}”?" if near else "Write raw/run-1.csv, or `none (reason)` where nothing was logged.",
    )


def _twice(seen: Seen, already: Place) -> Refused:
    where = f"line {already.line}" if already.file == seen.at.file and not already.sheet else str(already)
    return refuse(
        "file-named-twice",
        seen.at,
        f"“{seen.text}” is named here and already in {where}.",
        "One run would count twice.",
        "Name the file of this pass.",
    )


def _made(samples: Samples, campaign: Campaign, one: Named, path: str) -> Logged:
    """The trace, with all that stands in the cell's row."""
    seen, beside = one.seen, one.seen.beside
    column = next(c for c in campaign.test(one.test.id).columns if c.name == seen.column.name)
    column = _read_off(column, seen)
    says = {
        "contender": seen.contender, "pass": seen.pass_, "part": beside.part, "specimen": beside.specimen,
        "session": beside.session, "round": beside.round_,
    }  # fmt: skip
    logger = one.source.named or Logger("", "", None)
    asked = One(path, column.heading, says)
    made = trace_of_one(samples, one.test, logger, column, asked, "")
    return replace(made, readings=tuple(_with_row(r, seen, one.shown) for r in made.readings))


def _read_off(column: Column, seen: Seen) -> Column:
    return replace(column, instrument=seen.instrument or column.instrument, unit=column.unit or seen.heading_unit)


def _with_row(reading: Reading, seen: Seen, shown: Shown) -> Reading:
    beside = seen.beside
    assert reading.series is not None
    return replace(
        reading,
        time=beside.time,
        note=beside.note,
        conditions=beside.conditions,
        order=seen.order,
        photos=shown.photos,
        film=shown.film,
        series=replace(reading.series, named_in=seen.at),
    )
