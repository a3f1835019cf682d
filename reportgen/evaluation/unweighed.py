"""`some` or `nothing` where nothing is a mark on a scale: a level, a temperature."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.finding import Finding
from reportgen.intake.reading import Readings
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import parse_unit


def some_of_nothing(readings: Readings) -> Iterable[Finding]:
    """Unweighed additions in a unit whose zero is a mark on a scale. Against another contender they are differences."""
    for reading in readings.readings.values():
        if not reading.unweighed or reading.beside:
            continue
        try:
            kind = parse_unit(reading.unit).kind
        except UnitError:
            continue  # told by itself
        if kind in ("absolute", "level"):
            what = "a temperature" if kind == "absolute" else "a level"
            yield Finding(
                "error",
                "some-of-nothing",
                reading.at,
                f"“{reading.text}” stands where {what} in {reading.unit} belongs.",
                f"Nothing is no {what.removeprefix('a ')}: more than 0 {reading.unit} says nothing.",
                "Write `over …` with what is sure, `about …`, or `none (reason)`.",
                f"test/{reading.key.test}",
            )
