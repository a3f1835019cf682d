"""Which layout a table has, told from its headings: bench log, long or wide."""

from __future__ import annotations

from dataclasses import replace

from reportgen.campaign.declared import Campaign, Source, Test
from reportgen.finding import Finding
from reportgen.intake.layouts.left_out import headings_left_out, without_left_out
from reportgen.intake.layouts.log import read_log
from reportgen.intake.layouts.long import read_long
from reportgen.intake.layouts.seen import Glance, contender_headings, frame_of, missing_heading
from reportgen.intake.layouts.wide import read_wide
from reportgen.intake.names import EVERYONE
from reportgen.intake.table import Table

LOG = frozenset({"contender", "what", "value"})


def look(table: Table, source: Source, test: Test, campaign: Campaign) -> Glance:
    """The table as this test sees it.

    A bench log has the columns contender, what and value; a long table has contender; a wide one has contenders as
    headings. Anything else is an error that says so.
    """
    frame = frame_of(table, source.roles, test)
    if frame.findings:
        return Glance((), frame.findings, frame.asked(table), known=False)
    table = without_left_out(table, source, frame)
    if frame.roles.keys() >= LOG:
        return read_log(table, frame, test, campaign)
    if "contender" in frame.roles:
        return read_long(table, frame, test, campaign)
    people = set(contender_headings(table, campaign).values())
    if people - {EVERYONE} or (people and "what" in frame.roles):
        alone = sum(s == source for t in campaign.tests for s in t.sources) == 1
        glance = read_wide(table, frame, test, campaign, alone)
        return replace(glance, asked=glance.asked | headings_left_out(table, source))
    return Glance((), (_neither(table),), frame.asked(table), known=False)


def _neither(table: Table) -> Finding:
    return missing_heading(table, "contender", "and none of its headings is a contender")
