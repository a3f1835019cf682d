"""readings: everything that was read, as it was written, a row each."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.as_shown import correction_of
from reportgen.intake.reading import Reading, ReadingKey, Readings
from reportgen.opendata.table import Column, Shape, Table, name_of, spaced, table_of
from reportgen.record.plain import number
from reportgen.record.trace import from_folder

SHAPE = Shape(
    "readings",
    (
        Column("reading", always=True),
        Column("test", always=True),
        Column("contender", refers="contenders.contender", always=True),
        Column("specimen", always=True),
        Column("pass", always=True),
        Column("part"),
        Column("name", always=True),
        Column("typed"),
        Column("value", "number"),
        Column("unit"),
        Column("limit", among=("above", "below")),
        Column("word"),
        Column("absent_because"),
        Column("half_width", "number"),
        Column("corrected", "number"),
        Column("instrument"),
        Column("shared", "boolean", always=True),
        Column("beside"),
        Column("session"),
        Column("round"),
        Column("time"),
        Column("conditions"),
        Column("note"),
        Column("left_out_of"),
        Column("left_out_because"),
        Column("amended_from"),
        Column("channel"),
        Column("samples", "integer"),
        Column("attachment"),
        Column("page", "integer"),
        Column("file", always=True),
        Column("sheet"),
        Column("line", "integer"),
        Column("column", "integer"),
    ),
)


Place = tuple[str, str, str, str, int, int]  # contender, name, file, sheet, line, column


def readings(record: Mapping[str, Any], campaign: Campaign, read: Readings) -> Table:
    """All readings, file by file as they stand there."""
    why = {c["id"]: c["says"] for c in record["caveat_list"]}
    left_out = _left_out(record)
    ordered = sorted(read.readings.items(), key=lambda kr: (kr[1].at.file, kr[1].at.sheet, kr[1].order, kr[0]))
    rows = []
    for k, r in ordered:
        file = from_folder(r.at.file, campaign.folder)
        out = left_out.get(_place(k, r, file), {})
        because = " / ".join(dict.fromkeys(why.get(out[quantity], out[quantity]) for quantity in sorted(out)))
        rows.append({**_row(k, r, campaign, file), "left_out_of": spaced(sorted(out)), "left_out_because": because})
    return table_of(SHAPE, rows)


def _row(k: ReadingKey, r: Reading, campaign: Campaign, file: str) -> dict[str, Any]:
    added = correction_of(campaign.instruments.get(r.instrument), r)
    return {
        "reading": name_of(k.test, k.contender, k.specimen, k.pass_, k.part, k.name),
        "test": k.test,
        "contender": k.contender,
        "specimen": k.specimen,
        "pass": k.pass_,
        "part": k.part,
        "name": k.name,
        "typed": r.text,
        "value": number(float(r.value)) if r.value is not None else None,
        "unit": r.unit,
        "limit": r.limit,
        "word": r.word,
        "absent_because": r.absent_because,
        "half_width": number(float(r.width)) if r.width is not None else None,
        "corrected": number(float(r.value) + added) if added is not None and r.value is not None else None,
        "instrument": r.instrument,
        "shared": r.for_all,
        "beside": r.beside,
        "session": r.session,
        "round": r.round_,
        "time": r.time,
        "conditions": "; ".join(f"{name}: {said}" for name, said in r.conditions),
        "note": r.note,
        "amended_from": r.was,
        "channel": r.series.heading if r.series else None,
        "samples": r.series.samples if r.series else None,
        "attachment": r.attachment,
        "page": r.page,
        "file": file,
        "sheet": r.at.sheet,
        "line": r.at.line or None,
        "column": r.at.column or None,
    }


def _place(k: ReadingKey, r: Reading, file: str) -> Place:
    return (k.contender, k.name, file, r.at.sheet, r.at.line, r.at.column)


def _left_out(record: Mapping[str, Any]) -> dict[Place, dict[str, str]]:
    """Where a reading stands → the quantities it is left out of, each with the exclusion that says so."""
    found: dict[Place, dict[str, str]] = {}
    for result in record["results"]:
        for one in result["by_pass"]:
            for r in one["readings"] if one["excluded"] else ():
                contender = r.get("contender", result["contender"])
                at = (contender, r["name"], r["file"], r.get("sheet", ""), r["line"], r.get("column", 0))
                found.setdefault(at, {})[result["quantity"]] = one["excluded"]
    return found
