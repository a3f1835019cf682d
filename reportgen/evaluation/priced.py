"""Prices held against merit, and what using costs, frozen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from reportgen.campaign.declared import Price
from reportgen.evaluation.caveat import Keys
from reportgen.judgement.money.break_even import BreakEven, CostLine, Slope, Stretch


@dataclass(frozen=True)
class ValueForMoney:
    """`dominated_by` cost no more, are resolved better on some criterion and resolved worse on none.

    `on`: by criterion, those that cost no more and are resolved better on it; `on_verdict`: those that cost no more and
    are worth more over all that is weighed, and firmly: with and without the criteria of unknown scatter.
    """

    contender: str
    price: str
    low: float | None
    high: float | None
    currency: str
    dominated_by: tuple[str, ...]
    on: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    on_verdict: tuple[str, ...] = ()


@dataclass(frozen=True)
class CostOfUse:
    """What the contenders cost over the use that the author states: `low` to `high` times, each `per`.

    `lines`: those that have a price in `currency` and a cost of a use; `left_out`: the others, and why (a code:
    no-price, other-currency, no-result, blocked, no-interval). `slopes`: of each pair of lines, what the cost of a use
    of the first is above that of the second. `once`: the costs rest on passes whose scatter isn't known. `why` there is
    nothing to work out: parts-apart; "" else.
    """

    per: str
    formula: str
    low: float
    high: float
    currency: str
    lines: tuple[CostLine, ...]
    left_out: Mapping[str, str]
    slopes: Mapping[tuple[str, str], Slope | None]
    break_evens: tuple[BreakEven, ...]
    cheapest: tuple[Stretch, ...]
    rests_on: Keys
    stands_on: frozenset[str] = frozenset()  # quantities, and what feeds them
    once: bool = False
    why: str = ""
    cheapest_in: tuple[Stretch, ...] = ()  # the same of those that miss no condition, where another has a line


@dataclass(frozen=True)
class Beaten:
    """`better` costs no more than `worse` and is resolved better on `quantity`, "" for all that is weighed."""

    worse: str
    better: str
    quantity: str


@dataclass(frozen=True)
class PriceOtherwise:
    """What would be otherwise, did `contender` cost `at`, one end of a further price of it.

    `dearer_than`: those that it costs no more than now, and would cost more than; `cheaper_than` the other way round.
    `no_longer` and `newly`: who would be beaten at no higher price by whom. `cheapest`: where who of those that aren't
    out may be the cheapest would change, the stretches then; () else.
    """

    contender: str
    price: Price
    at: float
    dearer_than: tuple[str, ...] = ()
    cheaper_than: tuple[str, ...] = ()
    no_longer: tuple[Beaten, ...] = ()
    newly: tuple[Beaten, ...] = ()
    cheapest: tuple[Stretch, ...] = ()

    @property
    def changes(self) -> bool:
        return bool(self.dearer_than or self.cheaper_than or self.no_longer or self.newly or self.cheapest)
