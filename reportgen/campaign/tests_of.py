"""Tests as later stages know them."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from reportgen.addresses import as_id
from reportgen.campaign.accidents import assumptions
from reportgen.campaign.columns import ColumnsWritten, Known, Placed, columns_of
from reportgen.campaign.counting import counts_alone
from reportgen.campaign.declared import Column, Quantity, Test
from reportgen.campaign.former_names import former
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error, unknown
from reportgen.campaign.quantities_of import quantity_of, quantity_places
from reportgen.campaign.sources_of import sightings, sources_of
from reportgen.campaign.written.measure import WrittenQuantity
from reportgen.campaign.written.test import WrittenAboutTest, WrittenMeasure, WrittenTest
from reportgen.finding import Finding, Place


@dataclass(frozen=True)
class BuiltTest:
    """A test without its remarks yet, what was written of it, and where its pieces stand."""

    test: Test
    written: WrittenAboutTest
    places: Mapping[str, Place]
    entries: Sequence[Entry[WrittenQuantity]] = ()


def from_file(id: str, written: WrittenTest, at: Place, known: Known, told: list[Finding]) -> BuiltTest:
    """A test of its own, with its quantities."""
    if not written.quantities:
        error(told, "test-without-quantities", at, "this test reports no quantity", do="Name one under `quantities:`.")
    built = _built(id, written.title.value, written, written.quantities, None, at, known, told)
    headline = _headline(written.headline, built.test.quantities, at, told)
    return dataclasses.replace(built, test=dataclasses.replace(built.test, headline=headline))


def from_measure(entry: Entry[WrittenMeasure], known: Known, told: list[Finding]) -> BuiltTest:
    """An entry of `measure:`: a test with one quantity of the same id."""
    label, written = entry.name, entry.value
    title = written.title.value if written.title else label.value.replace("_", " ")
    return _built(as_id(label.value), title, written, (entry,), written.columns, label.at, known, told)


def _built(
    id: str,
    title: str,
    written: WrittenAboutTest,
    entries: Sequence[Entry[WrittenQuantity]],
    more_columns: ColumnsWritten,
    at: Place,
    known: Known,
    told: list[Finding],
) -> BuiltTest:
    own = columns_of((more_columns, *(s.columns for s in written.readings)), known, told)
    columns = own if written.readings else {**(known.columns or {}), **own}
    quantities = tuple(quantity_of(e, id, columns, known, told) for e in entries)
    wanted = {name for q in quantities for name in q.reads} | set(own)
    columns = {name: placed for name, placed in columns.items() if name in wanted}
    own_sources, seen = sources_of(written.readings, told), sightings(entries)
    others = () if seen and all(e.value.seen for e in entries) else known.readings
    method = known.method(written.method) if written.method else None
    places: dict[str, Place] = {}
    of_quantities = [e.value.assumed for e in entries if e.value.at != written.at]  # a measure is its own quantity
    test = Test(
        id=id,
        title=title,
        quantities=quantities,
        headline=quantities[0].id if quantities else "",
        columns=tuple(_with_instrument(placed, known) for placed in columns.values()),
        sources=() if counts_alone(quantities) else (*(own_sources or others), *seen),
        own_sources=bool(own_sources or seen),
        method=method.id if method else "",
        method_version=method.version if method else 0,
        scatter=written.scatter.value if written.scatter else method.scatter if method else "common",
        order=written.order.value if written.order else method.order if method else "",
        judged=written.judged.value if written.judged else "",
        decided=written.decided.value if written.decided else None,
        chained=written.chained.value if written.chained else method.chained if method else False,
        unfinished_last=method is not None and method.did_not_finish == "worst place",
        why=written.why.value if written.why else "",
        formerly=former(written.formerly),
        cautions=tuple(c.value for c in written.cautions),
        cannot_tell=tuple(c.value for c in written.cannot_tell),
        conditions=tuple(c.value for c in written.conditions),
        held_the_same=tuple(h.value for h in written.held_the_same),
        assumed=assumptions((written.assumed, *of_quantities), f"{id}/", places, told),
    )
    places |= {f"test/{id}": at} | {f"column/{id}/{name}": placed.at for name, placed in columns.items()}
    for entry in entries:
        places |= quantity_places(entry)
    if written.decided:
        places[f"test/{id}/decided"] = written.decided.at
    if written.method:
        places[f"test/{id}/method"] = written.method.at
    return BuiltTest(test, written, places, entries)


def _with_instrument(placed: Placed, known: Known) -> Column:
    """The column, with the campaign's instrument for its unit where it names none."""
    column = placed.column
    return dataclasses.replace(column, instrument=column.instrument or known.by_unit.get(column.unit, ""))


def _headline(given: Given[str] | None, quantities: Sequence[Quantity], at: Place, told: list[Finding]) -> str:
    ids = [q.id for q in quantities]
    if given is not None and as_id(given.value) in ids:
        return as_id(given.value)
    if given is not None:
        told.append(unknown(given, ids, "quantity of this test"))
    elif len(ids) > 1:
        do = f"Add `headline: {ids[0]}`."
        error(told, "headline-missing", at, "this test has several quantities and doesn't say which comes first", do=do)
    return ids[0] if ids else ""
