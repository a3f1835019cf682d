"""The chart of traces: labels apart, peaks kept, gaps as gaps, what happened at its time."""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.charts.spread import Box, freest, spread
from reportgen.evaluation.evaluated import TraceShown
from reportgen.evaluation.traces_happened import seconds_of
from reportgen.intake.reading import ReadingKey
from tests.campaigns import compile_campaign
from tests.charts.pictures import layer

KEY = ReadingKey("glow", "corvane", "1", "1", "", "light")
YAML = """\
title: Which lamp lasts longest?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
instruments: {lux-meter: "1 lx, up to 2000 lx, accuracy ±3 %"}
tests: [glow]
"""
TEST = """\
title: Glow
readings:
  - logger: raw/{contender}.csv
    time: Clock
    columns: {light: "Ch1, lx, lux-meter"}
quantities:
  run time: {kind: logged, until: under 50 lx, unit: min, better: higher}
  brightest: {kind: logged, formula: highest(light), unit: lx, better: higher}
headline: run time
"""


def clocked(begin: float, seconds: np.ndarray, light: np.ndarray) -> str:
    stamps = [begin + s for s in seconds]
    rows = (f"{int(t // 3600) % 24:02d}:{int(t % 3600 // 60):02d}:{t % 60:04.1f},{v:.1f}" for t, v in
            zip(stamps, light, strict=True))  # fmt: skip
    return "Clock,Ch1\n" + "\n".join(rows) + "\n"


def page_of(place: Path, **files: str) -> str:
    compile_campaign(place, YAML, **files)
    (page,) = (place / "stoves/.site").glob("*/tests/glow.html")
    return page.read_text(encoding="utf-8").replace("\u00a0", " ")


def lamps(gap: bool = False) -> dict[str, str]:
    seconds = np.arange(0, 6000, 10.0)
    seconds = seconds[(seconds < 2000) | (seconds > 2600)] if gap else seconds
    raw = {
        f"raw/{who}.csv": clocked(82800, seconds, top * np.exp(-seconds / tau))
        for who, top, tau in (("corvane", 700, 1500), ("ostler", 500, 2000))
    }
    return {"tests/glow.yaml": TEST, **raw}


@given(st.lists(st.tuples(st.floats(0, 300), st.floats(0, 200)), min_size=1, max_size=12))
def test_labels_beside_one_another_stand_apart_and_in_their_order(wanted: list[tuple[float, float]]) -> None:
    found = spread(wanted, 200.0)
    for i, (x, y) in enumerate(wanted):
        for j, (x2, y2) in enumerate(wanted):
            if i < j and abs(x - x2) <= 28:
                assert abs(found[i] - found[j]) >= 13 - 1e-6
                assert (found[i] - found[j]) * (y - y2) >= 0
    assert max(found) <= 200 + 1e-6


def test_a_label_with_nobody_near_stays_where_it_belongs() -> None:
    assert spread([(0.0, 40.0), (100.0, 41.0)], 200.0) == (40.0, 41.0)


def test_words_stand_where_no_line_runs() -> None:
    upper, lower = Box(0, 20, 60), Box(0, 60, 60)
    assert freest([upper, lower], [[(0.0, 20.0), (100.0, 20.0)]]) == lower
    assert freest([upper, lower], [[(0.0, 60.0), (100.0, 60.0)]]) == upper


def test_the_traces_follow_the_first_quantity_that_looks_along_them(tmp_path: Path) -> None:
    page = page_of(tmp_path, **lamps())
    assert page.count('id="figure-trace--glow--light"') == 1
    first, traced, second = (page.index(f'id="{at}"') for at in ("run-time", "figure-trace--glow--light", "brightest"))
    assert first < traced < second
    assert page.index("<table", first) < traced


def test_the_limit_says_its_value_and_every_line_its_letter(tmp_path: Path) -> None:
    drawn = re.search(r'<svg[^>]*class="drawing traces".*?</svg>', page_of(tmp_path, **lamps()), re.S)
    assert drawn
    texts = re.findall(r"<text[^>]*>([^<]*)</text>", drawn[0])
    assert "limit 50 lx" in texts
    assert {"A", "B"} <= set(texts)


def test_when_each_line_passed_the_limit_stands_beside_its_name(tmp_path: Path) -> None:
    """700 exp(−t/1500) falls to 50 after 1500 ln 14 = 3958.6 s, 500 exp(−t/2000) after 2000 ln 10 = 4605.2 s. Logged to
    0.1 lx, where it falls by 0.033 and 0.025 lx/s, so that half a step is 2 s at the most."""
    drawn = re.search(r'<svg[^>]*class="drawing traces".*?</svg>', page_of(tmp_path, **lamps()), re.S)
    assert drawn
    said = [layer(drawn[0], f"names-{n}")[0].text for n in range(2)]
    assert [one.partition(": ")[0] for one in said] == ["A Corvane Sol", "B Ostler Mk II"]
    size = {"h": 3600, "min": 60, "s": 1}
    found = [sum(int(n) * size[unit] for n, unit in re.findall(r"(\d+) (h|min|s)\b", one)) for one in said]
    assert found == pytest.approx([3958.6, 4605.2], abs=2.5)
    assert len(layer(drawn[0], "passed")) == 2


def test_a_gap_breaks_the_line(tmp_path: Path) -> None:
    def moves(page: str) -> list[int]:
        drawn = re.search(r'<svg[^>]*class="drawing traces".*?</svg>', page, re.S)
        assert drawn
        return sorted(d.count("M") for d in re.findall(r' d="([^"]*)"', drawn[0]) if d.count("L") > 50)

    whole = page_of(tmp_path / "whole", **lamps())
    broken = page_of(tmp_path / "broken", **lamps(gap=True))
    assert (moves(whole), moves(broken)) == ([1, 1], [2, 2])
    assert "where nothing was logged" in broken
    assert "where nothing was logged" not in whole


def test_stretches_between_many_gaps_are_all_drawn(tmp_path: Path) -> None:
    """Every fifth stretch is one sample alone, the others are two or more."""
    at = [n * 400.0 + 10 * i for n in range(20) for i in range(1 if n % 5 == 4 else 8)]
    seconds = np.array([*(10.0 * i for i in range(300)), *(4000 + t for t in at)])
    raw = {f"raw/{who}.csv": clocked(0, seconds, 300 - seconds / 60) for who in ("corvane", "ostler")}
    page = page_of(tmp_path, **{**lamps(), **raw})
    drawn = re.search(r'<svg[^>]*class="drawing traces".*?</svg>', page, re.S)
    assert drawn
    lines = [d for d in re.findall(r' d="([^"]*)"', drawn[0]) if d.count("L") > 50]
    assert [len([m for m in d.split("M") if "L" in m and "Z" not in m]) for d in lines] == [17, 17]  # 1 + 16 of 20


def test_an_incident_with_a_time_is_marked_on_its_trace(tmp_path: Path) -> None:
    logged = {**lamps(), "tests/glow.yaml": TEST.replace("quantities:", "  - log.csv\nquantities:")}
    log = "time,contender,pass,what,value\n23:20,ostler,1,incident,A door was opened.\n"
    page = page_of(tmp_path, **logged, **{"log.csv": log})
    drawn = re.search(r'<svg[^>]*class="drawing traces".*?</svg>', page, re.S)
    assert drawn
    assert re.search(r"<text[^>]*>B: 1</text>", drawn[0])
    assert "an upright dashed line is when something happened" in page


@pytest.mark.parametrize(
    ("when", "seconds"),
    [("23:20", 1200), ("23:20:30", 1230), ("00:10", 4200), ("after 12 min 5 s", 725), ("1 h", 3600), ("22:59", None),
     ("3 h", None), ("in the evening", None), ("2026-05-02", None)],
)  # fmt: skip
def test_the_time_of_an_incident_on_a_trace(when: str, seconds: float | None) -> None:
    """A log from 23:00:00 on, of 6000 s: arithmetic by hand."""
    trace = TraceShown(KEY, "lx", (), 600, 6000.0, 1.0, 0.0, clock=82800.0)
    assert seconds_of(when, trace) == seconds


def test_many_long_traces_stay_a_small_drawing_that_keeps_every_peak(tmp_path: Path) -> None:
    """24 noisy traces of 4000 samples; one sample of one of them is far above all others."""
    rng = np.random.default_rng(5)
    seconds = np.arange(0, 40000, 10.0)
    people = ["corvane", "ostler", "tamsin", "hestrik", "brindle", "ulvenby"]
    raw = {}
    for who in people:
        for n in range(1, 5):
            light = 300 + rng.normal(0, 20, len(seconds))
            if (who, n) == ("tamsin", 3):
                light[2345] = 1500
            raw[f"raw/{who}-{n}.csv"] = clocked(0, seconds, light)
    yaml = YAML.replace(
        "{corvane: Corvane Sol, ostler: Ostler Mk II}", "{" + ", ".join(f"{p}: {p.title()}" for p in people) + "}"
    )
    test = TEST.replace("raw/{contender}.csv", "raw/{contender}-{pass}.csv").replace("under 50 lx", "over 1000 lx")
    told = compile_campaign(tmp_path, yaml, **{"tests/glow.yaml": test}, **raw)
    (page,) = (tmp_path / "stoves/.site").glob("*/tests/glow.html")
    drawn = re.search(r'<svg[^>]*class="drawing traces".*?</svg>', page.read_text(encoding="utf-8"), re.S)
    assert drawn
    assert len(drawn[0].encode()) < 700_000
    lines = [d for d in re.findall(r' d="([^"]*)"', drawn[0]) if d.count("L") > 50]
    assert len(lines) == 24
    tops = sorted(min(float(y) for y in re.findall(r"[ML][-\d.]+,([-\d.]+)", d)) for d in lines)
    assert tops[0] < tops[1] - 100  # px: 1100 lx above the others, on a field 200 px high for some 1500 lx
    assert max(t["highest"] for t in told["trace_list"]) == 1500
