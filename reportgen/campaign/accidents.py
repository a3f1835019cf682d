"""Slips put right, two records of one reading, and assumptions, as later stages know them."""

from __future__ import annotations

import dataclasses
import posixpath
from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from reportgen.addresses import as_id, in_formula
from reportgen.campaign.columns import names_in
from reportgen.campaign.declared import Amendment, Amount, Assumption, Narrowing, Test, TwoRecords
from reportgen.campaign.declared.remarks import NOT_KNOWN
from reportgen.campaign.given import Entry
from reportgen.campaign.look_up import error, is_misshapen, look_up
from reportgen.campaign.written.accidents import WrittenAmendment, WrittenAssumption, WrittenTwoRecords
from reportgen.finding import Finding, Place


def amendments(
    prefix: str, written: Sequence[WrittenAmendment], places: dict[str, Place], told: list[Finding]
) -> tuple[Amendment, ...]:
    """Each with its id; `prefix` begins those of one test. `places` gains where they stand."""
    found = []
    for i, w in enumerate(written, 1):
        places[f"amendment/{prefix}{i}"] = w.at
        if w.cell is not None and (w.line is not None or w.column is not None):
            says = "this says in two ways which cell is meant"
            error(told, "amendment-without-cell", w.at, says, do="Keep `line:` and `column:`, or `cell: C5`.")
            continue
        if w.cell is None and (w.line is None or w.column is None):
            if is_misshapen(told, w.at.file) or any(_inside(f.place, w.at) for f in told):
                continue
            says = "this doesn't say which cell is meant"
            error(told, "amendment-without-cell", w.at, says, do="Write `line:` and `column:`, or `cell: C5`.")
            continue
        was, is_ = w.from_.value.strip() if w.from_ else "", w.to.value
        if was == is_:
            says = f"this changes “{was}” into itself"
            error(told, "amends-nothing", w.to.at, says, do="Correct `from:` or `to:`, or take the amendment out.")
        line, number = w.cell.value if w.cell else (w.line.value if w.line else 0, 0)
        column, sheet = w.column.value if w.column else "", w.sheet.value if w.sheet else ""
        seen_by = w.seen_by.value if w.seen_by else ""
        file = posixpath.normpath(w.file.value)
        found.append(Amendment(f"{prefix}{i}", file, line, column, was, is_, w.why.value, seen_by, sheet, number))
    return tuple(found)


def _inside(place: Place, at: Place) -> bool:
    """Whether a mistake told already stands in the amendment that begins at `at`, as far as lines tell."""
    return (place.file, place.line) == (at.file, at.line)


def two_records(
    prefix: str,
    written: Sequence[WrittenTwoRecords],
    test: str,
    tests: Mapping[str, object],
    contenders: Mapping[str, str],
    places: dict[str, Place],
    told: list[Finding],
) -> tuple[TwoRecords, ...]:
    """Each with its id and the test it stands in ("" in the campaign, unless it names one)."""
    found = []
    for i, w in enumerate(written, 1):
        where, said = w.where, tuple(s.value for s in w.said)
        places[f"records/{prefix}{i}"] = w.at
        if len(set(said)) < 2:
            do = "Write both: `said: [212 g, 221 g]`."
            error(told, "one-record", w.at, "two records are two different ones, and here is one", do=do)
        if w.used.value not in (*said, NOT_KNOWN):
            do = "Write one of them, just as it stands under `said:`, or `not known`, by which both stand."
            says = f"“{w.used.value}” is used, and neither record says so: {', '.join(said)}"
            error(told, "unknown-record", w.used.at, says, do=do)
        named = look_up(where.test, {t: t for t in tests}, "test", told)
        if test and named and named != test:
            says = f"this stands in the test {test} and names the test {named}"
            error(told, "said-twice", where.at, says, do="Take `test:` out, or move it to that test.")
        about = Narrowing(
            (),
            "" if as_id(where.contender.value) == "all" else look_up(where.contender, contenders, "contender", told),
            where.specimen.value if where.specimen else "",
            where.pass_.value if where.pass_ else "",
            where.part.value if where.part else "",
        )
        found.append(
            TwoRecords(f"{prefix}{i}", about, where.reading.value, said, w.used.value, w.because.value, test or named)
        )
    return tuple(found)


def assumptions(
    several: Iterable[Sequence[Entry[WrittenAssumption]]], prefix: str, places: dict[str, Place], told: list[Finding]
) -> tuple[Assumption, ...]:
    """Assumptions of a test (and its quantities), or of the campaign; the same name twice is an error."""
    found: dict[str, Assumption] = {}
    for entry in (e for entries in several for e in entries):
        id, w = as_id(entry.name.value), entry.value
        if id in found and places[f"assumption/{prefix}{id}"] != entry.name.at:
            says = f"“{entry.name.value}” is assumed twice, the other time in {places[f'assumption/{prefix}{id}']}"
            error(told, "duplicate-name", entry.name.at, says, do="Give one of them another name.")
        unit = w.within.value.unit
        value = w.value.value if w.value else Amount(Decimal(0), unit, f"0 {unit}".strip())
        alike = bool(w.alike and w.alike.value)
        found[id] = Assumption(id, value, w.within.value, w.because.value, alike, unsaid=w.value is None)
        places[f"assumption/{prefix}{id}"] = entry.name.at
    return tuple(found.values())


def with_assumed(
    tests: Sequence[Test], of_all: Sequence[Assumption], places: Mapping[str, Place], told: list[Finding]
) -> tuple[Test, ...]:
    """The tests, each with those of the campaign's assumptions that its formulas name; one that none names is told."""
    used: set[str] = set()
    found = []
    for test in tests:
        names = {name for q in test.quantities for name in names_in(q.formula)}
        own = {a.id for a in test.assumed}
        joining = tuple(a for a in of_all if in_formula(a.id) in names and a.id not in own)
        used |= {a.id for a in joining}
        spare = (a for a in test.assumed if in_formula(a.id) not in names)
        told += [_unused(a, places[f"assumption/{test.id}/{a.id}"]) for a in spare]
        found.append(dataclasses.replace(test, assumed=(*test.assumed, *joining)))
    told += [_unused(a, places[f"assumption/{a.id}"]) for a in of_all if a.id not in used]
    return tuple(found)


def _unused(a: Assumption, at: Place) -> Finding:
    return Finding(
        "warning", "unused-assumption", at, f"No formula names “{a.id}”, so this assumption has no effect.",
        "What was assumed was meant to widen a result.", "Name it in a formula, or take it out.",
    )  # fmt: skip
