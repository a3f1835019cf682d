"""Which specimen a row is of: the contender's own names for the units bought, and no others."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign, Contender
from reportgen.finding import Finding, Place, Refused
from reportgen.intake.layouts.seen import Seen
from reportgen.intake.table import did_you_mean, spelt

_USUAL = "or name the `usual specimen:` of the contender."
BY_ROW = "This row", f"Add a column `specimen` that says which one was used, {_USUAL}"
BY_FILE = (
    "This file",
    f"Put {{specimen}} into its name and the pattern, `raw/run-{{contender}}-{{specimen}}-{{pass}}.csv`, {_USUAL}",
)


def of_specimens(seen: Iterable[Seen], campaign: Campaign) -> tuple[tuple[Seen, ...], tuple[Finding, ...]]:
    """Each cell with its specimen as the contender declares it. Contenders that declare none keep what is written.

    An empty cell of a specimen that its contender hasn't is none: in a wide table one has more of them than another.
    Findings: a specimen nobody declared; a cell without one where there are several.
    """
    declared = {c.id: c for c in campaign.contenders if c.specimens}
    known = {id: {as_id(s.id): s.id for s in c.specimens} for id, c in declared.items()}
    kept: list[Seen] = []
    wrong: dict[tuple[str, str, int], Finding] = {}
    for cell in seen:
        specimen = cell.beside.specimen
        if cell.contender in declared:
            specimen = _specimen(specimen, known[cell.contender], declared[cell.contender].usual_specimen)
        if cell.contender not in declared or (not cell.text and not cell.beside.specimen):
            kept.append(cell)
        elif specimen:
            kept.append(replace(cell, beside=replace(cell.beside, specimen=specimen)))
        elif cell.text:
            row = (cell.contender, cell.at.file, cell.at.line)
            wrong.setdefault(row, _unknown(cell.at, cell.beside.specimen, declared[cell.contender], BY_ROW))
    return tuple(kept), tuple(wrong.values())


def specimen_of_a_trace(written: str, contender: str, campaign: Campaign, at: Place) -> str:
    """The specimen a logger's file is of, as the contender declares it. Raises `Refused` as rows of a table do."""
    declared = next((c for c in campaign.contenders if c.id == contender and c.specimens), None)
    if declared is None:
        return written
    found = _specimen(written, {as_id(s.id): s.id for s in declared.specimens}, declared.usual_specimen)
    if not found:
        raise Refused([_unknown(at, written, declared, BY_FILE)])
    return found


def _specimen(written: str, known: Mapping[str, str], usual: str) -> str:
    if not written:
        return next(iter(known.values())) if len(known) == 1 else usual
    return known.get(as_id(written), "")


def _unknown(at: Place, written: str, contender: Contender, by: tuple[str, str]) -> Finding:
    names = [s.id for s in contender.specimens]
    what, do = by
    if not written:
        says = f"{what} doesn't say which specimen of {contender.title} it is of; there are {spelt(names)}."
    else:
        near = did_you_mean(written, names)
        says = f"{contender.title} has no specimen “{written}”; there are {spelt(names)}."
        do = f"Did you mean “{near}”?" if near else f"Correct it, or add it under `specimens:` of {contender.id}."
    why = "Each specimen is one value: passes of two units don't tell how far one unit repeats."
    return Finding("error", "unknown-specimen", at, says, why, do)
