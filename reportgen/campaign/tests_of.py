"""Tests and their quantities as later stages know them."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from reportgen.addresses import as_id, in_formula
from reportgen.campaign.columns import ColumnsWritten, declared_columns, names_in, source_of
from reportgen.campaign.declared import Column, Method, Quantity, Source, Test
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.kinds import KINDS
from reportgen.campaign.look_up import error, unknown
from reportgen.campaign.written.measure import WrittenQuantity
from reportgen.campaign.written.test import MethodName, WrittenAboutTest, WrittenMeasure, WrittenTest
from reportgen.finding import Finding, Place

LOG_COLUMNS = frozenset(
    {
        "time",
        "contender",
        "specimen",
        "what",
        "value",
        "unit",
        "pass",
        "part",
        "round",
        "session",
        "note",
        "photo",
        "film",
    }
)


@dataclass(frozen=True)
class Known:
    """What a test may draw on: instruments there are, the campaign's instrument for each unit, methods, readings."""

    folder: str
    instrument: Callable[[Given[str]], str]  # a name → its id, telling where there is none
    is_instrument: Callable[[str], bool]
    by_unit: Mapping[str, str]
    method: Callable[[Given[MethodName]], Method | None]
    readings: tuple[Source, ...]


@dataclass(frozen=True)
class BuiltTest:
    test: Test
    written: WrittenAboutTest
    places: Mapping[str, Place]


def test_of(id: str, written: WrittenTest, at: Place, known: Known, told: list[Finding]) -> BuiltTest:
    """A test of a file of its own."""
    if not written.quantities:
        error(told, "test-without-quantities", at, "this test reports no quantity", do="Name one under `quantities:`.")
    return _built(id, written.title.value, written, written.quantities, None, written.headline, at, known, told)


def measured_of(entry: Entry[WrittenMeasure], known: Known, told: list[Finding]) -> BuiltTest:
    """An entry of `measure:`: a test with one quantity of the same id."""
    label, written = entry.name, entry.value
    title = written.title.value if written.title else label.value.replace("_", " ")
    quantities = (Entry[WrittenQuantity](label, written, entry.at),)
    return _built(as_id(label.value), title, written, quantities, written.columns, None, label.at, known, told)


test_of.__test__ = False  # type: ignore[attr-defined]  # its name is no test's


def _built(
    id: str,
    title: str,
    written: WrittenAboutTest,
    entries: Sequence[Entry[WrittenQuantity]],
    more_columns: ColumnsWritten,
    headline: Given[str] | None,
    at: Place,
    known: Known,
    told: list[Finding],
) -> BuiltTest:
    places = {f"test/{id}": at, f"readings/{id}": written.readings[0].at if written.readings else at}
    columns: dict[str, Column] = {}
    for some in (more_columns, *(s.columns for s in written.readings)):
        _take(declared_columns(some, places, id), columns, places, id, told)
    _check_instruments(written, more_columns, columns, known, told)
    quantities = tuple(_quantity(e, id, columns, places, known, told) for e in entries)
    filled = tuple(_filled(c, known) for c in columns.values())
    sources = tuple(source_of(s, known.folder, told) for s in written.readings)
    method = known.method(written.method) if written.method else None
    if written.method:
        places[f"test/{id}/method"] = written.method.at
    test = Test(
        id=id,
        title=title,
        quantities=quantities,
        headline=_headline(headline, quantities, at, told),
        columns=filled,
        sources=sources or known.readings,
        own_sources=bool(sources),
        method=method.id if method else "",
        method_version=method.version if method else 0,
        scatter=written.scatter.value if written.scatter else method.scatter if method else "common",
        order=written.order.value if written.order else method.order if method else "",
        chained=written.chained.value if written.chained else method.chained if method else False,
        why=written.why.value if written.why else "",
        cautions=tuple(c.value for c in written.cautions),
        cannot_tell=tuple(c.value for c in written.cannot_tell),
        conditions=tuple(c.value for c in written.conditions),
    )
    return BuiltTest(test, written, places)


def _take(
    new: Iterable[Column], columns: dict[str, Column], places: Mapping[str, Place], test: str, told: list[Finding]
) -> None:
    for column in new:
        if columns.setdefault(column.name, column) != column:
            says = f"the reading “{column.name}” is described differently in two of this test's tables"
            error(told, "described-twice", places[f"column/{test}/{column.name}"], says, do="Give them two names.")


def _check_instruments(
    written: WrittenAboutTest, more: ColumnsWritten, columns: dict[str, Column], known: Known, told: list[Finding]
) -> None:
    """Instruments named by columns; `g` and `bench-scale` change places where the short form mistook them."""
    for some in (more, *(s.columns for s in written.readings)):
        for one in some or ():
            if isinstance(one, Given) or one.value is None:
                continue
            unit, instrument = _sorted_out(one.value.unit, one.value.instrument, known)
            name = in_formula(one.name.value)
            columns[name] = dataclasses.replace(
                columns[name],
                unit=unit.value if unit else "",
                instrument=known.instrument(instrument) if instrument else "",
            )


def _sorted_out(
    unit: Given[str] | None, instrument: Given[str] | None, known: Known
) -> tuple[Given[str] | None, Given[str] | None]:
    mistaken = unit is not None and len(unit.value) > 2 and known.is_instrument(unit.value)  # “s” is the second
    if mistaken and (instrument is None or not known.is_instrument(instrument.value)):
        return instrument, unit
    return unit, instrument


def _quantity(
    entry: Entry[WrittenQuantity],
    test: str,
    columns: dict[str, Column],
    places: dict[str, Place],
    known: Known,
    told: list[Finding],
) -> Quantity:
    label, w = entry.name.value, entry.value
    id, at = as_id(label), entry.name.at
    _place(places, id, entry)
    if id in LOG_COLUMNS:
        why = "A bench log has a column of that name, and its cells would be taken for readings."
        error(told, "name-of-a-log-column", at, f"no quantity can be called “{label}”", why, "Give it a longer name.")
    kind = w.kind.value if w.kind else "grade" if w.grades else ""
    if not kind and w.formula is None:
        if in_formula(label) in columns:
            kind = "one reading"
        elif not any(f.severity == "error" and f.place.line == at.line and f.place.file == at.file for f in told):
            says = f"“{label}” has neither a kind nor a formula"
            error(told, "quantity-without-formula", at, says, do=f"Add `kind:` ({', '.join(KINDS)}) or `formula:`.")
    unit, instrument = _sorted_out(w.unit, w.instrument, known)
    _check_kind(kind, w, unit, at, label, told)
    formula = w.formula.value if w.formula else KINDS[kind].writes(label) if kind else in_formula(label)
    unit_text = unit.value if unit else ""
    instrument_id = known.instrument(instrument) if instrument else ""
    headings = {in_formula(h): h for h in KINDS[kind].headings(label)} if kind else {}
    named = names_in(formula)
    reads = tuple(n for n in named if n in columns or n in headings)
    for name in reads:
        own = columns.get(name, Column(name, headings.get(name, name)))
        of_kind = name in headings
        columns[name] = dataclasses.replace(
            own,
            unit=own.unit or (unit_text if of_kind else ""),
            instrument=own.instrument or instrument_id,
        )
    return Quantity(
        id=id, test=test, title=w.title.value if w.title else label.replace("_", " "), kind=kind, formula=formula,
        unit=unit_text, better=w.better.value if w.better else "neither", reads=reads,
        matters=w.matters.value if w.matters else None, instrument=instrument_id,
        over_parts=w.over_parts.value if w.over_parts else "",
        over_passes=w.over_passes.value if w.over_passes else "",
        until=w.until.value if w.until else None,
        grades=tuple(g.value for g in w.grades),
        says=w.says.value if w.says else "",
    )  # fmt: skip


def _check_kind(
    kind: str, w: WrittenQuantity, unit: Given[str] | None, at: Place, label: str, told: list[Finding]
) -> None:
    if not kind:
        return
    of = KINDS[kind]  # type: ignore[index]
    if of.needs_unit and unit is None:
        says = f"“{label}” has no unit"
        error(told, "quantity-without-unit", at, says, do=f"Add it, for instance `unit: {of.usual_unit}`.")
    if not of.numeric and unit is not None:
        says = f"a {kind} has no unit, and “{unit.value}” is neither a direction nor an instrument"
        error(told, "unit-of-words", unit.at, says, do="Take it out.")
    if kind == "grade" and len(w.grades) < 2:
        do = "Add `grades: [poor, fair, good]`, worst first."
        error(told, "grade-without-grades", at, f"“{label}” doesn't say which grades there are", do=do)
    if w.grades and kind != "grade":
        error(told, "grades-of-numbers", at, f"“{label}” lists grades and is of kind {kind}", do="Write `kind: grade`.")
    if w.until and kind != "run to a limit":
        says = f"“{label}” runs to a limit and is of kind {kind}"
        error(told, "limit-of-another-kind", w.until.at, says, do="Write `kind: run to a limit`.")


def _place(places: dict[str, Place], id: str, entry: Entry[WrittenQuantity]) -> None:
    places[f"quantity/{id}"] = entry.name.at
    for name in ("formula", "unit", "matters", "until", "better", "instrument", "kind"):
        given = getattr(entry.value, name)
        if given is not None:
            places[f"quantity/{id}/{name}"] = given.at


def _filled(column: Column, known: Known) -> Column:
    return column if column.instrument else dataclasses.replace(column, instrument=known.by_unit.get(column.unit, ""))


def _headline(given: Given[str] | None, quantities: Sequence[Quantity], at: Place, told: list[Finding]) -> str:
    ids = [q.id for q in quantities]
    if given is not None and as_id(given.value) not in ids:
        told.append(unknown(given, ids, "quantity of this test"))
    elif given is not None:
        return as_id(given.value)
    elif len(ids) > 1:
        do = f"Add `headline: {ids[0]}`."
        error(told, "headline-missing", at, "this test has several quantities and doesn't say which comes first", do=do)
    return ids[0] if ids else ""
