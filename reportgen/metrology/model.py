"""The measurement model Y = f(X₁, …, X_N) with its inputs by name (JCGM 100, 4.1), for use of this library by itself.

The formula is written as authors write one; `names` of inputs are words with underscores. Functions over passes,
parts, contenders and logger channels need a `Lookup` and `evaluate`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import NoReturn

from reportgen.metrology.errors import NoValue, did_you_mean
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.grammar import Expression
from reportgen.metrology.formulas.names import names_in
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.traces.trace import Trace
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit_algebra import step_of, unit_of_product


def output_estimate(formula: str | Expression, inputs: Mapping[str, Uncertain]) -> Uncertain:
    """y = f(x₁, …, x_N) with everything that makes it uncertain (JCGM 100, 4.1.4 and 5.1.2).

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> from reportgen.metrology.uncertain import combined_standard_uncertainty
    >>> y = output_estimate("energy / time", {
    ...     "energy": input_quantity(90.0, "kJ", u=0.9, name="joulemeter"),
    ...     "time": input_quantity(180.0, "s", u=1.8, name="stopwatch")})
    >>> y.value, y.unit.symbol, round(combined_standard_uncertainty(y), 5)
    (0.5, 'kJ/s', 0.00707)

    Raises FormulaError with the column where names, units or functions don't fit, NoValue where these inputs give
    nothing.
    """
    return evaluate(parse(formula) if isinstance(formula, str) else formula, _Named(inputs))


def sensitivity_coefficients(formula: str | Expression, inputs: Mapping[str, Uncertain]) -> dict[str, Uncertain]:
    """cᵢ = ∂f/∂xᵢ at the estimates, exact, in the result's unit over the input's (JCGM 100, 5.1.3).

    Each comes as if the inputs were independent of one another; those the formula doesn't name are left out.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> c = sensitivity_coefficients("energy / time", {
    ...     "energy": input_quantity(90.0, "kJ"), "time": input_quantity(180.0, "s")})
    >>> [(name, round(of.value, 6), of.unit.symbol) for name, of in c.items()]
    [('energy', 0.005556, '1/s'), ('time', -0.002778, 'kJ/s²')]

    Raises as `output_estimate`, and NoValue where an input is only a bound.
    """
    tree = parse(formula) if isinstance(formula, str) else formula
    asked = {name: x for name, x in inputs.items() if name in names_in(tree)}
    for name, x in asked.items():
        if x.value is None or x.limit is not None:
            raise NoValue(f"{name} is only a bound: it has no sensitivity", "")
    marks = {name: Source("assumption", name, "sensitivity") for name in asked}
    result = output_estimate(tree, {name: Uncertain(x.value, x.unit, {marks[name]: 1.0}) for name, x in asked.items()})
    return {
        name: Uncertain(
            result.contributions.get(marks[name], 0.0), unit_of_product(step_of(result.unit), step_of(x.unit), "/")
        )
        for name, x in asked.items()
    }


@dataclass(frozen=True)
class _Named:
    """A lookup that knows inputs by name and nothing else."""

    inputs: Mapping[str, Uncertain]

    def value(self, name: str) -> Uncertain:
        if name not in self.inputs:
            raise KeyError(f"there is no {name}; {did_you_mean(name, self.inputs)}".removesuffix("; "))
        return self.inputs[name]

    def over_passes(self, name: str) -> Sequence[Uncertain]:
        self._no("passes", name)

    def over_parts(self, name: str) -> Sequence[Uncertain]:
        self._no("parts", name)

    def pairs(self, name: str, other: str) -> tuple[str, Sequence[tuple[Uncertain, Uncertain]]]:
        self._no("parts", name)

    def of(self, contender: str, name: str) -> Uncertain:
        self._no("contenders", name)

    def trace(self, name: str) -> Trace:
        self._no("channels", name)

    def found(
        self, function: str, channel: str, value: Uncertain, limit: Uncertain | None = None, times: int = 1
    ) -> None:
        """Nobody listens."""

    def _no(self, what: str, name: str) -> NoReturn:
        raise KeyError(f"inputs by name have no {what}: {name} is one value")
