"""Units our own table doesn't know, asked of Pint: its registry costs 0.3 s, so only a rare unit pays it."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import Any

from reportgen.metrology.unit_table import Dimension, Known

_BASES = {
    "[length]": "length", "[mass]": "mass", "[time]": "time", "[current]": "current", "[temperature]": "temperature",
    "[substance]": "amount", "[luminosity]": "luminosity",
}  # fmt: skip

_SHORTEST = 4


@lru_cache(maxsize=1)
def _registry() -> Any:
    from pint import UnitRegistry

    return UnitRegistry()


@lru_cache(maxsize=256)
def from_pint(name: str) -> Known | None:
    """Pint's unit of that name with its factor to coherent SI units, or None where Pint knows none it can scale.

    Only words are asked (`stone`, `imperial_gallon`): among Pint's abbreviations RH is a ronnahenry, SPL a pressure and
    `mass` several milliarcseconds, and what was meant would become another thing in silence. Scales with a shifted
    zero or a logarithm are answered with None: those that are meant stand in our table.
    """
    if len(name.removesuffix("s")) < _SHORTEST or not name[:1].islower():
        return None
    registry = _registry()
    try:
        base = registry.Quantity(1, name).to_base_units()
        powers = {_BASES[of]: Fraction(power).limit_denominator(12) for of, power in base.dimensionality.items()}
        factor = Fraction(float(base.magnitude))
        zero = float(registry.Quantity(0, name).to_base_units().magnitude)
    except Exception:  # Pint raises half a dozen unrelated classes for text it can't read
        return None
    if zero != 0 or factor <= 0:
        return None
    dimension: Dimension = tuple(sorted(powers.items()))
    return Known(name, factor, dimension)
