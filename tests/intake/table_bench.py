"""A campaign of two contenders in a few lines, and its readings from files written here."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from reportgen.addresses import as_id, in_formula
from reportgen.campaign.declared import (
    Campaign,
    Column,
    Contender,
    Declared,
    Film,
    Kind,
    Photo,
    Quantity,
    Source,
    Test,
)
from reportgen.finding import Finding, Place, Refused
from reportgen.intake import Reading, Readings, read_readings
from reportgen.sources import Workspace

CONTENDERS = (
    Contender("corvane", "Corvane Sol"),
    Contender("ostler", "Ostler Mk II", also_called=("the red one",)),
)
FILMS = (Film("main", "main", "https://example.org/film"),)
PHOTOS = (Photo("display", "display.jpg", "The display reads 16.5 kg."),)
FILE = "readings.csv"
NAMED_AT = Place("campaign.yaml", 14, 11)


def source(file: str = FILE, **roles: str) -> Source:
    return Source(file=file, roles=roles, place=NAMED_AT)


def measure(
    name: str,
    unit: str = "g",
    kind: Kind = "one reading",
    *,
    headings: tuple[str, ...] = (),
    sources: tuple[Source, ...] = (),
    grades: tuple[str, ...] = (),
    conditions: tuple[str, ...] = (),
    not_yet_tested: tuple[str, ...] = (),
    instrument: str = "",
) -> Test:
    """A test of one quantity; `headings` are its columns (its own name where none is given)."""
    columns = tuple(Column(in_formula(h), h, unit, instrument) for h in headings or (name,))
    reads = tuple(c.name for c in columns)
    quantity = Quantity(as_id(name), as_id(name), name, kind, reads[0], unit, "lower", reads, grades=grades)
    return Test(
        as_id(name),
        name,
        (quantity,),
        quantity.id,
        columns,
        sources or (source(),),
        own_sources=bool(sources),
        conditions=conditions,
        not_yet_tested=not_yet_tested,
    )


def weighed(name: str = "gas burned", **more: object) -> Test:
    return measure(name, "g", "weighed before and after", headings=(f"{name} before", f"{name} after"), **more)  # type: ignore[arg-type]  # a slip fails the test


def read(folder: Path, files: str | bytes | Mapping[str, str | bytes], *tests: Test) -> Readings:
    """Writes the files (a text alone is readings.csv) and reads the campaign; raises `Refused`."""
    for name, content in (files if isinstance(files, Mapping) else {FILE: files}).items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content.encode() if isinstance(content, str) else content)
    campaign = Campaign("stoves", "", "Stoves", "", CONTENDERS, tests, {}, {}, {}, films=FILMS, photos=PHOTOS)
    return read_readings(Workspace(folder, ("",), True), Declared(campaign, {}))


def errors(folder: Path, files: str | bytes | Mapping[str, str | bytes], *tests: Test) -> tuple[Finding, ...]:
    """The errors of a campaign that must be refused; fails where it is not."""
    try:
        read(folder, files, *tests)
    except Refused as refused:
        return tuple(f for f in refused.findings if f.severity == "error")
    raise AssertionError("read without an error")


def the_error(folder: Path, files: str | bytes | Mapping[str, str | bytes], *tests: Test) -> Finding:
    """The only error, which must say what is wrong and what to do."""
    (found,) = errors(folder, files, *tests)
    assert found.says
    assert found.do
    return found


def by_key(readings: Readings) -> dict[tuple[str, str, str], Reading]:
    """Contender, pass and name → reading."""
    return {(k.contender, k.pass_, k.name): r for k, r in readings.readings.items()}
