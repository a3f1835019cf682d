"""The weighed verdict of whole campaigns, compiled: what the page says agrees with what the record holds.

Invented readings; what is expected follows from the rules of a verdict: a pairwise index of .975 for every pair, with and
without the criteria of unknown scatter, and first place itself where there is one criterion.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from tests.campaigns import compile_folder, write_campaign
from tests.pages.reading import Element, read

HEAD = """\
title: Which stove?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II, brindle: Brindle}
instruments: {g: bench-scale, s: stopwatch}
measure:
  gas burned: one reading, g, lower
  boil time: timed, s, lower
readings: readings.csv
verdict:
"""
GROUPS = """\
  groups:
    thrift: {title: Thrift, criteria: {gas burned: {worst: 25 g, best: 10 g}}}
    speed: {title: Speed, criteria: {boil time: {worst: 400 s, best: 120 s}}}
"""
INSTRUMENTS = {
    "instruments/bench-scale.yaml": "title: Bench scale\nresolution: 0.1 g\naccuracy: ±0.2 g\n",
    "instruments/stopwatch.yaml": "title: Stopwatch\nresolution: 0.01 s\naccuracy: ±0.3 s\n",
}
Rows = dict[str, tuple[tuple[float, float], ...]]
CLEAR: Rows = {
    "corvane": ((12.1, 150.31), (12.3, 153.47), (12.2, 151.93)),
    "ostler": ((17.4, 262.18), (17.1, 259.46), (17.3, 264.07)),
    "brindle": ((18.2, 290.55), (18.5, 287.13), (18.1, 292.81)),
}


def compiled(place: Path, verdict: str, rows: Rows) -> tuple[dict[str, Any], Element]:
    """results.json's verdict, and its section of the page."""
    lines = [f"{c},{n},{gas},{time}" for c, passes in rows.items() for n, (gas, time) in enumerate(passes, 1)]
    readings = "contender,pass,gas burned,boil time\n" + "\n".join(lines) + "\n"
    folder = write_campaign(place, HEAD + verdict, **{"readings": readings, **INSTRUMENTS})
    told = compile_folder(folder)
    page = (folder / ".site/stoves/index.html").read_text(encoding="utf-8")
    section = read(page).one("section", aria_labelledby="verdict")
    return told["verdict"], section


def answer(section: Element) -> str:
    return section.one("p", class_="overall").text


def test_a_lead_on_everything_with_repeats_names_a_winner(tmp_path: Path) -> None:
    record, section = compiled(tmp_path, GROUPS, CLEAR)
    assert record["winner"] == "corvane"
    assert answer(section).startswith("Over all ways to weigh the criteria, Corvane Sol is worth more than ")
    assert "and firmly" in answer(section)
    assert section.one("p", class_="rests").text == "It rests on two criteria, all with repeats."
    assert "No change in the weight of one group alone changes who leads." in section.text
    assert "Leaving out any one criterion changes neither who leads nor whether that is firm." in section.text


def test_the_same_lead_read_once_names_nobody(tmp_path: Path) -> None:
    record, section = compiled(tmp_path, GROUPS, {c: passes[:1] for c, passes in CLEAR.items()})
    assert record["winner"] is None
    assert answer(section).startswith("Nobody is called ahead.")
    assert "no criterion was repeated" in answer(section)
    assert section.one("p", class_="rests").text == "It rests on two criteria, none with repeats."


def test_equals_are_level(tmp_path: Path) -> None:
    record, section = compiled(tmp_path, GROUPS, dict.fromkeys(CLEAR, CLEAR["corvane"]))
    assert record["winner"] is None
    assert answer(section).startswith("Nobody is ")
    assert "Nobody is firmly behind another." in answer(section)


def test_one_criterion_alone_gives_no_more_than_its_first_place(tmp_path: Path) -> None:
    one = "  groups:\n    thrift: {title: Thrift, criteria: {gas burned: {worst: 25 g, best: 10 g}}}\n"
    near: Rows = {
        "corvane": ((14.0, 150.1), (15.2, 150.2), (14.1, 150.3)),
        "ostler": ((15.2, 150.4), (14.3, 150.5), (15.4, 150.6)),
        "brindle": ((18.2, 150.7), (18.5, 150.8), (18.1, 150.9)),
    }
    record, section = compiled(tmp_path, one, near)
    assert record["winner"] is None
    assert "Nobody is" in answer(section)
    assert "Brindle, and firmly." in answer(section)
    assert section.one("p", class_="rests").text == "It rests on one criterion, with repeats."
    assert section.all(class_="pointing") == []


def test_conditions_that_nobody_meets_leave_nothing_to_weigh(tmp_path: Path) -> None:
    must = "  must:\n    - quantity: boil time\n      at most: 1 min\n"
    record, section = compiled(tmp_path, must + GROUPS, CLEAR)
    assert record["winner"] is None
    assert answer(section).startswith("Nobody is left to weigh. Corvane Sol, Ostler Mk II and Brindle miss a condition")


def test_the_authors_best_stands_beside_what_is_weighed(tmp_path: Path) -> None:
    _, section = compiled(tmp_path, GROUPS + "  we say:\n    best: corvane\n    words: Take it.\n", CLEAR)
    said = section.one(class_="verdict-said")
    assert "Take it." in said.one(class_="ours").text
    assert "That bears out Corvane Sol as best." in said.one(class_="theirs").text
