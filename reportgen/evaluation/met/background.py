"""Passes in which the background was nearly as loud as the product: what is left of the level is only a bound.

One that was louder than product and background together is told as what it is: the two weren't heard alike, and a
bound that stands on them wins nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from contextlib import suppress
from math import inf

from reportgen.campaign.declared import Declared, Quantity
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.met.where import whose_reading
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.metrology.background import BOUND_UNDER
from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.formulas.grammar import Call, Name
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.unit import convert, parse_unit
from reportgen.wording.met import Met
from reportgen.wording.quoting import first_few

LOUDER = "background-louder"
NOISE = 1e-9  # dB: 70.1 − 64.1 is 6


def backgrounds_near(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """A caveat for each quantity that takes a background off readings less than 6 dB above it."""
    for test in declared.campaign.tests:
        for quantity in test.quantities:
            pair = _level_and_background(quantity)
            if pair is None:
                continue
            above = {id(r): _above(r, test.id, *pair, readings) for r in readings.values()}
            for code, least, most in (("background", -NOISE, BOUND_UNDER - NOISE), (LOUDER, -inf, -NOISE)):
                near = [r for r in readings.values() if least <= above[id(r)] < most]
                if not near:
                    continue
                near.sort(key=lambda r: (r.at.file, r.order, r.at))
                heading = next((c.heading for c in test.columns if c.name == pair[0]), pair[0])
                whose = first_few([whose_reading(declared, readings, r) for r in near])
                who = {r.key.contender for r in near}
                yield Caveat(
                    id=f"{code}/{quantity.id}", number=0, sort="reading", says="", pushes="",
                    blocks=code == LOUDER,
                    touches=frozenset(r.key for r in near), quantities=(quantity.id,),
                    contender=who.pop() if len(who) == 1 else "", at=near[0].at,
                    met=Met(code, {"what": heading, "whose": whose}),
                )  # fmt: skip


def _level_and_background(quantity: Quantity) -> tuple[str, str] | None:
    """The names of the two readings, where the formula is nothing but the one less the other."""
    with suppress(MetrologyError):
        match parse(quantity.formula or "0"):
            case Call(function="less_background", arguments=(Name(name=level), Name(name=background))):
                return level, background
    return None


def _above(r: Reading, test: str, level: str, background: str, readings: Mapping[ReadingKey, Reading]) -> float:
    """How far a level lies above its background, in dB; infinite where that isn't known, or it is no such level."""
    if (r.key.test, r.key.name) != (test, level) or r.value is None or r.limit:
        return inf
    of = (ReadingKey(test, r.key.contender, r.key.specimen, r.key.pass_, part, background) for part in (r.key.part, ""))
    other = next((readings[k] for k in of if k in readings), None)
    if other is None or other.value is None or other.limit == "below":
        return inf
    try:
        there = convert(float(other.value), parse_unit(other.unit), parse_unit(r.unit))
    except MetrologyError:
        return inf  # told where the formula is worked out
    return float(r.value) - there
