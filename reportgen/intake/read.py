"""Every table of a campaign → its readings. All that is wrong in all files is found in one run."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from reportgen.campaign.declared import Campaign, Declared, Source, Test
from reportgen.finding import Finding, Refused, in_order
from reportgen.intake.happened.amended import amended
from reportgen.intake.happened.attachments import wrong_attachments
from reportgen.intake.happened.came import Came, come_to, written_in
from reportgen.intake.happened.for_all import served
from reportgen.intake.layouts.instruments import off_instruments
from reportgen.intake.layouts.layout import look
from reportgen.intake.layouts.left_out import wrong_left_out
from reportgen.intake.layouts.missing import Look, Unread, left_unread, missing_columns, unread_inline
from reportgen.intake.layouts.parts import parts_missing
from reportgen.intake.layouts.pictured import shown_in, with_shown
from reportgen.intake.layouts.repeated import told_once
from reportgen.intake.layouts.seen import Glance
from reportgen.intake.layouts.specimens import of_specimens
from reportgen.intake.logger.named import Named, apart, by_their_names, read_named, unasked, without_numbers
from reportgen.intake.logger.read import read_loggers, without_loggers
from reportgen.intake.logger.samples import Samples
from reportgen.intake.logger.unfound import without_a_file
from reportgen.intake.names import names_of
from reportgen.intake.notations.against import NOTHING_THERE, wrong_against
from reportgen.intake.observe import as_readings, numbered, without_doubles
from reportgen.intake.opening import Opened, expected_headings, name_of, open_source
from reportgen.intake.reading import RawFile, Reading, Readings
from reportgen.intake.sheets.held import as_held, fitting
from reportgen.intake.table import Spot, Table
from reportgen.intake.to_come import tested_after_all
from reportgen.sources import Workspace

DAMAGE = frozenset(
    {"not-utf-8", "nul-character", "empty-table", "quotes", "ragged-row", "heading-twice", "no-heading"}
    | {"two-encodings", "wrong-encoding", "not-in-code-page", "not-utf-16", "cut-short", "password"}
    | {"damaged-spreadsheet", "no-spreadsheet", "other-spreadsheet", "damaged-parquet", "no-parquet"}
)


def read_readings(ws: Workspace, declared: Declared, samples: Samples | None = None) -> Readings:
    """The readings of a campaign, each with its file, line and cell. Raises `Refused` with every error found.

    A test takes its own columns from each of its sources; a file may serve many tests. Raw files are only read.
    `samples` are the logger files, kept open for who works with them next.
    """
    samples = samples or Samples(ws)
    logged = read_loggers(samples, declared.campaign)
    campaign = without_loggers(declared.campaign)
    campaign = replace(campaign, tests=tuple(by_their_names(t) for t in campaign.tests))
    known = expected_headings(campaign)
    sources = {name_of(campaign, s): s for t in campaign.tests for s in t.sources}
    opened = {name: open_source(ws, campaign, source, known) for name, source in sources.items()}
    opened, righted, mismatches = amended(declared, opened)
    looks = {
        test.id: tuple(
            (table, look(table, source, test, campaign))
            for source in test.sources
            if (table := opened[name_of(campaign, source)].table) is not None
        )
        for test in campaign.tests
    }
    unread = _unread(campaign, looks)
    readings, findings, named = _readings(campaign, looks, opened)
    traces, of_numbers = without_numbers(declared, named)
    traced = read_named(samples, declared.campaign, traces)
    spare_form = unasked(sources.values(), named) if all(o.table is not None for o in opened.values()) else ()
    kept, doubles = without_doubles((*readings, *logged.readings, *traced.readings))
    of_files = [f for o in opened.values() for f in o.findings]
    whole = all(o.table is not None for o in opened.values())
    missing = missing_columns(campaign, looks, unread) if whole else ()
    inline = [o.table for name, o in opened.items() if o.table is not None and not sources[name].file]
    spare = [f for table in inline for f in unread_inline(table, unread[table.spot])]
    unread_cells = any(f.severity == "error" for f in findings)  # what stands in them may be what another stands on
    against = [f for f in wrong_against(kept) if f.rule != NOTHING_THERE or not unread_cells]
    against += (*wrong_left_out(campaign, _leaving_out(campaign, opened)), *tested_after_all(declared, kept))
    beyond = (*against, *wrong_attachments(ws, declared, kept.values()), *parts_missing(campaign, kept))
    of_files = [*of_files, *of_numbers, *without_a_file(ws, declared.campaign, kept)]
    of_traces = (*logged.findings, *traced.findings, *spare_form)
    found = [*mismatches, *of_traces, *of_files, *findings, *missing, *doubles, *spare, *beyond]
    whole = whole and not any(f.severity == "error" for f in found)
    came = come_to(declared, kept, righted, looks) if whole else Came(kept)
    everything = told_once(in_order(dict.fromkeys((*found, *came.findings))))
    if any(f.severity == "error" for f in everything):
        raise Refused(everything)
    files = (*_files(opened, unread), *logged.files, *traced.files)
    files = tuple(sorted((*files, *written_in(ws, came.readings, files)), key=lambda f: f.path))
    return Readings(came.readings, files, everything, *_order(looks), came.incidents, came.counted_for)


def damage(ws: Workspace, declared: Declared) -> tuple[Finding, ...]:
    """What is wrong with files of readings whatever the campaign takes from them: their bytes, quotes, rows."""
    campaign = declared.campaign
    known = expected_headings(campaign)
    sources = {name_of(campaign, s): s for t in campaign.tests for s in t.sources if s.file and not s.logger}
    found = [f for source in sources.values() for f in open_source(ws, campaign, source, known).findings]
    return told_once(in_order(f for f in found if f.rule in DAMAGE))


def _readings(
    campaign: Campaign, looks: Mapping[str, tuple[Look, ...]], opened: Mapping[str, Opened]
) -> tuple[list[Reading], list[Finding], list[Named]]:
    """What stands in tables: readings, and cells that name the file of a trace."""
    readings: list[Reading] = []
    findings: list[Finding] = []
    named: list[Named] = []
    names = names_of(campaign)
    for test in campaign.tests:
        own: list[Reading] = []
        read_off = [off_instruments(glance.seen, campaign) for _, glance in looks[test.id]]
        of_units = [of_specimens(seen, campaign) for seen, _ in read_off]
        findings.extend(f for _, unknown in (*read_off, *of_units) for f in unknown)
        glances = [replace(g, seen=seen) for (_, g), (seen, _) in zip(looks[test.id], of_units, strict=True)]
        by_table, unclear = numbered(glances, test)
        findings.extend(unclear)
        sources = [s for s in test.sources if opened[name_of(campaign, s)].table is not None]
        for (table, glance), source, cells in zip(looks[test.id], sources, by_table, strict=True):
            cells, unfit = fitting(table, cells, test)
            shown, unseen = shown_in(table, cells, campaign)
            cells, of_files = apart(cells, test, source, shown)
            named.extend(of_files)
            made, wrong = as_readings(cells, test, table.comma, campaign.by_unit, names)
            made = as_held(table, made)
            own.extend(with_shown(made, shown))
            findings.extend((*glance.findings, *unfit, *wrong, *unseen))
        all_served, unserved = served(own, test, campaign)
        readings.extend(all_served)
        findings.extend(unserved)
    return readings, findings, named


def _leaving_out(campaign: Campaign, opened: Mapping[str, Opened]) -> list[tuple[Source, Table]]:
    """The sources that leave rows out, each once, with their tables."""
    found: list[tuple[Source, Table]] = []
    for source in (s for t in campaign.tests for s in t.sources if s.leave_out):
        table = opened[name_of(campaign, source)].table
        if table is not None and all(source != s for s, _ in found):
            found.append((source, table))
    return found


def _unread(campaign: Campaign, looks: Mapping[str, tuple[Look, ...]]) -> dict[Spot, Unread]:
    """By table: what no test of the campaign takes."""
    by_table: dict[Spot, list[tuple[Test, Table, Glance]]] = {}
    for test in campaign.tests:
        for table, glance in looks[test.id]:
            by_table.setdefault(table.spot, []).append((test, table, glance))
    return {spot: left_unread(seen) for spot, seen in by_table.items()}


def _order(looks: Mapping[str, tuple[Look, ...]]) -> tuple[dict[str, bool], dict[str, bool]]:
    """By test: whether every table it has readings from shows the order of work, and whether it has rounds."""
    full = {test: [g for _, g in each if g.seen] for test, each in looks.items()}
    ordered = {test: bool(each) and all(g.ordered for g in each) for test, each in full.items()}
    return ordered, {test: bool(each) and all(g.rounds for g in each) for test, each in full.items()}


def _files(opened: Mapping[str, Opened], unread: Mapping[Spot, Unread]) -> tuple[RawFile, ...]:
    """Each file once, by path. What a table typed in the YAML has to spare is a finding; nothing of it is kept here."""
    files: dict[str, RawFile] = {}
    for each in opened.values():
        if each.raw is not None and each.table is not None:
            left = unread[each.table.spot]
            spare = (*left.headings, *left.entries) if each.raw.headings else ()
            files[each.raw.path] = _together(files.get(each.raw.path), replace(each.raw, unread=spare))
    return tuple(files[path] for path in sorted(files))


def _together(first: RawFile | None, other: RawFile) -> RawFile:
    """One file of which two sheets were read, or one sheet twice."""
    if first is None:
        return other
    return replace(
        first,
        headings=tuple(dict.fromkeys((*first.headings, *other.headings))),
        unread=tuple(dict.fromkeys((*first.unread, *other.unread))),
        sheets=tuple(dict.fromkeys((*first.sheets, *other.sheets))),
    )
