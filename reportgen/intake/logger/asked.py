"""What is asked of a logger file, and what was found in it."""

from __future__ import annotations

from dataclasses import dataclass, field

from reportgen.intake.logger.encoding import Bytes
from reportgen.intake.logger.layout import Layout
from reportgen.intake.reading import Series


@dataclass(frozen=True)
class Ask:
    """One channel of one file. `time` is the heading of times ("" for the first column), `rate` stands in its place.

    `only` narrows a file that serves several: pairs of heading and text. `unit` is the channel's as declared.
    """

    file: str
    heading: str
    time: str
    time_unit: str
    rate: float | None
    only: tuple[tuple[str, str], ...] = ()
    unit: str = field(default="", compare=False)
    encoding: str = ""  # "" where the file's bytes tell


@dataclass(frozen=True)
class Channel:
    """A channel as it was loaded: its table, how many samples, and where they stand."""

    table: str
    layout: Layout
    raw: Bytes
    samples: int
    wraps: bool
    unit: str  # as the file says, "" where it doesn't
    index: int  # of its column in a row
    of_day: bool = False  # its times are those of a clock


def ask_of(series: Series) -> Ask:
    """What was asked when the series was read."""
    return Ask(
        series.file,
        series.heading,
        series.time,
        series.time_unit,
        series.rate,
        series.only,
        series.declared_unit,
        series.encoding,
    )
