"""Which instrument a cell was read off, where the table says so: in a column of its own, or behind a heading."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign, Declared
from reportgen.finding import Finding
from reportgen.intake.layouts.seen import Seen
from reportgen.intake.reading import Readings
from reportgen.intake.table import did_you_mean


def off_instruments(seen: Iterable[Seen], campaign: Campaign) -> tuple[tuple[Seen, ...], tuple[Finding, ...]]:
    """Each cell with the instrument that its row, else its heading names: `gas burned before (g, bench-scale)`.

    Findings: an instrument nobody described, once for each row.
    """
    kept: list[Seen] = []
    wrong: dict[tuple[str, int], Finding] = {}
    for cell in seen:
        unit, of_heading = _apart(cell.heading_unit, campaign)
        named = as_id(cell.beside.instrument) if cell.text else ""
        if named and named not in campaign.shelf:
            wrong.setdefault((cell.at.file, cell.at.line), _unknown(cell, campaign))
        kept.append(dataclasses.replace(cell, heading_unit=unit, instrument=named or of_heading))
    return tuple(kept), tuple(wrong.values())


def _apart(behind: str, campaign: Campaign) -> tuple[str, str]:
    """What stands in brackets behind a heading as unit and instrument; a piece of one or two letters is a unit."""
    pieces = [p.strip() for p in behind.split(",")]
    named = [p for p in pieces if len(p) > 2 and as_id(p) in campaign.shelf]
    return ", ".join(p for p in pieces if p not in named), as_id(named[0]) if len(named) == 1 else ""


def with_instruments(declared: Declared, readings: Readings) -> Declared:
    """The campaign with the instruments that only its tables name."""
    campaign = declared.campaign
    used = {r.instrument for r in readings.readings.values()} & campaign.shelf.keys()
    if used <= campaign.instruments.keys():
        return declared
    instruments = {**campaign.instruments, **{id: campaign.shelf[id] for id in used}}
    ordered = dict(sorted(instruments.items()))
    return dataclasses.replace(declared, campaign=dataclasses.replace(campaign, instruments=ordered))


def _unknown(cell: Seen, campaign: Campaign) -> Finding:
    near = did_you_mean(cell.beside.instrument, campaign.shelf)
    name = as_id(cell.beside.instrument) or "its-name"
    described = f"describe it in instruments.yaml: `{name}: 0.1 g, up to 2000 g`."
    return Finding(
        "error",
        "unknown-instrument",
        cell.at,
        f"There is no instrument “{cell.beside.instrument}”, which this row was read off.",
        "How far its readings may be off can't be known.",
        f"Did you mean “{near}”? Or {described}" if near else described[:1].upper() + described[1:],
    )
