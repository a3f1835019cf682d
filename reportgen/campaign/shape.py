"""The shapes an author's file can have, made from annotated dataclasses.

One source for three things: the reader walks a shape, the JSON Schema is printed from it, and the dataclass is
the type the rest of the room works with. A field's annotation says what stands there:

- ``Annotated[Given[T], Scalar(...)]``  one scalar, read by the grammar's own parser
- ``tuple[X, ...]``                     a list of X; a single X may stand without its dash
- ``tuple[Entry[X], ...]``              a mapping from the author's names to X
- a dataclass                          a mapping with fixed keys; with a short form, a scalar too
- ``X | Y``                             whichever fits the kind of YAML node (mapping, list, scalar)
- ``X | None``                          may be left out
"""

from __future__ import annotations

import dataclasses
import types
import typing
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Union

from reportgen.campaign.given import Entry, Given


class NotThat(Exception):
    """A scalar isn't what its key needs: `says` what is wrong with it, `do` what to write instead."""

    def __init__(self, says: str, do: str = "") -> None:
        self.says, self.do = says, do
        super().__init__(says)


@dataclass(frozen=True)
class Scalar:
    """A grammar for one scalar. `parse` raises NotThat; `pattern` (ECMA 262) accepts just what it accepts.

    `filler` stands in for a value that could not be read, so that the rest is still checked; the file is refused
    anyway. `types` are the JSON types an editor may see in the plain text (`25` is a number there), `least` their
    lower end. `sentence`: free words.
    """

    title: str
    parse: Callable[[str], Any]
    pattern: str = ""
    filler: Any = ""
    examples: tuple[str, ...] = ()
    choices: tuple[str, ...] = ()
    types: tuple[str, ...] = ("string",)
    least: int | None = None
    sentence: bool = False
    may_be_empty: bool = False


@dataclass(frozen=True)
class Key:
    """One key of a record: as written in YAML, the field it fills, what stands there."""

    name: str
    field: str
    shape: Shape
    required: bool
    says: str
    default: Any


@dataclass(frozen=True)
class Short:
    """A record's short form: one scalar that stands for several keys. `parse` maps key → text; raises NotThat."""

    parse: Callable[[str], Mapping[str, str]]
    pattern: str = ""
    examples: tuple[str, ...] = ()


@dataclass(frozen=True)
class Record:
    type: type
    title: str
    says: str
    keys: tuple[Key, ...]
    short: Short | None
    later: tuple[str, ...]  # keys that a later version will know
    rest: Key | None = None  # what any other name stands for, where names of the author's stand beside the keys


@dataclass(frozen=True)
class Listed:
    item: Shape


@dataclass(frozen=True)
class Keyed:
    """`any_names`: the names are shown and make no ids (units, sources of a claim)."""

    item: Shape
    may_be_empty: bool = False
    any_names: bool = False


@dataclass(frozen=True)
class Either:
    scalar: Scalar | Record | None
    listed: Listed | None
    mapping: Record | Keyed | None


ANY_TEXT = r"\S"  # the pattern of free words
Shape = Scalar | Record | Listed | Keyed | Either


def key(says: str, name: str = "", *, required: bool = False, any_names: bool = False) -> Any:
    """A field of a written record: `says` is its description in the schema, `name` its key where not the field's."""
    metadata = {"says": says, "name": name, "required": required, "any_names": any_names}
    if required:
        return dataclasses.field(metadata=metadata)
    return dataclasses.field(default=None, metadata=metadata)


def many(says: str, name: str = "", *, required: bool = False, any_names: bool = False) -> Any:
    """A list or mapping; where it isn't required, it is empty where nothing is written."""
    metadata = {"says": says, "name": name, "required": required, "any_names": any_names}
    return dataclasses.field(default=(), metadata=metadata)


def rest(says: str) -> Any:
    """The names of the author's own that stand beside a record's keys, as entries."""
    return dataclasses.field(default=(), metadata={"says": says, "name": "*", "required": False})


@cache
def shape_of(written: type) -> Record:
    """The shape of a written record (a frozen dataclass of this room)."""
    hints = typing.get_type_hints(written, include_extras=True)
    keys = []
    for f in dataclasses.fields(written):
        if "says" not in f.metadata:
            continue
        name = f.metadata["name"] or f.name.rstrip("_").replace("_", " ")
        default = None if f.default is dataclasses.MISSING else f.default
        shape = _shape(hints[f.name])
        if f.metadata.get("any_names"):
            shape = _with_any_names(shape)
        keys.append(Key(name, f.name, shape, f.metadata["required"], f.metadata["says"], default))
    rest = next((k for k in keys if k.name == "*"), None)
    doc = (written.__doc__ or "").strip()
    short: Short | None = getattr(written, "SHORT", None)
    later: tuple[str, ...] = getattr(written, "LATER", ())
    return Record(
        written, doc.partition("\n")[0].rstrip("."), doc, tuple(k for k in keys if k is not rest), short, later, rest
    )


def _shape(hint: Any) -> Shape:
    origin = typing.get_origin(hint)
    if origin is typing.Annotated:
        return next(a for a in typing.get_args(hint)[1:] if isinstance(a, Scalar))
    if origin in (Union, types.UnionType):
        return _either([a for a in typing.get_args(hint) if a is not type(None)])
    if origin is tuple:
        item = typing.get_args(hint)[0]
        if typing.get_origin(item) is Entry:
            inner = typing.get_args(item)[0]
            return Keyed(_shape(inner), may_be_empty=type(None) in typing.get_args(inner))
        return Listed(_shape(item))
    if dataclasses.is_dataclass(hint) and isinstance(hint, type):
        return shape_of(hint)
    raise TypeError(f"no shape for {hint!r}")


def _with_any_names(shape: Shape) -> Shape:
    if isinstance(shape, Either):
        assert isinstance(shape.mapping, Keyed)
        return dataclasses.replace(shape, mapping=dataclasses.replace(shape.mapping, any_names=True))
    assert isinstance(shape, Keyed)
    return dataclasses.replace(shape, any_names=True)


def _either(hints: list[Any]) -> Shape:
    shapes = [_shape(h) for h in hints]
    if len(shapes) == 1:
        return shapes[0]
    scalar = next((s for s in shapes if isinstance(s, Scalar)), None)
    listed = next((s for s in shapes if isinstance(s, Listed)), None)
    mapping = next((s for s in shapes if isinstance(s, Record | Keyed)), None)
    if scalar is None and isinstance(mapping, Record) and mapping.short:
        return Either(mapping, listed, mapping)
    return Either(scalar, listed, mapping)


__all__ = [
    "ANY_TEXT", "Either", "Entry", "Given", "Key", "Keyed", "Listed", "NotThat", "Record", "Scalar", "Shape", "Short",
    "key", "many", "rest", "shape_of",
]  # fmt: skip
