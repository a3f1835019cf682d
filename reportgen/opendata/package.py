"""datapackage.json: what is in a campaign's data, in the form of the Data Package standard, version 2."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign, Publication
from reportgen.opendata.citing.citation import Citation
from reportgen.opendata.files import DataFile, PassedOn, media_type
from reportgen.opendata.table import Column, Shape
from reportgen.wording.language import say

PROFILE = "https://datapackage.org/profiles/2.0/datapackage.json"
LICENCE_FILE = "licence.txt"
# Forms whose bytes the standard's own validator never counts: it would call any number of them wrong. Their digests
# stand in checksums.sha256.
UNCOUNTED = ("parquet", "ods")
Row = dict[str, Any]


def data_package(
    campaign: Campaign, publication: Publication, cited: Citation, files: Sequence[DataFile], raw: Sequence[PassedOn]
) -> bytes:
    """The descriptor. `version` is the issue; `created` stands only where the campaign says on which day it was
    published."""
    also = {f.table.shape.name: f for f in files if f.table and f.form == "parquet"}
    resources = [_made(f, also) for f in files if f not in also.values()] + [_raw(f) for f in raw]
    told: Row = {
        "$schema": PROFILE,
        "name": campaign.id,
        "id": f"https://doi.org/{cited.doi}" if cited.doi else "",
        "title": campaign.title,
        "description": campaign.question,
        "homepage": cited.address,
        "version": cited.issue,
        "created": f"{cited.released}T00:00:00Z" if cited.released else "",
        "keywords": list(dict.fromkeys([*(q.title for t in campaign.tests for q in t.quantities)])),
        "contributors": [
            _filled({"title": cited.author, "roles": ["creator"]}),
            *([{"title": cited.publisher, "roles": ["Distributor"]}] if cited.publisher != cited.author else ()),
        ],
        "licenses": [_licence(cited)] if cited.licence else [],
        "sources": _sources(campaign),
        "resources": _named_apart(resources),
    }
    return (json.dumps(_filled(told), ensure_ascii=False, indent=1) + "\n").encode()


def table_schema(shape: Shape) -> Row:
    """A table's columns in the form of Table Schema: types, what stands in each, what may stand there."""
    return _filled(
        {
            "fields": [_field(shape, column) for column in shape.columns],
            "missingValues": [""],
            "primaryKey": [shape.key],
            "foreignKeys": [_refers(column) for column in shape.columns if column.refers],
        }
    )


def _field(shape: Shape, column: Column) -> Row:
    rules = _filled({"required": column.always, "unique": column.name == shape.key, "enum": list(column.among)})
    return _filled(
        {
            "name": column.name,
            "type": column.type,
            "description": shape.describes(column),
            "unit": column.unit,
            "constraints": rules,
        }
    )


def _refers(column: Column) -> Row:
    table, _, field = column.refers.partition(".")
    return {"fields": [column.name], "reference": {"resource": table, "fields": [field]}}


def _made(f: DataFile, also: Mapping[str, DataFile]) -> Row:
    """A table is one resource, its CSV; the same as Parquet (`also`, by the table's name) stands beside, not for
    itself: it is no other data."""
    if f.table is None:
        name = f.path.rpartition("/")[2]
        return {"name": as_id(name), **_file(f, say(f"opendata.file.{name}")), "encoding": "utf-8"}
    shape = f.table.shape
    return {
        "name": shape.name,
        "type": "table",
        **_file(f, shape.title),
        "description": shape.holds,
        "encoding": "utf-8",
        "schema": table_schema(shape),
        "alsoAs": [_file(also[shape.name], shape.title)],
    }


def _raw(f: PassedOn) -> Row:
    told = {"name": as_id(f.path), **_file(f, say("opendata.file.raw", name=f.path.removeprefix("files/")))}
    return {key: value for key, value in told.items() if f.form not in UNCOUNTED or key not in ("bytes", "hash")}


def _file(f: DataFile | PassedOn, title: str) -> Row:
    return _filled(
        {
            "path": f.path,
            "title": title,
            "format": f.form,
            "mediatype": media_type(f.form),
            "bytes": f.size,
            "hash": f"sha256:{f.digest}",
        }
    )


def _named_apart(resources: Iterable[Row]) -> list[Row]:
    """The same with names that no two share: `raw/a b.csv` and `raw/a-b.csv` have one id."""
    taken: set[str] = set()
    made = []
    for resource in resources:
        name, n = resource["name"], 1
        while resource["name"] in taken:
            n += 1
            resource = {**resource, "name": f"{name}-{n}"}
        taken.add(resource["name"])
        made.append(resource)
    return made


def _licence(cited: Citation) -> Row:
    licence = cited.licence
    assert licence is not None
    return _filled({"name": licence.id, "path": licence.address or LICENCE_FILE, "title": licence.said})


def _sources(campaign: Campaign) -> list[Row]:
    """The laboratories' reports that results rest on."""
    found = {}
    for test in campaign.tests:
        if (lab := test.laboratory) is not None:
            title = say("opendata.source.laboratory", name=lab.name, number=lab.number or lab.report)
            found[title] = _filled({"title": title, "path": f"files/{lab.report}" if lab.report else ""})
    return list(found.values())


def _filled(row: Row) -> Row:
    """Without what says nothing."""
    return {key: value for key, value in row.items() if value or (value == 0 and value is not False)}
