"""How far two specimens of one product differ, where a method declares it and one of each was tested.

Passes of the one that was bought show nothing of that. Declared, it counts on every result beside the scatter between
passes, and makes the statement one about the product; where several specimens were tested, their own scatter shows it
and nothing is added. Whether these very specimens differed in these runs is asked without it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TypeVar

from reportgen.evaluation.gathered import Gathered
from reportgen.judgement.measured import Measured
from reportgen.metrology.uncertain import Source, Uncertain

Told = TypeVar("Told", Uncertain, Measured)
SPECIMENS = "specimens"  # what the scatter between them is called as a source


def with_specimens_apart(gathered: Gathered, sd: float, relative: bool) -> Gathered:
    """The result with `sd` added: in the quantity's unit, or as a part of the value where it is `relative`."""
    if gathered.mean is None or not sd:
        return gathered
    return replace(
        gathered,
        mean=_added(gathered.mean, gathered.contender, sd, relative),
        measured=_added(gathered.measured, gathered.contender, sd, relative),
        with_all=_added(gathered.with_all, gathered.contender, sd, relative) if gathered.with_all else None,
    )


def apart_in(contributions: Mapping[Source, float]) -> dict[Source, float]:
    """What a result holds of it."""
    return {s: size for s, size in contributions.items() if s.sort == "scatter" and s.of == SPECIMENS}


def _added(one: Told, contender: str, sd: float, relative: bool) -> Told:
    if one.value is None:
        return one
    size = sd * abs(one.value) if relative else sd
    source = Source("scatter", SPECIMENS, contender, "normal")
    return replace(one, contributions={**one.contributions, source: size})
