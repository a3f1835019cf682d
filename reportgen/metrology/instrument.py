"""What an instrument's figures say about one reading: type B contributions by source (JCGM 100, 4.3.7 and F.2.2.1).

Resolution and accuracy limits are half-widths or widths of uniform distributions: a step δ gives δ/√12, ±a gives
a/√3. The absolute part and the digits of an accuracy are an offset, the percent part a gain; each is one variable
for all readings of an instrument in a session, unless `shared` says otherwise.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from reportgen.metrology.errors import MetrologyError, UnitError
from reportgen.metrology.uncertain import Limit, Source, Uncertain
from reportgen.metrology.unit import Unit, alike, convert, is_decibel, named, parse_unit
from reportgen.metrology.unit_algebra import step_of
from reportgen.metrology.unit_table import TIME

Shared = Literal["offset", "gain", "both", "nothing"]

REACTION = 0.2  # s, half-width of a hand on a stopwatch, start and stop together; from memory


@dataclass(frozen=True)
class Size:
    """A plain number in a unit: what is stated about an instrument, itself without uncertainty."""

    value: float
    unit: Unit


@dataclass(frozen=True)
class Instrument:
    """What took a reading. Accuracy is ±(absolute + percent of the reading + digits·resolution).

    `percent` is in percent of the reading as shown. `known` False: the accuracy is unknown, nothing is assumed and the
    caller says so. `shared` names which parts all readings of a session have in common.
    """

    id: str
    resolution: Size | None = None
    low: Size | None = None
    high: Size | None = None
    absolute: Size | None = None
    percent: float | None = None
    digits: int | None = None
    known: bool = True
    by_hand: bool = False
    shared: Shared = "both"


def observed(
    value: float | None,
    unit: Unit,
    instrument: Instrument | None,
    session: str,
    reading: str,
    limit: Limit | None = None,
    step: float | None = None,
    width: float | None = None,
    leant_on: bool = False,
    stated: str = "",
) -> Uncertain:
    """One reading with what its instrument makes uncertain, in the reading's unit.

    `reading` is the reading's own id: whoever passes the same one again (an "after" that is the next "before") names
    the same variables, and they cancel. `step` (in `unit`) is the step seen in what was written; where given it
    counts instead of the declared resolution. `width` is half the width a reading says it has (`about 250`), uniform
    (JCGM 100, 4.3.7); `stated` is whose error that is, where readings share it, else the reading's own. `leant_on`:
    other values stand on this reading, so its step is one more error they share. Raises UnitError where the figures
    don't fit the reading's unit, MetrologyError where an accuracy in digits has no resolution.
    """
    if value is None:
        if limit is None:
            raise MetrologyError("a reading without a value and without a limit", "")
        return Uncertain(None, unit, {}, limit)
    name = instrument.id if instrument else ""
    reaction = _reaction(unit) if instrument and instrument.by_hand else 0.0
    found = _step_and_width(instrument, unit, reading, step, width, leant_on, stated)
    if instrument:
        found.update(_accuracy(instrument, value, unit, session, reading))
    if reaction:
        found[Source("reaction", name, reading)] = reaction / math.sqrt(3)
    return Uncertain(value, unit, found, limit)


def observed_difference(
    value: float | None,
    unit: Unit,
    instrument: Instrument | None,
    session: str,
    reading: str,
    limit: Limit | None = None,
    step: float | None = None,
    width: float | None = None,
    leant_on: bool = False,
    stated: str = "",
    ends: tuple[float, float] | None = None,
) -> Uncertain:
    """A difference that was read as such, on one instrument in one session; `unit` a step, °C or dB meant as steps.

    What its two ends share cancels: the offset wholly, the gain but for its share of the difference. Errors that each
    reading has of its own come twice, once an end; `ends` are the two readings in `unit` as a scale, where they are
    known. The other parameters and errors are those of `observed`.
    """
    unit = step_of(unit)
    if value is None:
        return Uncertain(None, unit, {}, limit)
    found = _step_and_width(instrument, unit, reading, step, width, leant_on, stated)
    if instrument:
        of_difference = _accuracy(instrument, value, unit, session, reading)
        found.update({source: size for source, size in of_difference.items() if source.sort == "gain"})
        for name, end in zip((reading, f"{reading}, other end"), ends or (value, value), strict=True):
            of_end = _accuracy(instrument, end, unit, session, name)
            found.update({source: size for source, size in of_end.items() if source.sort == "accuracy"})
            if instrument.by_hand:
                found[Source("reaction", instrument.id, name)] = _reaction(unit) / math.sqrt(3)
    return Uncertain(value, unit, found, limit)


def _step_and_width(
    instrument: Instrument | None,
    unit: Unit,
    reading: str,
    step: float | None,
    width: float | None,
    leant_on: bool,
    stated: str,
) -> dict[Source, float]:
    name = instrument.id if instrument else ""
    found: dict[Source, float] = {}
    if shown := step if step is not None else _resolution(instrument, unit):
        found[Source("shared" if leant_on else "step", name, reading)] = shown / math.sqrt(12)
    if width:
        found[Source("rough", "", stated or reading)] = width / math.sqrt(3)
    return found


def outside(value: float, unit: Unit, instrument: Instrument) -> bool:
    """Whether a reading lies beyond the instrument's stated range, ends included in the range. Raises UnitError."""
    low, high = instrument.low, instrument.high
    if low and _as_read(value, unit, low.unit) < low.value:
        return True
    return high is not None and _as_read(value, unit, high.unit) > high.value


def off_step(value: float, unit: Unit, instrument: Instrument) -> bool:
    """Whether a reading is finer than the instrument shows: no whole number of steps of its resolution.

    A reading written in another unit than the resolution was converted by someone; nothing is said about it.
    """
    resolution = instrument.resolution
    if resolution is None or not resolution.value:
        return False
    if resolution.unit.factor != unit.factor or not alike(unit, resolution.unit, difference=True):
        return False
    steps = value / resolution.value
    return abs(steps - round(steps)) > 1e-6


def _as_read(value: float, unit: Unit, other: Unit) -> float:
    """On a meter with several weightings the range is written in plain dB."""
    if is_decibel(unit.dimension) and is_decibel(other.dimension):
        return value
    return convert(value, unit, other)


def _resolution(instrument: Instrument | None, unit: Unit) -> float | None:
    if instrument is None or instrument.resolution is None:
        return None
    return convert(instrument.resolution.value, instrument.resolution.unit, unit, difference=True)


def _accuracy(instrument: Instrument, value: float, unit: Unit, session: str, reading: str) -> dict[Source, float]:
    if not instrument.known:
        return {}
    offset = 0.0
    if instrument.absolute:
        offset += convert(instrument.absolute.value, instrument.absolute.unit, unit, difference=True)
    if instrument.digits:
        resolution = _resolution(instrument, unit)
        if resolution is None:
            raise MetrologyError(
                f"the accuracy of {instrument.id} counts digits, but its resolution isn't stated", "state it"
            )
        offset += instrument.digits * resolution
    gain = (instrument.percent or 0.0) / 100 * value
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


def _reaction(unit: Unit) -> float:
    if unit.dimension != TIME:
        raise UnitError(f"by hand is a matter of timing, but this reading is in {named(unit)}", "drop “by hand” here")
    return convert(REACTION, parse_unit("s"), unit)
