"""Passes joined as a quantity says, specimen by specimen where there are several.

Passes of one specimen show how far that one repeats, and nothing of how far two differ. Each specimen is therefore one
value, however many passes it had, and the specimens are joined by the quantity's own rule.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from reportgen.campaign.declared import Quantity
from reportgen.evaluation.picking import picked
from reportgen.evaluation.working import Working
from reportgen.metrology.combine import energy_mean, mean_of
from reportgen.metrology.uncertain import Uncertain

PICKED = ("least", "most", "middle")


def over_passes(quantity: Quantity, values: Sequence[Uncertain]) -> Uncertain:
    """Passes joined as the quantity says. `least`, `most` and `middle` pick (the middle of an even count is a mean)."""
    if quantity.over_passes in PICKED:
        return picked(quantity.over_passes, values)
    return over_specimens(quantity, values)


def over_specimens(quantity: Quantity, values: Sequence[Uncertain]) -> Uncertain:
    """One value a specimen joined: their mean, or the level of their mean energy where the quantity asks for it."""
    return energy_mean(values) if joined_by(quantity) == "energy mean" else mean_of(values)


def joined_by(quantity: Quantity) -> str:
    """How one value a specimen is joined: mean or energy mean."""
    return "energy mean" if quantity.over_passes == "energy mean" else "mean"


def specimens(quantity: Quantity, passes: Sequence[Working]) -> list[Uncertain]:
    """One value a specimen, of those that have any. Raises NoValue where a specimen's passes can be anything."""
    of_each = ([w.value for w in ws if w.value] for ws in by_specimens(passes))
    return [over_passes(quantity, values) for values in of_each if values]


def several_specimens(passes: Iterable[Working]) -> bool:
    """Was more than one specimen used?"""
    return len({w.key.specimen for w in passes if w.used}) > 1


def by_specimens(passes: Sequence[Working]) -> list[list[Working]]:
    """The passes of each specimen, in their order."""
    found: dict[str, list[Working]] = {}
    for w in passes:
        found.setdefault(w.key.specimen, []).append(w)
    return list(found.values())
