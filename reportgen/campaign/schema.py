"""JSON Schemas (draft 2020-12) of the files an author writes, printed from the shapes the reader walks.

What a schema can't say (names that exist, files that are there, a 30 February) the reader still checks.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from reportgen.campaign.shape import Key, Keyed, Listed, Record, Scalar, Shape, Short, shape_of
from reportgen.campaign.written.campaign import WrittenCampaign
from reportgen.campaign.written.contender import WrittenContender
from reportgen.campaign.written.publication import WrittenPublication
from reportgen.campaign.written.shared import WrittenConstant, WrittenInstrument, WrittenMethod
from reportgen.campaign.written.test import WrittenTest
from reportgen.campaign.written.verdict import WrittenVerdict

DIALECT = "https://json-schema.org/draft/2020-12/schema"
FileKind = Literal[
    "campaign", "contender", "test", "method", "instruments", "instrument", "constants", "verdict", "publication"
]
SHAPES: Mapping[FileKind, Record | Keyed] = {
    "campaign": shape_of(WrittenCampaign),
    "contender": shape_of(WrittenContender),
    "test": shape_of(WrittenTest),
    "method": shape_of(WrittenMethod),
    "instruments": Keyed(shape_of(WrittenInstrument)),
    "instrument": shape_of(WrittenInstrument),
    "constants": Keyed(shape_of(WrittenConstant)),
    "verdict": shape_of(WrittenVerdict),
    "publication": shape_of(WrittenPublication),
}
FILE_KINDS: tuple[FileKind, ...] = tuple(SHAPES)


def schema_of(kind: FileKind) -> dict[str, Any]:
    """The schema of one kind of file."""
    defined: dict[str, Any] = {}
    shape = SHAPES[kind]
    body = _record(shape, defined) if isinstance(shape, Record) else _keyed(shape, defined)
    return {"$schema": DIALECT, "title": f"{kind}.yaml", **body, "$defs": dict(sorted(defined.items()))}


def _of(shape: Shape, defined: dict[str, Any]) -> dict[str, Any]:
    if isinstance(shape, Scalar):
        return _scalar(shape)
    if isinstance(shape, Listed):
        item = _of(shape.item, defined)
        return {"anyOf": [item, {"type": "array", "items": item}]}
    if isinstance(shape, Keyed):
        return _keyed(shape, defined)
    if isinstance(shape, Record):
        return _reference(shape, defined)
    either = [_of(s, defined) for s in dict.fromkeys((shape.scalar, shape.listed, shape.mapping)) if s is not None]
    return {"anyOf": either}


def _scalar(shape: Scalar) -> dict[str, Any]:
    said: dict[str, Any] = {"title": shape.title}
    if shape.choices:
        return {**said, "type": "string", "enum": list(shape.choices)}
    said["type"] = list(shape.types) if len(shape.types) > 1 else shape.types[0]
    if shape.pattern:
        said["pattern"] = shape.pattern
    if shape.least is not None:
        said["minimum"] = shape.least
    if shape.examples:
        said["examples"] = list(shape.examples)
    return said


def _keyed(shape: Keyed, defined: dict[str, Any]) -> dict[str, Any]:
    item = _of(shape.item, defined)
    if shape.may_be_empty:
        item = {"anyOf": [item, {"type": "null"}]}
    names = {} if shape.any_names else {"propertyNames": {"pattern": "[A-Za-z0-9]"}}
    return {"type": "object", **names, "additionalProperties": item}


def _reference(shape: Record, defined: dict[str, Any]) -> dict[str, Any]:
    name = shape.type.__name__.removeprefix("Written").lower()
    if name not in defined:
        defined[name] = {}
        body = _record(shape, defined)
        defined[name] = {"anyOf": [_short(shape.short), body]} if shape.short else body
    return {"$ref": f"#/$defs/{name}"}


def _short(short: Short) -> dict[str, Any]:
    return {"title": "in one line", "type": "string", "pattern": short.pattern, "examples": list(short.examples)}


def _record(shape: Record, defined: dict[str, Any]) -> dict[str, Any]:
    said: dict[str, Any] = {
        "description": shape.says,
        "type": "object",
        "properties": {k.name: _described(k, defined) for k in shape.keys},
        "additionalProperties": False,
    }
    if shape.rest is not None:
        assert isinstance(shape.rest.shape, Keyed)
        said["additionalProperties"] = _of(shape.rest.shape.item, defined)
    required = [k.name for k in shape.keys if k.required]
    return {**said, "required": required} if required else said


def _described(key: Key, defined: dict[str, Any]) -> dict[str, Any]:
    return {"description": key.says, **_of(key.shape, defined)}
