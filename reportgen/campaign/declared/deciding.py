"""When an author decided something: before anything was read, or once results were known."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from reportgen.campaign.declared.amounts import Day

DecidedWhen = Literal["before the test", "during the test", "after seeing results", "not noted", ""]


@dataclass(frozen=True)
class WhenDecided:
    """`when` as typed, "" where only a day was given; `day` the day, where there is one."""

    when: DecidedWhen
    day: Day | None = None
