"""The readings of a campaign: raw values, each with its place. Nothing is computed here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from reportgen.campaign.declared import Incident, Moment
from reportgen.finding import Finding, Place

Limit = Literal["above", "below"]


Rough = Literal["", "about", "stated", "between"]
FileForm = Literal["text", "spreadsheet", "parquet"]


@dataclass(frozen=True)
class Series:
    """A channel of a logger file, not its samples: those are read from the file where they are needed, in pieces.

    `file` from the workspace; `heading` of the channel and `time` of the time column ("" where `rate`, in samples a
    second, stands for it); `first` and `last` lines of its samples; `only` narrows a file that serves several: pairs of
    heading and text. `samples` counts them, `begins` and `ends` are seconds from the file's first sample.
    """

    file: str
    digest: str
    heading: str
    time: str
    rate: float | None
    unit: str
    instrument: str
    first: int
    last: int
    samples: int
    begins: float
    ends: float
    only: tuple[tuple[str, str], ...] = ()
    time_unit: str = ""  # of the time column as declared, "" where the file says it or writes clock times
    declared_unit: str = ""  # of the channel; `unit` is what the file says, "" where it doesn't
    encoding: str = ""
    decimals: int = 0  # the most that its first samples were written with
    interval: float = 0.0  # s, usual time between two samples
    gaps: tuple[tuple[float, float], ...] = ()  # s, stretches without samples: from, to
    named_in: Place | None = None  # the cell of a table that names the file
    clock: float | None = None  # seconds after midnight of its first sample, where the file has clock times


@dataclass(frozen=True, order=True)
class ReadingKey:
    """What a reading is of. `specimen`, `pass_` and `part` are "1", "1" and "" where nothing was written."""

    test: str
    contender: str
    specimen: str
    pass_: str
    part: str
    name: str  # as formulas spell it: gas_burned_before


@dataclass(frozen=True)
class Reading:
    """One raw value. Exactly one of these holds: `value` is set, `limit` is set, `word` is set, `absent_because`,
    `series`.

    `text` is what was written. `limit` above (`over 999`) or below (`under 1`): then `value` is the limit, or None
    for `over unknown`. `word` is the answer of a yes/no (`yes`, `no`) or grade. `absent_because` is the reason in
    `none (spilled)`, or `no reason given` for an empty cell. `decimals` are the digits written after the decimal
    sign (None for what has no written decimals). `order` counts readings as they stand in the file.
    """

    key: ReadingKey
    text: str
    value: Decimal | None
    unit: str
    instrument: str
    at: Place
    limit: Limit | None = None
    word: str = ""
    absent_because: str = ""
    decimals: int | None = None
    session: str = ""
    round_: str = ""
    time: str = ""
    note: str = ""
    order: int = 0
    conditions: tuple[tuple[str, str], ...] = ()
    width: Decimal | None = None  # half-width of `about 250`, `250 ±10`, `2 to 3`, in the reading's unit
    rough: Rough = ""
    unweighed: bool = False  # `some`: more than nothing; then value 0, limit above. `nothing`: value 0, no limit
    beside: str = ""  # `ostler + 72`: the contender it was read against; value is then the difference
    frames: tuple[int, int] | None = None  # `frames 1204 to 4820`: first and last; value is then their difference
    for_all: bool = False  # one reading that serves every contender: one variable, one error
    amendment: str = ""  # the amendment that put it right; `was` is then what the file says
    was: str = ""
    records: str = ""  # the two records that disagree about it
    attachment: str = ""  # a laboratory's report, from the campaign's folder
    page: int | None = None  # of the attachment
    photos: tuple[str, ...] = ()  # ids of photographs, such as the display it was read off
    film: Moment | None = None
    series: Series | None = None  # kind logged: the trace it stands for; value and limit are then None
    running: str = ""  # the day since when the run goes on, as typed: what was read is only what was read so far
    counted: bool = False  # its pass isn't written: the table numbered it by its place
    unfinished: bool = False  # `did not finish`: the run ended before what it was timed to; absent_because says so
    incident: str = ""  # the incident that is counted here, by its id; value is how many times


@dataclass(frozen=True)
class RawFile:
    """A file that readings came from: path from the workspace, digest (sha256, hex), size in bytes.

    Only a file of the form text has lines; `encoding` is then the name by which Python decodes it. `sheets` are those
    of a spreadsheet that were read.
    """

    path: str
    digest: str
    size: int
    headings: tuple[str, ...] = ()
    unread: tuple[str, ...] = ()  # headings nobody asked for
    form: FileForm = "text"
    encoding: str = "utf-8-sig"
    sheets: tuple[str, ...] = ()


@dataclass(frozen=True)
class Happened:
    """An incident told in a bench log, and where it stands."""

    incident: Incident
    at: Place


@dataclass(frozen=True)
class Readings:
    """All readings of a campaign, the files they stood in, and what was noticed while reading."""

    readings: Mapping[ReadingKey, Reading]
    files: tuple[RawFile, ...] = ()
    findings: tuple[Finding, ...] = ()
    order_recorded: Mapping[str, bool] = field(default_factory=dict)  # test id → the file shows the order of work
    rounds_recorded: Mapping[str, bool] = field(default_factory=dict)
    incidents: tuple[Happened, ...] = ()  # those of bench logs; the declared ones stand in the campaign
    counted_for: Mapping[str, tuple[str, ...]] = field(default_factory=dict)  # counting quantity → contenders, from 0

    def of_test(self, test: str) -> tuple[Reading, ...]:
        """The test's readings in the order of their file."""
        return tuple(
            sorted((r for k, r in self.readings.items() if k.test == test), key=lambda r: (r.at.file, r.order))
        )
