"""The units testers write most, with exact factors, so that a campaign in grams and seconds never loads Pint.

Factors to coherent SI units: NIST SP 811 (2008), Appendix B, and IEEE/ASTM SI 10; those they print rounded are
built here from their exact definitions (1 lb = 0.453 592 37 kg, 1 in = 25.4 mm, g = 9.806 65 m/s², mercury of
13 595.1 kg/m³). US customary measures where a name has several. Currency codes are those of ISO 4217.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

Dimension = tuple[tuple[str, Fraction], ...]


def dimension(**powers: int) -> Dimension:
    """Powers of base dimensions, sorted and without zeros; every dimension of this library is made this way."""
    return tuple(sorted((base, Fraction(power)) for base, power in powers.items() if power))


NUMBER = dimension()
LENGTH = dimension(length=1)
AREA = dimension(length=2)
VOLUME = dimension(length=3)
MASS = dimension(mass=1)
TIME = dimension(time=1)
FREQUENCY = dimension(time=-1)
SPEED = dimension(length=1, time=-1)
FORCE = dimension(mass=1, length=1, time=-2)
PRESSURE = dimension(mass=1, length=-1, time=-2)
ENERGY = dimension(mass=1, length=2, time=-2)
POWER = dimension(mass=1, length=2, time=-3)
TEMPERATURE = dimension(temperature=1)
CURRENT = dimension(current=1)
CHARGE = dimension(current=1, time=1)
VOLTAGE = dimension(mass=1, length=2, time=-3, current=-1)
RESISTANCE = dimension(mass=1, length=2, time=-3, current=-2)
LUMINOSITY = dimension(luminosity=1)
FLUX = dimension(luminosity=1, angle=2)
ILLUMINANCE = dimension(luminosity=1, angle=2, length=-2)
ANGLE = dimension(angle=1)
ROTATION = dimension(angle=1, time=-1)
INFORMATION = dimension(information=1)
LEVEL = dimension(level=1)

KINDS_OF_DIMENSION: dict[Dimension, str] = {
    NUMBER: "a plain number", LENGTH: "a length", AREA: "an area", VOLUME: "a volume", MASS: "a mass",
    TIME: "a time", FREQUENCY: "a frequency", SPEED: "a speed", FORCE: "a force", PRESSURE: "a pressure",
    ENERGY: "an energy", POWER: "a power", TEMPERATURE: "a temperature", CURRENT: "an electric current",
    CHARGE: "an electric charge", VOLTAGE: "a voltage", RESISTANCE: "an electrical resistance",
    LUMINOSITY: "a luminous intensity", FLUX: "a luminous flux", ILLUMINANCE: "an illuminance", ANGLE: "an angle",
    ROTATION: "a speed of rotation", INFORMATION: "an amount of data", LEVEL: "a level",
    dimension(length=1, time=-2): "an acceleration", dimension(mass=1, length=-3): "a density",
    dimension(length=3, time=-1): "a flow of volume", dimension(mass=1, time=-1): "a flow of mass",
}  # fmt: skip


@dataclass(frozen=True)
class Known:
    """One unit of the table: `factor` and `offset` lead to the coherent SI unit, x·factor + offset."""

    symbol: str
    factor: Fraction
    dimension: Dimension
    offset: Fraction = Fraction(0)
    prefixes: bool = False


_LB = Fraction("0.45359237")
_GRAVITY = Fraction("9.80665")
_INCH = Fraction("0.0254")
_FOOT = 12 * _INCH
_GALLON = 231 * _INCH**3  # US
_PI = Fraction(math.pi)
_TURN = 2 * _PI

# symbol, factor, dimension, other spellings; a second list for those that take SI prefixes
_PLAIN: tuple[tuple[str, Fraction | int | str, Dimension, str], ...] = (
    ("kg", 1, MASS, "kilogram kilogramme"),
    ("lb", _LB, MASS, "lbs pound"),
    ("oz", _LB / 16, MASS, "ounce"),
    ("gr", _LB / 7000, MASS, "grain"),
    ("in", _INCH, LENGTH, "inch inches"),
    ("ft", _FOOT, LENGTH, "foot feet"),
    ("yd", 3 * _FOOT, LENGTH, "yard"),
    ("mi", 5280 * _FOOT, LENGTH, "mile"),
    ("nmi", 1852, LENGTH, "nautical_mile"),
    ("ha", 10_000, AREA, "hectare"),
    ("min", 60, TIME, "minute mins"),
    ("h", 3600, TIME, "hour hr hrs"),
    ("d", 86_400, TIME, "day"),
    ("week", 604_800, TIME, ""),
    ("mph", 5280 * _FOOT / 3600, SPEED, ""),
    ("kn", Fraction(1852, 3600), SPEED, "knot"),
    ("kgf", _GRAVITY, FORCE, "kilogram_force kp"),
    ("gf", _GRAVITY / 1000, FORCE, "gram_force"),
    ("lbf", _LB * _GRAVITY, FORCE, "pound_force"),
    ("ozf", _LB * _GRAVITY / 16, FORCE, "ounce_force"),
    ("psi", _LB * _GRAVITY / _INCH**2, PRESSURE, ""),
    ("atm", 101_325, PRESSURE, "atmosphere"),
    ("mmHg", Fraction("13595.1") * _GRAVITY / 1000, PRESSURE, "millimeter_Hg"),
    ("inHg", Fraction("13595.1") * _GRAVITY * _INCH, PRESSURE, "inch_Hg"),
    ("hp", 550 * _FOOT * _LB * _GRAVITY, POWER, "horsepower"),
    ("PS", 75 * _GRAVITY, POWER, "metric_horsepower"),
    ("Btu", Fraction("1055.05585262"), ENERGY, "BTU"),  # International Table
    ("fl oz", _GALLON / 128, VOLUME, "floz fluid_ounce fl_oz"),
    ("cup", _GALLON / 16, VOLUME, ""),
    ("pt", _GALLON / 8, VOLUME, "pint"),
    ("qt", _GALLON / 4, VOLUME, "quart"),
    ("gal", _GALLON, VOLUME, "gallon"),
    ("tbsp", _GALLON / 256, VOLUME, "tablespoon"),
    ("tsp", _GALLON / 768, VOLUME, "teaspoon"),
    ("cfm", _FOOT**3 / 60, dimension(length=3, time=-1), ""),
    ("rpm", _TURN / 60, ROTATION, ""),
    ("turn", _TURN, ANGLE, "revolution rev"),
    ("°", _PI / 180, ANGLE, "deg degree"),
    ("%", Fraction(1, 100), NUMBER, "percent"),
    ("‰", Fraction(1, 1000), NUMBER, "permille"),
    ("ppm", Fraction(1, 10**6), NUMBER, ""),
    ("ppb", Fraction(1, 10**9), NUMBER, ""),
    ("pieces", 1, NUMBER, "piece pcs pc"),
    ("times", 1, NUMBER, ""),
    ("frames", 1, NUMBER, "frame"),
    ("points", 1, NUMBER, ""),
    ("laps", 1, NUMBER, "lap"),
    ("cycles", 1, NUMBER, "cycle"),
    ("dB", 1, LEVEL, "decibel"),
    ("dB(A)", 1, (("level A", Fraction(1)),), "dBA"),
    ("dB(C)", 1, (("level C", Fraction(1)),), "dBC"),
    ("dB(Z)", 1, (("level Z", Fraction(1)),), "dBZ"),
    ("KiB", 8 * 2**10, INFORMATION, "kibibyte"),
    ("MiB", 8 * 2**20, INFORMATION, "mebibyte"),
    ("GiB", 8 * 2**30, INFORMATION, "gibibyte"),
)
_PREFIXED: tuple[tuple[str, Fraction | int | str, Dimension, str], ...] = (
    ("m", 1, LENGTH, "meter metre"),
    ("g", Fraction(1, 1000), MASS, "gram gramme"),
    ("t", 1000, MASS, "tonne metric_ton"),
    ("s", 1, TIME, "second sec secs"),
    ("A", 1, CURRENT, "ampere amp"),
    ("mol", 1, dimension(amount=1), "mole"),
    ("cd", 1, LUMINOSITY, "candela"),
    ("lm", 1, FLUX, "lumen"),
    ("lx", 1, ILLUMINANCE, "lux"),
    ("Hz", 1, FREQUENCY, "hertz"),
    ("N", 1, FORCE, "newton"),
    ("Pa", 1, PRESSURE, "pascal"),
    ("bar", 100_000, PRESSURE, ""),
    ("J", 1, ENERGY, "joule"),
    ("Wh", 3600, ENERGY, "watt_hour"),
    ("cal", "4.184", ENERGY, "calorie"),  # thermochemical
    ("W", 1, POWER, "watt"),
    ("V", 1, VOLTAGE, "volt"),
    ("Ω", 1, RESISTANCE, "ohm Ohm"),
    ("S", 1, dimension(mass=-1, length=-2, time=3, current=2), "siemens"),
    ("F", 1, dimension(mass=-1, length=-2, time=4, current=2), "farad"),
    ("H", 1, dimension(mass=1, length=2, time=-2, current=-2), "henry"),
    ("T", 1, dimension(mass=1, time=-2, current=-1), "tesla"),
    ("VA", 1, POWER, "volt_ampere"),
    ("Ah", 3600, CHARGE, "ampere_hour"),
    ("L", Fraction(1, 1000), VOLUME, "l liter litre ℓ"),
    ("rad", 1, ANGLE, "radian"),
    ("bit", 1, INFORMATION, "bits"),
    ("B", 8, INFORMATION, "byte"),
)
_TEMPERATURES: tuple[tuple[str, Fraction | int, Fraction, str], ...] = (
    ("K", 1, Fraction(0), "kelvin"),
    ("°C", 1, Fraction("273.15"), "degC celsius Celsius degree_Celsius"),
    ("°F", Fraction(5, 9), Fraction("459.67") * Fraction(5, 9), "degF fahrenheit Fahrenheit degree_Fahrenheit"),
)
STEPS_OF_TEMPERATURE = {"ΔK": "K", "Δ°C": "°C", "Δ°F": "°F", "delta_degC": "°C", "delta_degF": "°F"}

PREFIXES: dict[str, Fraction] = {
    symbol: Fraction(10) ** power
    for symbol, power in (
        ("T", 12), ("G", 9), ("M", 6), ("k", 3), ("h", 2), ("da", 1), ("d", -1), ("c", -2), ("m", -3), ("µ", -6),
        ("u", -6), ("n", -9), ("p", -12),
    )
}  # fmt: skip
PREFIX_WORDS = {"kilo": "k", "mega": "M", "giga": "G", "centi": "c", "deci": "d", "milli": "m", "micro": "µ"}

COMMON_WITH_PREFIX = ("mm", "cm", "km", "mg", "ms", "mL", "kWh", "kW", "kJ", "kcal", "kPa", "hPa", "kHz", "mAh", "MB")

_CODES = """AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF
    CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG
    HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA
    MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD
    RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX
    USD UYU UZS VES VND VUV WST XAF XCD XCG XOF XPF YER ZAR ZMW ZWG"""
CURRENCIES = frozenset(_CODES.split())

# what is written often, means two things, and would be read wrongly in silence
REFUSED: dict[str, tuple[str, str]] = {
    "C": ("C alone could be degrees or a charge", "write °C for a temperature, coulomb for a charge"),
    "F": ("F alone could be degrees or a capacitance", "write °F for a temperature, farad for a capacitance"),
    "M": ("M alone could be metres or a concentration", "write m for metres, mol/L for a concentration"),
    "ton": ("there are three tons", "write t for 1000 kg, short_ton or long_ton"),
    "tons": ("there are three tons", "write t for 1000 kg, short_ton or long_ton"),
    "pH": ("pH is a number without a unit", "leave the unit empty"),
    "Cal": ("Cal with a capital could be either calorie", "write kcal or cal"),
    "$": ("$ is money of many countries", "write the code, such as USD"),
    "fps": ("fps could be frames or feet a second", "write frames/s or ft/s"),
    "degrees": ("degrees of what?", "write °C or °F for a temperature, deg for an angle"),
}


def _spellings() -> dict[str, Known]:
    table: dict[str, Known] = {}

    def enter(unit: Known, others: str) -> None:
        for word in (unit.symbol, *others.split()):
            table[word] = unit

    for symbol, factor, what, others in _PLAIN:
        enter(Known(symbol, Fraction(factor), what), others)
    for symbol, factor, what, others in _PREFIXED:
        enter(Known(symbol, Fraction(factor), what, prefixes=True), others)
    for symbol, factor, offset, others in _TEMPERATURES:
        enter(Known(symbol, Fraction(factor), TEMPERATURE, offset, prefixes=symbol == "K"), others)
    for code in CURRENCIES:
        table[code] = Known(code, Fraction(1), ((code, Fraction(1)),))
    table["€"], table["£"], table["¥"] = table["EUR"], table["GBP"], table["JPY"]
    return table


SPELLINGS: dict[str, Known] = _spellings()
