"""One reading with all that its instrument makes uncertain: type B contributions by source (JCGM 100, 4.3).

`specification.py` holds what is known of an instrument, `stated.py` what its maker's limits make of it,
`calibration.py` what a calibration adds. What is read off is corrected, and carries how well the correction is known.
"""

from __future__ import annotations

import math

from reportgen.metrology.calibration import correction, of_calibration
from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.specification import Calibration as Calibration
from reportgen.metrology.specification import Instrument as Instrument
from reportgen.metrology.specification import Points as Points
from reportgen.metrology.specification import Relative as Relative
from reportgen.metrology.specification import Shared as Shared
from reportgen.metrology.specification import Size as Size
from reportgen.metrology.stated import accuracy, reaction, repeatability, resolution_in
from reportgen.metrology.stated import clock as clock
from reportgen.metrology.uncertain import Limit, Source, Uncertain
from reportgen.metrology.unit import Unit
from reportgen.metrology.unit_algebra import step_of


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
    years: float | None = None,
    corrected: bool = False,
) -> Uncertain:
    """One reading, corrected, with what its instrument makes uncertain, in the reading's unit.

    `reading` is the reading's own id: whoever passes the same one again (an "after" that is the next "before") names
    the same variables, and they cancel. `step` (in `unit`) is the step seen in what was written; where given it
    counts instead of the declared resolution. `width` is half the width a reading says it has (`about 250`), uniform
    (JCGM 100, 4.3.7); `stated` is whose error that is, where readings share it, else the reading's own. `leant_on`:
    other values stand on this reading, so its step is one more error they share. `years` are those between calibration
    and reading, None where nobody knows; `corrected`: the value holds the correction already. Raises UnitError where
    the figures don't fit the reading's unit, MetrologyError where they can't be worked out.

    A scale that reads in 0.1 g, accurate to ±0.3 g: 0.1/√12 (JCGM 100, F.2.2.1) and 0.3/√3 (4.3.7).

    >>> from reportgen.metrology.specification import Size
    >>> from reportgen.metrology.unit import parse_unit
    >>> gram = parse_unit("g")
    >>> scale = Instrument("bench-scale", resolution=Size(0.1, gram), absolute=Size(0.3, gram))
    >>> weighed = observed(231.4, gram, scale, session="day 1", reading="1")
    >>> [(source.sort, round(u, 4)) for source, u in weighed.contributions.items()]
    [('step', 0.0289), ('offset', 0.1732)]
    """
    if value is None:
        if limit is None:
            raise MetrologyError("a reading without a value and without a limit", "")
        return Uncertain(None, unit, {}, limit)
    _check_number(value)
    hand = reaction(instrument, unit, reading, leant_on) if instrument else {}
    found = _step_and_width(instrument, unit, reading, step, width, leant_on, stated)
    if instrument is None:
        return Uncertain(value, unit, found, limit)
    found.update(accuracy(instrument, value, unit, session, reading))
    found.update(repeatability(instrument, unit, reading, leant_on))
    found.update(of_calibration(instrument, value, unit, years))
    found.update(hand)
    return Uncertain(value if corrected else value + correction(instrument, value, unit), unit, found, limit)


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
    years: float | None = None,
) -> Uncertain:
    """A difference that was read as such, on one instrument in one session; `unit` a step, °C or dB meant as steps.

    What its two ends share cancels: the offset wholly, of the gain, the correction, its uncertainty and the drift all
    but the share of the difference. Errors that each reading has of its own come twice, once an end; `ends` are the two
    readings in `unit` as a scale, where they are known. The other parameters and errors are those of `observed`.
    """
    scale, unit = unit, step_of(unit)
    if value is None:
        return Uncertain(None, unit, {}, limit)
    _check_number(value)
    found = _step_and_width(instrument, unit, reading, step, width, leant_on, stated)
    if instrument is None:
        return Uncertain(value, unit, found, limit)
    of_difference = accuracy(instrument, value, unit, session, reading)
    found.update({source: size for source, size in of_difference.items() if source.sort == "gain"})
    for name, end in zip((reading, f"{reading}, other end"), ends or (value, value), strict=True):
        of_end = accuracy(instrument, end, unit, session, name)
        found.update({source: size for source, size in of_end.items() if source.sort == "accuracy"})
        found.update(repeatability(instrument, unit, name, leant_on))
        found.update(reaction(instrument, unit, name, leant_on))
    if ends is None:
        return Uncertain(value, unit, found, limit)
    here, there = (of_calibration(instrument, end, scale, years) for end in ends)
    apart = {source: size - there.get(source, 0.0) for source, size in here.items()}
    found.update({source: size for source, size in apart.items() if size})
    return Uncertain(value + correction(instrument, ends[0], scale) - correction(instrument, ends[1], scale), unit,
                     found, limit)  # fmt: skip


def _check_number(value: float) -> None:
    if not math.isfinite(value):
        raise MetrologyError(f"a reading of {value}", "write a number")


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
    if shown := step if step is not None else resolution_in(instrument, unit):
        found[Source("shared" if leant_on else "step", name, reading)] = shown / 12**0.5
    if width:
        found[Source("rough", "", stated or reading)] = width / 3**0.5
    return found
