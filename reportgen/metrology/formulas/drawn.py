"""Arithmetic on many joint draws at once: the engine that takes a formula as it is, and nothing for straight.

JCGM 101:2008, 7.4: the model is worked out for each draw of its inputs. Beside the draws goes the value to first order,
whose rules of units and refusals hold here too. Where a draw has no answer (a logarithm or a root below nothing, a
divisor on the other side of nothing than it was read, a number too large to hold) it is no number, and whoever sums up
says how many these were.
Bounds are never drawn.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from reportgen.metrology.angles import radian
from reportgen.metrology.arithmetic import LARGEST, in_unit
from reportgen.metrology.background import NOTHING_FROM, correction
from reportgen.metrology.draws import Draws
from reportgen.metrology.errors import NoValue
from reportgen.metrology.formulas.engine import FIRST_ORDER, Engine
from reportgen.metrology.levels import energy_shares
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import NUMBER, Unit, scale
from reportgen.metrology.unit_algebra import unit_of_sum

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]


@dataclass(frozen=True)
class Drawn:
    """A value in each draw: that at the readings, `first.value`, and `off`, how far from it each draw lies, in
    first's unit; None for what is exact."""

    first: Uncertain
    off: Numbers | None


def drawn(x: Uncertain, draws: Draws, block: int, left_out: frozenset[str] = frozenset()) -> Drawn:
    """What is known to first order (a reading, a constant), in one block of draws. Raises NoValue for a bound."""
    kept = {s: size for s, size in x.contributions.items() if s.sort not in left_out} if left_out else x.contributions
    return Drawn(_no_bound(x), spread(kept, draws, block))


def spread(contributions: Mapping[Source, float], draws: Draws, block: int) -> Numbers | None:
    """Σ size·z over the sources in each draw; None where there is nothing to draw."""
    off: Numbers | None = None
    for source in sorted(contributions):  # so that it rounds alike wherever the same sources meet
        if contributions[source]:
            one = contributions[source] * draws.of(source, block)
            off = one if off is None else off + one
    return off


def _no_bound(x: Uncertain) -> Uncertain:
    """How what lies beyond a bound is spread, nobody knows."""
    if x.limit or x.value is None:
        raise NoValue("a bound can't be drawn", "")
    return x


def _at(x: Drawn) -> float:
    return x.first.value or 0.0  # a bound never gets so far


def _in_unit(x: Drawn, unit: Unit) -> Drawn:
    first = in_unit(x.first, unit)
    return Drawn(first, None if x.off is None else x.off * scale(x.first.unit, first.unit))


def _sum(sign: str) -> Callable[[Drawn, Drawn], Drawn]:
    def work(x: Drawn, y: Drawn) -> Drawn:
        first = FIRST_ORDER.signs[sign](x.first, y.first)
        _, for_x, for_y = unit_of_sum(x.first.unit, y.first.unit, "+" if sign == "+" else "-")
        one, other = _in_unit(x, for_x).off, _in_unit(y, for_y).off
        return Drawn(_no_bound(first), _weighted([(1.0, one), (1.0 if sign == "+" else -1.0, other)]))

    return work


def _weighted(terms: Sequence[tuple[float, Numbers | None]]) -> Numbers | None:
    total: Numbers | None = None
    for weight, off in terms:
        if off is not None:
            total = weight * off if total is None else total + weight * off
    return total


def _negate(x: Drawn) -> Drawn:
    return Drawn(FIRST_ORDER.negate(x.first), None if x.off is None else -x.off)


def _multiply(x: Drawn, y: Drawn) -> Drawn:
    first = FIRST_ORDER.signs["*"](x.first, y.first)
    off = _weighted([(_at(y), x.off), (_at(x), y.off)])
    if off is not None and x.off is not None and y.off is not None:
        off = _held(off + x.off * y.off)
    return Drawn(_no_bound(first), off)


def _divide(x: Drawn, y: Drawn) -> Drawn:
    import numpy as np

    first = _no_bound(FIRST_ORDER.signs["/"](x.first, y.first))
    if y.off is None:
        return Drawn(first, None if x.off is None else x.off / _at(y))
    below = _at(y) + y.off
    with np.errstate(all="ignore"):
        above = (0.0 if x.off is None else x.off) - _at(x) / _at(y) * y.off
        return Drawn(first, _held(np.where(below * _at(y) > 0.0, above / below, np.nan)))


def _through(first: Uncertain, x: Drawn, work: Callable[[Numbers], Numbers]) -> Drawn:
    """A function of one value that was drawn, as numbers in the unit it has."""
    import numpy as np

    if x.off is None:
        return Drawn(_no_bound(first), None)
    with np.errstate(all="ignore"):
        off = work(_at(x) + x.off) - (first.value or 0.0)
        return Drawn(_no_bound(first), _held(off))


def _held(off: Numbers) -> Numbers:
    """Draws, those too large to hold made no numbers: as first order refuses such a value, so does a draw."""
    import numpy as np

    return np.where(np.abs(off) < LARGEST, off, np.nan)


def _power(x: Drawn, exponent: float) -> Drawn:
    first = FIRST_ORDER.power(x.first, exponent)
    if not x.first.unit.dimension:
        x = _in_unit(x, NUMBER)
    return _through(first, x, lambda values: _raised(values, exponent, _at(x)))


def _raised(values: Numbers, exponent: float, at: float) -> Numbers:
    import numpy as np

    found = values**exponent
    return found if exponent >= 0 else np.where(values * at > 0.0, found, np.nan)


def _plain_number(name: str) -> Callable[[Drawn], Drawn]:
    def work(x: Drawn) -> Drawn:
        import numpy as np

        first = FIRST_ORDER.functions[name](x.first)
        return _through(first, _in_unit(x, NUMBER), np.log if name == "log" else np.exp)

    return work


def _of_angle(name: str) -> Callable[[Drawn], Drawn]:
    def work(x: Drawn) -> Drawn:
        import numpy as np

        first = FIRST_ORDER.functions[name](x.first)
        return _through(first, _in_unit(x, radian()), np.sin if name == "sin" else np.cos)

    return work


def _less_background(level: Drawn, background: Drawn) -> Drawn:
    import numpy as np

    first = _no_bound(FIRST_ORDER.functions["less_background"](level.first, background.first))
    background = _in_unit(background, level.first.unit)
    both = _weighted([(1.0, level.off), (-1.0, background.off)])
    if both is None:
        return Drawn(first, None)
    above = _at(level) - _at(background)
    with np.errstate(all="ignore"):
        taken = np.where(above + both > NOTHING_FROM, 0.0, _corrections(above + both))
    return Drawn(first, (0.0 if level.off is None else level.off) - (taken - correction(above)))


def _corrections(above: Numbers) -> Numbers:
    """`background.correction` of many: at most 1.3 dB, and that at or below the background."""
    import numpy as np

    taken = -10.0 * np.log10(-np.expm1(-above * math.log(10.0) / 10.0))
    return np.where(above > 0.0, np.minimum(taken, correction(0.0)), correction(0.0))


def _joined(how: str) -> Callable[[Sequence[Drawn]], Drawn]:
    def work(values: Sequence[Drawn]) -> Drawn:
        first = _no_bound(FIRST_ORDER.joins[how]([x.first for x in values]))
        alike = [_in_unit(x, values[0].first.unit) for x in values]
        if how in ("mean", "sum"):
            share = 1.0 / len(values) if how == "mean" else 1.0
            return Drawn(first, _weighted([(share, x.off) for x in alike]))
        return Drawn(first, _energies(alike))

    return work


def _energies(values: Sequence[Drawn]) -> Numbers | None:
    """10·lg of the energies' growth, each weighed with its share: alike for their sum and their mean."""
    import numpy as np

    if all(x.off is None for x in values):
        return None
    shares = energy_shares([_at(x) for x in values])
    grown = [
        share * (1.0 if x.off is None else 10.0 ** (x.off / 10.0)) for share, x in zip(shares, values, strict=True)
    ]
    with np.errstate(all="ignore"):
        total: Numbers = 10.0 * np.log10(sum(grown))
    return total


def engine(draws: Draws, block: int, left_out: frozenset[str] = frozenset()) -> Engine[Drawn]:
    """Sums on one block of draws; errors of the sorts `left_out` are taken for nothing."""
    return Engine(
        leaf=lambda x: drawn(x, draws, block, left_out),
        plain=lambda x: x.first if x.off is None else None,
        unit_of=lambda x: x.first.unit,
        in_unit=_in_unit,
        negate=_negate,
        power=_power,
        signs={"+": _sum("+"), "-": _sum("-"), "*": _multiply, "/": _divide},
        functions={
            "log": _plain_number("log"),
            "exp": _plain_number("exp"),
            "sqrt": lambda x: _power(x, 0.5),
            "sin": _of_angle("sin"),
            "cos": _of_angle("cos"),
            "less_background": _less_background,
        },
        joins={how: _joined(how) for how in FIRST_ORDER.joins},
    )
