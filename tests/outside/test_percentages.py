"""Percentages name their base: the same two results give two figures, and both are told as what they are."""

from __future__ import annotations

import re
from math import sqrt
from pathlib import Path

import pytest
from scipy.stats import t as student

from tests.campaigns import comparison_of, compile_campaign, result_of, results_of

TWO = "title: T\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"
GAS = TWO + "measure: {gas burned: 'one reading, g, lower'}\nreadings: readings.csv\n"
ROWS = (
    "contender,pass,gas burned\ncorvane,1,95.0\nostler,1,100.0\nostler,2,101.0\ncorvane,2,96.0\n"
    "corvane,3,94.0\nostler,3,99.0\n"
)


def words_of(page: Path) -> str:
    return re.sub(r"\s+", " ", re.sub("<[^>]+>", "", page.read_text(encoding="utf-8")))


def test_five_percent_less_with_its_base_and_fiellers_interval(tmp_path: Path) -> None:
    """(a − r·b)² ≤ t²·s²(1 + r²)/n: Fieller 1954, Journal of the Royal Statistical Society B 16:175; s = 1 by hand."""
    told = results_of(tmp_path, GAS, readings=ROWS)
    found = comparison_of(told, "gas-burned", "corvane", "ostler")
    v = float(student.ppf(0.975, 4)) ** 2 / 3
    a, b = 95.0, 100.0
    root = sqrt((a * b) ** 2 - (b * b - v) * (a * a - v))
    assert found["percent_of"] == "ostler"
    assert found["percent"] == pytest.approx(-5.0)
    assert found["percent_low"] == pytest.approx(100 * ((a * b - root) / (b * b - v) - 1), abs=1e-5)
    assert found["percent_high"] == pytest.approx(100 * ((a * b + root) / (b * b - v) - 1), abs=1e-5)


def test_the_page_names_the_base(tmp_path: Path) -> None:
    compile_campaign(tmp_path, GAS, readings=ROWS)
    said = "Corvane Sol: 5.0 % less than Ostler Mk II (2.8 to 7.2 % less)."
    assert said in words_of(tmp_path / "stoves/.site/stoves/tests/gas-burned.html")


def test_uses_five_percent_less_and_the_other_uses_five_point_three_percent_more(tmp_path: Path) -> None:
    """1/0.95 = 1.0526. A text may say either, and each is held against its own base."""
    said = (
        "Corvane burns [5.0 % less](comparison:gas-burned/corvane/ostler) than Ostler; "
        "Ostler [5.3 % more](comparison:gas-burned/ostler/corvane) than Corvane; "
        "so [? %](comparison:gas-burned/corvane/ostler).\n"
    )
    told = compile_campaign(tmp_path, GAS, readings=ROWS, **{"conclusions.md": said})
    assert [f for f in told["findings"] if f["rule"] == "drifted-number"] == []
    assert "so 5.0 %." in words_of(tmp_path / "stoves/.site/stoves/index.html")


def test_the_wrong_base_is_a_drifted_number(tmp_path: Path) -> None:
    said = "Ostler burns [5.0 % more](comparison:gas-burned/ostler/corvane) than Corvane.\n"
    told = results_of(tmp_path, GAS, readings=ROWS, **{"conclusions.md": said})
    (drifted,) = [f for f in told["findings"] if f["rule"] == "drifted-number"]
    assert "the readings give 5.3\u00a0%" in drifted["says"]
    assert drifted["file"].endswith("conclusions.md")


@pytest.mark.parametrize("unit", ["°C", "dB", "%", "K"])
def test_what_has_no_true_zero_or_is_a_percentage_itself_has_none(tmp_path: Path, unit: str) -> None:
    """20 °C is not twice 10 °C; 80 dB not twice 40 dB; and percent of percent would be taken for points."""
    told = results_of(
        tmp_path, TWO + f"measure: {{x: 'one reading, {unit}, lower'}}\nreadings: readings.csv\n",
        readings="contender,pass,x\ncorvane,1,10.0\nostler,1,20.0\nostler,2,20.2\ncorvane,2,10.1\n",
    )  # fmt: skip
    found = comparison_of(told, "x", "corvane", "ostler")
    assert found["resolved"]
    assert (found["percent"], found["percent_low"], found["percent_of"]) == (None, None, None)


def test_a_rise_of_temperature_has_one(tmp_path: Path) -> None:
    """A step has a true zero: a rise of 10 K is half of one of 20 K."""
    told = results_of(
        tmp_path,
        TWO + "tests: [warm]\n",
        readings="contender,pass,hot,cold\ncorvane,1,30.0,20.0\nostler,1,40.0,20.0\nostler,2,40.1,20.0\ncorvane,2,30.1,20.0\n",
        **{
            "tests/warm.yaml": "title: Warm\nreadings:\n  file: readings.csv\n  columns: {hot: 'hot, °C', cold: 'cold, °C'}\n"
            "quantities:\n  rise: {formula: hot - cold, unit: °C, better: lower}\n"
        },
    )
    assert comparison_of(told, "rise", "corvane", "ostler")["percent"] == pytest.approx(-49.9, abs=0.1)


def test_a_base_that_may_be_nothing_has_no_percentage(tmp_path: Path) -> None:
    told = results_of(
        tmp_path, TWO + "measure: {lost: 'one reading, g, lower'}\nreadings: readings.csv\n",
        readings="contender,pass,lost\ncorvane,1,9.0\nostler,1,0.6\nostler,2,-0.4\ncorvane,2,9.4\n",
    )  # fmt: skip
    found = comparison_of(told, "lost", "corvane", "ostler")
    assert found["difference"] == pytest.approx(9.1)
    assert found["percent"] is None


def test_a_saving_in_percent_is_a_formula_with_its_base_below_the_stroke(tmp_path: Path) -> None:
    """(before − after)/before; u by JCGM 100, 5.1.2: ∂/∂before = after/before², ∂/∂after = −1/before."""
    told = results_of(
        tmp_path,
        TWO + "tests: [drying]\n",
        readings="contender,wet,dry\ncorvane,40.1,28.3\nostler,41.7,30.2\n",
        **{
            "instruments.yaml": "scale: 0.1 g, accuracy unknown\n",
            "tests/drying.yaml": "title: Drying\nreadings:\n  file: readings.csv\n"
            "  columns: {wet: 'wet, g, scale', dry: 'dry, g, scale'}\n"
            "quantities:\n  saved: {formula: (wet - dry) / wet, unit: '%', better: higher}\n",
        },
    )
    found = result_of(told, "saved", "corvane")
    assert found["value"] == pytest.approx(100 * 11.8 / 40.1)
    step = 0.1 / sqrt(12)
    assert found["u"] == pytest.approx(100 * step * sqrt((28.3 / 40.1**2) ** 2 + (1 / 40.1) ** 2), rel=1e-9)


def test_a_saving_on_nothing_is_no_number(tmp_path: Path) -> None:
    told = results_of(
        tmp_path,
        TWO + "tests: [drying]\n",
        readings="contender,wet,dry\ncorvane,0.0,0.0\nostler,40.0,30.0\n",
        **{
            "tests/drying.yaml": "title: Drying\nreadings:\n  file: readings.csv\n  columns: {wet: 'wet, g', dry: 'dry, g'}\n"
            "quantities:\n  saved: {formula: (wet - dry) / wet, unit: '%', better: higher}\n"
        },
    )
    found = result_of(told, "saved", "corvane")
    assert found["value"] is None
    assert found["missing"] == "a division by zero"


def test_where_draws_give_the_difference_its_interval_the_percentage_has_none(tmp_path: Path) -> None:
    """One over 1.5 ± 0.5: first order is off, and a percentage to first order would be as well."""
    told = results_of(
        tmp_path,
        TWO + "tests: [speed]\n",
        readings="contender,pass,way,time\ncorvane,1,12.1,1.51\nostler,1,7.3,1.62\nostler,2,7.4,1.61\ncorvane,2,12.3,1.54\n",
        **{
            "instruments.yaml": "watch: {resolution: 0.01 s, accuracy: ±0.5 s}\n",
            "tests/speed.yaml": "title: Speed\nreadings:\n  file: readings.csv\n"
            "  columns: {way: 'way, m', time: 'time, s, watch'}\n"
            "quantities:\n  speed: {formula: way / time, unit: m/s, better: higher}\n",
        },
    )
    found = comparison_of(told, "speed", "corvane", "ostler")
    assert found["low"] is not None
    assert found["percent"] == pytest.approx(100 * (found["difference"] / result_of(told, "speed", "ostler")["value"]))
    assert (found["percent_low"], found["percent_high"]) == (None, None)


def test_the_kinds_for_a_share_lost_and_a_rise_read_in_their_instrument_s_unit(tmp_path: Path) -> None:
    """11.8 of 40.1 by hand; a rise keeps no part of the thermometer's offset, two steps of it are left."""
    told = results_of(
        tmp_path,
        TWO
        + "measure: {lost: 'share lost, %, higher, scale', warmed: 'rise, °C, lower, probe'}\nreadings: readings.csv\n",
        readings="contender,lost before,lost after,warmed start,warmed end\ncorvane,40.1,28.3,20.1,31.4\nostler,41.7,30.2,20.2,31.1\n",
        **{"instruments.yaml": "scale: 0.1 g, accuracy ±0.3 g\nprobe: 0.1 °C, accuracy ±1 °C\n"},
    )
    lost, warmed = result_of(told, "lost", "corvane"), result_of(told, "warmed", "corvane")
    assert (lost["value"], lost["unit"]) == (pytest.approx(100 * 11.8 / 40.1), "%")
    offset, step = 0.3 / sqrt(3), 0.1 / sqrt(12)
    by_offset, by_steps = 28.3 / 40.1**2 - 1 / 40.1, sqrt((28.3 / 40.1**2) ** 2 + (1 / 40.1) ** 2)
    assert lost["u"] == pytest.approx(100 * sqrt((offset * by_offset) ** 2 + (step * by_steps) ** 2), rel=1e-9)
    assert (warmed["value"], warmed["unit"]) == (pytest.approx(11.3), "°C")
    assert warmed["u"] == pytest.approx(0.1 * sqrt(2 / 12), rel=1e-9)
    assert warmed["printed"].startswith("11.3")


def test_a_difference_of_two_percentages_is_told_in_percentage_points(tmp_path: Path) -> None:
    """Common practice, no source: 52 % is 10 percentage points more than 42 %, and not 10 % more."""
    yaml = (
        "title: Share\ncontenders: {one: One, other: Other}\ninstruments: {meter: '0.1 %, accuracy ±10 digits'}\n"
        "measure:\n  share: {kind: one reading, unit: '%', better: higher, instrument: meter, matters: 2 %}\n"
        "readings: readings.csv\n"
    )
    rows = "contender,pass,share\n" + "".join(f"one,{n},{52 + n / 10}\nother,{n},{42 + n / 10}\n" for n in (1, 2, 3))
    compile_campaign(tmp_path, yaml, readings=rows)
    (page,) = (tmp_path / "stoves" / ".site").glob("*/tests/share.html")
    text = page.read_text(encoding="utf-8").replace("\u00a0", " ")
    assert "One is highest" in text
    assert "10.00 percentage points" in text
    assert "more than the 2 percentage points that we say would matter" in text
    assert "10.00 %" not in text
