"""What one table holds for one test, before its cells are read: the common ground of every layout."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from reportgen.campaign.declared import Campaign, Column, Test
from reportgen.finding import Finding, Place
from reportgen.intake.names import EVERYONE, contenders_in
from reportgen.intake.table import Row, Table, did_you_mean, key, spelt, without_unit

ROLES = (
    "contender", "pass", "part", "specimen", "session", "round", "unit", "instrument", "time", "note", "photo", "film",
    "page", "what", "value",
)  # fmt: skip
KEPT = ("sample",)  # columns of the bench log that are kept beside the reading
_FLOATED = re.compile(r"(\d+)\.0+")


@dataclass(frozen=True)
class Beside:
    """What a row says about the readings in it; "" where a column for it was absent or empty."""

    pass_: str
    part: str
    specimen: str
    session: str
    round_: str
    time: str
    note: str
    unit: str
    conditions: tuple[tuple[str, str], ...]
    page: str = ""  # of the laboratory's report
    photo: str = ""
    film: str = ""
    instrument: str = ""


@dataclass(frozen=True)
class Seen:
    """One cell that holds a reading of `column`. `order` is its row's place in the table, from 0.

    `pass_` is the row's, or the number given to it later; "" for what serves every pass of EVERYONE. `heading_unit` is
    what stands in brackets behind a heading.
    """

    contender: str
    column: Column
    text: str
    at: Place
    order: int
    beside: Beside
    pass_: str
    heading_unit: str = ""
    instrument: str = ""  # that its row or heading names, by id
    counted: bool = False  # its pass isn't written: it was counted


@dataclass(frozen=True)
class Glance:
    """A table as one test sees it. `asked` are the headings that it takes.

    `entries` are the different texts under `what` with the place of the first, `names` those that it takes.
    `by_row`: a row without a pass is one pass of its contender, whatever its columns hold.
    `ordered`: the file shows the order of work. `known`: the table has one of the layouts.
    """

    seen: tuple[Seen, ...]
    findings: tuple[Finding, ...]
    asked: frozenset[str]
    entries: Mapping[str, Place] = field(default_factory=dict)
    names: frozenset[str] = frozenset()
    by_row: bool = False
    ordered: bool = False
    rounds: bool = False
    known: bool = True


@dataclass(frozen=True)
class Frame:
    """Where the columns that aren't readings stand in a table: role → index, condition → index."""

    roles: Mapping[str, int]
    conditions: Mapping[str, int]
    findings: tuple[Finding, ...] = ()

    def of(self, row: Row, role: str) -> str:
        """The cell of a role, "" where there is no such column."""
        return row.cells[self.roles[role]] if role in self.roles else ""

    def beside(self, row: Row) -> Beside:
        """What the row says about its readings."""
        return Beside(
            as_label(self.of(row, "pass")),
            as_label(self.of(row, "part")),
            as_label(self.of(row, "specimen")),
            as_label(self.of(row, "session")),
            as_label(self.of(row, "round")),
            self.of(row, "time"),
            self.of(row, "note"),
            self.of(row, "unit"),
            tuple((name, row.cells[i]) for name, i in self.conditions.items() if row.cells[i]),
            page=as_label(self.of(row, "page")),
            photo=self.of(row, "photo"),
            film=self.of(row, "film"),
            instrument=self.of(row, "instrument"),
        )

    def asked(self, table: Table) -> frozenset[str]:
        return frozenset(table.headings[i] for i in (*self.roles.values(), *self.conditions.values()))


def frame_of(table: Table, roles: Mapping[str, str], test: Test) -> Frame:
    """Finds the roles and conditions among the headings; a role given a heading that isn't there is an error.

    A heading that the test reads as a column of its own is no role, unless it was given as one.
    """
    exact = {key(h): i for i, h in enumerate(table.headings)}
    read = by_heading(test)
    found: dict[str, int] = {}
    wrong: list[Finding] = []
    for role in ROLES:
        index = exact.get(key(roles.get(role, role)))
        if role not in roles and role in read:
            continue
        if index is not None:
            found[role] = index
        elif role in roles:
            wrong.append(missing_heading(table, roles[role], f"the column for {role}"))
    conditions = {name: i for name in (*test.conditions, *KEPT) if (i := table.find(name)) is not None}
    return Frame(found, conditions, tuple(wrong))


def missing_heading(table: Table, heading: str, what: str, at: Place | None = None) -> Finding:
    """There is no such heading: which there are, and which was perhaps meant."""
    near = did_you_mean(heading, [h for h in table.headings if h])
    return Finding(
        "error",
        "missing-column",
        at or table.at(table.heading_line),
        f"There is no column “{heading}” in {table.file}, {what}; there are {spelt(table.headings)}.",
        "Its readings would be lost.",
        f"Did you mean “{near}”?" if near else "Correct the heading, or name the column with `column:`.",
    )


def entries_of(table: Table, frame: Frame) -> Mapping[str, Place]:
    """The different texts under `what`, each with the place of the first."""
    if "what" not in frame.roles:
        return {}
    what = frame.roles["what"]
    return {row.cells[what]: table.at(row.line, what) for row in reversed(table.rows)}


def as_label(text: str) -> str:
    """A pass, part or round as written; `2.0`, which spreadsheets make of 2, is 2."""
    whole = _FLOATED.fullmatch(text)
    return whole[1] if whole else text


def by_heading(test: Test) -> Mapping[str, Column]:
    """The test's columns by what makes their heading one."""
    return {key(c.heading): c for c in test.columns}


def column_called(text: str, columns: Mapping[str, Column]) -> Column | None:
    """The column of that heading, which may carry a unit in brackets."""
    return columns.get(key(text)) or columns.get(key(without_unit(text)[0]))


def unit_beside(heading: str, column: Column) -> str:
    """The unit in brackets behind a heading, unless the brackets belong to the column's own name and it has a unit."""
    own = key(heading) == key(column.heading)
    return "" if own and column.unit else without_unit(heading)[1]


def contender_headings(table: Table, campaign: Campaign) -> Mapping[int, str]:
    """Which headings are contenders: index → id, EVERYONE for `all`."""
    named = contenders_in(filter(None, table.headings), campaign)
    return {i: c for i, h in enumerate(table.headings) if (c := named.get(h)) is not None}


def all_rounds(seen: Sequence[Seen]) -> bool:
    return bool(seen) and all(s.beside.round_ or s.contender == EVERYONE for s in seen)
