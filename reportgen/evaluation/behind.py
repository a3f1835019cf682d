"""What stands behind one line of a budget, before the formula weighs it."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.intake.reading import ReadingKey


@dataclass(frozen=True)
class Behind:
    """`u` (in `unit`; of a gain in percent of the reading) of each of `count` inputs, `sensitivity` to one of them.

    The line's size = |sensitivity| · u · √count, exactly (JCGM 100, 5.1.3). Where the inputs aren't alike, `u` is their
    root mean square and `sensitivity` what it comes to on the whole. Its sign is kept where all agree. Of the scatter,
    `u` is that of one pass and `count` how many make the mean. `keys`: the readings that hold the error.
    """

    u: float
    unit: str
    count: int
    sensitivity: float
    alike: bool
    keys: tuple[ReadingKey, ...]
