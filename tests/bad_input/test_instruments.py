"""Instruments that can't be so: each mistake is told at its place, and nothing is worked out."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.campaigns import compile_campaign, refusal, result_of

ONE = "title: T\ncontenders: {one: One, other: Other}\nreadings: readings.csv\nmeasure: {x: 'one reading, UNIT, lower, it'}\n"
READINGS = "contender,x\none,60.0\nother,70.0\n"

# what is wrong: unit of the readings, the instrument's file, rule, line, a word of what is said
WRONG = {
    "a percentage of a level": ("dB", "resolution: 0.1 dB\naccuracy: ±2 %\n", "accuracy", 2, "percentage of a level"),
    "a percentage of a range of levels": ("dB", "range: 30 dB to 130 dB\naccuracy: ±1 % of range\n", "accuracy", 2, "levels"),
    "a percentage of a level, unit of the reading": ("dB", "accuracy: ±2 %\n", "unit", 2, "percentage of a level"),
    "an instrument that never errs": ("g", "accuracy: ±0 g\n", "wrong-value", 1, "never errs"),
    "one that never errs, in percent and digits": ("g", "accuracy: ±0 % + 0 digits\n", "wrong-value", 1, "never errs"),
    "two signs": ("g", "accuracy: ±-3 g\n", "wrong-value", 1, "sign of its own"),
    "a correction that leaves nothing": ("g", "resolution: 0.1 g\ncalibration: {correction: -100 %}\n", "accuracy", 2, "leaves nothing"),
    "corrections that turn the scale round": ("g", "calibration: {correction: {60 g: 0 g, 61 g: -5 g, 70 g: 0 g}}\n", "accuracy", 1, "61.0 g would be no more than one of 60.0 g"),
    "a line that turns the scale round": ("g", "calibration: {between: one line, correction: {1 g: 0 g, 2 g: -2 g, 3 g: -4.1 g}}\n", "accuracy", 1, "no more than"),
    "a line through points without scatter": ("g", "calibration:\n  correction: {1 g: 0.1 g, 2 g: 0.2 g, 3 g: 0.3 g}\n  between: one line\n", "line-without-scatter", 3, "no scatter"),
    "percent of percent": ("%", "resolution: 0.1 %\naccuracy: ±2 %\n", "accuracy", 2, "percentage points"),
    "a percentage of no range": ("bar", "resolution: 0.1 bar\naccuracy: class 1.6\n", "accuracy", 2, "range isn't stated"),
    "a percentage of half a range": ("°C", "range: up to 150 °C\naccuracy: ±1 % of range\n", "accuracy", 2, "where that begins"),
    "digits of no step": ("bar", "range: up to 6 bar\naccuracy: ±2 digits\n", "accuracy", 2, "resolution isn't stated"),
    "a class without a number": ("g", "accuracy: class II\n", "wrong-value", 1, "no class of a number"),
    "a correction in a wrong unit": ("g", "resolution: 0.1 g\ncalibration: {correction: 0.2 mm}\n", "unit", 2, "mm is a length"),
    "points in a wrong unit": ("g", "resolution: 0.1 g\ncalibration: {correction: {1 mm: 0 mm, 2 mm: 1 mm}}\n", "unit", 2, "length"),
    "corrections of points in a wrong unit": ("g", "calibration: {correction: {1 g: 0 mm, 2 g: 1 mm}}\n", "unit", 0, "length"),
    "an uncertainty in a wrong unit": ("g", "resolution: 0.1 g\ncalibration: {u: 0.2 mm}\n", "unit", 2, "length"),
    "a drift in a wrong unit": ("g", "resolution: 0.1 g\ncalibrated: 2026\ndrift: 0.2 mm a year\n", "unit", 3, "length"),
    "a repeatability in a wrong unit": ("g", "resolution: 0.1 g\nrepeatability: 0.2 mm\n", "unit", 2, "length"),
    "a unit nobody knows": ("g", "calibration: {correction: {1 g: 0 g, 2 grum: 1 g}}\n", "points-not-rising", 1, "another unit"),
    "points that don't rise": ("g", "calibration:\n  correction:\n    2 g: 0 g\n    1 g: 1 g\n", "points-not-rising", 4, "don't rise"),
    "two corrections at one point": ("g", "calibration:\n  correction:\n    1 g: 0 g\n    1.0 g: 1 g\n", "points-not-rising", 4, "one reading"),
    "one point": ("g", "calibration: {correction: {1 g: 0 g}}\n", "too-few-points", 1, "one point"),
    "a line through two points": ("g", "calibration: {between: one line, correction: {1 g: 0 g, 2 g: 1 g}}\n", "too-few-points", 1, "two points"),
    "a point without a unit": ("g", "calibration: {correction: {heavy: 0 g, 2 g: 1 g}}\n", "wrong-value", 1, "not a number"),
    "percent at a point": ("g", "calibration: {correction: {1 g: 1 %, 2 g: 1 %}}\n", "wrong-value", 1, "amount"),
    "a way between no points": ("g", "calibration: {between: one line, correction: 1 g}\n", "between-without-points", 1, "no points"),
    "an expanded uncertainty without k": ("g", "calibration: {correction: 1 g, uncertainty: 0.1 g}\n", "uncertainty-without-k", 1, "coverage factor"),
    "two uncertainties": ("g", "calibration: {correction: 1 g, uncertainty: 0.1 g, k: 2, u: 0.1 g}\n", "two-widths", 1, "not both"),
    "a k of nothing": ("g", "calibration: {correction: 1 g, k: 2, u: 0.1 g}\n", "k-without-uncertainty", 1, "expanded"),
    "a k below one": ("g", "calibration: {correction: 1 g, k: 0.5, uncertainty: 0.1 g}\n", "k-below-one", 1, "smaller"),
    "degrees of nothing": ("g", "calibration: {correction: 1 g, degrees: 5}\n", "degrees-without-u", 1, "none stands here"),
    "an uncertainty below nothing": ("g", "calibration: {correction: 1 g, u: -0.1 g}\n", "wrong-value", 1, "above nothing"),
    "an end before the beginning": ("g", "calibration: {date: 2026-05-01, expires: 2026-04-30}\n", "expires-before", 1, "counts no longer"),
    "two days of one calibration": ("g", "calibrated: 2026-05-01\ncalibration: {date: 2026-05-01}\n", "described-twice", 2, "twice"),
    "a drift without a calibration": ("g", "drift: 0.1 g a year\n", "drift-without-a-day", 1, "since when"),
    "a drift from a day nobody noted": ("g", "calibrated: not noted\ndrift: 0.1 g a year\n", "drift-without-a-day", 2, "since when"),
    "a drift in no time": ("g", "calibrated: 2026-05-01\ndrift: 0.1 g\n", "wrong-value", 2, "in what time"),
    "a drift and no day of the test": ("g", "calibrated: 2026-05-01\ndrift: 0.1 g a year\n", "unit", 2, "when this was read"),
    "a repeatability of one reading": ("g", "repeatability: 0.1 g from 1 readings\n", "wrong-value", 1, "one reading"),
    "a repeatability of nothing": ("g", "repeatability: 0 g\n", "wrong-value", 1, "no standard deviation"),
    "a reaction without a hand": ("s", "resolution: 0.1 s\nreaction: 0.2 s\n", "reaction-without-a-hand", 2, "hand"),
    "a reaction that is no time": ("s", "resolution: 0.1 s\nby hand: yes\nreaction: 0.2 g\n", "unit", 3, "reaction"),
}  # fmt: skip

OF_THE_READING = ("a percentage of a level, unit of the reading", "a drift and no day of the test")  # told there


@pytest.mark.parametrize("mistake", sorted(WRONG))
def test_a_mistake_in_an_instrument_is_told_where_it_stands(mistake: str, tmp_path: Path) -> None:
    unit, instrument, rule, line, says = WRONG[mistake]
    files = {"instruments/it.yaml": instrument}
    told = refusal(tmp_path, ONE.replace("UNIT", unit), readings=READINGS, **files)
    found = [f for f in told if f.rule == rule and says in f.says]
    assert found, [(f.rule, f.says) for f in told]
    at = found[0].place
    assert (at.file, at.line) == ("readings.csv" if mistake in OF_THE_READING else "instruments/it.yaml", line)
    assert found[0].do
    assert "nan" not in found[0].says.lower()


def test_a_figure_in_a_wrong_unit_is_named_by_its_key(tmp_path: Path) -> None:
    it = "resolution: 0.1 dB\naccuracy: ±1.5 °C\n"
    (found,) = [f for f in refusal(tmp_path, ONE.replace("UNIT", "dB"), readings=READINGS, **{"instruments/it.yaml": it})
                if f.severity == "error"]  # fmt: skip
    assert found.says == "The instrument it, `accuracy: 1.5 °C`: °C is a temperature, dB is a level"
    assert "`accuracy:`" in found.do


CONSTANT = """\
title: T
contenders: {one: One, other: Other}
readings: readings.csv
measure:
  heat: {formula: x * capacity, unit: J, better: lower, columns: {x: "x, K"}}
constants:
  capacity:
    value: 4.186 J/K
    source: a table of water
    WIDTH
"""


@pytest.mark.parametrize(
    ("width", "line", "says", "do"),
    [
        ("within: 0.01", 10, "`within: 0.01`: it has no unit", "write 0.01 J/K"),
        ("u: 0.01 kg", 10, "`u: 0.01 kg`: kg is a mass", "unit"),
        ("within: 0.01 J/gK", 10, "“gK” in “J/gK” is no unit we know", "did you mean J/(g·K)?"),
    ],
)
def test_a_width_of_a_constant_is_told_at_its_own_line(
    width: str, line: int, says: str, do: str, tmp_path: Path
) -> None:
    (found,) = [f for f in refusal(tmp_path, CONSTANT.replace("WIDTH", width), readings=READINGS)
                if f.severity == "error"]  # fmt: skip
    assert (found.place.line, found.rule) == (line, "unit")
    assert says in found.says
    assert do in found.do


def test_a_width_of_a_constant_in_percent_is_of_its_value(tmp_path: Path) -> None:
    """JCGM 100, 4.3.7: half-width a, u = a/√3."""
    for name, width in (("percent", "within: 0.2 %"), ("amount", "within: 0.008372 J/K")):
        told = compile_campaign(tmp_path / name, CONSTANT.replace("WIDTH", width), readings=READINGS)
        (of,) = [b for b in result_of(told, "heat", "one")["budget"] if b["of"] == "capacity"]
        assert abs(of["size"]) == pytest.approx(60 * 0.002 * 4.186 / 3**0.5, rel=1e-6), of


def test_a_unit_that_fits_nothing_that_matters_is_named_first(tmp_path: Path) -> None:
    yaml = ONE.replace("'one reading, UNIT, lower, it'", "{kind: one reading, unit: kJ, better: lower, matters: 2 %}")
    (found,) = [f for f in refusal(tmp_path, yaml, readings=READINGS) if f.severity == "error"]
    assert found.says.startswith("x, `unit: kJ` and `matters`: ")
