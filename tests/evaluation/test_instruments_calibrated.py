"""Instruments with a calibration, a drift, a class, through a compiled campaign."""

import re
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import comparison_of, compile_campaign, refusal, result_of, results_of

HEAD = "title: With a calibrated instrument\ncontenders: {one: One, other: Other}\n"
ONE = HEAD + "measure: {weight: 'one reading, g, lower, scale'}\nreadings: readings.csv\n"
READINGS = "contender,weight\none,200.3\nother,149.8\n"


def told_of(place: Path, instrument: str, yaml: str = ONE, readings: str = READINGS, **files: str) -> dict[str, Any]:
    return results_of(place, yaml, readings=readings, **{"instruments/scale.yaml": instrument, **files})


def compiled(place: Path, instrument: str, yaml: str = ONE, readings: str = READINGS, **files: str) -> dict[str, Any]:
    return compile_campaign(place, yaml, readings=readings, **{"instruments/scale.yaml": instrument, **files})


def page_of(place: Path) -> str:
    """The page of the test “weight”."""
    (page,) = (place / "stoves/.site").glob("*/tests/weight.html")
    return page.read_text(encoding="utf-8").replace("'", "’")


def budget(result: dict[str, Any]) -> dict[str, float]:
    return {line["sort"]: line["size"] for line in result["budget"]}


# JCGM 100:2008, H.3, table H.6: readings and corrections in °C (from memory; the results below are printed in H.3.4)
THERMOMETER = """\
calibrated: 2026-05-01
calibration:
  reference: a platinum resistance thermometer
  between: one line
  correction:
    21.521 °C: -0.171 °C
    22.012 °C: -0.169 °C
    22.512 °C: -0.166 °C
    23.003 °C: -0.159 °C
    23.507 °C: -0.164 °C
    23.999 °C: -0.165 °C
    24.513 °C: -0.156 °C
    25.002 °C: -0.157 °C
    25.503 °C: -0.159 °C
    26.010 °C: -0.161 °C
    26.511 °C: -0.160 °C
"""
READ_ONCE = HEAD + "measure: {warmth: 'one reading, °C, higher, scale'}\nreadings: readings.csv\n"


def test_the_thermometer_of_the_gum_is_corrected_as_there(tmp_path: Path) -> None:
    # JCGM 100, H.3.4: at 30 °C the correction is -0.1494 °C with u 0.0041 °C and 9 degrees of freedom
    told = told_of(tmp_path, THERMOMETER, READ_ONCE, "contender,warmth\none,30.0000\nother,30.0000\n")
    result = result_of(told, "warmth", "one")
    assert f"{result['value'] - 30:.4f}" == "-0.1494"
    lines = [line for line in result["budget"] if line["sort"] == "calibration"]
    assert f"{sum(line['size'] ** 2 for line in lines) ** 0.5:.4f}" == "0.0041"
    assert {line["degrees"] for line in lines} == {9}
    pair = comparison_of(told, "warmth", "one", "other")
    assert abs(pair["differed_high"]) < 0.0002, "the error of the line is in both readings and cancels"


def test_a_correction_is_added_and_its_uncertainty_is_divided_by_its_factor(tmp_path: Path) -> None:
    # JCGM 100, 4.3.3: U = 0.04 g with k = 2 is u = 0.02 g
    scale = "resolution: 0.1 g\ncalibration: {correction: -0.12 g, uncertainty: 0.04 g, k: 2}\n"
    told = told_of(tmp_path, scale)
    result = result_of(told, "weight", "one")
    assert result["value"] == pytest.approx(200.18)
    assert budget(result) == {"calibration": pytest.approx(0.02), "step": pytest.approx(0.1 / 12**0.5)}


def test_an_instrument_known_by_its_calibration_is_not_one_of_unknown_accuracy(tmp_path: Path) -> None:
    with_u = compiled(tmp_path / "1", "resolution: 0.1 g\ncalibration: {correction: -0.12 g, u: 0.02 g}\n")
    without = compiled(tmp_path / "2", "resolution: 0.1 g\ncalibration: {correction: -0.12 g}\n")
    assert result_of(with_u, "weight", "one")["u"] > result_of(without, "weight", "one")["u"]
    said = ["may be off isn’t known" in page_of(tmp_path / n) for n in ("1", "2")]
    assert said == [False, True]


def test_drift_counts_from_the_calibration_to_the_day_of_the_reading(tmp_path: Path) -> None:
    # JCGM 100, 4.3.7: 0.1 g a year for two years is anywhere within ±0.2 g
    scale = "resolution: 0.1 g\ncalibrated: 2024-05-02\ndrift: 0.1 g a year\n"
    told = told_of(tmp_path, scale, f"{ONE}tested: 2026-05-02\n")
    assert budget(result_of(told, "weight", "one"))["drift"] == pytest.approx(0.2 / 3**0.5, rel=0.001)


def test_a_day_written_beside_a_reading_counts_before_that_of_the_campaign(tmp_path: Path) -> None:
    scale = "resolution: 0.1 g\ncalibrated: 2024-05-02\ndrift: 0.1 g a year\n"
    readings = "contender,time,weight\none,2025-05-02 10:00,200.0\nother,2026-05-02 10:00,150.0\n"
    told = told_of(tmp_path, scale, f"{ONE}tested: 2026-06-30\n", readings)
    found = [budget(result_of(told, "weight", name))["drift"] for name in ("one", "other")]
    assert found == pytest.approx([0.1 / 3**0.5, 0.2 / 3**0.5], rel=0.001)


def test_a_drift_without_a_day_is_refused_rather_than_taken_as_none(tmp_path: Path) -> None:
    (found,) = refusal(tmp_path / "1", ONE, readings=READINGS, **{"instruments/scale.yaml": "drift: 0.1 g a year\n"})
    assert (found.rule, found.place.line) == ("drift-without-a-day", 1)
    scale = {"instruments/scale.yaml": "calibrated: 2024-05-02\ndrift: 0.1 g a year\n"}
    found = refusal(tmp_path / "2", ONE, readings=READINGS, **scale)[0]
    assert "nothing says when this was read" in found.says
    assert "tested" in found.do


def test_offsets_are_shared_within_one_zeroing_alone(tmp_path: Path) -> None:
    # JCGM 100, F.1.2.3: readings share an error as far as they share its cause; a session is one zeroing
    yaml = HEAD + "measure: {gas: 'weighed before and after, g, lower, scale'}\nreadings: readings.csv\n"
    rows = "one,day 1,200.0,150.0\nother,day 1,200.0,140.0\none,day 2,200.0,150.0\nother,day 2,200.0,140.0\n"
    together = told_of(
        tmp_path / "1", "resolution: 0.1 g\naccuracy: ±0.3 g\n", yaml, f"contender,session,gas before,gas after\n{rows}"
    )
    assert "offset" not in budget(result_of(together, "gas", "one"))
    single = "contender,session,weight\none,day 1,200.0\nother,day 1,150.0\none,day 2,200.2\nother,day 2,150.1\n"
    apart = told_of(tmp_path / "2", "resolution: 0.1 g\naccuracy: ±0.3 g\n", ONE, single)
    offsets = [x["size"] for x in result_of(apart, "weight", "one")["budget"] if x["sort"] == "offset"]
    assert offsets == pytest.approx([0.15 / 3**0.5] * 2), "two zeroings, each in half of the passes"


def test_repeatability_of_the_instrument_counts_only_where_no_passes_show_it(tmp_path: Path) -> None:
    # JCGM 100, 4.3.10: what is in the observed scatter already is not counted again
    scale = "resolution: 0.01 g\naccuracy: ±0.01 g\nrepeatability: 0.5 g from 10 readings\n"
    once = result_of(told_of(tmp_path / "1", scale), "weight", "one")
    (line,) = [x for x in once["budget"] if x["sort"] == "repeatability"]
    assert (line["size"], line["degrees"]) == (pytest.approx(0.5), 9)
    passes = "contender,weight\none,200.0\nother,150.0\none,200.2\nother,150.2\none,200.4\nother,150.4\n"
    often = result_of(told_of(tmp_path / "2", scale, ONE, passes), "weight", "one")
    assert "repeatability" not in budget(often)
    assert often["u"] == pytest.approx(0.2 / 3**0.5, rel=0.01)


def test_a_gauge_of_a_class_errs_by_so_many_percent_of_its_scale(tmp_path: Path) -> None:
    # EN 837-1 (from memory): class 1.6, 0 to 10 bar: 0.16 bar
    yaml = HEAD + "measure: {pressure: 'one reading, bar, higher, gauge'}\nreadings: readings.csv\n"
    files = {"instruments.yaml": "gauge: 0.2 bar, 0 bar to 10 bar, accuracy class 1.6\n"}
    told = results_of(tmp_path, yaml, readings="contender,pressure\none,2.4\nother,3.0\n", **files)
    assert budget(result_of(told, "pressure", "one"))["offset"] == pytest.approx(0.16 / 3**0.5)


def test_a_quicker_hand_is_believed(tmp_path: Path) -> None:
    yaml = HEAD + "measure: {boil time: 'timed, s, lower, watch'}\nreadings: readings.csv\n"
    files = {"instruments.yaml": "watch: 0.01 s, by hand, reaction 0.15 s\n"}
    told = results_of(tmp_path, yaml, readings="contender,boil time\none,212.40\nother,210.00\n", **files)
    assert budget(result_of(told, "boil-time", "one"))["reaction"] == pytest.approx(0.15 / 3**0.5)


def test_a_hand_counts_once_where_passes_show_it_in_their_scatter(tmp_path: Path) -> None:
    """Two passes 3 s apart: s/√2 = 1.5 s (JCGM 100, 4.2.3), type A, in which each pass' hand is already."""
    yaml = HEAD + "measure: {boil time: 'timed, s, lower, watch'}\nreadings: readings.csv\n"
    files = {"instruments.yaml": "watch: 0.01 s, by hand, accuracy ±0.5 s\n"}
    rows = "contender,pass,boil time\none,1,210.43\none,2,213.43\nother,1,211.17\nother,2,214.17\n"
    told = results_of(tmp_path, yaml, readings=rows, **files)
    found = budget(result_of(told, "boil-time", "one"))
    assert found == pytest.approx({"scatter": 1.5, "offset": 0.5 / 3**0.5})


def test_a_hand_that_a_coarse_display_hides_counts_beside_the_scatter(tmp_path: Path) -> None:
    """A display in whole seconds shows 212 five times. The hand is 0.2/√3 s a pass (JCGM 100, 4.3.7), ÷ √5 in their
    mean (4.2.3), beside the step, 1/√12 s (F.2.2.1)."""
    yaml = HEAD + "measure: {boil time: 'timed, s, lower, watch'}\nreadings: readings.csv\n"
    files = {"instruments.yaml": "watch: 1 s, by hand, accuracy ±0.5 s\n"}
    rows = [f"{who},{n},{t}\n" for who, t in (("one", 212), ("other", 219)) for n in range(1, 6)]
    told = results_of(tmp_path, yaml, readings="contender,pass,boil time\n" + "".join(rows), **files)
    found = budget(result_of(told, "boil-time", "one"))
    assert found == pytest.approx(
        {"scatter": 0.0, "reaction": 0.2 / 15**0.5, "step": 1 / 12**0.5, "offset": 0.5 / 3**0.5}
    )
    u = comparison_of(told, "boil-time", "one", "other")["u"]
    assert u == pytest.approx((2 * 0.2**2 / 15 + 2 / 12) ** 0.5)  # the watch's ±0.5 s is in both, and cancels


def test_a_hand_on_one_reading_that_passes_stand_on_is_in_no_scatter(tmp_path: Path) -> None:
    """One time for each, from which three others are taken away: the hand on it is ±0.2 s once, the watch ±0.5 s."""
    yaml = (
        f"{HEAD}measure:\n  whole run: one reading, s, lower, watch\n"
        "  rest: {kind: one reading, unit: s, better: lower, instrument: watch, formula: whole_run - begun,\n"
        "         columns: {begun: {unit: s, instrument: plain}}}\n"
        "readings: [readings.csv, begun.csv]\n"
    )
    files = {
        "instruments.yaml": "watch: 0.01 s, by hand, accuracy ±0.5 s, shared nothing\nplain: accuracy ±0.01 s\n",
        "begun.csv": "contender,begun\none,10.03\none,10.21\none,10.44\nother,5.07\nother,5.23\nother,5.41\n",
    }
    told = results_of(tmp_path, yaml, readings="contender,whole run\none,80.37\nother,79.11\n", **files)
    found = [
        b["size"] for b in result_of(told, "rest", "one")["budget"] if b["of"] == "watch" and b["sort"] == "accuracy"
    ]
    assert sum(x * x for x in found) == pytest.approx((0.2**2 + 0.5**2) / 3)


def caveats(told: dict[str, Any]) -> list[str]:
    """What is said of instruments, with plain spaces."""
    said = [c["says"] for c in told["caveat_list"] if c["sort"] == "instrument"]
    return [" ".join(text.split()) for text in said]


def test_a_page_says_that_a_reading_is_corrected_and_since_when(tmp_path: Path) -> None:
    scale = "title: Scale\nresolution: 0.1 g\ncalibrated: 2026-04-30\ncalibration: {correction: +0.12 g, u: 0.02 g}\n"
    (said,) = caveats(told_of(tmp_path / "1", scale))
    assert said.startswith("What the scale showed is corrected by +0.12 g, from its calibration on 30 April 2026")
    (said,) = caveats(told_of(tmp_path / "2", "calibration: {correction: {100 g: 0 g, 300 g: 0.2 g}}\n"))
    assert "its table of 2 calibration points" in said
    assert caveats(told_of(tmp_path / "3", "calibration: {u: 0.02 g}\n")) == []


@pytest.mark.parametrize(
    ("drift", "says"), [("", "no interval holds it"), ("drift: 0.1 g a year\n", "counted up to the day it was read")]
)
def test_a_result_past_the_calibration_says_by_how_long_and_what_is_known(
    drift: str, says: str, tmp_path: Path
) -> None:
    scale = f"title: Scale\ncalibrated: 2025-01-31\n{drift}calibration: {{expires: 2026-01-31}}\n"
    told = told_of(tmp_path, scale, f"{ONE}tested: 2026-05-02\n")
    (said,) = caveats(told)
    assert said.startswith("The scale was past its calibration: that counted until 31 January 2026")
    assert "three months later" in said
    assert says in said
    assert result_of(told, "weight", "one")["caveats"]


def test_a_result_at_the_end_of_the_scale_or_beyond_it_says_so(tmp_path: Path) -> None:
    scale = "title: Scale\nresolution: 0.1 g\nrange: 149.8 g to 200.3 g\n"
    said = caveats(told_of(tmp_path / "1", scale))
    assert "“200.3” (One). There may have been more" in said[0]
    assert "“149.8” (Other). There may have been less" in said[1]
    (said_of,) = caveats(told_of(tmp_path / "2", scale.replace("200.3", "160")))[1:]
    assert "lie outside the range of the scale: “200.3” (One)" in said_of


def test_a_result_beyond_the_calibrated_points_says_so(tmp_path: Path) -> None:
    points = "calibration: {correction: {100 g: 0 g, 160 g: 0.2 g, 180 g: 0.2 g}}\n"
    held, drawn = (
        told_of(tmp_path / n, f"resolution: 0.1 g\n{more}")
        for n, more in (("1", points), ("2", points.replace("{c", "{between: one line, c")))
    )
    assert "100 g to 180 g: “200.3” (One). The correction at the nearest point is used" in caveats(held)[1]
    assert result_of(held, "weight", "one")["value"] == pytest.approx(200.5)
    assert "drawn on to there" in caveats(drawn)[1]


def test_under_a_corrected_reading_stands_what_was_added_and_what_came_of_it(tmp_path: Path) -> None:
    # straight between the points, by hand: 100.3 of 200 g on from 100 g to 300 g, so 0.2 g · 100.3/200 = 0.1003 g
    points = "resolution: 0.1 g\ncalibration: {correction: {100 g: 0 g, 300 g: 0.2 g}, u: 0.05 g}\n"
    told = compiled(tmp_path, points)
    result = result_of(told, "weight", "one")
    (reading,) = result["by_pass"][0]["readings"]
    assert (reading["text"], reading["value"]) == ("200.3", 200.3)
    assert reading["corrected"] == pytest.approx(200.4003)
    assert result["value"] == pytest.approx(200.4003)
    assert result["printed"].startswith("200.400"), "to the place of its uncertainty (JCGM 100, 7.2.6), not of 200.3"
    page = " ".join(page_of(tmp_path).split())
    assert "Corrected by +0.100 g to 200.400 g" in page


def test_repeatability_of_what_was_read_once_counts_beside_the_scatter_of_what_stands_on_it(tmp_path: Path) -> None:
    # JCGM 100, 4.3.10 again: the passes show the scatter of `loss` and nothing of the one weighing they all stand on
    yaml = (
        f"{HEAD}measure:\n  full: one reading, g, lower, scale\n"
        "  loss: {kind: one reading, unit: g, better: lower, instrument: plain, formula: full - empty,\n"
        "         columns: {empty: {unit: g, instrument: plain}}}\n"
        "readings: [readings.csv, empty.csv]\n"
    )
    files = {
        "instruments/plain.yaml": "accuracy: ±0.01 g\n",
        "empty.csv": "contender,empty\none,100.0\none,100.2\none,100.4\nother,50.0\nother,50.2\nother,50.4\n",
    }
    scale = "resolution: 0.01 g\naccuracy: ±0.01 g\nrepeatability: 0.5 g\n"
    told = told_of(tmp_path, scale, yaml, "contender,full\none,200.30\nother,149.81\n", **files)
    result = result_of(told, "loss", "one")
    assert [line["size"] for line in result["budget"] if line["sort"] == "shared"] == pytest.approx([0.5])
    assert result["u"] == pytest.approx((0.5**2 + 0.2**2 / 3) ** 0.5, rel=0.01)


LOGGED = f"""\
{HEAD}tested: 2026-05-02
tests: [warming]
constants: {{eighty: {{value: 80 °C, source: chosen}}}}
"""
WARMING = """\
title: Warming
headline: to eighty
readings: {logger: "raw/{contender}.csv", time: "t, s", columns: {warmth: "T, °C, scale"}}
quantities:
  to eighty: {kind: logged, formula: "when(warmth, over, eighty)", unit: s, better: lower}
  mean warmth: {kind: logged, formula: "mean_level(warmth)", unit: °C, better: neither}
"""


def test_the_samples_of_a_trace_are_corrected_before_anything_is_looked_for_in_them(tmp_path: Path) -> None:
    # a straight rise from 20 to 100 °C in 80 s, read 2 °C too low at the top and right at the bottom: it is over 80 °C
    # where it read 20 + 60·(80/82), after 58.5366 s (by hand); the mean is 60 °C and half of 2 °C
    rise = "t,T\n" + "".join(f"{t},{20 + t}.00\n" for t in range(81))
    files = {"tests/warming.yaml": WARMING, "raw/one.csv": rise, "raw/other.csv": rise}
    probe = (
        "resolution: 0.01 °C\nrange: 0 °C to 100 °C\ncalibrated: 2025-05-02\ndrift: 0.3 °C a year\n"
        "calibration: {correction: {20 °C: 0 °C, 100 °C: +2 °C}, u: 0.1 °C}\n"
    )
    told = results_of(tmp_path, LOGGED, **files, **{"instruments/scale.yaml": probe})
    assert result_of(told, "to-eighty", "one")["value"] == pytest.approx(60 * 80 / 82, abs=1e-6)
    mean = result_of(told, "mean-warmth", "one")
    assert mean["value"] == pytest.approx(61.0)
    assert budget(mean)["calibration"] == pytest.approx(0.1)
    assert budget(mean)["drift"] == pytest.approx(0.3 / 3**0.5, rel=0.001)
    assert not [f for f in told["findings"] if f["rule"] == "outside-range"], "it showed no more than 100 °C"


def test_the_budget_of_a_result_tells_the_two_errors_of_a_line_apart(tmp_path: Path) -> None:
    told = READ_ONCE.replace("warmth", "weight")
    compiled(tmp_path, f"title: Probe\n{THERMOMETER}", told, "contender,weight\none,30.0000\nother,21.0000\n")
    page = " ".join(re.sub("<[^>]+>", "", page_of(tmp_path)).split())
    for error in ("height", "slope"):
        assert f"how well the {error} of the line through the calibration points of the probe is known" in page.lower()


def test_what_reads_the_same_of_an_instrument_in_two_tests_is_one_caveat_of_both(tmp_path: Path) -> None:
    yaml = (
        HEAD
        + "tested: 2026-05-09\nmeasure:\n  weight: one reading, g, lower, scale\n  load: one reading, g, lower, scale\n"
    )
    scale = "resolution: 0.1 g\ncalibrated: 2025-04-30\ncalibration: {correction: +0.12 g, u: 0.02 g, expires: 2026-04-30}\n"
    told = compiled(
        tmp_path, scale, yaml + "readings: readings.csv\n", "contender,weight,load\none,200.3,90.1\nother,149.8,80.2\n"
    )
    said = caveats(told)
    assert len(said) == 2
    assert len(set(said)) == 2
    for test in ("weight", "load"):
        page = next((tmp_path / "stoves/.site").glob(f"*/tests/{test}.html")).read_text(encoding="utf-8")
        assert "corrected by +0.12 g" in re.sub(r"\s+", " ", page.replace("\u00a0", " "))


def test_a_drift_that_cancels_is_said_to_below_the_budget(tmp_path: Path) -> None:
    yaml = (
        HEAD
        + "tested: 2026-05-09\nmeasure:\n  weight: weighed before and after, g, lower, scale\nreadings: readings.csv\n"
    )
    scale = "resolution: 0.1 g\naccuracy: ±0.3 g\ncalibrated: 2026-04-30\ndrift: 0.1 g a year\n"
    rows = "contender,weight before,weight after\none,200.3,90.1\nother,149.8,80.2\n"
    told = compiled(tmp_path, scale, yaml, rows)
    assert "drift" not in budget(result_of(told, "weight", "one"))
    assert "has no line: it moves all that was read off it alike" in re.sub(r"\s+", " ", page_of(tmp_path))
