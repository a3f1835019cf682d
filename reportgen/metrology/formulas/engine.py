"""What a formula is worked out with: one way of doing sums for each kind of value.

A formula's tree says what is added and multiplied, an engine says how: to first order on values with signed
contributions (JCGM 100, 5.1.2), or on many joint draws at once (JCGM 101, 7.4). A plain function that formulas may
call is one line of `functions` in every engine, beside its line in `grammar.FUNCTIONS`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from reportgen.metrology import angles, arithmetic, combine
from reportgen.metrology.background import less_background
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import Unit

V = TypeVar("V")


@dataclass(frozen=True)
class Engine(Generic[V]):
    """Sums on values of one kind.

    `leaf` makes one of an uncertain value that was found otherwise (a number written in the formula, what a function
    found along a channel). `plain` is its opposite for what has no uncertainty, None for what has. `signs` are
    + - * /. `functions` take what stands in their brackets, one argument each; `joins` several values of one name.
    """

    leaf: Callable[[Uncertain], V]
    plain: Callable[[V], Uncertain | None]
    unit_of: Callable[[V], Unit]
    in_unit: Callable[[V, Unit], V]
    negate: Callable[[V], V]
    power: Callable[[V, float], V]
    signs: Mapping[str, Callable[[V, V], V]]
    functions: Mapping[str, Callable[..., V]]
    joins: Mapping[str, Callable[[Sequence[V]], V]]


def _plain(x: Uncertain) -> Uncertain | None:
    return x if x.value is not None and not x.limit and not x.contributions else None


FIRST_ORDER: Engine[Uncertain] = Engine(
    leaf=lambda x: x,
    plain=_plain,
    unit_of=lambda x: x.unit,
    in_unit=arithmetic.in_unit,
    negate=arithmetic.negate,
    power=arithmetic.power,
    signs={
        "+": arithmetic.add,
        "-": arithmetic.subtract,
        "*": arithmetic.multiply,
        "/": arithmetic.divide,
    },
    functions={
        "log": arithmetic.log,
        "exp": arithmetic.exp,
        "sqrt": arithmetic.sqrt,
        "sin": angles.sine,
        "cos": angles.cosine,
        "less_background": less_background,
    },
    joins={
        "mean": combine.mean_of,
        "sum": combine.sum_of,
        "energy mean": combine.energy_mean,
        "energy sum": combine.energy_sum,
    },
)
