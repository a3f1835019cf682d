"""What an instrument's maker states, as contributions to one reading (JCGM 100, 4.3.7 and F.2.2.1).

Resolution and accuracy limits are half-widths or widths of uniform distributions: a step δ gives δ/√12, ±a gives a/√3.
The absolute part, the digits and the percent of the range are an offset, the percent of the reading a gain; each is one
variable for all readings of an instrument in a session, unless `shared` says otherwise.
"""

from __future__ import annotations

import math
from dataclasses import replace

from reportgen.metrology.errors import MetrologyError, UnitError
from reportgen.metrology.specification import Instrument, Points, Size
from reportgen.metrology.uncertain import Source
from reportgen.metrology.unit import Unit, convert, is_decibel, named, parse_unit
from reportgen.metrology.unit_table import TIME

REACTION = 0.2  # s, half-width of a hand on a stopwatch, start and stop together; from memory


def resolution_in(instrument: Instrument | None, unit: Unit) -> float | None:
    """The step the instrument reads in, in steps of `unit`; None where it isn't stated. Raises UnitError."""
    if instrument is None or instrument.resolution is None:
        return None
    return convert(instrument.resolution.value, instrument.resolution.unit, unit, difference=True)


def accuracy(instrument: Instrument, value: float, unit: Unit, session: str, reading: str) -> dict[Source, float]:
    """The accuracy limits at a reading of `value`; nothing where the accuracy is unknown.

    Raises MetrologyError where they can't be worked out: digits without a resolution, a percentage of a range that
    isn't stated, a percentage of a level.
    """
    if not instrument.known:
        return {}
    offset = _offset(instrument, unit)
    gain = of_reading(instrument.percent or 0.0, value, unit, instrument)
    found: dict[Source, float] = {}
    own = 0.0  # both parts of one reading alone are one limit, ±(a + p·|x|)
    if instrument.shared in ("offset", "both"):
        found[Source("offset", instrument.id, session)] = offset / math.sqrt(3)
    else:
        own += offset
    if instrument.shared in ("gain", "both"):
        found[Source("gain", instrument.id, session)] = gain / math.sqrt(3)
    else:
        own += abs(gain)
    found[Source("accuracy", instrument.id, reading)] = own / math.sqrt(3)
    return {source: size for source, size in found.items() if size}


def repeatability(instrument: Instrument, unit: Unit, reading: str, leant_on: bool) -> dict[Source, float]:
    """How far the instrument repeats itself: each reading's own, normal, with its degrees of freedom (JCGM 100, 4.2.4).

    Passes show it in their scatter. `leant_on`: other values stand on this reading, which then is of the sort `shared`,
    for no scatter shows it.
    """
    if instrument.repeatability is None:
        return {}
    size = convert(instrument.repeatability.value, instrument.repeatability.unit, unit, difference=True)
    source = Source("repeatability", instrument.id, reading, "normal", instrument.repeatability_degrees)
    return {unseen(source) if leant_on else source: size}


def reaction(instrument: Instrument, unit: Unit, reading: str, leant_on: bool) -> dict[Source, float]:
    """The hand that starts and stops it, each reading anew, so that passes show it in their scatter. `leant_on`: other
    values stand on this reading, and no scatter shows it. Raises UnitError for what is no time.
    """
    if not instrument.by_hand:
        return {}
    if unit.dimension != TIME:
        raise UnitError(f"by hand is a matter of timing, but this reading is in {named(unit)}", "drop “by hand” here")
    hand = instrument.reaction or Size(REACTION, parse_unit("s"))
    source = Source("reaction", instrument.id, reading)
    return {unseen(source) if leant_on else source: convert(hand.value, hand.unit, unit) / math.sqrt(3)}


def unseen(source: Source) -> Source:
    """An error of one reading that no scatter between passes shows, as each of them stands on that reading."""
    if source.sort == "reaction":  # not to be taken for what the instrument itself may be off
        return replace(source, sort="accuracy", where=f"{source.where}, by hand")
    return replace(source, sort="shared")


def clock(instrument: Instrument | None) -> dict[Source, float]:
    """How fast or slow its clock may be, as a part of any time it tells: one variable, whatever the session (4.3.7)."""
    if instrument is None or not instrument.clock:
        return {}
    return {Source("clock", instrument.id): instrument.clock / math.sqrt(3)}


def of_reading(percent: float, value: float, unit: Unit, instrument: Instrument) -> float:
    """So many percent of a reading of `value`, in steps of `unit`: of the number the instrument itself showed.

    A thermometer that shows °C and is right to 1 % of that is so however its reading was converted. Raises
    MetrologyError for levels: a percentage of a number of decibels means nothing.
    """
    if not percent:
        return 0.0
    if is_decibel(unit.dimension):
        says = f"{instrument.id} states a percentage, and a percentage of a level means nothing"
        raise MetrologyError(says, "write it in decibels: ±1.5 dB")
    own = shows_in(instrument)
    if unit.kind != "absolute" or own is None or own.kind != "absolute":
        return percent / 100 * value
    return convert(percent / 100 * convert(value, unit, own), own, unit, difference=True)


def shows_in(instrument: Instrument) -> Unit | None:
    """The unit the instrument reads in, as far as its figures tell."""
    figures = (instrument.resolution, instrument.high, instrument.low, instrument.absolute)
    correction = instrument.calibration.correction if instrument.calibration else None
    points = correction if isinstance(correction, Points) else None
    return next((figure.unit for figure in (*figures, points) if figure), None)


def _offset(instrument: Instrument, unit: Unit) -> float:
    offset = 0.0
    if instrument.absolute:
        offset += convert(instrument.absolute.value, instrument.absolute.unit, unit, difference=True)
    if instrument.digits:
        resolution = resolution_in(instrument, unit)
        if resolution is None:
            raise MetrologyError(
                f"the accuracy of {instrument.id} counts digits, but its resolution isn't stated", "state it"
            )
        offset += instrument.digits * resolution
    if instrument.of_range:
        offset += instrument.of_range / 100 * _span(instrument, unit)
    return offset


def _span(instrument: Instrument, unit: Unit) -> float:
    """What lies between the ends of the range, in steps of `unit`; a range `up to 6 bar` begins at 0."""
    if is_decibel(unit.dimension):
        says = f"{instrument.id} states a percentage, and a percentage of levels means nothing"
        raise MetrologyError(says, "write it in decibels: ±1.5 dB")
    low, high = instrument.low, instrument.high
    if high is None:
        says = f"the accuracy of {instrument.id} is a percentage of its range, and the range isn't stated"
        raise MetrologyError(says, "state it: `range: 0 bar to 6 bar`")
    if low is None and high.unit.kind == "absolute":
        says = f"the accuracy of {instrument.id} is a percentage of its range, and nothing says where that begins"
        raise MetrologyError(says, "state both ends: `range: -50 °C to 150 °C`")
    bottom = convert(low.value, low.unit, high.unit) if low else 0.0
    return convert(high.value - bottom, high.unit, unit, difference=True)
