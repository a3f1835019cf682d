"""What a reader explores is what was drawn: each mark belongs to whom it stands for, and each value lies on its mark."""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator, Mapping
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from reportgen.charts.draw import figures
from reportgen.charts.figure import Figure
from reportgen.charts.scale import axis, finer
from reportgen.charts.zoomed import Closer, doublings
from tests.charts.bench_of_results import campaign, contenders, measured, quantity
from tests.charts.pictures import layer

SVG = "{http://www.w3.org/2000/svg}"
TRIED = contenders("Corvane Sol", "Ostler Mk II", "Tamsin")


def parts_of(script: str) -> Iterator[Any]:
    """The parts of a chart's script, line by line."""
    for name in ("chart", "people", "says"):
        found = re.search(rf'^"{name}": (.*?),?$', script, re.M)
        assert found
        yield json.loads(found[1])


@pytest.fixture(scope="module")
def all_explored(demo_site: Path) -> Mapping[str, tuple[Any, ET.Element, Any]]:
    """Of every chart of the demonstration and its archive: what is explored, the drawing, the contenders."""
    drawings: dict[str, ET.Element] = {}
    for page in demo_site.rglob("*.html"):
        pattern = r'(<svg xmlns[^>]*class="drawing(?:(?!</svg>).)*</svg>)\s*<button[^>]*data-chart="([^"]+)"'
        for svg, address in re.findall(pattern, page.read_text(encoding="utf-8"), re.S):
            drawings[f"{page.relative_to(demo_site).parts[0]}/charts/{address}.js"] = ET.fromstring(svg)
    found = {}
    for address, drawing in drawings.items():
        told, people, _ = parts_of((demo_site / address).read_text(encoding="utf-8"))
        found[address] = (told, drawing, people)
    assert len(found) > 50
    return found


def children(drawing: ET.Element, name: str) -> list[ET.Element]:
    group = next(g for g in drawing.iter() if g.get("class") == f"d-{name}")
    return list(group) if group.tag == f"{SVG}g" else [group]


def test_every_mark_that_belongs_to_a_contender_is_named_with_it(
    all_explored: Mapping[str, tuple[Any, ET.Element, Any]],
) -> None:
    for address, (told, drawing, people) in all_explored.items():
        for name, owners in told["owners"].items():
            marks = children(drawing, name)
            assert len(marks) == len(owners), f"{address}: {name}"
            for mark, owner in zip(marks, owners, strict=True):
                assert -1 <= owner < len(people)
                ink = re.match(r"var\(--(c\d)", mark.get("fill") or mark.get("stroke") or "")
                if ink and owner >= 0:
                    assert ink[1] == people[owner]["css"], f"{address}: {name}"


def test_every_letter_is_that_of_its_contender(all_explored: Mapping[str, tuple[Any, ET.Element, Any]]) -> None:
    read = 0
    for told, drawing, people in all_explored.values():
        for name in {"letters", "legend-letters-1", "legend-letters-2"} & set(told["owners"]):
            for mark, owner in zip(children(drawing, name), told["owners"][name], strict=True):
                assert mark.text == people[owner]["letter"]
                read += 1
    assert read > 100


def test_every_value_lies_in_the_field_and_says_whose_it_is(
    all_explored: Mapping[str, tuple[Any, ET.Element, Any]],
) -> None:
    for address, (told, _, people) in all_explored.items():
        for walk in told["walks"]:
            for x, y, said in walk["stops"]:
                assert -1 <= x <= told["wide"] + 1, (address, said)
                assert -1 <= y <= told["high"] + 14, (address, said)
                assert said.startswith(people[walk["of"]]["title"]), (address, said)


@pytest.fixture(scope="module")
def gas() -> Figure:
    q = quantity(title="Gas burned")
    results = [
        measured(q, "corvane-sol", [14.3, 14.5, 13.8], 0.6, rank=(1, 2)),
        measured(q, "ostler-mk-ii", [14.6, 14.9, 21.0], 0.7, left_out=[2], rank=(1, 2)),
        measured(q, "tamsin", [], limit="above", value=22.0, rank=(3, 3)),
    ]
    return figures(*campaign(TRIED, [(q, results)]))[q.id]


def test_a_line_begins_with_its_result_as_the_table_has_it_and_goes_through_its_passes_in_order(gas: Figure) -> None:
    walks = json.loads(gas.explored)["walks"]
    said = [[stop[2].replace("\u00a0", " ") for stop in walk["stops"]] for walk in walks]
    assert said == [
        ["Corvane Sol: 14.20 g (13.60 to 14.80)", *(f"Corvane Sol, pass {n}: {v} g" for n, v in ((1, 14.3), (2, 14.5), (3, 13.8)))],
        [
            "Ostler Mk II: 14.75 g (14.05 to 15.45)",
            "Ostler Mk II, pass 1: 14.6 g",
            "Ostler Mk II, pass 2: 14.9 g",
            "Ostler Mk II, pass 3, left out: 21 g",
        ],
        ["Tamsin: more than 22 g"],
    ]  # fmt: skip
    assert [said_of for said_of, *_ in said] == [
        f"{who}: {result}".replace("\u00a0", " ") for who, result, *_ in gas.rows
    ]


def test_a_value_is_met_where_its_mark_was_drawn(gas: Figure) -> None:
    walks = json.loads(gas.explored)["walks"]
    met = [stop[0] for walk in walks[:2] for stop in walk["stops"][:1]]
    assert met == pytest.approx([mark.x for mark in layer(gas.svg, "values")], abs=0.06)
    passes = [stop[0] for walk in walks[:2] for stop in walk["stops"][1:] if "left out" not in stop[2]]
    assert passes == pytest.approx([mark.x for mark in layer(gas.svg, "passes")], abs=0.06)


def test_looking_closer_has_ticks_of_its_own() -> None:
    across = axis([0.0, 90.0], from_zero=True, at_most=6, margin=0.0)
    ticks = Closer(across, "min", 3).ticks(300.0)
    assert [text for _, text in ticks[0]] == ["0", "20", "40", "60", "80"]
    assert all(len(fine) > len(coarse) for coarse, fine in pairwise(ticks))
    for level, shown in enumerate(ticks):
        for (a, _), (b, text) in pairwise(shown):
            assert (b - a) * 2**level > 6 * len(text), "printed numbers stand clear of one another"


def test_a_finer_axis_reaches_as_far() -> None:
    across = axis([0.0, 10.5], from_zero=True, at_most=6, margin=0.0)
    close = finer(across, 4)
    assert (close.low, close.high) == (across.low, across.high)
    assert close.ticks[1] - close.ticks[0] == pytest.approx(0.5)


def test_nobody_looks_closer_than_the_samples_bear() -> None:
    assert doublings([300, 40]) == 3
    assert doublings([60]) == 1
    assert doublings([20]) == 0
    assert doublings([]) == 0
