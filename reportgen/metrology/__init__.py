"""Units, instruments, formulas, propagation, levels, type A evaluation, budgets: a library of its own.

In and out: plain numbers with units. Never knows the program it serves.

    scale = Instrument("bench-scale", resolution=Size(0.1, parse_unit("g")), absolute=Size(0.3, parse_unit("g")))
    before = observed(231.4, parse_unit("g"), scale, session="day 1", reading="1")
    after = observed(217.1, parse_unit("g"), scale, session="day 1", reading="2")
    burned = subtract(before, after)  # 14.3 g; the scale's offset is gone, two steps of 0.1 g are left
    combined(burned)  # 0.041 g

What a metrologist looks for: `unit`, `instrument` (type B), `type_a`, `formula` and `evaluate`, `arithmetic`,
`levels`, `combine`, `budget`. Heavy libraries (Pint, NumPy, SciPy) load only where a rare unit, a gap in the rounds or
a t value asks for them.
"""

from reportgen.metrology.arithmetic import (
    add,
    difference,
    divide,
    exact,
    exp,
    in_unit,
    log,
    multiply,
    negate,
    power,
    sqrt,
    subtract,
)
from reportgen.metrology.combine import energy_mean, energy_sum, mean_of, sum_of
from reportgen.metrology.errors import FormulaError, MetrologyError, NoValue, UnitError
from reportgen.metrology.evaluate import Lookup, evaluate
from reportgen.metrology.formula import contenders_in, functions_in, names_in, parse
from reportgen.metrology.grammar import Expression
from reportgen.metrology.instrument import Instrument, Size, observed
from reportgen.metrology.uncertain import Source, Uncertain, combined, correlation
from reportgen.metrology.unit import Unit, convert, parse_unit

__all__ = [
    "Expression",
    "FormulaError",
    "Instrument",
    "Lookup",
    "MetrologyError",
    "NoValue",
    "Size",
    "Source",
    "Uncertain",
    "Unit",
    "UnitError",
    "add",
    "combined",
    "contenders_in",
    "convert",
    "correlation",
    "difference",
    "divide",
    "energy_mean",
    "energy_sum",
    "evaluate",
    "exact",
    "exp",
    "functions_in",
    "in_unit",
    "log",
    "mean_of",
    "multiply",
    "names_in",
    "negate",
    "observed",
    "parse",
    "parse_unit",
    "power",
    "sqrt",
    "subtract",
    "sum_of",
]
