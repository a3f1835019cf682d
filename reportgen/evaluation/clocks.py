"""Which functions a formula calls along a channel, and whose clock its times are then taken from."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.campaign.declared import Campaign, Quantity
from reportgen.intake.reading import Reading
from reportgen.metrology.errors import FormulaError
from reportgen.metrology.formulas.grammar import OVER_CHANNELS, Call, Expression, Name
from reportgen.metrology.formulas.names import parts_of
from reportgen.metrology.formulas.parse import parse

OF_TIME = frozenset({"when", "how_long", "area", "slope", "at", "during"})


def functions_along(quantity: Quantity, channel: str, raw: bool = False) -> frozenset[str]:
    """Those its own formula calls on a channel, or on a part of it; `raw`: not on one that was smoothed."""
    if not quantity.formula:
        return frozenset()
    try:
        calls = [part for part in parts_of(parse(quantity.formula)) if isinstance(part, Call)]
    except FormulaError:
        return frozenset()
    along = (c for c in calls if c.function in OVER_CHANNELS)
    return frozenset(c.function for c in along if _is_of(c.arguments[0], channel, raw))


def clock_unknown(campaign: Campaign, quantity: Quantity, readings: Iterable[Reading]) -> tuple[str, ...]:
    """The instruments that logged what its times are taken from, and whose clock nobody vouches for."""
    found = {
        r.instrument
        for r in readings
        if r.series is not None
        and r.key.test == quantity.test
        and r.instrument in campaign.instruments
        and campaign.instruments[r.instrument].clock is None
        and functions_along(quantity, r.key.name) & OF_TIME
    }
    return tuple(sorted(found))


def _is_of(argument: Expression, channel: str, raw: bool) -> bool:
    while isinstance(argument, Call) and not (raw and argument.function == "smoothed"):
        argument = argument.arguments[0]
    return isinstance(argument, Name) and argument.name == channel
