"""What is looked for among the readings, in the order a reader meets it beside one test."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.met.against import readings_against
from reportgen.evaluation.met.amendments import amendments
from reportgen.evaluation.met.assumptions import assumptions
from reportgen.evaluation.met.background import backgrounds_near
from reportgen.evaluation.met.calibrations import corrected_readings, readings_past_calibration
from reportgen.evaluation.met.for_all import readings_for_all
from reportgen.evaluation.met.gaps import gaps_in_traces
from reportgen.evaluation.met.instruments import readings_off_their_instrument
from reportgen.evaluation.met.laboratory import laboratory_values
from reportgen.evaluation.met.lost import lost_readings
from reportgen.evaluation.met.records import two_records
from reportgen.evaluation.met.rough import rough_readings
from reportgen.evaluation.met.running import running
from reportgen.evaluation.met.unweighed import unweighed_readings
from reportgen.intake.reading import Reading, ReadingKey

Look = Callable[[Declared, Mapping[ReadingKey, Reading]], Iterable[Caveat]]

LOOKED_FOR: tuple[Look, ...] = (
    amendments,
    two_records,
    running,
    assumptions,
    rough_readings,
    unweighed_readings,
    lost_readings,
    readings_against,
    readings_for_all,
    laboratory_values,
    gaps_in_traces,
    backgrounds_near,
    corrected_readings,
    readings_past_calibration,
    readings_off_their_instrument,
)


def met_among(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """Every caveat that the readings and declarations call for by themselves, unnumbered."""
    for look in LOOKED_FOR:
        yield from look(declared, readings)
