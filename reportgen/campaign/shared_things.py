"""Instruments, methods and constants: looked up in the campaign, then the workspace, then the program."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from typing import Generic, TypeVar

from reportgen.addresses import as_id
from reportgen.campaign.constants_of import constant_of
from reportgen.campaign.declared import EVERY, Constant, Instrument, Method, Repeatability
from reportgen.campaign.former_names import former
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.instrument_terms import DEGREES_OF_A_GUESS
from reportgen.campaign.instruments_of import instrument_of
from reportgen.campaign.look_up import error
from reportgen.campaign.shape import shape_of
from reportgen.campaign.written.calibration import WrittenCalibration
from reportgen.campaign.written.shared import WrittenConstant, WrittenInstrument, WrittenMethod
from reportgen.campaign.yaml_reader import read_names, read_record
from reportgen.campaign.yaml_text import Document, compose
from reportgen.finding import Finding, Place, Refused
from reportgen.sources import Workspace, list_files, read_text

T = TypeVar("T")
K = TypeVar("K")


@dataclass(frozen=True)
class Found(Generic[T]):
    """A shared thing and where it stands; `keys`: where what it says of itself stands, by key as written."""

    value: T
    at: Place
    keys: Mapping[str, Place] = field(default_factory=dict)


@dataclass
class Shared:
    """What one place offers. Methods are keyed by (id, version)."""

    instruments: dict[str, Found[Instrument]] = field(default_factory=dict)
    methods: dict[tuple[str, int], Found[Method]] = field(default_factory=dict)
    constants: dict[str, Found[Constant]] = field(default_factory=dict)


def read_shared(ws: Workspace, folder: str, told: list[Finding], origin: str = "") -> Shared:
    """Everything shared in `folder`: instruments.yaml, instruments/, methods/, constants.yaml.

    `origin` names the place on pages where it isn't the file itself ("ready-made").
    """
    shared = Shared()
    for path in list_files(ws, folder):
        inside = posixpath.relpath(path, folder) if folder else path
        try:
            _read_file(ws, path, inside, origin or path, shared, told)
        except Refused as refused:
            told.extend(refused.findings)
    return shared


def _read_file(ws: Workspace, path: str, inside: str, origin: str, shared: Shared, told: list[Finding]) -> None:
    if inside in ("instruments.yaml", "constants.yaml"):
        document = compose(read_text(ws, path), path)
        if inside == "instruments.yaml":
            add_instruments(read_names(document, shape_of(WrittenInstrument)), origin, shared, told)
        else:
            add_constants(read_names(document, shape_of(WrittenConstant)), origin, shared, told)
        told.extend(document.findings)
    elif re.fullmatch(r"instruments/[^/]+\.yaml", inside):
        document = compose(read_text(ws, path), path)
        written = read_record(document, WrittenInstrument)
        told.extend(document.findings)
        stem = _stem(path)
        instrument = instrument_of(stem, written, origin, told)
        _add(shared.instruments, as_id(stem), instrument, Place(path), "instrument", told, keys_of(written))
    elif re.fullmatch(r"methods/[^/]+\.yaml", inside):
        _read_method(compose(read_text(ws, path), path), _stem(path), origin, shared, told)
    elif re.fullmatch(r"(instruments|methods)/[^/]+\.yml|(instruments|constants)\.yml", inside):
        error(
            told, "wrong-ending", Place(path), f"{path} ends in .yml and is not read", do="Rename it to end in .yaml."
        )


def _stem(path: str) -> str:
    return posixpath.basename(path).removesuffix(".yaml")


def _read_method(document: Document, stem: str, origin: str, shared: Shared, told: list[Finding]) -> None:
    place = Place(document.file)
    named = re.fullmatch(r"(.+)\.([1-9][0-9]{0,8})", stem)
    if named is None or not as_id(named[1]):
        says = "a method's file is named after its id and version"
        error(told, "method-without-version", place, says, do=f"Rename it to {as_id(stem) or 'name'}.1.yaml.")
        return
    written = read_record(document, WrittenMethod)
    told.extend(document.findings)
    id, version = as_id(named[1]), int(named[2])
    method = method_of(id, version, written, origin, told)
    _add(shared.methods, (id, version), method, place, "method", told, keys_of(written))


def keys_of(written: WrittenInstrument | WrittenCalibration | WrittenConstant | WrittenMethod) -> dict[str, Place]:
    """Where each key of a description stands, those of its calibration among them; of points the first."""
    found: dict[str, Place] = {}
    for each in fields(written):
        value = getattr(written, each.name)
        if isinstance(value, WrittenCalibration):
            found |= keys_of(value)
        elif isinstance(value, Given):
            found[each.name.replace("_", " ")] = value.at
        elif isinstance(value, tuple) and value:
            found[each.name.replace("_", " ")] = value[0].at
    return found


def _add(
    places: dict[K, Found[T]],
    id: K,
    value: T,
    at: Place,
    what: str,
    told: list[Finding],
    keys: Mapping[str, Place] | None = None,
) -> None:
    if id in places:
        name = ".".join(str(p) for p in id) if isinstance(id, tuple) else str(id)
        says = f"the {what} “{name}” is described twice: here and in {places[id].at}"
        error(told, "described-twice", at, says, "Nobody could say which of them counts.", "Take one of them out.")
    else:
        places[id] = Found(value, at, keys or {})


def add_instruments(
    entries: tuple[Entry[WrittenInstrument], ...], origin: str, shared: Shared, told: list[Finding]
) -> None:
    """Add the instruments of one file, each named by its key."""
    for entry in entries:
        instrument = instrument_of(entry.name.value, entry.value, origin, told)
        _add(shared.instruments, instrument.id, instrument, entry.name.at, "instrument", told, keys_of(entry.value))


def add_constants(
    entries: tuple[Entry[WrittenConstant], ...], origin: str, shared: Shared, told: list[Finding]
) -> None:
    """Add the constants of one file, each named by its key."""
    for entry in entries:
        constant = constant_of(entry.name.value, entry.value, origin, told)
        _add(shared.constants, constant.id, constant, entry.name.at, "constant", told, keys_of(entry.value))


def method_of(id: str, version: int, written: WrittenMethod, origin: str, told: list[Finding]) -> Method:
    """A version of a method as later stages know it."""
    w = written
    return Method(
        id=id, version=version, title=w.title.value, origin=origin,
        scatter=w.scatter.value if w.scatter else "common",
        order=w.order.value if w.order else "",
        repeatability=_repeatability(written, told),
        from_past=_from_past(written),
        between_sessions=w.between_sessions.value if w.between_sessions else None,
        between_specimens=w.between_specimens.value if w.between_specimens else None,
        chained=w.chained.value if w.chained else False,
        did_not_finish=w.did_not_finish.value if w.did_not_finish else "not ranked",
        steps=tuple(s.value for s in w.steps),
        cautions=tuple(s.value for s in w.cautions),
        cannot_tell=tuple(s.value for s in w.cannot_tell),
        says=w.says.value if w.says else "",
        changed=w.changed.value if w.changed else "",
        formerly=former(w.formerly),
    )  # fmt: skip


def _repeatability(written: WrittenMethod, told: list[Finding]) -> Mapping[str, Repeatability]:
    """Standard deviations by quantity; their degrees of freedom are passes less products, one mean each."""
    r = written.repeatability
    if r is None:
        return {}
    passes, products = (r.passes.value if r.passes else 0), (r.products.value if r.products else 1)
    degrees = passes - products
    source = r.source.value if r.source else f"{passes} passes over {products} products" if passes else ""
    found = {}
    for entry in r.each:
        sd = entry.value.value
        if sd is None:
            continue
        if sd.guess:
            found[as_id(entry.name.value)] = Repeatability(
                sd, DEGREES_OF_A_GUESS, r.source.value if r.source else "a guess"
            )
        elif degrees < 1:
            says = "this repeatability doesn't say what it was found from"
            why = "How far it can be trusted depends on the number of passes behind it."
            do = "Give `passes:` and `products:` (more passes than products), or write “, a guess” after the value."
            error(told, "repeatability-without-passes", entry.at, says, why, do)
        else:
            found[as_id(entry.name.value)] = Repeatability(sd, degrees, source)
    return found


def _from_past(written: WrittenMethod) -> tuple[str, ...]:
    """The quantities for which past campaigns are asked; EVERY where the method asks for all that it states none of."""
    r = written.repeatability
    if r is None:
        return ()
    every = (EVERY,) if r.past_campaigns and r.past_campaigns.value else ()
    return (*every, *(as_id(e.name.value) for e in r.each if e.value.value is None))
