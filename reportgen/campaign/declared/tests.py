"""Tests, their quantities, and where their readings stand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from reportgen.campaign.declared.amounts import Amount, Day
from reportgen.campaign.declared.deciding import WhenDecided
from reportgen.campaign.declared.instruments import OrderRule, ScatterRule
from reportgen.campaign.declared.remarks import Assumption, DeclaredCaveat, Exclusion, Incident, Moment
from reportgen.finding import Place

Better = Literal["lower", "higher", "neither"]
JudgedHow = Literal["blind", "could see", "not noted", ""]
Kind = Literal[
    "one reading",
    "timed",
    "weighed before and after",
    "share lost",
    "rise",
    "peak",
    "level",
    "level over background",
    "run to a limit",
    "count",
    "yes/no",
    "grade",
    "order",
    "laboratory",
    "logged",
]


@dataclass(frozen=True)
class Quantity:
    """One thing reported. `formula` is always there: the kind wrote it where the author did not.

    `reads` are the names of readings it expects in the readings: its own columns, as formula names.
    `kind` is "" for a quantity that is only a formula.
    """

    id: str
    test: str
    title: str
    kind: Kind | Literal[""]
    formula: str
    unit: str  # "" for counts, yes/no, grades and pure numbers
    better: Better
    reads: tuple[str, ...] = ()
    matters: Amount | None = None
    instrument: str = ""
    over_parts: Literal["", "sum", "mean", "each", "energy mean", "energy sum"] = ""
    over_passes: Literal["", "mean", "least", "most", "middle", "energy mean"] = ""
    until: Until | None = None
    grades: tuple[str, ...] = ()
    count_of: str = ""  # counts incidents of this event (an id) instead of reading a column
    count_in: tuple[str, ...] = ()  # ids of the tests they are counted in
    independent: bool = False  # each event of a count comes by itself: their number is Poisson's
    counted_over: str = ""  # id of the quantity a count is taken over; "" for a run as one
    says: str = ""
    decided: WhenDecided | None = None  # to measure it, and what matters in it
    formerly: tuple[str, ...] = ()  # ids it had before


@dataclass(frozen=True)
class Until:
    """What ends a run: `limit`, passed to the side of `side` ("" for a part in %, or where none was said).

    A part in % is of the highest, or of the value at the time `value_at`.
    """

    side: Literal["", "over", "under"]
    limit: Amount
    value_at: Amount | None = None


@dataclass(frozen=True)
class Column:
    """How one named reading is found: its heading in a table (or `what` in the log), unit and instrument."""

    name: str  # as formulas spell it: canister_before
    heading: str
    unit: str = ""  # "" where each row gives its own, or the kind needs none
    instrument: str = ""


@dataclass(frozen=True)
class Logger:
    """How logger files are read: which column is time, in which unit or as clock times, or at which fixed rate.

    `time` is the heading of the time column, "" for the first column where no rate is given. `unit` is "s", "min", "ms"
    …, "" for clock times and where the file tells. `rate` is samples a second, for files without a time column. The
    channels are the test's columns.
    The source's `file` may hold names in braces, {contender} and {pass}, that stand in the files' names.
    """

    time: str = ""
    unit: str = ""
    rate: Amount | None = None
    columns: tuple[str, ...] = ()  # names of the readings it holds, () for every channel of the test
    files: Mapping[str, tuple[str, ...]] = field(default_factory=dict)  # contender as written → its files, a pass each


@dataclass(frozen=True)
class Laboratory:
    """Who analysed samples, the report that says so, and from where on the laboratory finds and reports.

    `report` is the attachment's path from the campaign's folder. A value under `detection_limit` is "not found"; one
    between the two limits is found and not stated as a number. `uncertainty` is the half-width or factor the report
    gives (in the result's unit or in percent), `coverage_factor` its k (2 where the report says so; JCGM 100, 6.2).
    """

    name: str
    report: str = ""
    number: str = ""
    accredited: str = ""
    detection_limit: Amount | None = None
    report_limit: Amount | None = None
    uncertainty: Amount | None = None
    coverage_factor: Decimal | None = None
    page: int | None = None  # of the report, where rows name none
    date: Day | None = None  # of the report
    taken: Mapping[str, Day] = field(default_factory=dict)  # contender → day of its sample; "" for all
    diluted: Mapping[str, str] = field(default_factory=dict)  # likewise, in the author's words


@dataclass(frozen=True)
class Source:
    """Where readings stand: a file from the campaign's folder, or a table in the YAML.

    `roles` maps contender, pass, part, specimen, session, round, unit, time, note, what, value to the heading
    that bears it; an absent role has its usual heading. `rows` (inline only) hold the cells as typed with their
    places: the first row is the heading.
    """

    file: str = ""
    roles: Mapping[str, str] = field(default_factory=dict)
    rows: tuple[tuple[str, ...], ...] = ()
    row_lines: tuple[int, ...] = ()
    sheet: str = ""  # of a spreadsheet; "" for its only or first visible one
    encoding: str = ""  # of a text table, where it isn't UTF-8 or UTF-16: a key of `campaign.encodings.ENCODINGS`
    logger: Logger | None = None  # the file is a logger's, or `file` is a pattern that names one a pass
    named: Logger | None = None  # how the logger's files that cells of this table name are read, where that was said
    leave_out: tuple[str, ...] = ()  # what rows of means and totals are called
    place: Place = Place("")


@dataclass(frozen=True)
class Test:
    """One procedure on every contender. (Never collected by a test runner: it has no `test_` name.)"""

    __test__ = False

    id: str
    title: str
    quantities: tuple[Quantity, ...]
    headline: str
    columns: tuple[Column, ...]
    sources: tuple[Source, ...]  # its own, or the campaign's
    own_sources: bool
    method: str = ""  # id, "" where none is named
    method_version: int = 0
    scatter: ScatterRule = "common"
    order: OrderRule = ""
    chained: bool = False
    unfinished_last: bool = False  # the method said: a run that did not finish holds the worst place
    why: str = ""  # what question it answers
    exclusions: tuple[Exclusion, ...] = ()
    incidents: tuple[Incident, ...] = ()
    caveats: tuple[DeclaredCaveat, ...] = ()
    cautions: tuple[str, ...] = ()
    cannot_tell: tuple[str, ...] = ()
    conditions: tuple[str, ...] = ()  # columns that hold facts of one pass
    held_the_same: tuple[str, ...] = ()  # in this test; what the campaign says of all stands there
    not_yet_tested: tuple[str, ...] = ()  # contender ids
    running: Mapping[str, Day] = field(default_factory=dict)
    running_as_of: Mapping[str, Day] = field(default_factory=dict)  # the day of what was read so far
    assumed: tuple[Assumption, ...] = ()
    laboratory: Laboratory | None = None
    photos: tuple[str, ...] = ()  # ids, of how it was done
    film: Moment | None = None
    judged: JudgedHow = ""  # whether whoever judged knew which contender it was
    decided: WhenDecided | None = None
    formerly: tuple[str, ...] = ()  # ids it had before
