"""The step each column was read in, seen from the digits written and what its instrument declares."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.grid import coarser_step
from reportgen.intake.notations.frames import is_frames
from reportgen.intake.reading import Reading
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import convert, parse_unit

Column = tuple[str, str, str, str, bool]


def column_of(reading: Reading) -> Column:
    """Readings of one column, unit and instrument are read on one grid; differences to another contender on theirs."""
    return (reading.key.test, reading.key.name, reading.unit, reading.instrument, bool(reading.beside))


def steps_seen(campaign: Campaign, readings: Iterable[Reading]) -> Mapping[Column, float]:
    """The step each column was read in, in its unit: the instrument's, or its finest decimal where no instrument
    with a step is named; coarser where the readings keep to a coarser grid.

    What says itself how rough it is (`about 250`) was not read on the grid, and no digit of it counts.
    """
    columns: dict[Column, list[Decimal]] = {}
    for r in readings:
        if r.value is not None and r.limit is None and r.decimals is not None and not r.rough:
            columns.setdefault(column_of(r), []).append(r.value)
    return {
        column: 1.0
        if is_frames(column[2])  # a frame is a frame, whatever numbers happened to come up
        else max(float(coarser_step(values, _declared_step(campaign, column))), _step_converted(campaign, column))
        for column, values in columns.items()
    }


def _declared_step(campaign: Campaign, column: Column) -> Decimal | None:
    """The instrument's step as declared, where it is declared in the unit that the column is written in."""
    instrument = campaign.instruments.get(column[3])
    if instrument is None or instrument.resolution is None or instrument.resolution.unit != column[2]:
        return None
    return instrument.resolution.value


def _step_converted(campaign: Campaign, column: Column) -> float:
    """The instrument's step in the column's unit, where that is another: digits typed after a conversion, or a display
    switched over, show no finer step than the one declared. 0 where nothing is declared or it doesn't fit."""
    instrument = campaign.instruments.get(column[3])
    if instrument is None or instrument.resolution is None or instrument.resolution.unit == column[2]:
        return 0.0
    try:
        step, of = float(instrument.resolution.value), parse_unit(instrument.resolution.unit)
        return convert(step, of, parse_unit(column[2]), difference=True)
    except UnitError:
        return 0.0
