"""What a cell may hold and what was read out of it: the common ground of every notation."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from reportgen.campaign.declared import Laboratory
from reportgen.intake.reading import Limit, Rough
from reportgen.intake.table import Comma


@dataclass(frozen=True)
class Expected:
    """What a cell may hold: the kind of its quantity ("" for a plain number), its unit, grades, and the comma.

    `names` are the contenders it may be read against: each name as an id, with those who bear it.
    """

    kind: str = ""
    unit: str = ""
    grades: tuple[str, ...] = ()
    comma: Comma = "refused"
    names: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    laboratory: Laboratory | None = None  # whose report the cell was typed from


@dataclass(frozen=True)
class Written:
    """What was read out of a cell; the fields are those of `Reading`. `unit` is "" where the cell has none."""

    value: Decimal | None = None
    unit: str = ""
    limit: Limit | None = None
    word: str = ""
    absent_because: str = ""
    decimals: int | None = None
    width: Decimal | None = None
    rough: Rough = ""
    unweighed: bool = False
    beside: str = ""
    frames: tuple[int, int] | None = None
    unfinished: bool = False


class UnreadableError(Exception):
    """A cell that can't be read: what is wrong, why it matters, what to do."""

    def __init__(self, rule: str, says: str, why: str, do: str) -> None:
        self.rule, self.says, self.why, self.do = rule, says, why, do
        super().__init__(says)
