"""Units as they are spelled for print, and a number joined to its unit."""

from __future__ import annotations

import re

from reportgen.wording.apart import ISOLATE, POP
from reportgen.wording.language import as_one

NO_BREAK = "\u00a0"

# Spellings that people or Pint type → the symbol to print, from the SI brochure (9th edition) where it has one.
_SYMBOLS = {
    "degC": "°C", "degree_Celsius": "°C", "celsius": "°C", "delta_degC": "°C",
    "degF": "°F", "degree_Fahrenheit": "°F", "fahrenheit": "°F", "delta_degF": "°F",
    "kelvin": "K", "percent": "%", "ohm": "Ω", "um": "µm", "μm": "µm", "us": "µs", "uV": "µV", "uA": "µA", "ug": "µg",
    "litre": "L", "liter": "L", "l": "L", "ml": "mL", "dl": "dL", "cl": "cL",
    "second": "s", "seconds": "s", "sec": "s", "minute": "min", "minutes": "min", "hour": "h", "hours": "h", "hr": "h",
    "gram": "g", "grams": "g", "gramme": "g", "kilogram": "kg", "metre": "m", "meter": "m",
    "ounce": "oz", "pound": "lb", "lbs": "lb", "lbm": "lb", "inch": "in", "foot": "ft",
    "fluid_ounce": "fl oz", "floz": "fl oz", "fl_oz": "fl oz", "force_pound": "lbf", "kilogram_force": "kgf",
    "dimensionless": "", "count": "", "1": "",
}  # fmt: skip
_RAISED = str.maketrans("-−0123456789", "⁻⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


def spelled(unit: str) -> str:
    """A unit as printed: `mm/s^2` is `mm/s²`, `degF` is `°F`, `kg*m` is `kg·m`; what isn't known stays as typed."""
    unit = unit.strip()
    if unit in _SYMBOLS:
        return _SYMBOLS[unit]
    unit = re.sub(r"\s*(?:\*\*|\^)\s*\(?([-−]?\d+)\)?", lambda m: m[1].translate(_RAISED), unit)
    unit = re.sub(r"\s*([*·⋅])\s*", "·", unit)
    unit = re.sub(r"\s*/\s*", "/", unit)
    return re.sub(r"[A-Za-zμ_]+", lambda m: _SYMBOLS.get(m[0], m[0]), unit).replace(" ", NO_BREAK)


def joined(number: str, unit: str) -> str:
    """A printed number and its unit, a no-break space between (SI brochure 5.4.3; 5.4.7 has it for % too)."""
    printed = spelled(unit)
    if not printed:
        return number
    before, mark, last = number.rpartition(ISOLATE)
    if before and last.endswith(POP):  # "5 to 7" from right to left: the unit stays at the last number
        return f"{before}{mark}{last.removesuffix(POP)}{NO_BREAK}{printed}{POP}"
    return as_one(f"{number}{NO_BREAK}{printed}")
