"""What a laboratory states of its own uncertainty, put beside each value it states.

An expanded uncertainty U with its factor k is a standard uncertainty U/k of a normal distribution (JCGM 100, 4.3.3 and
4.3.4). It holds whatever went into the value, the rounding of the report too, so no step is added. The report doesn't
say how much of it two values share. So it is one error for all values of a contender, which makes their mean no surer
than it is, and each contender's own, which does the same for a difference.
"""

from __future__ import annotations

from dataclasses import replace

from reportgen.campaign.declared import Campaign, Laboratory
from reportgen.intake.reading import Reading
from reportgen.metrology.errors import UnitError
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import convert, parse_unit


def laboratory_of(campaign: Campaign, reading: Reading) -> Laboratory | None:
    """The laboratory that stated it; None for what was read on the bench."""
    return campaign.test(reading.key.test).laboratory if reading.attachment else None


def as_stated(value: Uncertain, laboratory: Laboratory | None, whose: str) -> Uncertain:
    """The value with the uncertainty its laboratory states, in its unit, instead of the step it was written in; `whose`
    names the values that share it.

    Bounds stay bounds, and what was only found keeps its interval, without a step. An uncertainty in a unit of
    something else is left out here: it is told where it is declared (`laboratory_fits.py`), and nothing is published.
    """
    if laboratory is None or value.value is None or value.limit:
        return value
    rough = {s: c for s, c in value.contributions.items() if s.sort == "rough"}
    if rough:
        return replace(value, contributions=rough)
    if laboratory.uncertainty is None:
        return value
    stated = Source("laboratory", laboratory.name, whose, "normal")
    try:
        return replace(value, contributions={stated: _standard(value.value, value, laboratory)})
    except UnitError:
        return value


def _standard(number: float, value: Uncertain, laboratory: Laboratory) -> float:
    assert laboratory.uncertainty is not None
    expanded, k = laboratory.uncertainty, float(laboratory.coverage_factor or 1)
    if expanded.unit == "%":
        return abs(number) * float(expanded.value) / 100 / k
    return convert(float(expanded.value), parse_unit(expanded.unit), value.unit, difference=True) / k
