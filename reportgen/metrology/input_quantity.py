"""Input quantities: an estimate, its unit and its standard uncertainty under the name of its cause (JCGM 100, 4.1).

    bath = input_quantity(20.0, "°C", u=rectangular(0.5), name="bath")
    mass = from_observations([14.31, 14.29, 14.33], "g", name="weighing")

The name matters: two quantities of one name have one and the same error, and it cancels in their difference.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from reportgen.metrology.arithmetic import LARGEST
from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.type_a import Scatter, mean, standard_deviation
from reportgen.metrology.type_b import StandardUncertainty, normal, rectangular
from reportgen.metrology.uncertain import Sort, Source, Uncertain
from reportgen.metrology.unit import Unit, parse_unit

Stated = float | StandardUncertainty


def input_quantity(
    estimate: float,
    unit: str | Unit = "",
    u: Stated | Mapping[str, Stated] | None = None,
    degrees: float = math.inf,
    name: str = "",
    sort: Sort = "constant",
) -> Uncertain:
    """An input quantity; `u` in the unit's step (for °C a difference), a number or what `type_b` gives.

    Several parts of one uncertainty go by name: `u={"repeats": normal(5.8, degrees=24), "comparator": 6.7}`.
    `degrees` of freedom belong to a `u` given as a number. Without `u` the value is exact.

    >>> from reportgen.metrology.coverage import effective_degrees_of_freedom
    >>> from reportgen.metrology.uncertain import combined_standard_uncertainty
    >>> d = input_quantity(215.0, "nm", name="d", u={
    ...     "repeats": normal(5.8, degrees=24), "comparator, random": normal(3.9, degrees=5),
    ...     "comparator, systematic": normal(6.7, degrees=8)})
    >>> round(combined_standard_uncertainty(d), 1), int(effective_degrees_of_freedom(d))
    (9.7, 25)

    Those are the figures of JCGM 100, H.1.3.2 and H.1.6 (25.6 there, from 9.7 rounded).

    Raises UnitError for a unit nobody knows, MetrologyError for a value that is no number and for an uncertainty
    without a name.
    """
    if not math.isfinite(estimate):
        raise MetrologyError(f"an estimate of {estimate}", "write a number")
    parts = u if isinstance(u, Mapping) else {"": u} if u is not None else {}
    if parts and not name:
        raise MetrologyError("an uncertainty without a name", "name its cause: equal names are one and the same error")
    contributions: dict[Source, float] = {}
    for part, stated in parts.items():
        found = normal(stated, degrees) if isinstance(stated, int | float) else stated
        if found.size:
            of = f"{name}, {part}" if part else name
            contributions[Source(sort, of, "", found.shape, found.degrees)] = found.size
    return Uncertain(estimate, parse_unit(unit) if isinstance(unit, str) else unit, contributions)


def from_limits(low: float, high: float, unit: str | Unit = "", name: str = "") -> Uncertain:
    """A quantity that lies anywhere between two limits alike: their middle, half their distance /√3 (JCGM 100, 4.3.7).

    >>> from_limits(96.0, 104.0, "°C", name="bath").value
    100.0
    """
    if not low <= high:
        raise MetrologyError(f"limits of {low} and {high}", "write the lower one first")
    return input_quantity((low + high) / 2, unit, rectangular((high - low) / 2), name=name)


def from_observations(
    observations: Sequence[float], unit: str | Unit = "", name: str = "", scatter: Scatter | None = None
) -> Uncertain:
    """The mean of independent observations with s/√n and n − 1 degrees of freedom (JCGM 100, 4.2.1 to 4.2.3, 4.2.6).

    `scatter` is that of one observation where it is known from elsewhere, pooled say (4.2.4): it then counts instead,
    with its own degrees of freedom, and a single observation will do.

    >>> x = from_observations([10.0, 12.0, 14.0], "g", name="weighing")
    >>> [(x.value, round(u, 3), source.degrees) for source, u in x.contributions.items()]
    [(12.0, 1.155, 2)]

    Raises MetrologyError for observations too few to show their scatter.
    """
    wrong = next((x for x in observations if not abs(x) < LARGEST), None)
    if wrong is not None:
        raise MetrologyError(f"an observation of {wrong}", "write a number, in a unit that suits it")
    middle, n = mean(observations), len(observations)
    deviation = scatter.sd if scatter else standard_deviation(observations)
    if deviation is None:
        raise MetrologyError(
            "one observation says nothing of its scatter", "repeat it, or give the scatter from earlier observations"
        )
    degrees = scatter.degrees if scatter else n - 1
    return input_quantity(middle, unit, normal(deviation / math.sqrt(n), degrees), name=name, sort="scatter")
