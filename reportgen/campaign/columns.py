"""Which readings a test expects, and how each is found in a table."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from reportgen.addresses import in_formula
from reportgen.campaign.declared import Column, Method, Source
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error
from reportgen.campaign.written.measure import WrittenColumn
from reportgen.campaign.written.test import MethodName
from reportgen.finding import Finding, Place

ColumnsWritten = Sequence[Entry[WrittenColumn | None] | Given[str]] | None


@dataclass(frozen=True)
class Placed:
    """A column and where it was declared."""

    column: Column
    at: Place


@dataclass(frozen=True)
class Known:
    """What a test may draw on.

    `instrument` gives the id of a name and tells where there is none; `read_in` the unit an instrument reads in, "" for
    none; `by_unit` is the campaign's instrument for each
    unit; `readings` and `columns` are the campaign's own, for tests that have none.
    """

    folder: str
    instrument: Callable[[Given[str]], str]
    is_instrument: Callable[[str], bool]
    read_in: Callable[[str], str]
    by_unit: Mapping[str, str]
    method: Callable[[Given[MethodName]], Method | None]
    readings: tuple[Source, ...] = ()
    columns: Mapping[str, Placed] | None = None


def names_in(formula: str) -> tuple[str, ...]:
    """The names a formula mentions, functions aside, each once."""
    return tuple(dict.fromkeys(re.findall(r"(?<![\w.])([A-Za-z_]\w*)\b(?!\s*\()", formula)))


def columns_of(several: Iterable[ColumnsWritten], known: Known, told: list[Finding]) -> dict[str, Placed]:
    """The columns an author declared, by name; one name for two different columns is an error."""
    found: dict[str, Placed] = {}
    for written in several:
        for one in written or ():
            placed = _declared(one, known)
            name = placed.column.name
            if found.setdefault(name, placed).column != placed.column:
                says = f"the reading “{name}” is described differently in two tables"
                error(told, "described-twice", placed.at, says, do="Give them two names.")
    return found


def sorted_out(
    unit: Given[str] | None, instrument: Given[str] | None, known: Known
) -> tuple[Given[str] | None, Given[str] | None]:
    """Unit and instrument, changed places where a short form mistook the one for the other (`timed, stopwatch, s`)."""
    mistaken = unit is not None and len(unit.value) > 2 and known.is_instrument(unit.value)  # “s” is the second
    if mistaken and (instrument is None or not known.is_instrument(instrument.value)):
        return instrument, unit
    return unit, instrument


def _declared(one: Entry[WrittenColumn | None] | Given[str], known: Known) -> Placed:
    if isinstance(one, Given):
        return Placed(Column(in_formula(one.value), one.value), one.at)
    name, column = one.name, one.value
    if column is None:
        return Placed(Column(in_formula(name.value), name.value), name.at)
    unit, instrument = sorted_out(column.unit, column.instrument, known)
    return Placed(
        Column(
            in_formula(name.value),
            column.column.value if column.column else name.value,
            unit.value if unit else "",
            known.instrument(instrument) if instrument else "",
        ),
        name.at,
    )
