"""Quantities that count incidents (`count of`) instead of reading a column."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence

from reportgen.addresses import as_id
from reportgen.campaign.declared import Kind, Quantity, Test
from reportgen.campaign.given import Entry
from reportgen.campaign.independent import over_quantity
from reportgen.campaign.look_up import error, unknown
from reportgen.campaign.written.measure import WrittenQuantity
from reportgen.finding import Finding


def check_counting(label: str, w: WrittenQuantity, kind: Kind | None, told: list[Finding]) -> None:
    """What can't stand beside `count of:`, and an `in:` without it."""
    if w.count_of is None:
        if w.in_:
            says = f"“{label}” says in which tests something is counted, and not what"
            error(told, "count-of-nothing", w.in_[0].at, says, do="Add `count of:` and the name of the event.")
        return
    if kind is not None and kind != "count":
        says = f"“{label}” counts incidents and is of kind {kind}"
        error(told, "count-of-another-kind", w.count_of.at, says, do="Write `kind: count`, or take the kind out.")
    for given in (w.formula, w.unit, w.instrument, w.over_parts, w.over_passes):
        if given is not None:
            says = f"“{label}” counts incidents, so it has no formula, unit, instrument or passes of its own"
            error(told, "count-of-another-kind", given.at, says, do="Take it out.")


def _not_over_itself(entry: Entry[WrittenQuantity], over: Mapping[str, str], told: list[Finding]) -> None:
    given, id = entry.value.counted_over, as_id(entry.name.value)
    if given is not None and over[id] == id:
        says = f"“{entry.name.value}” is counted over itself"
        why = "So many events over as many events is one for everybody."
        error(told, "counted-over-itself", given.at, says, why, "Name a time, a distance or a number of runs.")


def counts_alone(quantities: Sequence[Quantity]) -> bool:
    """Whether a test does nothing but count incidents, so that it has no readings of its own."""
    return bool(quantities) and all(q.count_of for q in quantities)


def with_tests_counted_in(
    test: Test, entries: Sequence[Entry[WrittenQuantity]], tests: Mapping[str, tuple[str, ...]], told: list[Finding]
) -> Test:
    """The test with `in:` of its counts as ids of tests (a quantity stands for its test), `counted over:` as one
    of a quantity.

    `tests`: the ids of the quantities of every test.
    """
    of_quantity = {q: t for t, quantities in tests.items() for q in quantities}
    found: dict[str, tuple[str, ...]] = {}
    over = {as_id(e.name.value): over_quantity(e.value.counted_over, tests, told) for e in entries}
    for entry in entries:
        _not_over_itself(entry, over, told)
        inside: list[str] = []
        for given in entry.value.in_:
            id = as_id(given.value)
            name = id if id in tests else of_quantity.get(id, "")
            if name:
                inside.append(name)
            else:
                told.append(unknown(given, [*tests, *of_quantity], "test or quantity"))
        found[as_id(entry.name.value)] = tuple(dict.fromkeys(inside))
    return dataclasses.replace(
        test,
        quantities=tuple(
            dataclasses.replace(q, count_in=found.get(q.id, ()), counted_over=over.get(q.id, ""))
            for q in test.quantities
        ),
    )
