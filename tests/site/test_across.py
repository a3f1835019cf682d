"""All results by one version of a method: side by side with what keeps comparisons apart, and never ranked across them.

Source of the gap that days alone make: ISO 5725-6:1994, 4.1.4 (a critical difference is 2.8 standard deviations of what
scatters; from memory).
"""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from reportgen.build.run import compile_site
from reportgen.charts.across import Across, AcrossGroup, AcrossLine, figure
from reportgen.site.wide.across import most_by_days
from tests.charts.pictures import layer, ticks
from tests.pages.reading import Element, read

METHOD = """\
title: Weigh it
steps: [Put it on the scale.]
"""
SCALE = "title: Bench scale\nresolution: 0.1 g\naccuracy: ±0.2 g\n"
CAMPAIGN = """\
title: {title}
tested: {day}
contenders:
{names}
measure:
  gas burned:
    kind: one reading
    unit: {unit}
    better: lower
    instrument: bench-scale
    method: weigh-it, version 1
readings: readings.csv
"""


def workspace(
    place: Path, *campaigns: tuple[str, str, dict[str, list[str]]], unit: str = "g", method: str = METHOD
) -> Path:
    """Campaigns of one workspace: (id, day, readings by contender); the newest alone has `unit`."""
    files = {"shared/methods/weigh-it.1.yaml": method, "shared/instruments/bench-scale.yaml": SCALE}
    files["content/publication.yaml"] = "title: Site\n"
    for n, (id, day, readings) in enumerate(campaigns):
        names = "\n".join(f"  {c}: {c.capitalize()}" for c in readings)
        rows = [f"{c},{p},{v}" for c, values in readings.items() for p, v in enumerate(values, 1)]
        files[f"content/archive/{id}/campaign.yaml"] = CAMPAIGN.format(
            title=f"Of {id}", day=day, names=names, unit=unit if n == 0 else "g"
        )
        files[f"content/archive/{id}/readings.csv"] = "\n".join(["contender,pass,gas burned", *rows])
    for name, text in files.items():
        path = place / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return place


NEW = ("stoves", "2026-05-02", {"corvane": ["14.2", "14.5", "14.1"], "ostler": ["16.3", "16.6", "16.1"]})
OLD = ("burners", "2025-05-02", {"hobbin": ["12.2", "12.4", "12.1"], "linnet": ["18.0", "18.3", "18.5"]})


def method_page(place: Path) -> Element:
    return read((compile_site(place).out / "methods" / "weigh-it.1.html").read_text("utf-8"))


@pytest.fixture(scope="module")
def two(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return workspace(tmp_path_factory.mktemp("two"), NEW, OLD)


@pytest.fixture(scope="module")
def page(two: Path) -> Element:
    return method_page(two)


def rows(page: Element) -> list[list[str]]:
    table = page.one("table", class_="across")
    return [[cell.text for cell in row.children] for row in table.all("tr") if row.attrs.get("class") != "of-campaign"][
        1:
    ]


def test_every_result_stands_under_its_comparison_and_leads_to_its_working(page: Element, two: Path) -> None:
    groups = [row.one("a").text for row in page.all("tr", class_="of-campaign")]
    assert groups == ["Of stoves", "Of burners"]
    printed = {}
    for id in ("stoves", "burners"):
        told = json.loads((two / ".site" / id / "results.json").read_text("utf-8"))
        printed |= {r["contender"].capitalize(): r["printed"] for r in told["results"]}
    assert [name for name, *_ in rows(page)] == ["Corvane", "Ostler", "Hobbin", "Linnet"]
    for name, value, between in rows(page):
        assert printed[name] == f"{value} ({between})"
    link = page.one("table", class_="across").all("a", class_="figure")[0]
    assert link.attrs["href"] == "../stoves/tests/gas-burned.html#result-gas-burned-corvane"


def test_nothing_says_who_is_ahead_across_comparisons(page: Element) -> None:
    section = page.one("section", id="across-gas-burned").text
    assert "Nobody is ranked across comparisons" in section
    assert not {"ahead", "first", "beats", "best", "Place"} & set(section.replace(".", " ").split())


def test_different_days_of_which_nothing_is_known_are_said_before_any_value(page: Element) -> None:
    section = page.one("section", id="across-gas-burned").text
    said = "Nothing says how far this method differs from one day to the next"
    assert section.index(said) < section.index("Corvane")


def test_one_axis_holds_both(page: Element) -> None:
    drawing = page.one("svg", class_="across")
    texts = [t.text for t in drawing.all("text")]
    assert {"Corvane", "Ostler", "Hobbin", "Linnet", "2 May 2026: Of stoves", "2 May 2025: Of burners"} <= set(texts)
    assert "14.27\u00a0g" in drawing.attrs["aria-label"]


def test_the_tests_page_leads_there(two: Path, page: Element) -> None:
    test = read((two / ".site" / "stoves" / "tests" / "gas-burned.html").read_text("utf-8"))
    assert "../../methods/weigh-it.1.html#across-gas-burned" in {a.attrs.get("href") for a in test.all("a")}


def test_a_declared_scatter_between_days_is_told_with_what_it_does(tmp_path: Path) -> None:
    page = method_page(workspace(tmp_path, NEW, OLD, method=METHOD + "between sessions: 0.5 g\n"))
    notes = page.one("div", class_="apart").text.replace("\u00a0", " ")
    assert "days differ by 0.5 g, as a standard deviation" in notes
    assert "by days alone two results may lie 1.4 g apart" in notes  # 2.8 × 0.5
    assert "Bars allow for that" in notes
    assert "Nobody is ranked across comparisons" in notes


def test_a_critical_difference_is_2_8_standard_deviations() -> None:
    assert most_by_days(1.0) == pytest.approx(2.8, abs=0.05)  # ISO 5725-6:1994, 4.1.4, printed with two digits


def test_one_day_is_no_difference_of_days(tmp_path: Path) -> None:
    page = method_page(workspace(tmp_path, NEW, ("burners", "2026-05-02", OLD[2])))
    notes = page.one("div", class_="apart").text
    assert "All were tested on one day." in notes
    assert "different days" not in notes


def test_a_span_of_days_is_not_one_day(tmp_path: Path) -> None:
    span = "2026-05-02 to 2026-05-04"
    page = method_page(workspace(tmp_path, ("stoves", span, NEW[2]), ("burners", span, OLD[2])))
    assert "different days" in page.one("div", class_="apart").text


def test_another_unit_keeps_its_own_digits_and_takes_its_place_on_the_one_axis(tmp_path: Path) -> None:
    milligrams = {c: [f"{float(v) * 1000:.0f}" for v in values] for c, values in NEW[2].items()}
    page = method_page(workspace(tmp_path, ("stoves", NEW[1], milligrams), OLD, unit="mg"))
    assert rows(page)[0][1].endswith("mg")
    drawing = page.one("svg", class_="across")
    assert [t.text for t in drawing.all("text")].count("mg") == 1
    assert any(t.text.startswith(".") and t.text.endswith("g") for t in drawing.all("text"))  # its own unit, beside it


def test_a_rise_in_another_unit_is_scaled_and_not_shifted(tmp_path: Path) -> None:
    """A step of 1 °C is one of 1.8 °F (SI brochure, 2.3.1: the intervals are those of the kelvin): 20 °C is 36 °F, not 68."""
    new = {"corvane": ["34", "38", "36"], "ostler": ["44", "45", "46"]}
    old = {"hobbin": ["19", "20", "21"], "linnet": ["24", "25", "26"]}
    place = workspace(tmp_path, ("stoves", NEW[1], new), ("burners", OLD[1], old))
    for id, unit in (("stoves", "°F"), ("burners", "°C")):
        folder = place / "content/archive" / id
        text = (folder / "campaign.yaml").read_text("utf-8").replace("kind: one reading", "kind: rise")
        text = text.replace("unit: g", f"unit: {unit}").replace("    instrument: bench-scale\n", "")
        (folder / "campaign.yaml").write_text(text, "utf-8")
        head, *rows = (folder / "readings.csv").read_text("utf-8").splitlines()
        head = head.replace("gas burned", "gas burned start,gas burned end")
        read_twice = [f"{who},{n},0,{value}" for who, n, value in (row.split(",") for row in rows)]
        (folder / "readings.csv").write_text("\n".join([head, *read_twice]) + "\n", "utf-8")
    page = (compile_site(place).out / "methods" / "weigh-it.1.html").read_text("utf-8")
    drawing = re.search(r'<svg[^>]*class="drawing across".*?</svg>', page, re.S)
    assert drawing
    corvane, _, hobbin, linnet = (mark.x for mark in layer(drawing[0], "values"))
    assert hobbin == pytest.approx(corvane, abs=0.1)
    assert linnet > hobbin


def test_one_comparison_needs_no_note_and_no_second_picture(tmp_path: Path) -> None:
    page = method_page(workspace(tmp_path, NEW))
    assert len(rows(page)) == 2
    assert not page.all("div", class_="apart")
    assert not page.all("svg", class_="across")


def test_comparisons_whose_own_files_differ_in_the_same_version_say_so(tmp_path: Path) -> None:
    place = workspace(tmp_path, NEW, OLD)
    own = place / "content/archive/burners/methods/weigh-it.1.yaml"
    own.parent.mkdir()
    own.write_text(METHOD.replace("Put it on the scale.", "Put it on the scale, warm."), "utf-8")
    assert "don’t all say the same of this version" in method_page(place).one("div", class_="apart").text


def test_instruments_that_differ_are_named_and_said(tmp_path: Path) -> None:
    place = workspace(tmp_path, NEW, OLD)
    own = place / "content/archive/burners/instruments/bench-scale.yaml"
    own.parent.mkdir()
    own.write_text(SCALE.replace("Bench scale", "Letter scale"), "utf-8")
    page = method_page(place)
    assert "Not all were read with the same instruments" in page.one("div", class_="apart").text
    groups = [row.text for row in page.all("tr", class_="of-campaign")]
    assert "read with: Bench scale" in groups[0]
    assert "read with: Letter scale" in groups[1]


def test_where_no_instrument_is_named_nothing_is_said_of_them(tmp_path: Path) -> None:
    place = workspace(tmp_path, NEW, OLD)
    for id in ("stoves", "burners"):
        file = place / f"content/archive/{id}/campaign.yaml"
        file.write_text(file.read_text("utf-8").replace("    instrument: bench-scale\n", ""), "utf-8")
    notes = method_page(place).one("div", class_="apart").text
    assert "Nobody is ranked across comparisons" in notes
    assert "instruments" not in notes


def test_two_instruments_of_one_title_are_two(tmp_path: Path) -> None:
    place = workspace(tmp_path, NEW, OLD)
    (place / "shared/instruments/other-scale.yaml").write_text(SCALE, "utf-8")
    file = place / "content/archive/burners/campaign.yaml"
    file.write_text(file.read_text("utf-8").replace("bench-scale", "other-scale"), "utf-8")
    assert "Not all were read with the same instruments" in method_page(place).one("div", class_="apart").text


def line(name: str, value: float | None, **more: object) -> AcrossLine:
    told = {"low": None, "high": None, "limit": None, "of_scatter": False, "bare": "", "whole": str(value)}
    return AcrossLine(name, value, **{**told, **more})  # type: ignore[arg-type]


def test_a_bound_is_an_arrow_with_its_words_and_never_a_value() -> None:
    of = Across("x", "CO", "ppm", "lower", (AcrossGroup("One", (line("A", 40.0, low=35.0, high=45.0),)),
                AcrossGroup("Two", (line("B", 999.0, limit="above", whole="more than 999 ppm"),))))  # fmt: skip
    drawn = figure(of)
    assert "more than 999 ppm" in drawn.svg
    assert "an arrow begins at a bound" in drawn.key
    svg = read(drawn.svg)
    assert len(svg.one(class_="d-values").all("line")) == 1  # the one value there is
    assert svg.all(class_="d-limits-above")


def test_an_arrow_below_a_bound_ends_at_zero_where_nothing_can_be_less() -> None:
    of = Across("x", "CO", "ppm", "lower", (AcrossGroup("One", (line("A", 10.0),)),
                AcrossGroup("Two", (line("B", 0.5, limit="below", whole="less than 0.5 ppm"),))))  # fmt: skip
    assert min(value for value, _ in ticks(figure(of).svg)) == 0.0


def test_long_names_and_forty_contenders_hold() -> None:
    lines = tuple(line(f"Burner {n} with a name that goes on and on", float(n)) for n in range(40))
    drawn = figure(Across("x", "Long", "g", "neither", (AcrossGroup("A title " * 20, lines), AcrossGroup("B", lines))))
    assert drawn.svg.startswith("<svg")
    assert "…" in drawn.svg
