"""The type-directed reader: a tree of YAML nodes and a shape → the written record, every message with its place.

Reading never stops at a mistake: what can't be read is reported and replaced by a filler, so that one run finds
all mistakes of a file. A document with errors is refused by the caller once everything is read.
"""

from __future__ import annotations

import dataclasses
from typing import Any, TypeVar, cast

import yaml

from reportgen.addresses import as_id
from reportgen.campaign import swallowed
from reportgen.campaign.did_you_mean import did_you_mean, is_meant
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.scalar import name, without_control_characters
from reportgen.campaign.shape import ANY_TEXT, Either, Key, Keyed, Listed, NotThat, Record, Scalar, Shape, shape_of
from reportgen.campaign.yaml_text import STRANGE, Document
from reportgen.finding import Place, unseen_characters

T = TypeVar("T")


def read_record(document: Document, written: type[T]) -> T:
    """The whole document as one written record; findings are added to the document."""
    shape = shape_of(cast(type, written))
    if document.root is None:
        document.error("empty-file", Place(document.file), "the file is empty", do=f"Write it: {_wants(shape)}.")
        return cast(T, _filler(shape, Place(document.file)))
    return cast(T, read(document, document.root, shape))


def read_names(document: Document, item: Shape) -> tuple[Entry[Any], ...]:
    """The whole document as a mapping from names to `item` (an empty file has none)."""
    if document.root is None:
        return ()
    return cast("tuple[Entry[Any], ...]", read(document, document.root, Keyed(item)))


def read(document: Document, node: yaml.Node, shape: Shape) -> Any:
    """One node read as `shape`; always a value, a filler where it could not be read."""
    if node.tag == STRANGE:
        return _filler(shape, document.place(node))
    if isinstance(shape, Either):
        return _either(document, node, shape)
    if isinstance(shape, Scalar):
        return _scalar(document, node, shape)
    if isinstance(shape, Listed):
        return _listed(document, node, shape)
    if isinstance(shape, Keyed):
        return _keyed(document, node, shape)
    return _record(document, node, shape)


def _either(document: Document, node: yaml.Node, shape: Either) -> Any:
    fits: Shape | None = shape.mapping
    if isinstance(node, yaml.SequenceNode):
        fits = shape.listed
    elif isinstance(node, yaml.ScalarNode):
        fits = shape.scalar
    fallback = shape.listed or shape.scalar or shape.mapping
    assert fallback is not None
    return read(document, node, fits or fallback)


def _scalar(document: Document, node: yaml.Node, shape: Scalar) -> Any:
    place = document.place(node)
    if not isinstance(node, yaml.ScalarNode):
        swallowed.report_wrong_shape(document, node, f"one text is expected here ({shape.title})")
        return _filler(shape, place)
    if is_empty(node) and not shape.may_be_empty:
        document.error("nothing-written", place, f"nothing stands after the colon ({shape.title} is expected)",
                       do="Write it, or take the key out.")  # fmt: skip
        return _filler(shape, place)
    swallowed.check_scalar(document, node, sentence=shape.sentence)
    return _parsed(document, shape, node.value, place)


def _parsed(document: Document, shape: Scalar, text: str, place: Place) -> Given[Any]:
    try:
        without_control_characters(text)
        return Given(shape.parse(text), text, place)
    except NotThat as not_that:
        do = not_that.do or (f"Write it like this: {' · '.join(shape.examples)}" if shape.examples else "")
        document.error("wrong-value", place, not_that.says, do=do)
        return Given(shape.filler, text, place)


def is_empty(node: yaml.Node) -> bool:
    """Nothing was written (quotes around nothing are something)."""
    return isinstance(node, yaml.ScalarNode) and not node.style and node.value == ""


def _listed(document: Document, node: yaml.Node, shape: Listed) -> tuple[Any, ...]:
    if isinstance(node, yaml.SequenceNode):
        return tuple(read(document, item, shape.item) for item in node.value)
    return (read(document, node, shape.item),)


def _keyed(document: Document, node: yaml.Node, shape: Keyed) -> tuple[Entry[Any], ...]:
    if not isinstance(node, yaml.MappingNode):
        swallowed.report_wrong_shape(document, node, "names with a colon after each are expected here")
        return ()
    return _entries(document, node.value, shape)


def _entries(document: Document, pairs: list[tuple[yaml.Node, yaml.Node]], shape: Keyed) -> tuple[Entry[Any], ...]:
    entries: list[Entry[Any]] = []
    seen: dict[str, Entry[Any]] = {}
    for name_node, value_node in pairs:
        given = _name(document, name_node, any_name=shape.any_names)
        if given is None:
            continue
        word = given.value if shape.any_names else as_id(given.value)
        empty = shape.may_be_empty and is_empty(value_node)
        value = None if empty else read(document, value_node, shape.item)
        entry = Entry(given, value, document.place(value_node) if value is not None else given.at)
        if word in seen:
            first = seen[word].name
            document.error(
                "duplicate-name", given.at, f"“{given.value}” stands here twice (first in line {first.at.line})",
                "Names that differ only in spaces, hyphens or capitals are one name.",
                "Give one of them another name, or put the two together.",
            )  # fmt: skip
            continue
        seen[word] = entry
        entries.append(entry)
    return tuple(entries)


def _name(document: Document, node: yaml.Node, *, any_name: bool) -> Given[str] | None:
    text = _key_text(document, node)
    if text is None:
        return None
    place = document.place(node)
    try:
        without_control_characters(text)
        return Given(text if any_name and text else name(text), text, place)
    except NotThat as not_that:
        rule = "name-too-long" if as_id(text) else "name-without-letters"
        document.error(rule, place, not_that.says, do=not_that.do)
        return None


def _key_text(document: Document, node: yaml.Node) -> str | None:
    place = document.place(node)
    if node.tag == STRANGE:
        return None
    if not isinstance(node, yaml.ScalarNode):
        document.error("broken-key", place, "a list or mapping stands where a key should be",
                       do="Quote the key if it begins with ?, [ or {.")  # fmt: skip
        return None
    if node.value == "<<" and not node.style:
        document.error("merge-key", place, "merge keys (<<) are not read",
                       "One line would stand for others elsewhere.", "Write the keys out.")  # fmt: skip
        return None
    return str(node.value).strip()


def _record(document: Document, node: yaml.Node, shape: Record) -> Any:
    place = document.place(node)
    if isinstance(node, yaml.ScalarNode) and shape.short is not None and not is_empty(node):
        return _short(document, node, shape)
    if not isinstance(node, yaml.MappingNode):
        swallowed.report_wrong_shape(document, node, _wants(shape))
        return _filler(shape, place)
    keys = {k.name: k for k in shape.keys}
    values: dict[str, Any] = {}
    seen: dict[str, Place] = {}
    others: list[tuple[yaml.Node, yaml.Node]] = []
    for key_node, value_node in node.value:
        text = _key_text(document, key_node)
        if text is None:
            continue
        at = document.place(key_node)
        if text in seen:
            document.error("duplicate-key", at, f"“{text}” stands here twice (first in line {seen[text].line})",
                           "Only one of them would count.", "Put the two together, or take one out.")  # fmt: skip
            continue
        seen[text] = at
        if text in keys:
            values[keys[text].field] = _value(document, key_node, value_node, keys[text])
        elif shape.rest is not None and not (node.flow_style and is_empty(value_node)):
            others.append((key_node, value_node))
        else:
            _unknown_key(document, node, key_node, value_node, text, shape)
    if shape.rest is not None:
        values[shape.rest.field] = _entries(document, others, cast(Keyed, shape.rest.shape))
    misspelt = [text for text in seen if text not in keys]
    for k in shape.keys:
        if k.required and k.name not in seen and is_meant(k.name, misspelt):
            values[k.field] = _filler(k.shape, place)
        elif k.required and k.name not in seen:
            document.error("missing-key", place, f"“{k.name}:” is missing ({k.says})", do=f"Add a line `{k.name}: …`.")
            values[k.field] = _filler(k.shape, place)
    return _made(shape, values, place)


def _value(document: Document, key_node: yaml.Node, node: yaml.Node, key: Key) -> Any:
    at = document.place(key_node)
    if is_empty(node) and swallowed.check_empty(document, key_node):
        return _filler(key.shape, at) if key.required else key.default
    if is_empty(node):
        document.error("nothing-written", at, f"nothing stands after “{key.name}:”",
                       do="Write it, or take the line out (`not noted` where it wasn't noted).")  # fmt: skip
        return _filler(key.shape, at) if key.required else key.default
    before = len(document.findings)
    value = read(document, node, key.shape)
    if key.required or not any(f.severity == "error" for f in document.findings[before:]):
        return value
    return value if isinstance(key.shape, Listed | Keyed | Record | Either) else key.default


def _unknown_key(
    document: Document, node: yaml.MappingNode, key_node: yaml.Node, value_node: yaml.Node, text: str, shape: Record
) -> None:
    at = document.place(key_node)
    if text in shape.later:
        document.error("later-version", at, f"“{text}:” is not available in this version yet",
                       "It would be read and then have no effect.", "Take it out for now.")  # fmt: skip
    elif node.flow_style and is_empty(value_node):
        document.error(
            "comma-in-braces", at, f"“{text}” became a key of its own: a comma inside braces ends a text",
            do="Quote it: put the whole text, comma and all, in double quotes.",
        )  # fmt: skip
    else:
        known = [k.name for k in shape.keys]
        do = did_you_mean(text.replace("_", " "), known)
        if unseen := unseen_characters(text):
            do = f"{unseen} Delete it and type a plain space, or nothing, in its place. {do}"
        if node.flow_style:
            do += " If it belongs to the text before it, quote that text."
        document.error("unknown-key", at, f"“{text}:” is no key here", do=do)


def _short(document: Document, node: yaml.ScalarNode, shape: Record) -> Any:
    assert shape.short is not None
    swallowed.check_scalar(document, node, sentence=shape.short.pattern == ANY_TEXT)
    return read_short(document, node.value, document.place(node), shape)


def read_short(document: Document, text: str, place: Place, shape: Record) -> Any:
    """A record from its short form."""
    assert shape.short is not None
    try:
        texts = shape.short.parse(text)
    except NotThat as not_that:
        do = not_that.do or f"Write it like this: {' · '.join(shape.short.examples)}"
        document.error("wrong-value", place, not_that.says, do=do)
        return _filler(shape, place)
    values = {k.field: _from_text(document, k.shape, texts[k.name], place) for k in shape.keys if k.name in texts}
    return _made(shape, values, place)


def _from_text(document: Document, shape: Shape, text: str, place: Place) -> Any:
    if isinstance(shape, Listed):
        return (_from_text(document, shape.item, text, place),)
    if isinstance(shape, Either):
        assert isinstance(shape.scalar, Scalar)
        return _parsed(document, shape.scalar, text, place)
    assert isinstance(shape, Scalar)
    return _parsed(document, shape, text, place)


def _made(shape: Record, values: dict[str, Any], place: Place) -> Any:
    if "at" in {f.name for f in dataclasses.fields(shape.type)}:
        values["at"] = place
    return shape.type(**values)


def _filler(shape: Shape, place: Place) -> Any:
    if isinstance(shape, Scalar):
        return Given(shape.filler, "", place)
    if isinstance(shape, Listed | Keyed):
        return ()
    if isinstance(shape, Either):
        first = shape.mapping or shape.listed or shape.scalar
        assert first is not None
        return _filler(first, place)
    return _made(shape, {k.field: _filler(k.shape, place) for k in shape.keys if k.required}, place)


def _wants(shape: Record) -> str:
    needed = [k.name for k in shape.keys if k.required] or [k.name for k in shape.keys[:3]]
    return f"keys are expected here, each with a colon after it: {', '.join(needed)} …"
