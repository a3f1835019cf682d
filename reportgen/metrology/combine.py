"""Several uncertain values joined into one: means, sums, energy means.

Contributions of one source add with their signs, so an error that all parts share stays whole in their mean, and
errors of their own, each with a source of its own, shrink as independent ones do.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from reportgen.metrology import levels
from reportgen.metrology.arithmetic import add, in_unit, weighted
from reportgen.metrology.errors import MetrologyError, UnitError
from reportgen.metrology.limits import joint
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import Unit, is_decibel, named


def mean_of(values: Sequence[Uncertain]) -> Uncertain:
    """The arithmetic mean, in the unit of the first: a mean of temperatures is a temperature, of levels a level.

    What all values share stays whole, what each has of its own is divided by √n:

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> from reportgen.metrology.uncertain import combined_standard_uncertainty
    >>> shared = mean_of([input_quantity(x, "g", u=0.2, name="scale") for x in (10.0, 11.0, 12.0, 13.0)])
    >>> own = mean_of([input_quantity(x, "g", u=0.2, name=f"reading of {x}") for x in (10.0, 11.0, 12.0, 13.0)])
    >>> shared.value, combined_standard_uncertainty(shared), combined_standard_uncertainty(own)
    (11.5, 0.2, 0.1)

    Raises UnitError where units don't go together, NoValue where bounds pull apart.
    """
    unit, values = _in_one_unit(values)
    share = 1.0 / len(values)
    return _joined(values, unit, [share] * len(values), lambda known: math.fsum(known) / len(known))


def sum_of(values: Sequence[Uncertain]) -> Uncertain:
    """The sum, in the unit of the first. Raises UnitError (temperatures and levels have none), NoValue as above.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> sum_of([input_quantity(1.0, "kg"), input_quantity(250.0, "g")]).value
    1.25
    """
    unit, values = _in_one_unit(values)
    if len(values) > 1:
        add(values[0], values[1])  # for its refusal of temperatures and levels
    return _joined(values, unit, [1.0] * len(values), math.fsum)


def energy_mean(values: Sequence[Uncertain]) -> Uncertain:
    """The level of the mean energy, 10·lg(mean of 10^(L/10)), in dB (ISO 3745; ISO 1996-1). Raises as above.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> round(energy_mean([input_quantity(90.0, "dB"), input_quantity(80.0, "dB")]).value, 2)
    87.4
    """
    unit, values = _levels(values)
    return _joined(values, unit, _energy_shares(values), levels.energy_mean)


def energy_sum(values: Sequence[Uncertain]) -> Uncertain:
    """The level of all sources together, 10·lg(Σ 10^(L/10)), in dB. Raises as above.

    >>> from reportgen.metrology.input_quantity import input_quantity
    >>> both = energy_sum([input_quantity(90.0, "dB"), input_quantity(80.0, "dB")])
    >>> round(both.value, 2)
    90.41
    """
    unit, values = _levels(values)
    return _joined(values, unit, _energy_shares(values), levels.energy_sum)


def _joined(
    values: Sequence[Uncertain], unit: Unit, slopes: Sequence[float], work: Callable[[Sequence[float]], float]
) -> Uncertain:
    limit = joint(*(x.limit for x in values))
    known = [x.value for x in values if x.value is not None]
    if len(known) < len(values):
        return Uncertain(None, unit, {}, limit)
    return Uncertain(work(known), unit, weighted(zip(slopes, values, strict=True)), limit)


def _energy_shares(values: Sequence[Uncertain]) -> list[float]:
    """∂L/∂Lᵢ of an energy sum or mean: each part's share of the energy."""
    return levels.energy_shares([x.value or 0.0 for x in values])


def _in_one_unit(values: Sequence[Uncertain]) -> tuple[Unit, list[Uncertain]]:
    if not values:
        raise MetrologyError("nothing to join: there is no value at all", "")
    unit = values[0].unit
    return unit, [in_unit(x, unit) for x in values]


def _levels(values: Sequence[Uncertain]) -> tuple[Unit, list[Uncertain]]:
    unit, values = _in_one_unit(values)
    if unit.kind != "level":
        what = "a difference of levels" if is_decibel(unit.dimension) else named(unit)
        raise UnitError(f"an energy sum or mean is of levels in dB, not of {what}", "use a plain one")
    return unit, list(values)
