"""Logged runs through the whole program, as a tester would give them, against rules and libraries outside of it."""

from __future__ import annotations

import math
import re
from pathlib import Path

import jsonschema
import numpy as np
import pytest
from scipy.integrate import trapezoid

from reportgen.build.run import compile_site
from reportgen.record.schema import results_schema
from tests.campaigns import compile_campaign, compile_folder, refusal, result_of, results_of, write_campaign
from tests.outside.lamp import RUN_TIME

YAML = """\
title: Which lamp lasts longest?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
instruments:
  lux-meter: 1 lx, up to 2000 lx, accuracy ±3 %
tests: [run-time]
"""
TEST = RUN_TIME.replace("UNIT", "min")


def log(t: np.ndarray, v: np.ndarray) -> str:
    return "Elapsed,Ch1\n" + "".join(f"{a:g},{b:.3f}\n" for a, b in zip(t, v, strict=True))


def fading(tau: float, top: float, t: np.ndarray) -> np.ndarray:
    """Brighter at first than 30 s later, as lamps are when they are cold."""
    return top * (1 + 0.3 * np.exp(-t / 8)) * np.exp(-t / tau)


T = np.arange(0, 9000, 5.0)
LAMPS = {"corvane": fading(1800, 700, T), "ostler": fading(2600, 500, T)}


def files(formula: str, **more: str) -> dict[str, str | bytes]:
    runs = {f"raw/run-{who}-1.csv": log(T, light) for who, light in LAMPS.items()}
    return {"tests/run-time.yaml": TEST.replace("FORMULA", formula), **runs, **more}


def test_run_time_to_a_tenth_of_the_light_at_30_s(tmp_path: Path) -> None:
    """ANSI/PLATO FL 1: run time lasts from 30 s after switching on to 10 % of the light then (from memory).
    Expected by numpy.interp."""
    told = results_of(tmp_path, YAML, **files("when(light, under, 0.1 * at(light, 30))"))
    for who, light in LAMPS.items():
        limit = 0.1 * np.interp(30, T, np.round(light, 3))
        crossing = np.interp(-limit, -np.round(light, 3), T)
        assert result_of(told, "run-time", who)["value"] == pytest.approx(crossing / 60, rel=1e-6)


def test_until_writes_the_formula(tmp_path: Path) -> None:
    test = TEST.replace('formula: "FORMULA"', "until: 10 %")
    told = results_of(tmp_path, YAML, **{**files(""), "tests/run-time.yaml": test})
    for who, light in LAMPS.items():
        crossing = np.interp(-0.1 * np.round(light, 3).max(), -np.round(light, 3), T)
        assert result_of(told, "run-time", who)["value"] == pytest.approx(crossing / 60, rel=1e-6)


@pytest.mark.parametrize("until", ["under 50 lx", "under 50", "under 0.05 klx"])
def test_a_run_until_a_limit_with_a_unit_shows_that_limit(until: str, tmp_path: Path) -> None:
    """The crossing is expected by numpy.interp; 1 klx is 1000 lx (SI brochure, 9th edition, table 7)."""
    test = TEST.replace('formula: "FORMULA"', f"until: {until}")
    told = compile_campaign(tmp_path, YAML, **{**files(""), "tests/run-time.yaml": test})
    for who, light in LAMPS.items():
        crossing = np.interp(-50, -np.round(light, 3), T)
        assert result_of(told, "run-time", who)["value"] == pytest.approx(crossing / 60, rel=1e-6)
    (page,) = (tmp_path / "stoves/.site").glob("*/tests/run-time.html")
    shown = page.read_text(encoding="utf-8").replace("\u00a0", " ")
    limit = until.removeprefix("under ")
    if " " in limit:
        assert "when(light, under, run_time_limit)" in shown
        assert f"<code>run_time_limit</code>: {limit}" in shown
    else:
        assert "when(light, under, 50)" in shown


def test_a_run_until_it_is_over_a_limit(tmp_path: Path) -> None:
    rise = {f"raw/run-{who}-1.csv": log(T, T / 10) for who in LAMPS}
    test = TEST.replace('formula: "FORMULA"', "until: over 60 lx").replace("higher", "lower")
    told = results_of(tmp_path, YAML, **{"tests/run-time.yaml": test, **rise})
    assert result_of(told, "run-time", "ostler")["value"] == pytest.approx(10)  # a line: 60 lx at 600 s


def test_until_a_part_of_the_value_at_a_time(tmp_path: Path) -> None:
    test = TEST.replace('formula: "FORMULA"', "until: 10 % of the value at 0.5 min")
    told = results_of(tmp_path, YAML, **{**files(""), "tests/run-time.yaml": test})
    light = np.round(LAMPS["ostler"], 3)
    crossing = np.interp(-0.1 * np.interp(30, T, light), -light, T)
    assert result_of(told, "run-time", "ostler")["value"] == pytest.approx(crossing / 60, rel=1e-6)


@pytest.mark.parametrize(
    ("until", "says"),
    [
        ("below 50 lx", "`under 50 lx`"),
        ("> 50 lx", "`over 50 lx`"),
        ("under", "`under 5 °C`"),
        ("over 60 dB", "dB is a level"),
        ("over 5 blorps", "blorps"),
    ],
)
def test_a_limit_that_cant_be_one_is_refused_and_says_why(until: str, says: str, tmp_path: Path) -> None:
    test = TEST.replace('formula: "FORMULA"', f'until: "{until}"')
    found = refusal(tmp_path, YAML, **{**files(""), "tests/run-time.yaml": test})
    (wrong,) = [f for f in found if f.severity == "error"]
    assert wrong.place.file == "tests/run-time.yaml"
    assert says in f"{wrong.says} {wrong.do}"


def test_a_constant_of_the_name_a_limit_goes_by_is_refused(tmp_path: Path) -> None:
    test = TEST.replace('formula: "FORMULA"', "until: under 50 lx")
    more = YAML + "constants:\n  run time limit: {value: 5 lx, source: a guess}\n"
    found = refusal(tmp_path, more, **{**files(""), "tests/run-time.yaml": test})
    assert "name-twice" in {f.rule for f in found}


def test_the_limit_of_a_run_timed_by_hand_stands_on_its_page(tmp_path: Path) -> None:
    more = """\
title: How long
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
measure: {burn: {kind: run to a limit, until: under 5 °C, unit: min, better: higher}}
readings: readings.csv
"""
    compile_campaign(tmp_path, more, readings="contender,pass,burn\ncorvane,1,20\nostler,1,25\n")
    (page,) = (tmp_path / "stoves/.site").glob("*/tests/burn.html")
    assert "<code>until</code>: under 5\u00a0°C" in page.read_text(encoding="utf-8")


@pytest.mark.parametrize("until", ["5 lx", "120 %"])
def test_an_unclear_until_is_refused(until: str, tmp_path: Path) -> None:
    test = TEST.replace('formula: "FORMULA"', f"until: {until}")
    found = refusal(tmp_path, YAML, **{**files(""), "tests/run-time.yaml": test})
    assert [f.rule for f in found if f.severity == "error"] == ["until-unclear"]


def test_a_dose_is_the_area_under_the_light(tmp_path: Path) -> None:
    test = TEST.replace("run time: ", "dose: ").replace("unit: min", "unit: lx·h")
    told = results_of(tmp_path, YAML, **{**files(""), "tests/run-time.yaml": test.replace("FORMULA", "area(light)")})
    for who, light in LAMPS.items():
        area = trapezoid(np.round(light, 3), T) / 3600
        result = result_of(told, "dose", who)
        assert result["value"] == pytest.approx(area, rel=1e-9)
        gain, step = (
            0.03 * area / math.sqrt(3),
            T[-1] / 3600 / math.sqrt(12),
        )  # ±3 % and a step of 1 lx, JCGM 100, 4.3.7
        assert result["u"] == pytest.approx(math.hypot(gain, step), rel=1e-6)


def test_every_result_leads_to_its_file_and_the_lines_of_its_trace(tmp_path: Path) -> None:
    told = results_of(tmp_path, YAML, **files("when(light, under, 0.1 * highest(light))"))
    (trace,) = result_of(told, "run-time", "ostler")["trace"]
    assert trace["file"] == "raw/run-ostler-1.csv"
    assert trace["span"] == [2, len(T) + 1]


def test_the_record_tells_of_every_trace_where_it_passed_its_limit(tmp_path: Path) -> None:
    told = results_of(tmp_path, YAML, **files("when(light, under, 0.1 * highest(light))"))
    jsonschema.validate(told, results_schema())
    (ostler,) = [t for t in told["trace_list"] if t["contender"] == "ostler"]
    light = np.round(LAMPS["ostler"], 3)
    assert (ostler["highest"], ostler["lowest"], ostler["samples"]) == (light.max(), light.min(), len(T))
    (passed,) = ostler["passed"]
    assert passed["level"] == pytest.approx(0.1 * light.max())
    assert passed["seconds"] == pytest.approx(60 * result_of(told, "run-time", "ostler")["value"])


def test_a_run_that_never_fell_that_far_is_more_than_its_length(tmp_path: Path) -> None:
    told = results_of(tmp_path, YAML, **files("when(light, under, 0.001 * highest(light))"))
    result = result_of(told, "run-time", "ostler")
    assert (result["limit"], result["value"]) == ("above", pytest.approx(T[-1] / 60))


def test_a_peak_off_the_scale_is_more_than_the_end_of_the_scale(tmp_path: Path) -> None:
    test = TEST.replace("unit: min", "unit: lx").replace("FORMULA", "highest(light)")
    over = log(T, LAMPS["ostler"]).replace("Elapsed,Ch1\n", "Elapsed,Ch1\n-5,OL\n")
    told = results_of(tmp_path, YAML, **{**files(""), "tests/run-time.yaml": test, "raw/run-ostler-1.csv": over})
    result = result_of(told, "run-time", "ostler")
    assert (result["limit"], result["value"]) == ("above", 2000)  # where the instrument's range ends


def test_a_gap_goes_with_every_result_that_rests_on_the_trace(tmp_path: Path) -> None:
    kept = (T < 300) | (T > 900)
    broken = log(T[kept], LAMPS["ostler"][kept])
    told = results_of(
        tmp_path, YAML, **files("when(light, under, 0.1 * highest(light))", **{"raw/run-ostler-1.csv": broken})
    )
    of = {who: result_of(told, "run-time", who)["caveats"] for who in LAMPS}
    says = " ".join(c["says"] for c in told["caveat_list"])
    assert not of["corvane"]
    assert len(of["ostler"]) == 1
    assert "10 min 10 s from 4 min 55 s on" in says.replace("\u00a0", " ")


def test_the_page_shows_the_traces_with_words_for_those_who_cannot_see_them(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path, YAML, **files("when(light, under, 0.1 * highest(light))"))
    compile_folder(folder)
    page = next(folder.glob(".site/*/tests/run-time.html")).read_text(encoding="utf-8").replace("\u00a0", " ")
    figure = re.search(r'<figure class="chart" id="figure-trace--run-time--light">.*?</figure>', page, re.S)
    assert figure
    assert 'class="drawing traces"' in figure[0]
    alternative = re.search(r'aria-label="([^"]*)"', figure[0])
    assert alternative
    assert "Run time: Ostler Mk II read highest" in alternative[1]
    assert re.search(r"Corvane Sol: .* lx in 2 h 29 min 55 s, under 91 lx at 1 h 1 min 12 s", alternative[1])
    assert page.count("time when light under") == 2  # a step of the working


def test_a_trace_is_no_value_and_a_value_no_trace(tmp_path: Path) -> None:
    found = refusal(tmp_path, YAML, **files("light / 2"))
    assert any("a trace, not one value" in f.says for f in found)
    measure = YAML.replace("tests: [run-time]", "measure:\n  light: {kind: logged, unit: lx, readings: light.csv}")
    found = refusal(tmp_path / "other", measure, **{"light.csv": "contender,light\ncorvane,5\nostler,6\n"})
    told = [(f.rule, f.place.file, f.place.line, f.place.column) for f in found if f.severity == "error"]
    assert told == [("numbers-for-a-trace", "campaign.yaml", 6, 3)], "told once, where a trace was asked for"


def test_units_of_file_and_declaration_must_agree(tmp_path: Path) -> None:
    kilo = log(T, LAMPS["ostler"]).replace("Ch1", "Ch1 (klx)")
    found = refusal(
        tmp_path, YAML, **files("when(light, under, 0.1 * highest(light))", **{"raw/run-ostler-1.csv": kilo})
    )
    assert any("the file says klx, and lx is declared" in f.says for f in found)


def test_a_file_of_a_stranger_is_told_and_not_read(tmp_path: Path) -> None:
    told = results_of(
        tmp_path,
        YAML,
        **files("when(light, under, 0.1 * highest(light))", **{"raw/run-ostlr-2.csv": "Elapsed,Ch1\n0,1\n"}),
    )
    (finding,) = [f for f in told["findings"] if f["rule"] == "unread-file"]
    assert finding["severity"] == "warning"
    assert "ostler" in finding["do"].lower()


def warned(place: Path, rule: str, files: dict[str, str | bytes], yaml: str = YAML) -> list[tuple[str, int, str]]:
    built = compile_site(write_campaign(place, yaml, **files))
    told = [f for f in built.findings if f.rule == rule]
    return [(f.place.file.rpartition("/")[2], f.place.line, f.says.replace("\u00a0", " ")) for f in told]


def test_samples_beyond_the_instruments_range_are_warned_of_with_their_line(tmp_path: Path) -> None:
    bright = np.array([*LAMPS["ostler"][:7], 2105.0, *LAMPS["ostler"][8:]])
    more = {**files("when(light, under, 0.1 * at(light, 30))"), "raw/run-ostler-1.csv": log(T, bright)}
    ((file, line, says),) = warned(tmp_path, "outside-range", more)
    assert (file, line) == ("run-ostler-1.csv", 9)  # a heading, then the eighth sample
    assert says == "“Ch1” reads 2105 lx at its highest, outside the range of lux-meter."


def test_a_scale_that_ended_is_not_beyond_the_range(tmp_path: Path) -> None:
    over = log(T, LAMPS["ostler"]).replace("Elapsed,Ch1\n", "Elapsed,Ch1\n-5,OL\n")
    more = {**files("when(light, under, 50)"), "raw/run-ostler-1.csv": over}
    assert warned(tmp_path, "outside-range", more) == []


def test_a_trace_in_a_unit_its_instrument_cannot_read_is_refused(tmp_path: Path) -> None:
    test = TEST.replace("Ch1, lx, lux-meter", "Ch1, °C, lux-meter").replace("FORMULA", "when(light, under, 50)")
    found = refusal(tmp_path, YAML, **{**files(""), "tests/run-time.yaml": test})
    (wrong,) = [f for f in found if f.severity == "error"]
    assert (wrong.rule, wrong.place.file) == ("unit", "raw/run-corvane-1.csv")
    assert "lux-meter" in wrong.says


def test_a_trace_without_an_instrument_is_told_like_any_reading(tmp_path: Path) -> None:
    test = TEST.replace("Ch1, lx, lux-meter", "Ch1, lx").replace("FORMULA", "when(light, under, 50)")
    told = warned(tmp_path, "no-instrument", {**files(""), "tests/run-time.yaml": test})
    assert len(told) == 1
