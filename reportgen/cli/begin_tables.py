"""What each kind of measurement needs in a new campaign: the table it is typed into, and more than a line of YAML."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from reportgen.campaign.declared import Campaign

READINGS, ONCE, ORDERS, LABORATORY = "readings.csv", "once.csv", "orders.csv", "laboratory.csv"
TRACES = "traces/{contender}-{pass}.csv"
FIRST: Mapping[str, tuple[str, ...]] = {
    READINGS: ("contender", "pass"),
    ONCE: ("contender",),  # beside passes alone: without any, what is read once is typed as they would be
    ORDERS: ("contender",),
    LABORATORY: ("contender", "sample", "page"),
}
OF_KIND = {"one reading": ONCE, "order": ORDERS, "laboratory": LABORATORY, "logged": TRACES}
REPORT = "attachments/put-the-report-here.txt"
REPORT_TEXT = """\
Put the laboratory's report into this folder, as a PDF, and name it in campaign.yaml under `laboratory:`.
"""
GRADES = "[poor, fair, good]"


def kind_of(said: str) -> str:
    """The kind in `timed, s, lower`; "" where there is none, which the loader tells."""
    from reportgen.campaign.kinds import KINDS

    return next((piece for piece in (p.strip() for p in said.split(",")) if piece in KINDS), "")


def tables_of(said: Iterable[str]) -> tuple[str, ...]:
    """The tables of readings that measures so described are typed into, in a fixed order (a logger's aside)."""
    needed = {OF_KIND.get(kind_of(each), READINGS) for each in said}
    if ONCE in needed and READINGS not in needed:
        needed = needed - {ONCE} | {READINGS}
    return tuple(table for table in FIRST if table in needed) or (READINGS,)


def files_of(campaign: Campaign) -> dict[str, str]:
    """The files that the campaign's tests read, with their headings, and what it attaches; path → text."""
    found = _headings_of(campaign)
    channels = found.pop(TRACES, ())
    first = TRACES.replace("{pass}", "1")
    traces = [first.replace("{contender}", c.id) for c in campaign.contenders] if channels else []
    attached = {REPORT: REPORT_TEXT} if LABORATORY in found else {}
    tables = {table: _line((*FIRST[table], *columns)) for table, columns in found.items()}
    return {**tables, **dict.fromkeys(traces, _line(("time", *channels))), **attached}


def _headings_of(campaign: Campaign) -> dict[str, tuple[str, ...]]:
    """By table: the headings that the campaign's tests read there, each once."""
    found: dict[str, dict[str, None]] = {}
    for test in campaign.tests:
        kinds = {name: q.kind for q in test.quantities for name in q.reads}
        for column in test.columns:
            table = OF_KIND.get(kinds.get(column.name, ""), READINGS)
            found.setdefault(table, {})[column.heading] = None
    if ONCE in found and READINGS not in found:
        found[READINGS] = found.pop(ONCE)
    return {table: tuple(headings) for table, headings in found.items()}


def bare() -> dict[str, str]:
    """Tables without a reading's column, for a first look at what the campaign declares."""
    return {table: _line(first) for table, first in FIRST.items()}


def _line(headings: Sequence[str]) -> str:
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerow(headings)
    return text.getvalue()


def in_full(kind: str, keys: Mapping[str, str], contenders: Sequence[str]) -> tuple[str, ...]:
    """The lines below a measure that takes more than one: a grade its grades, a logger its file. () where one will do.

    `keys` are those of the short form: kind, unit, better, instrument. No logger has run for any of `contenders` yet.
    """
    lines = [f"{key}: {value}" for key, value in keys.items()]
    if kind == "grade":
        return (*lines, f"grades: {GRADES}    # worst first; write your own, and what each means under `says:`")
    if kind == "logged":
        waiting = f"not yet tested: [{', '.join(contenders)}]    # take out whoever has run"
        return (*lines, "readings:", f"  logger: {TRACES}", "  time: time, s", waiting)
    return ()
