"""Where each item of a report stands, as ISO/IEC 17025:2017 lists them in 7.8.2.1, a) to p): sixteen of them.

Which words stand for which item is read off the standard's list; the words are ours.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from string import ascii_lowercase

import pytest

from reportgen.pages import build_pages
from tests.campaigns import SMALLEST, SMALLEST_READINGS, compile_campaign
from tests.lab_reports import report
from tests.pages.reading import Element, read
from tests.pages.stoves import by_address, told_of
from tests.pages.test_plainly_said import LAB, ROWS

LETTERS = ascii_lowercase[: ascii_lowercase.index("p") + 1]
PLACED = {
    "a": "title",
    "b": "Name and address",
    "c": "Where",
    "d": "every other, and where it ends",
    "e": "ordered",
    "f": "Methods",
    "g": "What was tested",
    "h": "arrived",
    "i": "When the tests were done",
    "j": "issued",
    "k": "picked",
    "l": "only for what was tested",
    "m": "units",
    "n": "added to a method, changed or left out",
    "o": "answers for",
    "p": "from others",
}
EVERYTHING = """\
title: Which stove boils a litre on the least gas?
tested: 2026-05-02
published: 2026-05-24
place: A yard
who pays: Readers
held the same: [one pot]
contenders:
  corvane:
    title: Corvane Sol
    model: S2
    bought: {where: a shop in town, date: 2026-04-18}
    as received: [Sealed and complete.]
  ostler:
    title: Ostler Mk II
    gtin: 9521234567899
    bought: {where: a shop in town, date: 2026-04-18}
    as received: [One leg bent, put right by hand.]
measure:
  gas burned:
    kind: weighed before and after
    unit: g
    better: lower
    method: weighing, version 1
  boil time: {kind: timed, unit: s, better: lower, method: "weighing, version 1"}
readings: readings.csv
"""


def page_of(place: Path, yaml_text: str, readings: str = SMALLEST_READINGS, **files: str) -> Element:
    pages = by_address(build_pages(told_of(place, yaml_text, readings, files), ("report items",)))
    return read(pages["report-items.html"])


@pytest.fixture(scope="module")
def bare(tmp_path_factory: pytest.TempPathFactory) -> Element:
    return page_of(tmp_path_factory.mktemp("bare"), SMALLEST)


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Element:
    method = {"methods/weighing.1.yaml": "title: Weighing\nsteps: [Weigh, burn, weigh again.]\n"}
    return page_of(tmp_path_factory.mktemp("whole"), EVERYTHING, **method)


@pytest.fixture(scope="module")
def of_demo(demo_site: Path) -> Element:
    return read((demo_site / "demo-campaign/report-items.html").read_text(encoding="utf-8"))


def state(page: Element, letter: str) -> str:
    return page.one(id=f"item-{letter}").one("span", class_="state").text


def says(page: Element, letter: str) -> str:
    return page.one(id=f"item-{letter}").one("p").text


def dead(site: Path, page: Path, links: Iterable[Element]) -> list[str]:
    """Links that lead to no file of the site, or to no place in it."""
    found = []
    for link in links:
        path, _, anchor = link.attrs["href"].partition("#")
        target = (page.parent / path).resolve() if path else page
        there = target.is_file() and site.resolve() in target.parents
        if not there or (anchor and not read(target.read_text(encoding="utf-8")).all(id=anchor)):
            found.append(link.attrs["href"])
    return found


def test_all_sixteen_items_stand_there_in_the_standards_order(bare: Element, of_demo: Element) -> None:
    for page in (bare, of_demo):
        items = page.one("dl", class_="items").children
        assert [i.attrs["id"] for i in items] == [f"item-{letter}" for letter in LETTERS]
        for letter, item in zip(LETTERS, items, strict=True):
            assert item.one("dt").text.startswith(f"{letter}) ")
            assert PLACED[letter] in item.one("dt").text
            assert says(page, letter).startswith(f"{state(page, letter)}: ")


def test_the_overview_leads_to_each_item_once(of_demo: Element, bare: Element) -> None:
    for page in (of_demo, bare):
        lines = page.one("ul", class_="standing").all("li")
        links = [link for line in lines for link in line.all("a")]
        assert sorted(link.attrs["href"] for link in links) == [f"#item-{letter}" for letter in LETTERS]
        for line in lines:
            assert {state(page, link.text) for link in line.all("a")} == {line.text.partition(":")[0]}


def test_every_link_to_an_item_is_alive(demo_site: Path, of_demo: Element) -> None:
    page = demo_site / "demo-campaign/report-items.html"
    links = of_demo.one("main").all("a")
    assert len(links) > 2 * len(LETTERS)
    assert dead(demo_site, page, links) == []


def test_the_method_page_leads_to_the_items(demo_site: Path) -> None:
    page = read((demo_site / "demo-campaign/method.html").read_text(encoding="utf-8"))
    assert page.one("main").all("a", href="report-items.html")


def test_the_page_claims_neither_accreditation_nor_conformity(bare: Element) -> None:
    assert "claims nothing: neither that anybody here is accredited, nor that this report conforms" in bare.text


def test_what_a_campaign_never_states_is_said_to_be_missing(bare: Element) -> None:
    for letter in "bcefhijko":
        assert state(bare, letter) == "Not stated", letter
    assert "Nothing says where the tests were done" in says(bare, "c")
    assert "Nothing says when the tests were done" in says(bare, "i")
    assert "Nothing says when the comparison was published" in says(bare, "j")
    assert "Nothing says when the contenders were bought or arrived" in says(bare, "h")


def test_what_cannot_arise_is_told_apart_from_what_is_missing(bare: Element) -> None:
    assert {letter for letter in LETTERS if state(bare, letter) == "Does not arise"} == {"n", "p"}


def test_what_a_campaign_states_stands_there(whole: Element) -> None:
    for letter in "acfgijlm":
        assert state(whole, letter) == "Stands here", letter
    assert "“A yard”" in says(whole, "c")
    assert "2 May 2026" in says(whole, "i")
    assert "24 May 2026" in says(whole, "j")
    assert "Readers" in says(whole, "e")


def test_the_day_of_buying_is_not_taken_for_the_day_of_arrival(whole: Element) -> None:
    assert state(whole, "h") == "In part"
    assert "The day on which it arrived is not kept apart" in says(whole, "h")


def test_who_lacks_a_number_or_a_state_is_named(tmp_path: Path) -> None:
    page = page_of(
        tmp_path,
        EVERYTHING.replace("    model: S2\n", "").replace("    as received: [Sealed and complete.]\n", ""),
        **{"methods/weighing.1.yaml": "title: Weighing\nsteps: [Weigh.]\n"},
    )
    assert state(page, "g") == "In part"
    assert "No model, bar code or serial number is stated of Corvane Sol." in says(page, "g")
    assert "How it came is not told of Corvane Sol." in says(page, "g")


def test_what_nobody_noted_is_not_taken_for_stated(tmp_path: Path) -> None:
    page = page_of(
        tmp_path,
        EVERYTHING.replace("model: S2", "model: not noted")
        .replace("place: A yard", "place: not noted")
        .replace("where: a shop in town, date: 2026-04-18", "where: not noted, date: not noted"),
        **{"methods/weighing.1.yaml": "title: Weighing\nsteps: [Weigh.]\n"},
    )
    assert state(page, "c") == "Not stated"
    assert "No model, bar code or serial number is stated of Corvane Sol." in says(page, "g")
    assert "Where it came from is not stated of Corvane Sol and Ostler Mk II." in says(page, "k")
    assert state(page, "h") == "Not stated"


def test_the_way_to_a_laboratorys_report_holds_whatever_its_file_is_called(tmp_path: Path) -> None:
    text = LAB.replace("lab-report.pdf", "report no. 2.pdf")
    place = told_of(tmp_path, text, ROWS, {"attachments/report no. 2.pdf": report("Lead")})
    page = read(by_address(build_pages(place, ("report items",)))["report-items.html"])
    (way,) = [a.attrs["href"] for a in page.one(id="item-p").all("a") if "attachments" in a.attrs["href"]]
    assert way == "files/attachments/report%20no.%202.pdf"  # RFC 3986, 2.1


def test_values_of_a_laboratory_are_told_to_be_its_own(tmp_path: Path) -> None:
    compile_campaign(tmp_path, LAB, **{"readings": ROWS, "attachments/lab-report.pdf": report("Lead")})
    page = read((tmp_path / "stoves/.site/stoves/report-items.html").read_text(encoding="utf-8"))
    assert state(page, "p") == "Stands here"
    assert "Lachter found the values of lead." in says(page, "p")
    assert page.one(id="item-p").all("a", href="files/attachments/lab-report.pdf")
    assert "Nothing says when samples for Lachter were taken" in says(page, "h")


def test_exclusions_and_incidents_are_counted(pages: dict[str, Element]) -> None:
    page = pages["report-items.html"]  # one of each, see STOVES
    assert "one exclusion and one incident" in says(page, "n")
    assert [a.attrs["href"] for a in page.one(id="item-n").all("a")] == ["tests/gas-burned.html"]
