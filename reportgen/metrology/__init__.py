"""Units, instruments, formulas, propagation, levels, type A and B, budgets: a library of its own.

In and out: values with their units. It never knows the program it serves, and every word of the GUM (JCGM 100) that
names something here is its name:

>>> from reportgen.metrology import (
...     combined_standard_uncertainty, expanded_uncertainty, from_observations, input_quantity, output_estimate, type_b)
>>> energy = input_quantity(90.0, "kJ", u=type_b.rectangular(1.5), name="joulemeter")
>>> time = from_observations([180.2, 179.1, 181.0, 180.5], "s", name="stopwatch")
>>> y = output_estimate("energy / time", {"energy": energy, "time": time})
>>> round(y.value, 4), y.unit.symbol, round(combined_standard_uncertainty(y), 4)
(0.4994, 'kJ/s', 0.0049)
>>> round(expanded_uncertainty(y, 0.95), 4)
0.0097

Readings of an instrument carry what its figures make uncertain; what two readings share cancels:

>>> from reportgen.metrology import Instrument, Size, observed, parse_unit, subtract
>>> scale = Instrument("bench-scale", resolution=Size(0.1, parse_unit("g")), absolute=Size(0.3, parse_unit("g")))
>>> before = observed(231.4, parse_unit("g"), scale, session="day 1", reading="1")
>>> after = observed(217.1, parse_unit("g"), scale, session="day 1", reading="2")
>>> burned = subtract(before, after)  # the scale's offset is gone, two steps of 0.1 g are left
>>> round(burned.value, 1), round(combined_standard_uncertainty(burned), 3)
(14.3, 0.041)

Heavy libraries (Pint, NumPy, SciPy) load only where a rare unit, a gap in the rounds or a t value asks for them.
"""

from reportgen.metrology import fit, type_a, type_b
from reportgen.metrology.arithmetic import (
    add,
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
from reportgen.metrology.budget import Budget, Line, uncertainty_budget
from reportgen.metrology.combine import energy_mean, energy_sum, mean_of, sum_of
from reportgen.metrology.correlated import correlated
from reportgen.metrology.coverage import (
    coverage_factor,
    effective_degrees_of_freedom,
    expanded_uncertainty,
    welch_satterthwaite,
)
from reportgen.metrology.distributions import Propagated, propagate_distributions
from reportgen.metrology.errors import FormulaError, MetrologyError, NoValue, UnitError
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.grammar import Expression
from reportgen.metrology.formulas.lookup import Lookup
from reportgen.metrology.formulas.names import contenders_in, functions_in, names_in
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.groups import nested
from reportgen.metrology.input_quantity import from_limits, from_observations, input_quantity
from reportgen.metrology.instrument import Instrument, Size, observed
from reportgen.metrology.model import output_estimate, sensitivity_coefficients
from reportgen.metrology.simultaneous import from_simultaneous_observations
from reportgen.metrology.uncertain import (
    Source,
    Uncertain,
    combined_standard_uncertainty,
    correlation_coefficient,
    covariance,
)
from reportgen.metrology.unit import Unit, convert, parse_unit

__all__ = [
    "Budget",
    "Expression",
    "FormulaError",
    "Instrument",
    "Line",
    "Lookup",
    "MetrologyError",
    "NoValue",
    "Propagated",
    "Size",
    "Source",
    "Uncertain",
    "Unit",
    "UnitError",
    "add",
    "combined_standard_uncertainty",
    "contenders_in",
    "convert",
    "correlated",
    "correlation_coefficient",
    "covariance",
    "coverage_factor",
    "divide",
    "effective_degrees_of_freedom",
    "energy_mean",
    "energy_sum",
    "evaluate",
    "exact",
    "exp",
    "expanded_uncertainty",
    "fit",
    "from_limits",
    "from_observations",
    "from_simultaneous_observations",
    "functions_in",
    "in_unit",
    "input_quantity",
    "log",
    "mean_of",
    "multiply",
    "names_in",
    "negate",
    "nested",
    "observed",
    "output_estimate",
    "parse",
    "parse_unit",
    "power",
    "propagate_distributions",
    "sensitivity_coefficients",
    "sqrt",
    "subtract",
    "sum_of",
    "type_a",
    "type_b",
    "uncertainty_budget",
    "welch_satterthwaite",
]
