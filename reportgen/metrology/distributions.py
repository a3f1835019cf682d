"""Propagation of distributions: a formula's result from joint draws of all that is uncertain in it (JCGM 101:2008).

For results that are straight enough `evaluate` says the same at once, and takes the uncertainty apart by its causes.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from reportgen.metrology.draws import BLOCK, Draws
from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.formulas.drawn import Drawn, drawn, engine
from reportgen.metrology.formulas.evaluate import evaluate_by
from reportgen.metrology.formulas.grammar import Call, Expression
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.monte_carlo import MOST_BLOCKS, tolerance, until_settled
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import Unit

MOST_DIGITS = 6  # of u that anybody could ask for: a million draws stand for three at the most
LOST = 0.001  # of the draws: more without an answer, and the ends of a 95 % interval would shift to be seen


@dataclass(frozen=True)
class Propagated:
    """Estimate (the average of the draws), standard uncertainty, and the ends of the probabilistically symmetric 95 %
    coverage interval (JCGM 101, 7.6, 7.7), in `unit`; how many draws that took, and whether they settled within the
    tolerance."""

    estimate: float
    u: float
    low: float
    high: float
    unit: Unit
    draws: int
    settled: bool


def propagate_distributions(
    formula: str | Expression,
    inputs: Mapping[str, Uncertain],
    digits: int = 2,
    most: int = MOST_BLOCKS,
) -> Propagated:
    """Draw until the four figures stand within half of one in the last of `digits` digits of u (JCGM 101, 7.9), or
    `most` blocks of 10 000 are drawn.

    A square is not straight: of 3 ± 1 the estimate is 3² + 1², not 9, and the interval lopsided.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> found = propagate_distributions("x ^ 2", {"x": input_quantity(3.0, u=1.0, name="x")})
    >>> round(found.estimate), round(found.u), round(found.low), round(found.high)
    (10, 6, 1, 25)

    Raises FormulaError where names or units don't fit, NoValue where a bound goes in or the formula has no answer for
    more than one draw in a thousand.
    """
    if not (1 <= digits <= MOST_DIGITS and most >= 1):
        raise MetrologyError(f"{digits} digits in {most} blocks", f"ask for 1 to {MOST_DIGITS} digits")
    expression = parse(formula) if isinstance(formula, str) else formula
    draws = Draws()
    units: list[Unit] = []

    def block(number: int) -> tuple[float, float, float, float]:
        found = evaluate_by(engine(draws, number), expression, _Drawing(inputs, draws, number), _no_channel)
        units.append(found.first.unit)
        return _figures(found)

    settled = until_settled(block, lambda figures: [tolerance(figures[1], digits)] * 4, most)
    estimate, u, low, high = settled.averages
    return Propagated(estimate, u, low, high, units[0], settled.blocks * BLOCK, settled.stands)


def _figures(found: Drawn) -> tuple[float, float, float, float]:
    import numpy as np

    at = found.first.value or 0.0
    if found.off is None:
        return at, 0.0, at, at
    known = np.sort(found.off[np.isfinite(found.off)])
    if len(known) < (1.0 - LOST) * len(found.off):
        raise NoValue(
            "no interval: in more than one draw in a thousand a divisor, a logarithm or a root may be of nothing, "
            "or the result too large to hold",
            "measure what stands below the stroke, or inside the brackets, more closely",
        )
    low, high = (float(v) for v in np.quantile(known, (0.025, 0.975)))
    return at + float(known.mean()), float(known.std(ddof=1)), at + low, at + high


class _Drawing:
    """Names that are inputs, drawn in one block."""

    def __init__(self, inputs: Mapping[str, Uncertain], draws: Draws, block: int) -> None:
        self.inputs, self.draws, self.block = inputs, draws, block

    def value(self, name: str) -> Drawn:
        return drawn(self.inputs[name], self.draws, self.block)

    def over_passes(self, name: str) -> Sequence[Drawn]:
        return [self.value(name)]

    def over_parts(self, name: str) -> Sequence[Drawn]:
        return [self.value(name)]

    def of(self, contender: str, name: str) -> Drawn:
        raise KeyError(f"there is one contender here, and no {name} of {contender}")


def _no_channel(call: Call) -> Uncertain:
    raise MetrologyError(f"{call.function}(…) looks along a channel, and there is none here", "give its value by name")
