"""The weighed verdict on the campaign's page, whole without scripts; what a script may say was written at compile time."""

from __future__ import annotations

import gzip
import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from reportgen.judgement.verdict.overall import Lead
from reportgen.pages import Told, build_pages
from reportgen.prose.leads import lead_at
from tests.pages.reading import Element, read
from tests.pages.stoves import by_address
from tests.pages.weighing import YAML, overall, told_weighed, whole


def page_of(told: Told) -> Element:
    return read(by_address(build_pages(told))["index.html"])


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> Told:
    return told_weighed(tmp_path_factory.mktemp("weighed"), whole())


@pytest.fixture(scope="module")
def page(told: Told) -> Element:
    return page_of(told)


def verdict(page: Element) -> Element:
    return page.one("section", aria_labelledby="verdict")


def data(page: Element) -> Any:
    (written,) = page.one("script", type="application/json").order
    assert isinstance(written, str)
    return json.loads(written)


def test_it_reads_answer_first_then_conditions_pairs_shares_criteria_and_what_would_change_it(page: Element) -> None:
    text = verdict(page).text
    order = [
        "Nobody is ahead.",
        "It rests on three criteria: two with repeats and one",
        "Conditions",
        "draws were made",
        "One against one",
        "How often each comes first",
        "What is weighed",
        "What if other things count?",
        "Leave out boil time, and Corvane Sol leads",
        "Typical readers",
    ]
    assert sorted(order, key=text.index) == order


def test_a_pair_reads_aloud_as_a_sentence(page: Element) -> None:
    table = page.one("table", class_="duels")
    heads = [h.text for h in table.one("thead").all("th")]
    assert heads == ["Worth more", "than", "in draws"]
    rows = [[c.text for c in (*r.all("th"), *r.all("td"))] for r in table.one("tbody").all("tr")]
    assert rows[0] == ["C Brindle", "A Corvane Sol", "58 of 100, slightly more often"]
    assert len(rows) == 3


def test_shares_stand_beside_what_equals_would_show(page: Element) -> None:
    rows = page.one("table", class_="shares-first").one("tbody").all("tr")
    assert [c.text for c in rows[0].all("td")] == ["45 of 100"]
    assert "had all been equal, each would come first in " in verdict(page).text


def test_criteria_show_their_anchors_whether_they_have_repeats_and_what_lies_beyond(page: Element) -> None:
    rows = page.one("table", class_="criteria").all("tr")
    cells = [[c.text for c in (*r.all("th"), *r.all("td"))] for r in rows]
    assert ["Gas burned", "25 g", "10 g", "with repeats"] in cells
    assert ["Packed weight", "300 g", "90 g", "one run each"] in cells
    assert "Brindle lies beyond the best of packed weight" in verdict(page).text


def test_readers_are_a_table_that_needs_no_script(page: Element) -> None:
    first = page.one("table", class_="readers").one("tbody").all("tr")[0]
    assert first.one("th").text.startswith("1 In a hurry")
    assert first.one(class_="weight").text == "mostly speed (70 %), some thrift (20 %), a little carrying (10 %)"
    assert first.one("td").text == "B Ostler Mk II, probably: 96 of 100"


WEIGHTS = "../static/weights.js"


def test_only_the_pointing_waits_for_a_script(page: Element) -> None:
    hidden = [e for e in verdict(page).all() if "hidden" in e.attrs]
    assert [e.attrs["class"] for e in hidden] == ["beside pointing"]
    assert WEIGHTS in [s.attrs.get("src") for s in page.one("head").all("script")]


def test_every_sentence_the_script_may_say_is_the_one_of_its_cell(told: Told, page: Element) -> None:
    of = told.evaluation.verdict.overall if told.evaluation.verdict else None
    assert of is not None
    assert of.map is not None
    written = data(page)
    steps = written["steps"]
    assert len(written["weights"]) == len(written["leads"]) == len(of.map.cells) == 231
    titles = ("thrift", "speed", "carrying")
    for cell in of.map.cells:
        first, second = (int(w * steps + 0.5) for w in cell.weights[:2])
        n = sum(steps + 1 - i for i in range(first)) + second
        said = written["weights"][n], written["says"][written["leads"][n]]
        assert said == lead_at(told.campaign, titles, cell.weights, cell.lead)
    assert written["percents"][::10] == ["0\u00a0%", "50\u00a0%", "100\u00a0%"]


def test_what_the_script_needs_is_small(page: Element) -> None:
    told = page.one("script", type="application/json").text
    assert len(gzip.compress(told.encode())) < 3000


def test_without_a_map_no_script_is_asked_for_and_the_turns_are_sentences(tmp_path: Path) -> None:
    bare = page_of(told_weighed(tmp_path, replace(whole(), map=None)))
    assert WEIGHTS not in [s.attrs.get("src") for s in bare.all("script")]
    assert "leads up to" in verdict(bare).text


def test_where_conditions_leave_nobody_the_page_says_so(tmp_path: Path) -> None:
    told = told_weighed(tmp_path, None, YAML.replace("at most: 10 min", "at most: 1 min"))
    text = verdict(page_of(told)).text
    assert text.startswith("Verdict Nobody is left to weigh. Corvane Sol, Ostler Mk II and Brindle miss a condition")


def test_the_authors_words_stand_beside_what_is_weighed(tmp_path: Path) -> None:
    said = YAML + "  we say:\n    best: ostler\n    words: Take the Ostler.\n"
    page = page_of(told_weighed(tmp_path, whole(), said))
    block = verdict(page).one(class_="verdict-said")
    assert "Take the Ostler." in block.one(class_="ours").text
    assert "That doesn’t bear out Ostler Mk II as best" in block.one(class_="theirs").text


def test_with_one_criterion_there_is_nothing_to_leave_out_and_no_weight_to_turn(tmp_path: Path) -> None:
    one = overall(
        (0.99, 0.98, 0.5), Lead("corvane", 0.98, True), winner="corvane", groups=("thrift",), criteria=1, with_repeats=1
    )
    text = verdict(page_of(told_weighed(tmp_path, one))).text
    assert "Corvane Sol is worth more than Ostler Mk II or Brindle, and firmly" in text
    assert "It rests on one criterion, with repeats." in text
    assert "left out" not in text
    assert "What if other things count?" not in text
