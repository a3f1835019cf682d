"""The readings of a campaign: raw values, each with its place. Nothing is computed here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from reportgen.finding import Finding, Place

Limit = Literal["above", "below"]


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
    """One raw value. Exactly one of these holds: `value` is set, `limit` is set, `word` is set, `absent_because`.

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


@dataclass(frozen=True)
class RawFile:
    """A file that readings came from: path from the workspace, digest (sha256, hex), size in bytes."""

    path: str
    digest: str
    size: int
    headings: tuple[str, ...] = ()
    unread: tuple[str, ...] = ()  # headings nobody asked for


@dataclass(frozen=True)
class Readings:
    """All readings of a campaign, the files they stood in, and what was noticed while reading."""

    readings: Mapping[ReadingKey, Reading]
    files: tuple[RawFile, ...] = ()
    findings: tuple[Finding, ...] = ()
    order_recorded: Mapping[str, bool] = field(default_factory=dict)  # test id → the file shows the order of work
    rounds_recorded: Mapping[str, bool] = field(default_factory=dict)

    def of_test(self, test: str) -> tuple[Reading, ...]:
        """The test's readings in the order of their file."""
        return tuple(
            sorted((r for k, r in self.readings.items() if k.test == test), key=lambda r: (r.at.file, r.order))
        )
