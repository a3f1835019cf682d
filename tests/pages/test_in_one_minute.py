"""The method in one minute says what the campaign's files say: counts here are counted in those files by eye."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.pages import build_pages
from tests.campaigns import SMALLEST, SMALLEST_READINGS
from tests.pages.reading import Element, read
from tests.pages.stoves import by_address, told_of
from tests.pages.test_report_items import dead

ONE_CONTENDER = """\
title: How much gas does it burn?
contenders:
  corvane:
    title: Corvane Sol
    paid: 89.00 EUR
measure:
  gas burned: weighed before and after, g, lower
readings: readings.csv
"""
ONE_READINGS = "contender,pass,gas burned before,gas burned after\ncorvane,1,231.4,217.1\ncorvane,2,217.1,202.6\n"


def minute(page: Element) -> list[str]:
    return [p.text for p in page.one("section", class_="minute").all("p")]


def minute_of(place: Path, yaml_text: str, readings: str, **files: str) -> list[str]:
    pages = by_address(build_pages(told_of(place, yaml_text, readings, files), ("method",)))
    return minute(read(pages["method.html"]))


@pytest.fixture
def of_stoves(pages: dict[str, Element]) -> list[str]:
    return minute(pages["method.html"])


def test_it_comes_first_and_its_address_lasts(pages: dict[str, Element]) -> None:
    first = pages["method.html"].one("main").all("h2")[0]
    assert first.attrs["id"] == "in-one-minute"


def test_every_line_leads_to_a_place_that_is_there(demo_site: Path) -> None:
    page = demo_site / "demo-campaign/method.html"
    lines = read(page.read_text(encoding="utf-8")).one("section", class_="minute").all("p")
    assert 5 <= len(lines) <= 8
    assert all(line.all("a") for line in lines)
    assert dead(demo_site, page, [a for line in lines for a in line.all("a")]) == []


def test_who_was_bought_is_said_only_where_something_says_so(of_stoves: list[str]) -> None:
    """Two of the four have a price that was paid; nothing says how the others were come by."""
    assert of_stoves[0].startswith("Four contenders were tested.")
    assert "How these were come by is not stated: Brindle and Tamsin <T> & Co." in of_stoves[0]
    assert "All were bought" not in of_stoves[0]


def test_who_was_supplied_is_named(tmp_path: Path) -> None:
    text = SMALLEST.replace("corvane: Corvane Sol", "corvane: {title: Corvane Sol, supplied by: its maker}")
    said = minute_of(tmp_path, text, SMALLEST_READINGS)
    assert "Supplied by others: Corvane Sol." in said[0]


def test_several_specimens_of_one_are_counted(tmp_path: Path) -> None:
    text = SMALLEST.replace("corvane: Corvane Sol", "corvane: {title: Corvane Sol, specimens: {a: {}, b: {}}}")
    readings = "contender,specimen,gas burned before,gas burned after,boil time\n"
    readings += "corvane,a,231.4,217.1,212.4\ncorvane,b,231.4,217.3,213.4\nostler,,240.2,223.9,230.1\n"
    said = minute_of(tmp_path, text, readings)
    assert "One of each, except for two of Corvane Sol." in said[0]


def test_passes_left_out_were_run_all_the_same(of_stoves: list[str]) -> None:
    """Gas was weighed in three passes each, one of which is left out; the three others were read once."""
    assert of_stoves[1].startswith(
        "Four tests were run. In a test, a contender ran one to three times. In three of them nothing was repeated."
    )


def test_the_same_number_of_passes_everywhere_is_said_plainly(tmp_path: Path) -> None:
    said = minute_of(tmp_path, SMALLEST, SMALLEST_READINGS)
    assert said[1].startswith("Two tests were run. Every contender ran two times in each.")


def test_who_has_no_result_is_not_said_to_have_run(tmp_path: Path) -> None:
    text = SMALLEST.replace("  ostler: Ostler Mk II\n", "  ostler: Ostler Mk II\n  brindle: Brindle\n")
    rows = "brindle,1,,,240.2\nbrindle,2,,,241.8\n"
    said = minute_of(tmp_path, text, SMALLEST_READINGS + rows)
    assert said[1].startswith("Two tests were run. Whoever has a result in a test ran two times in it.")
    assert "Every contender" not in said[1]


def test_instruments_of_which_nobody_states_an_accuracy_are_counted(of_stoves: list[str]) -> None:
    assert "two instruments: bench scale and gas meter. Of one of them nobody states an accuracy." in of_stoves[2]


def test_a_campaign_without_instruments_says_so(tmp_path: Path) -> None:
    assert "No instrument is named." in minute_of(tmp_path, SMALLEST, SMALLEST_READINGS)[2]


def test_the_order_is_that_of_the_method(tmp_path: Path) -> None:
    methods = {"methods/weighing.1.yaml": "title: Weighing\norder: random\nsteps: [Weigh.]\n"}
    text = SMALLEST.replace("better: lower", "better: lower\n    method: weighing, version 1")
    said = minute_of(tmp_path, text, SMALLEST_READINGS, **methods)
    assert any(line.startswith("The order was drawn by lot.") for line in said)


def test_a_lone_contender_is_ranked_against_nobody(tmp_path: Path) -> None:
    said = minute_of(tmp_path, ONE_CONTENDER, ONE_READINGS)
    assert said[0].startswith("One contender was tested. It was bought.")
    assert said[1].startswith("One test was run. Every contender ran two times.")
    assert any("With one contender, nobody is ranked." in line for line in said)
    assert not any("tied" in line for line in said)


def test_it_ends_with_what_it_cannot_tell(of_stoves: list[str]) -> None:
    assert of_stoves[-1].startswith("It can’t tell how other specimens of the same models would do.")
