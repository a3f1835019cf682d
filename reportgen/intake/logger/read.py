"""The logger files of a campaign → readings that stand for traces."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from reportgen.addresses import in_formula
from reportgen.campaign.channels import channels_of
from reportgen.campaign.declared import Campaign, Column, Logger, Source, Test
from reportgen.finding import Finding, Place, Refused
from reportgen.intake.layouts.seen import as_label
from reportgen.intake.layouts.specimens import specimen_of_a_trace
from reportgen.intake.logger.asked import Ask, Channel
from reportgen.intake.logger.files import IN_NAMES, LoggerFile, files_of
from reportgen.intake.logger.layout import Layout
from reportgen.intake.logger.pace import pace_of
from reportgen.intake.logger.samples import Samples
from reportgen.intake.logger.told import impossible, no_column, nobody, notes
from reportgen.intake.names import contenders_in, spellings, unknown_contender
from reportgen.intake.reading import RawFile, Reading, ReadingKey, Series
from reportgen.intake.table import without_unit

HERTZ = {
    "Hz": 1.0,
    "kHz": 1000.0,
    "1/s": 1.0,
    "/s": 1.0,
    "1/min": 1 / 60,
    "/min": 1 / 60,
    "1/h": 1 / 3600,
    "/h": 1 / 3600,
}


@dataclass(frozen=True)
class Logged:
    """What the logger files of a campaign gave."""

    readings: tuple[Reading, ...] = ()
    findings: tuple[Finding, ...] = ()
    files: tuple[RawFile, ...] = ()


@dataclass(frozen=True)
class One:
    """One trace that is asked for: where, of whom, and what stands beside it."""

    file: str
    heading: str
    says: Mapping[str, str]
    only: tuple[tuple[str, str], ...] = ()


def channel_columns(test: Test) -> tuple[Column, ...]:
    """The test's columns that its formulas look along, or that are declared with a logger's files."""
    named = {name for q in test.quantities for name in channels_of(q.formula)}
    named |= {name for s in test.sources if s.logger for name in s.logger.columns}
    return tuple(c for c in test.columns if c.name in named)


def without_loggers(campaign: Campaign) -> Campaign:
    """The campaign as its tables are read: logger files and their channels left out."""
    return replace(campaign, tests=tuple(_without(test) for test in campaign.tests))


def _without(test: Test) -> Test:
    tables = tuple(s for s in test.sources if s.logger is None)
    if len(tables) == len(test.sources):
        return test
    channels = channel_columns(test)
    return replace(test, sources=tables, columns=tuple(c for c in test.columns if c not in channels))


def read_loggers(samples: Samples, campaign: Campaign) -> Logged:
    """Every trace of a campaign. What is wrong comes back as findings, all of it in one run."""
    readings: list[Reading] = []
    findings: list[Finding] = []
    files: dict[str, RawFile] = {}
    for test in campaign.tests:
        for source in test.sources:
            if source.logger is None:
                continue
            for column in _asked(test, source.logger):
                for made in _traces(samples, campaign, test, source, source.logger, column):
                    findings += made.findings
                    readings += (replace(r, order=len(readings) + i) for i, r in enumerate(made.readings))
                    for file in made.files:
                        before = files.get(file.path, file)
                        spare = tuple(h for h in before.unread if h in file.unread)
                        files[file.path] = replace(file, unread=spare)
    return Logged(tuple(readings), tuple(dict.fromkeys(findings)), tuple(files.values()))


def _asked(test: Test, logger: Logger) -> tuple[Column, ...]:
    return tuple(c for c in channel_columns(test) if not logger.columns or c.name in logger.columns)


def _traces(
    samples: Samples, campaign: Campaign, test: Test, source: Source, logger: Logger, column: Column
) -> Iterator[Logged]:
    """One channel in each file of a source."""
    try:
        files, findings = files_of(samples.ws, campaign, source, logger)
    except Refused as refused:
        yield Logged(findings=refused.findings)
        return
    yield Logged(findings=findings)
    for file in files:
        try:
            for one in _in_file(samples, campaign, source, logger, column, file):
                specimen = one.says.get("specimen", "")
                own = specimen_of_a_trace(specimen, one.says["contender"], campaign, Place(one.file))
                known = replace(one, says={**one.says, "specimen": own})
                yield trace_of_one(samples, test, logger, column, known, source.encoding)
        except Refused as refused:
            if file.says.get("contender") in test.not_yet_tested and all(
                f.rule == "empty-table" for f in refused.findings
            ):
                continue  # its headings wait for the run
            missing = [
                replace(f, place=source.place if f.rule == "missing-file" else f.place) for f in refused.findings
            ]
            yield Logged(findings=tuple(missing))


def _in_file(
    samples: Samples, campaign: Campaign, source: Source, logger: Logger, column: Column, file: LoggerFile
) -> Iterator[One]:
    """The traces of one channel in one file: one, or one for each contender and pass that columns of it name."""
    asked = {role: source.roles.get(role, role) for role in IN_NAMES if role not in file.says}
    wanted = (column.heading, logger.time, *asked.values(), *spellings(campaign))
    samples.raw(file.path, source.encoding)
    layout = samples.layout(file.path, wanted)
    roles = {role: h for role, h in asked.items() if layout.find(h) is not None}
    missing = next((source.roles[r] for r in asked if r in source.roles and r not in roles), "")
    if missing:
        raise Refused([no_column(file.path, layout, missing)])
    if "contender" in file.says or "contender" in roles:
        yield from _by_columns(samples, campaign, column, file, layout, roles)
        return
    named = contenders_in((n for h in layout.headings if h for n in (h, without_unit(h)[0])), campaign)
    people = {h: c for h in layout.headings if h and (c := named[h] or named[without_unit(h)[0]])}
    if not people:
        raise Refused([nobody(file.path, layout)])
    for heading, contender in people.items():
        yield One(file.path, heading, {**file.says, "contender": contender})


def _by_columns(
    samples: Samples, campaign: Campaign, column: Column, file: LoggerFile, layout: Layout, roles: Mapping[str, str]
) -> Iterator[One]:
    if not roles:
        yield One(file.path, column.heading, file.says)
        return
    wrong: dict[str, Finding] = {}
    for texts in samples.different(file.path, layout, tuple(roles.values())):
        says = {**file.says, **dict(zip(roles, map(as_label, texts), strict=True))}
        if "contender" in roles:
            contender = contenders_in([says["contender"]], campaign)[says["contender"]]
            if contender is None:
                wrong[says["contender"]] = unknown_contender(
                    says["contender"], campaign, Place(file.path, layout.heading_line)
                )
                continue
            says["contender"] = contender
        yield One(file.path, column.heading, says, tuple(zip(roles.values(), texts, strict=True)))
    if wrong:
        raise Refused(wrong.values())


def trace_of_one(samples: Samples, test: Test, logger: Logger, column: Column, one: One, encoding: str) -> Logged:
    """One trace: its samples loaded and looked through. Raises `Refused` with what can't be."""
    declared = column.unit or _of_its_quantity(test, column)
    rate = float(logger.rate.value) * HERTZ[logger.rate.unit] if logger.rate else None
    ask = Ask(one.file, one.heading, logger.time, logger.unit, rate, one.only, declared, encoding)
    channel = samples.channel(ask)
    pace = pace_of(times for times, _, _ in samples.of(channel))
    wrong = tuple(impossible(one.file, pace, lambda sample: samples.line(channel, sample)))
    if wrong:
        raise Refused(wrong)
    layout, raw = channel.layout, channel.raw
    first, last = samples.line(channel, 0), samples.line(channel, channel.samples - 1)
    series = Series(
        one.file,
        raw.digest,
        one.heading,
        logger.time,
        rate,
        channel.unit,
        column.instrument,
        first,
        last,
        samples=channel.samples,
        begins=0.0,
        ends=pace.ends,
        only=one.only,
        time_unit=logger.unit,
        declared_unit=declared if column.unit or not channel.unit else "",
        encoding=encoding,
        decimals=_decimals(channel),
        interval=pace.interval,
        gaps=tuple(pace.gaps),
        clock=samples.clock(channel),
    )
    says = one.says
    key = ReadingKey(
        test.id, says["contender"], says.get("specimen") or "1", as_label(says.get("pass") or "1"),
        says.get("part", ""), column.name,
    )  # fmt: skip
    reading = Reading(
        key, one.heading, None, column.unit or channel.unit or declared, column.instrument, Place(one.file, first),
        decimals=series.decimals, session=says.get("session", ""), round_=says.get("round", ""), series=series,
    )  # fmt: skip
    taken = {one.heading, logger.time or layout.headings[0], *(h for h, _ in one.only)}
    unread = tuple(h for h in layout.headings if h and layout.find(h) not in {layout.find(t) for t in taken})
    file = RawFile(one.file, raw.digest, raw.size, tuple(filter(None, layout.headings)), unread, encoding=raw.encoding)
    return Logged((reading,), (*raw.notes, *notes(series, test, column, says["contender"], pace)), (file,))


def _of_its_quantity(test: Test, column: Column) -> str:
    """The unit of the quantity that bears the channel's name: its own where neither file nor column tells one."""
    return next((q.unit for q in test.quantities if in_formula(q.id) == column.name), "")


def _decimals(channel: Channel) -> int:
    """The digits behind the decimal sign, as many as the first samples show."""
    cells = channel.layout.cells(channel.index)
    digits = (re.search(r"^[^.,eE]*[.,]([0-9]+)$", cell) for cell in cells)
    return max((len(found[1]) for found in digits if found), default=0)
