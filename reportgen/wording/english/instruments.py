"""English, fifth part of its table: what is told of instruments wherever their readings bear."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

INSTRUMENTS: Mapping[str, str | Forms] = {
    "met.corrected": "What the {instrument} showed is corrected by {by}{when}: raw rows stand as they were read, "
    "values hold the correction.",
    "corrected.when": ", from its calibration on {day}",
    "corrected.by.points": "its table of {n} calibration points",
    "corrected.by.line": "the straight line through its {n} calibration points",
    "met.past-calibration": "The {instrument} was past its calibration: that counted until {day}, and this was read "
    "{long} later. How far it has drifted since isn’t known, and no interval holds it.",
    "met.past-calibration.drift": "The {instrument} was past its calibration: that counted until {day}, and this was "
    "read {long} later. How far it may have drifted is declared, and counted up to the day it was read.",
    "met.at-the-top": "Some readings of “{what}” stand at the very end of what the {instrument} can show: {texts}. "
    "There may have been more than that.",
    "met.at-the-bottom": "Some readings of “{what}” stand at the lower end of what the {instrument} can show: {texts}. "
    "There may have been less than that.",
    "met.outside-range": "Some readings of “{what}” lie outside the range of the {instrument}: {texts}. How far it may "
    "be off there nobody says; what holds within its range is used.",
    "met.outside-points": "Some readings of “{what}” lie outside the points at which the {instrument} was calibrated, "
    "{low} to {high}: {texts}. The correction at the nearest point is used, and how well it holds there isn’t known.",
    "met.outside-points.line": "Some readings of “{what}” lie outside the points at which the {instrument} was "
    "calibrated, {low} to {high}: {texts}. The line through the points is drawn on to there, and what that adds to its "
    "uncertainty is counted; that it stays straight is assumed.",
    "cause.calibration.height": "how well the height of the line through the calibration points of {of} is known",
    "cause.calibration.slope": "how well the slope of the line through the calibration points of {of} is known",
    "cause.shared.repeats": "how far {of} repeats itself, on a reading that others stand on too",
    "accuracy.digits": {"one": "{n} digit", "other": "{n} digits"},
    "accuracy.of-reading": "{percent} of reading",
    "accuracy.of-range": "{percent} of range",
    "accuracy.class": "class {n}",
    "count.day": {"one": "{count} day", "other": "{count} days"},
    "count.month": {"one": "{count} month", "other": "{count} months"},
    "count.year": {"one": "{count} year", "other": "{count} years"},
}
