"""What authors remark: exclusions, incidents, caveats, answers to warnings, and what came to a reading."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from reportgen.campaign.declared.amounts import Amount

Decided = Literal["before the test", "during the test", "after seeing the value", "not noted"]
Pushes = Literal["up", "down", "unknown", ""]


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
    photos: tuple[str, ...] = ()  # ids
    film: Moment | None = None
    name: str = ""  # what its address ends with: a declared id, or what it is about


@dataclass(frozen=True)
class Incident:
    id: str
    about: Narrowing
    what: str
    pushes: Pushes = ""
    blocks: bool = False
    event: str = ""  # what it is an instance of, as an id, where such are counted: stall, relight
    times: int = 1
    photos: tuple[str, ...] = ()  # ids
    film: Moment | None = None
    when: str = ""  # the time it happened, as typed
    name: str = ""  # what its address ends with


@dataclass(frozen=True)
class Moment:
    """A moment in a film: the film's id, seconds from its beginning, and as typed ("main 4m20s")."""

    film: str
    seconds: Decimal
    text: str


@dataclass(frozen=True)
class Amendment:
    """A slip of the pen in a raw file, put right without touching the file.

    `file` from the campaign's folder; `line` as an editor or spreadsheet counts it; `column` is a heading. Where a cell
    is named instead (`C5`), `number` counts its column from 1 and `column` is "". `was` is what the file says ("" for
    an empty cell), `is_` what was meant.
    """

    id: str
    file: str
    line: int
    column: str
    was: str
    is_: str
    why: str
    seen_by: str = ""
    sheet: str = ""
    number: int = 0


NOT_KNOWN = "not known"


@dataclass(frozen=True)
class TwoRecords:
    """Two records of one reading that disagree: both, the one used, and why. `reading` names the column.

    Where nobody knows which is right, `used` is NOT_KNOWN and both stand.
    """

    id: str
    about: Narrowing
    reading: str
    said: tuple[str, ...]
    used: str
    because: str
    test: str = ""


@dataclass(frozen=True)
class Assumption:
    """A name in formulas that nobody measured: the `value` taken, and how far off it may be (`within`, half-width,
    uniform).

    Each contender has its own, unless `alike` (one error for all). Where no value was written (`unsaid`), it is a step
    of nothing: 0 °F of difference, never the point on the scale.
    """

    id: str
    value: Amount
    within: Amount
    because: str
    alike: bool = False
    unsaid: bool = False


@dataclass(frozen=True)
class DeclaredCaveat:
    id: str
    about: Narrowing
    says: str
    pushes: Pushes = ""
    blocks: bool = False  # `so: do not rank`
    photos: tuple[str, ...] = ()  # ids
    film: Moment | None = None
    name: str = ""  # what its address ends with


@dataclass(frozen=True)
class Acceptance:
    id: str
    rule: str
    because: str
    about: Narrowing
