"""Readings that their instrument could hardly give: at the end of its scale, beyond it, beyond its calibration."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Declared
from reportgen.evaluation.as_shown import Held, each_of_those
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.met.by_column import told_by_column
from reportgen.evaluation.met.where import whose_reading
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.metrology.instrument_range import at_the_bottom, at_the_top, outside, outside_points
from reportgen.wording.met import Met, amount
from reportgen.wording.quoting import first_few, in_sentence, of_whom

WAYS: tuple[Held, ...] = (at_the_top, at_the_bottom, outside, outside_points)


def readings_off_their_instrument(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """A caveat for each column with readings at an end of the scale, outside of it, or outside calibrated points."""
    campaign = declared.campaign
    off: dict[Held, dict[ReadingKey, Reading]] = {}
    for reading, held in each_of_those(campaign, readings.values(), WAYS):
        off.setdefault(held, {})[reading.key] = reading

    def told(code: str, held: Held) -> Iterable[Caveat]:

        def tell(heading: str, several: Sequence[Reading]) -> Met:
            instrument = campaign.instruments[several[0].instrument]
            texts = first_few(of_whom(r.text, whose_reading(declared, readings, r)) for r in several)
            gaps = {"what": heading, "instrument": in_sentence(instrument.title), "texts": texts}
            points = instrument.calibration.points if instrument.calibration else ()
            if code != "outside-points" or instrument.calibration is None:
                return Met(code, gaps)
            ends = {side: amount(at.value, at.unit) for side, (at, _) in (("low", points[0]), ("high", points[-1]))}
            return Met(f"{code}.line" if instrument.calibration.line else code, {**gaps, **ends})

        for caveat in told_by_column(declared, off.get(held, {}), lambda _: True, tell):
            yield replace(caveat, sort="instrument")

    yield from told("at-the-top", at_the_top)
    yield from told("at-the-bottom", at_the_bottom)
    yield from told("outside-range", outside)
    yield from told("outside-points", outside_points)
