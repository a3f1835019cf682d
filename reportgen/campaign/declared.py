"""What an author declares, read, checked and put together: the campaign every later stage sees.

How it was written (one file or thirty, short form or long) no longer shows here. Line numbers lie beside it in
`Declared.places`, so that a comment added to a file changes no value here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from reportgen.finding import Finding, Place

Better = Literal["lower", "higher", "neither"]
Kind = Literal[
    "one reading", "timed", "weighed before and after", "peak", "level", "run to a limit", "count", "yes/no", "grade"
]
ScatterRule = Literal["common", "own", "relative"]
OrderRule = Literal["rounds", "random", "as it came", ""]
Decided = Literal["before the test", "during the test", "after seeing the value", "not noted"]
Pushes = Literal["up", "down", "unknown", ""]


@dataclass(frozen=True)
class Amount:
    """A number with its unit, digits kept: `text` as typed, `value` exact, `unit` as typed ("" for none)."""

    value: Decimal
    unit: str
    text: str
    guess: bool = False  # "0.5 g, a guess"


@dataclass(frozen=True)
class Day:
    """A date as typed: `text` is shown; `first` and `last` (ISO) sort it; both empty when `not noted`."""

    text: str
    first: str = ""
    last: str = ""


@dataclass(frozen=True)
class Accuracy:
    """What the maker of an instrument states: ±(absolute + percent of reading + digits), or unknown.

    Half-widths of a uniform distribution (JCGM 100, 4.3.7). All None and `known` False: unknown.
    """

    known: bool
    absolute: Amount | None = None
    percent: Decimal | None = None
    digits: int | None = None
    text: str = "unknown"


@dataclass(frozen=True)
class Instrument:
    id: str
    title: str
    resolution: Amount | None = None
    low: Amount | None = None  # range
    high: Amount | None = None
    accuracy: Accuracy = Accuracy(known=False)
    by_hand: bool = False
    shared: Literal["offset", "gain", "both", "nothing"] = "both"
    model: str = ""
    serial: str = ""
    calibrated: Day | None = None
    calibrated_by: str = ""
    source: str = ""  # where its figures come from
    notes: str = ""
    origin: str = ""  # the file it stands in, from the workspace, or "ready-made"


@dataclass(frozen=True)
class Repeatability:
    """Scatter of one pass, declared: standard deviation with its degrees of freedom (a guess has 8)."""

    sd: Amount
    degrees: int
    source: str


@dataclass(frozen=True)
class Method:
    id: str
    version: int
    title: str
    scatter: ScatterRule = "common"
    order: OrderRule = ""
    repeatability: Mapping[str, Repeatability] = field(default_factory=dict)  # quantity id → sd
    between_sessions: Amount | None = None
    chained: bool = False
    steps: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    cannot_tell: tuple[str, ...] = ()
    says: str = ""  # CommonMark
    changed: str = ""  # what this version changed
    origin: str = ""


@dataclass(frozen=True)
class Constant:
    id: str
    value: Amount
    within: Amount | None  # half-width, uniform; None: taken as exact
    u: Amount | None  # standard uncertainty, where that is what the source gives
    source: str
    origin: str = ""


@dataclass(frozen=True)
class Price:
    """One dated purchase or listing; `high` differs from `low` for a range. Amounts in `currency` (ISO 4217)."""

    low: Decimal
    high: Decimal
    currency: str
    sort: Literal["paid", "listed"]
    date: Day | None = None
    where: str = ""
    text: str = ""


@dataclass(frozen=True)
class Claim:
    """What the maker states. `says` maps a source to its words (one entry where there is one source)."""

    id: str  # c1, c2 … in the contender's order
    says: Mapping[str, str]
    quantity: str = ""  # id, "" where it names none
    at_most: Amount | None = None
    at_least: Amount | None = None
    nominal: Amount | None = None
    within: Amount | None = None  # tolerance of a nominal
    under: str = ""  # the condition it is claimed under
    looked: str = ""  # settled by looking: "no, foam only"
    testable: bool = True
    why: str = ""


@dataclass(frozen=True)
class Contender:
    id: str
    title: str
    maker: str = ""
    model: str = ""
    bought_where: str = ""
    bought_on: Day | None = None
    supplied_by: str = ""  # "" bought at retail
    prices: tuple[Price, ...] = ()
    as_received: tuple[str, ...] = ()
    claims: tuple[Claim, ...] = ()
    also_called: tuple[str, ...] = ()
    facts: Mapping[str, str] = field(default_factory=dict)
    says: str = ""  # CommonMark


@dataclass(frozen=True)
class Narrowing:
    """What a caveat, incident, exclusion or acceptance is about; empty means not narrowed."""

    quantities: tuple[str, ...] = ()
    contender: str = ""
    specimen: str = ""
    pass_: str = ""
    part: str = ""


@dataclass(frozen=True)
class Exclusion:
    id: str
    about: Narrowing
    because: str
    decided: Decided


@dataclass(frozen=True)
class Incident:
    id: str
    about: Narrowing
    what: str
    pushes: Pushes = ""
    blocks: bool = False


@dataclass(frozen=True)
class DeclaredCaveat:
    id: str
    about: Narrowing
    says: str
    pushes: Pushes = ""
    blocks: bool = False  # `so: do not rank`


@dataclass(frozen=True)
class Acceptance:
    id: str
    rule: str
    because: str
    about: Narrowing


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
    over_parts: Literal["", "sum", "mean", "each", "energy mean"] = ""
    over_passes: Literal["", "mean", "least", "most", "middle", "energy mean"] = ""
    until: Amount | None = None
    grades: tuple[str, ...] = ()
    says: str = ""


@dataclass(frozen=True)
class Column:
    """How one named reading is found: its heading in a table (or `what` in the log), unit and instrument."""

    name: str  # as formulas spell it: canister_before
    heading: str
    unit: str = ""  # "" where each row gives its own, or the kind needs none
    instrument: str = ""


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
    why: str = ""  # what question it answers
    exclusions: tuple[Exclusion, ...] = ()
    incidents: tuple[Incident, ...] = ()
    caveats: tuple[DeclaredCaveat, ...] = ()
    cautions: tuple[str, ...] = ()
    cannot_tell: tuple[str, ...] = ()
    conditions: tuple[str, ...] = ()  # columns that hold facts of one pass
    not_yet_tested: tuple[str, ...] = ()  # contender ids
    running: Mapping[str, Day] = field(default_factory=dict)


@dataclass(frozen=True)
class Must:
    quantity: str
    at_most: Amount | None = None
    at_least: Amount | None = None


@dataclass(frozen=True)
class Criterion:
    quantity: str
    worst: Amount
    best: Amount
    weight: Decimal | None = None
    ratio: bool = False


@dataclass(frozen=True)
class Group:
    id: str
    title: str
    weight: Decimal | None
    criteria: tuple[Criterion, ...]


@dataclass(frozen=True)
class WeSay:
    best: str = ""  # contender id
    best_for_the_money: str = ""
    because: tuple[str, ...] = ()  # quantity ids
    words: str = ""


@dataclass(frozen=True)
class Use:
    per: str
    cost: str  # a formula
    low: Decimal
    high: Decimal


@dataclass(frozen=True)
class VerdictPlan:
    must: tuple[Must, ...] = ()
    groups: tuple[Group, ...] = ()
    we_say: WeSay | None = None
    readers: Mapping[str, Mapping[str, Decimal]] = field(default_factory=dict)
    use: Use | None = None


@dataclass(frozen=True)
class Film:
    id: str
    title: str
    address: str


@dataclass(frozen=True)
class ProseFile:
    """A Markdown file of the author's: `path` from the workspace; `text` as it stands."""

    id: str
    path: str
    text: str


@dataclass(frozen=True)
class Campaign:
    """One comparison, put together. Tuples keep the campaign's order; ids are unique in each."""

    id: str
    folder: str  # from the workspace, "" where the campaign is the workspace
    title: str
    question: str
    contenders: tuple[Contender, ...]
    tests: tuple[Test, ...]
    instruments: Mapping[str, Instrument]  # those used here, wherever they were found
    methods: Mapping[str, Method]  # "id.version" → method, those used here
    constants: Mapping[str, Constant]
    by_unit: Mapping[str, str] = field(default_factory=dict)  # unit as typed → instrument, where no column names one
    verdict: VerdictPlan | None = None
    tested: Day | None = None
    published: Day | None = None
    place: str = ""
    who_pays: str = ""
    held_the_same: tuple[str, ...] = ()
    exclusions: tuple[Exclusion, ...] = ()
    incidents: tuple[Incident, ...] = ()
    caveats: tuple[DeclaredCaveat, ...] = ()
    cautions: tuple[str, ...] = ()
    cannot_tell: tuple[str, ...] = ()
    accepts: tuple[Acceptance, ...] = ()  # the campaign's and its tests'
    films: tuple[Film, ...] = ()
    prose: tuple[ProseFile, ...] = ()
    show: tuple[str, ...] = ()
    invented: str = ""  # says so on every page, where products and readings are made up
    archived: bool = False

    def contender(self, id: str) -> Contender:
        return next(c for c in self.contenders if c.id == id)

    def test(self, id: str) -> Test:
        return next(t for t in self.tests if t.id == id)

    def quantity(self, id: str) -> Quantity:
        return next(q for t in self.tests for q in t.quantities if q.id == id)


@dataclass(frozen=True)
class Publication:
    title: str = "Test reports"
    address: str = ""
    language: str = "en"
    show: tuple[str, ...] = ()
    who_pays: str = ""
    author: str = ""
    contact: str = ""
    licence: str = ""
    theme: str = "reading-room"
    invented: str = ""


@dataclass(frozen=True)
class Declared:
    """A campaign and where each piece of it was written.

    `places` maps a path such as ``test/gas-burned``, ``quantity/gas-burned/formula``, ``contender/ostler``,
    ``claim/ostler/c1``, ``exclusion/<id>``, ``caveat/<id>``, ``verdict``, ``title`` to its place.
    `findings` are warnings and notes met while reading; errors are raised as `Refused` instead.
    """

    campaign: Campaign
    places: Mapping[str, Place]
    findings: tuple[Finding, ...] = ()

    def at(self, path: str) -> Place:
        """The place of a path, or of the nearest one above it that has a place, or the campaign's file."""
        while path:
            if path in self.places:
                return self.places[path]
            path = path.rpartition("/")[0]
        return self.places.get("", Place("campaign.yaml"))
