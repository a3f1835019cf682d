"""Where first derivatives say nothing: a divisor, a logarithm or a root of what can't be told from nothing.

To first order a formula must be all but straight as far as its inputs reach (JCGM 100:2008, 5.1.2, note). One over x
isn't where x may be nothing: its values then have no bound, and no interval holds 95 % of them for a reason. The value
stands; an uncertainty of it would be a number about nothing.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Literal

from reportgen.metrology.arithmetic import REACH
from reportgen.metrology.formulas.engine import FIRST_ORDER, Engine
from reportgen.metrology.uncertain import Uncertain, combined_standard_uncertainty

Doubt = Literal["divisor-near-nothing", "logarithm-near-nothing", "root-near-nothing"]


def may_be_nothing(x: Uncertain) -> bool:
    """Whether the 95 % interval of its own uncertainty holds zero; never of a bound, nor of what is exact."""
    if x.value is None or x.limit is not None:
        return False
    u = combined_standard_uncertainty(x)
    return u > 0.0 and abs(x.value) <= REACH * u


def watching(seen: list[Doubt]) -> Engine[Uncertain]:
    """The first-order engine; it notes in `seen` where it divides by, or takes a logarithm or root of, such a value."""

    def watched(doubt: Doubt, work: Callable[[Uncertain], Uncertain]) -> Callable[[Uncertain], Uncertain]:
        def noted(x: Uncertain) -> Uncertain:
            if may_be_nothing(x):
                seen.append(doubt)
            return work(x)

        return noted

    def divide(x: Uncertain, y: Uncertain) -> Uncertain:
        if may_be_nothing(y):
            seen.append("divisor-near-nothing")
        return FIRST_ORDER.signs["/"](x, y)

    def power(x: Uncertain, exponent: float) -> Uncertain:
        if may_be_nothing(x) and exponent < 0:
            seen.append("divisor-near-nothing")
        elif may_be_nothing(x) and 0 < exponent < 1:
            seen.append("root-near-nothing")
        return FIRST_ORDER.power(x, exponent)

    functions = {
        **FIRST_ORDER.functions,
        "log": watched("logarithm-near-nothing", FIRST_ORDER.functions["log"]),
        "sqrt": watched("root-near-nothing", FIRST_ORDER.functions["sqrt"]),
    }
    return replace(FIRST_ORDER, power=power, signs={**FIRST_ORDER.signs, "/": divide}, functions=functions)
