"""What a later stage would find wrong although an earlier one refuses: as much as can be known, all in one run.

Only mistakes that don't follow from the earlier ones are told, so that mending those never shows one of these to
have been none.
"""

from __future__ import annotations

import posixpath
from dataclasses import replace
from typing import TYPE_CHECKING

from reportgen.finding import Finding, Refused

if TYPE_CHECKING:
    from reportgen.campaign.declared import Declared
    from reportgen.sources import Workspace


def in_readings_and_formulas(workspace: Workspace, declared: Declared) -> tuple[Finding, ...]:
    """Errors in the tables and formulas of those tests whose own files are in order.

    `declared` may be refused itself, its findings beside it: where campaign.yaml has an error, only what is wrong with
    the files as such is told; where a contender has one, rows of unknown contenders aren't.
    """
    from reportgen.intake import damage, read_readings

    files = {f.place.file for f in declared.findings if f.severity == "error"}
    whole = declared.at("").file not in files
    in_order = tuple(t for t in declared.campaign.tests if whole and declared.at(f"test/{t.id}").file not in files)
    read = {posixpath.normpath(s.file) for t in in_order for s in t.sources}
    amended = tuple(a for a in declared.campaign.amendments if a.file in read)
    part = replace(declared, campaign=replace(declared.campaign, tests=in_order, amendments=amended, two_records=()))
    found = list(damage(workspace, declared))
    try:
        read_readings(workspace, part)
    except Refused as refused:
        unsure = any("contenders" in file for file in files)
        found += [f for f in refused.findings if not (unsure and f.rule in ("unknown-contender", "missing-column"))]
    found += in_formulas(part)
    return tuple(f for f in dict.fromkeys(found) if f.severity == "error")


def in_formulas(declared: Declared) -> tuple[Finding, ...]:
    """Errors in formulas, units and constants, for which no reading is needed."""
    from reportgen.evaluation.prepared import prepare

    try:
        prepare(declared)
    except Refused as refused:
        return refused.findings
    return ()
