"""A caveat: a limit on what results mean, in whoever's words, and the readings it touches. Frozen."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from reportgen.campaign.declared import Moment
from reportgen.finding import Place
from reportgen.intake.reading import ReadingKey
from reportgen.judgement.measured import Limit
from reportgen.wording.met import Met

Keys = frozenset[ReadingKey]
CaveatSort = Literal[
    "caveat",
    "incident",
    "exclusion",
    "assumption",
    "instrument",
    "accepted",
    "reading",
    "amendment",
    "records",
    "running",
]


@dataclass(frozen=True)
class Otherwise:
    """What a result would be with the other of two records. `moves`: some rank of its quantity would change."""

    said: str  # the record, as typed
    quantity: str
    contender: str
    part: str
    value: float | None
    unit: str
    limit: Limit | None
    instead: str  # the grade, or why there would be no result
    moves: bool


@dataclass(frozen=True)
class Caveat:
    """A limit on what results mean. `number` is its small raised mark, in the campaign's order."""

    id: str
    number: int
    sort: CaveatSort
    says: str  # the author's words; "" where `met` says what was met
    pushes: Literal["up", "down", "unknown", ""]
    blocks: bool
    touches: Keys
    quantities: tuple[str, ...]  # "" narrowed to these; empty: every quantity its readings feed
    contender: str
    at: Place
    decided: str = ""  # exclusions: when
    because: str = ""
    met: Met | None = None
    photos: tuple[str, ...] = ()  # ids
    film: Moment | None = None
    when: str = ""  # incidents: the time, as typed
    event: str = ""  # incidents: what it is an instance of, and how many times
    times: int = 1
    said: tuple[str, ...] = ()  # two records: both; an amendment: what the file says
    used: str = ""  # the record that counts; what was meant
    seen_by: str = ""
    otherwise: tuple[Otherwise, ...] = ()  # two records: what would change
    specimen: str = ""  # as far as it is about one specimen, one pass, one part of the contender
    pass_: str = ""
    part: str = ""
    name: str = ""  # what its address ends with, for as long as the site stands
