"""How far from straight a formula is as far as its inputs reach: what first order leaves out, guessed from above.

Second derivatives times half the product of the two standard uncertainties, added without regard to sign, step by step
along the formula (the terms of next higher order in JCGM 100, 5.1.2, note). Nothing where the formula is straight in
all that is uncertain. It only tells whether draws are worth their while; draws tell how far off first order is.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from reportgen.metrology.angles import radian
from reportgen.metrology.arithmetic import in_unit
from reportgen.metrology.background import BOUND_UNDER, NOTHING_FROM
from reportgen.metrology.errors import NoValue
from reportgen.metrology.formulas.engine import FIRST_ORDER, Engine
from reportgen.metrology.levels import energy_shares
from reportgen.metrology.uncertain import Uncertain, combined_standard_uncertainty
from reportgen.metrology.unit import NUMBER, Unit, scale
from reportgen.metrology.unit_algebra import unit_of_sum

REACH = 4.0  # standard uncertainties to either side of a kink: draws beyond are too few to move a 95 % interval
_NEPER = math.log(10.0) / 10.0  # of one decibel of energy


@dataclass(frozen=True)
class Bent:
    """A value to first order and its `bend`: what second order adds to it, one standard uncertainty away, at most."""

    first: Uncertain
    bend: float


def leaf(x: Uncertain, left_out: frozenset[str] = frozenset()) -> Bent:
    """What is known to first order is straight in its sources; errors of the sorts `left_out` are taken for nothing.

    Raises NoValue for a bound, of which nothing is ever drawn.
    """
    if x.limit or x.value is None:
        raise NoValue("a bound can't be drawn", "")
    if not left_out:
        return Bent(x, 0.0)
    kept = {s: size for s, size in x.contributions.items() if s.sort not in left_out}
    return Bent(replace(x, contributions=kept), 0.0)


def _u(x: Bent) -> float:
    return combined_standard_uncertainty(x.first)


def _at(x: Bent) -> float:
    return x.first.value or 0.0


def _in_unit(x: Bent, unit: Unit) -> Bent:
    first = in_unit(x.first, unit)
    return Bent(first, x.bend * scale(x.first.unit, first.unit))


def _sum(sign: str) -> Callable[[Bent, Bent], Bent]:
    def work(x: Bent, y: Bent) -> Bent:
        first = FIRST_ORDER.signs[sign](x.first, y.first)
        _, for_x, for_y = unit_of_sum(x.first.unit, y.first.unit, "+" if sign == "+" else "-")
        return Bent(first, _in_unit(x, for_x).bend + _in_unit(y, for_y).bend)

    return work


def _multiply(x: Bent, y: Bent) -> Bent:
    first = FIRST_ORDER.signs["*"](x.first, y.first)
    return Bent(first, abs(_at(y)) * x.bend + abs(_at(x)) * y.bend + _u(x) * _u(y))


def _divide(x: Bent, y: Bent) -> Bent:
    first = FIRST_ORDER.signs["/"](x.first, y.first)
    below = abs(_at(y))
    if below == 0.0:
        return Bent(first, math.inf)  # a bound; nothing is drawn of it
    quotient = abs(_at(x)) / below
    own = (_u(x) + quotient * _u(y)) * _u(y) / below / below
    return Bent(first, (x.bend + quotient * y.bend) / below + own)


def _curved(first: Uncertain, x: Bent, slope: Callable[[float], float], curve: Callable[[float], float]) -> Bent:
    """A function of one value, by its first and second derivatives there."""
    if not _u(x) and not x.bend:
        return Bent(first, 0.0)
    try:
        bend = abs(slope(_at(x))) * x.bend + abs(curve(_at(x))) * _u(x) ** 2 / 2.0
    except (ZeroDivisionError, OverflowError, ValueError):
        return Bent(first, math.inf)
    return Bent(first, bend)


def _power(x: Bent, exponent: float) -> Bent:
    first = FIRST_ORDER.power(x.first, exponent)
    if not x.first.unit.dimension:
        x = _in_unit(x, NUMBER)
    if exponent == 0:
        return Bent(first, 0.0)
    if exponent == 1:
        return Bent(first, x.bend)
    return _curved(
        first,
        x,
        lambda at: float(exponent * at ** (exponent - 1)),
        lambda at: float(exponent * (exponent - 1) * at ** (exponent - 2)),
    )


def _log(x: Bent) -> Bent:
    return _curved(FIRST_ORDER.functions["log"](x.first), _in_unit(x, NUMBER), lambda at: 1 / at, lambda at: 1 / at**2)


def _exp(x: Bent) -> Bent:
    return _curved(FIRST_ORDER.functions["exp"](x.first), _in_unit(x, NUMBER), math.exp, math.exp)


def _of_angle(name: str, x: Bent, slope: Callable[[float], float], curve: Callable[[float], float]) -> Bent:
    first = FIRST_ORDER.functions[name](x.first)
    return _curved(first, _in_unit(x, radian()), slope, curve)


def _less_background(level: Bent, background: Bent) -> Bent:
    first = FIRST_ORDER.functions["less_background"](level.first, background.first)
    background = _in_unit(background, level.first.unit)
    above, u = _at(level) - _at(background), _u(level) + _u(background)
    if not u:
        return Bent(first, 0.0)
    if any(abs(above - kink) < REACH * u for kink in (BOUND_UNDER, NOTHING_FROM)):
        return Bent(first, math.inf)
    if above > NOTHING_FROM or above <= 0.0:
        return Bent(first, level.bend)
    k = 1.0 / math.expm1(above * _NEPER)
    return Bent(first, (1 + k) * level.bend + k * background.bend + _NEPER * k * (1 + k) * u * u / 2.0)


def _joined(how: str) -> Callable[[Sequence[Bent]], Bent]:
    def work(values: Sequence[Bent]) -> Bent:
        first = FIRST_ORDER.joins[how]([x.first for x in values])
        alike = [_in_unit(x, values[0].first.unit) for x in values]
        if how in ("mean", "sum"):
            return Bent(first, sum(x.bend for x in alike) / (len(alike) if how == "mean" else 1))
        shares = energy_shares([_at(x) for x in alike])
        weighed = zip(shares, alike, strict=True)
        return Bent(first, sum(w * (x.bend + _NEPER * _u(x) ** 2 / 2.0) for w, x in weighed))

    return work


BENDING: Engine[Bent] = Engine(
    leaf=leaf,
    plain=lambda x: FIRST_ORDER.plain(x.first),
    unit_of=lambda x: x.first.unit,
    in_unit=_in_unit,
    negate=lambda x: Bent(FIRST_ORDER.negate(x.first), x.bend),
    power=_power,
    signs={"+": _sum("+"), "-": _sum("-"), "*": _multiply, "/": _divide},
    functions={
        "log": _log,
        "exp": _exp,
        "sqrt": lambda x: _power(x, 0.5),
        "sin": lambda x: _of_angle("sin", x, math.cos, math.sin),
        "cos": lambda x: _of_angle("cos", x, math.sin, math.cos),
        "less_background": _less_background,
    },
    joins={how: _joined(how) for how in FIRST_ORDER.joins},
)


def bending(left_out: frozenset[str]) -> Engine[Bent]:
    """The same where errors of some sorts are taken for nothing."""
    return replace(BENDING, leaf=lambda x: leaf(x, left_out))
