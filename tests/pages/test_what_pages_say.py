"""What a reader finds on the pages of a campaign, against what was evaluated."""

from __future__ import annotations

import posixpath
import re
from dataclasses import replace
from pathlib import Path

import pytest

from reportgen.finding import Finding, Place
from reportgen.judgement.measured import Settle
from reportgen.pages import Told, build_pages
from reportgen.pages.ahead import Against
from reportgen.pages.grid import grid_of
from reportgen.pages.pairs import settle
from reportgen.pages.result_table import result_table
from tests.campaigns import SMALLEST, SMALLEST_READINGS, compile_campaign
from tests.pages.reading import Element, read
from tests.pages.stoves import READINGS, by_address, told_of

Pages = dict[str, Element]
GAS = "tests/gas-burned.html"
ALONE = (
    "title: T\ncontenders: {corvane: Corvane Sol}\nmeasure: {boil time: 'timed, s, lower'}\nreadings: readings.csv\n"
)


def letters(of: tuple[Against, ...]) -> str:
    return "".join(against.other.letter for against in of)


def test_the_grid_of_one_contender_shows_values_and_speaks_of_no_places(tmp_path: Path) -> None:
    told = told_of(tmp_path, ALONE, "contender,pass,boil time\ncorvane,1,212.4\ncorvane,2,214.9\n")
    grid = grid_of(told, "stoves/index.html")
    assert [(c.sign, c.word) for row in grid.rows for c in row.cells] == [("shown", "213.6\u00a0s")]  # the mean, 213.65
    assert "Numbers are places" not in by_address(build_pages(told))["index.html"]


def test_the_grid_says_who_beat_whom(told: Told) -> None:
    gas = grid_of(told, "stoves/index.html").rows[0]
    resolved = {
        (c.favours, c.second if c.favours == c.first else c.first)
        for c in told.evaluation.comparisons
        if c.quantity == "gas-burned" and c.favours
    }
    assert ("corvane", "brindle") in resolved
    assert ("corvane", "ostler") not in resolved
    assert [(c.sign, c.word, letters(c.ahead.beats), letters(c.ahead.behind)) for c in gas.cells] == [
        ("shared", "1–2", "CD", ""),
        ("shared", "1–2", "CD", ""),
        ("behind", "4", "", "ABD"),
        ("behind", "3", "C", "AB"),
    ]
    assert gas.cells[0].aloud == "place 1–2 of 4"
    assert gas.cells[0].ahead.beats[1].other.title == "Tamsin <T> & Co"
    assert gas.way == "lower is better"


def test_a_single_reading_that_led_says_so_the_others_are_open_and_a_blocked_one_is_unranked(told: Told) -> None:
    monoxide = grid_of(told, "stoves/index.html").rows[1]
    assert [c.sign for c in monoxide.cells] == ["once", "open", "open", "unranked"]
    assert (monoxide.cells[0].word, monoxide.cells[0].more) == ("lowest", "in this run: 38\u00a0ppm")
    assert monoxide.cells[0].aloud == "lowest in this run; that it would again isn’t shown"
    assert monoxide.cells[2].more == "more than 999\u00a0ppm"
    assert monoxide.cells[3].aloud == "not ranked: Its sample was drawn with the lid off."


def test_what_has_no_direction_is_shown_without_a_place(told: Told) -> None:
    weight = grid_of(told, "stoves/index.html").rows[3]
    assert {c.sign for c in weight.cells} == {"shown"}
    assert weight.cells[1].word == "388\u00a0g"


def test_a_tie_has_a_bracket_over_those_that_cannot_be_told_apart(told: Told) -> None:
    rows = result_table(told, "stoves/" + GAS, told.campaign.quantity("gas-burned"), "", ()).rows
    assert [(r.contender.id, r.lanes) for r in rows] == [
        ("corvane", ("top",)),
        ("ostler", ("bottom",)),
        ("tamsin", ("none",)),
        ("brindle", ("none",)),
    ]
    assert rows[0].tied == "can’t be told from Ostler Mk II"


def test_decimals_stand_under_decimals(told: Told) -> None:
    rows = result_table(told, "x/y.html", told.campaign.quantity("packed-weight"), "", ()).rows
    assert {r.figure.value for r in rows} == {"412.3", "388", "455.1", "391.6"}
    assert {len(r.figure.value.partition(".")[2]) + r.figure.pad.count("\u2007") for r in rows} == {1}
    assert {("." in r.figure.value) != ("\u2008" in r.figure.pad) for r in rows} == {True}


def test_two_steps_lead_from_any_number_to_the_line_it_was_read_on(told: Told, pages: Pages) -> None:
    for start in ("index.html", GAS, "tests/carbon-monoxide.html", "contenders/corvane.html"):
        numbers = [a for a in pages[start].all("a") if "#result-" in a.attrs["href"]]
        assert numbers
        for link in numbers:
            page, _, anchor = _follow(start, link.attrs["href"]).partition("#")
            working = pages[page].one(id=anchor)
            lines = [a for a in working.all("a") if "#L" in a.attrs["href"]]
            assert lines, f"{start}: {link.text} ends at {page}#{anchor}"
            for line in lines:
                listing, _, number = _follow(page, line.attrs["href"]).partition("#")
                assert line.parent is not None
                assert line.parent.parent is not None
                written = line.parent.parent.one("td", class_="text").text
                row = pages[listing].one(id=number).one("code").text
                assert written.removesuffix(" g").removesuffix(" ppm") in (*row.split(","), "left empty")


def test_a_raw_file_is_shown_line_by_line_as_it_stands(pages: Pages) -> None:
    rows = pages["files/readings.csv.html"].one("tbody").all("tr")
    assert [r.one("code").text for r in rows] == READINGS.splitlines()
    assert [r.attrs["id"] for r in rows] == [f"L{n}" for n in range(1, len(rows) + 1)]


def test_a_caveat_of_one_contender_stands_beside_the_table_joined_to_its_row_by_line_and_number(pages: Pages) -> None:
    row = _row(pages[GAS], "Ostler")
    beside = pages[GAS].one("div", class_="rows").all(class_="caveat")
    caveat = next(c for c in beside if "Blew out twice and was relit." in c.text)
    assert len(pages[GAS].all("tr", class_="joined")) == len(beside)
    assert "joined" in row.attrs["class"].split()
    marks = row.one("td", class_="value").all("sup")
    assert [a.attrs["href"] for m in marks for a in m.all("a")] == ["#" + caveat.attrs["id"]]


def test_a_caveat_about_all_stands_beside_the_sentence_with_the_same_number_there_and_at_the_table(
    pages: Pages,
) -> None:
    caveat = pages[GAS].all("div", class_="beside")[0].one(class_="caveat")
    assert "Canisters were at room temperature." in caveat.text
    sentence = pages[GAS].one("p", class_="finding")
    caption = pages[GAS].one("table", class_="results").one("caption")
    for place in (sentence, caption):
        assert "#" + caveat.attrs["id"] in [a.attrs["href"] for a in place.all("a")]


def test_every_caveat_stands_in_full_once_on_a_page_and_every_number_leads_to_one(pages: Pages) -> None:
    for address, page in pages.items():
        anchors = [c.attrs["id"] for c in page.all(class_="caveat")]
        assert len(anchors) == len(set(anchors)), address
        for mark in [a for sup in page.all("sup") for a in sup.all("a")]:
            elsewhere, _, anchor = mark.attrs["href"].partition("#")
            there = posixpath.normpath(posixpath.join(posixpath.dirname(address), elsewhere)) if elsewhere else address
            assert anchor in {c.attrs["id"] for c in pages[there].all(class_="caveat")}, address


def test_a_result_that_may_not_be_ranked_says_so_in_the_place_of_its_rank(pages: Pages) -> None:
    row = _row(pages["tests/carbon-monoxide.html"], "<T>")
    assert row.one("td", class_="place").text == "not ranked"
    assert "Its sample was drawn with the lid off." in pages["tests/carbon-monoxide.html"].one(class_="under").text


def test_an_excluded_pass_is_shown_with_its_reason_and_the_value_with_and_without(pages: Pages) -> None:
    left_out = pages[GAS].one(id="result-gas-burned-corvane").one("tbody", class_="left-out")
    assert "canister valve left open" in left_out.text
    assert "18.1" in left_out.text
    said = pages[GAS].one(class_="left-out-told").text
    assert "decided during the test" in said
    assert "15.5" in said  # the mean of 14.3, 18.1 and 14.1


def test_a_claim_stands_in_the_makers_words_beside_what_was_found(pages: Pages) -> None:
    claim = pages["contenders/corvane.html"].one("li", class_="claim")
    assert [q.text for q in claim.all("q")] == ["Under 12 g a litre", "Under 11 g a litre"]
    assert claim.one("p", class_="outcome").text.startswith(
        "Contradicted for the one we bought, under our conditions. "
    )


def test_the_authors_verdict_stands_beside_what_the_readings_support(pages: Pages) -> None:
    said = pages["index.html"].one(class_="verdict-said")
    assert "If gas is what you carry, take the Corvane." in said.one(class_="ours").text
    assert "Corvane Sol and Ostler Mk II share first place" in said.one(class_="theirs").text


def test_a_condition_says_who_meets_it(pages: Pages) -> None:
    rows = pages["index.html"].one("table", class_="conditions").one("tbody").all("tr")
    assert [r.all("td")[0].text.partition(":")[0] for r in rows] == ["met", "met", "not met", "not met"]


def test_the_answer_comes_before_its_reasons(pages: Pages) -> None:
    text = pages["index.html"].one("main").text
    order = [
        "Which stove boils",
        "And what does that cost",
        "about the ones we bought",
        "Who beat whom",
        "Verdict",
        "Who paid",
    ]
    assert sorted(order, key=text.index) == order


USUAL = "The products and readings on these pages are invented."


@pytest.mark.parametrize(
    ("written", "shown"),
    [("yes", [USUAL]), ("true", [USUAL]), ("no", []), ("All of it is made up.", ["All of it is made up."])],
)
def test_a_bare_yes_to_invented_stands_as_a_sentence(written: str, shown: list[str], tmp_path: Path) -> None:
    compile_campaign(tmp_path, f"{SMALLEST}invented: {written}\n", readings=SMALLEST_READINGS)
    (record,) = (tmp_path / "stoves/.site").glob("*/results.json")
    found = re.findall(r'<p class="invented">(.*?)</p>', (record.parent / "index.html").read_text(encoding="utf-8"))
    assert found == shown


def test_what_is_invented_says_so_on_every_page(pages: Pages) -> None:
    for address, page in pages.items():
        assert page.one("footer").one(class_="invented").text == "Stoves, makers and readings are invented.", address


def test_the_data_page_names_every_raw_file_with_its_checksum(told: Told, pages: Pages) -> None:
    (file,) = told.readings.files
    assert pages["data.html"].one(class_="digest").text == file.digest
    assert "readings.csv" in [a.attrs["href"].removeprefix("files/") for a in pages["data.html"].all("a")]
    assert "results.json" in [a.attrs["href"] for a in pages["data.html"].all("a")]


def test_the_method_page_gives_each_test_an_address_of_its_own(pages: Pages) -> None:
    anchors = [s.attrs["id"] for s in pages["method.html"].all("section", class_="tested")]
    assert anchors == ["gas-burned", "carbon-monoxide", "lit-first-time", "packed-weight"]
    assert "three passes each" in pages["method.html"].one(id="gas-burned").text


def test_a_warning_the_author_accepts_stands_on_the_page_with_the_reason(told: Told) -> None:
    finding = Finding("warning", "order", Place("x"), "Run one after another.", accepted="The gas ran out.")
    told = replace(told, findings=(finding, replace(finding, says="Something else.", accepted="")))
    (index,) = [p for p in build_pages(told) if p.address == "stoves/index.html"]
    assert "Run one after another. The gas ran out." in read(index.html).text
    assert "Something else." not in index.html


@pytest.mark.parametrize("rows", ["contender,pass,gas burned before,gas burned after\n"])
def test_what_is_not_yet_tested_is_a_page_that_says_so(tmp_path: Path, rows: str) -> None:
    yaml_text = "title: Stoves\ncontenders: {corvane: Corvane, ostler: Ostler}\n" + (
        "measure: {gas burned: {kind: weighed before and after, unit: g, better: lower}}\nreadings: readings.csv\n"
    )
    pages = by_address(build_pages(told_of(tmp_path, yaml_text, rows, {})))
    assert "not yet tested" in read(pages[GAS]).one("table", class_="results").text
    assert "Nothing has been tested yet." in read(pages["index.html"]).text


def test_forty_contenders_keep_marks_of_their_own_and_the_page_holds(tmp_path: Path) -> None:
    names = [f"stove-{n}" for n in range(40)]
    declared = "".join(f"  {n}: {n.title()} {'long ' * (i % 9)}name\n" for i, n in enumerate(names))
    yaml_text = f"title: Many\ncontenders:\n{declared}measure: {{noise: level, dB, lower}}\nreadings: readings.csv\n"
    yaml_text = yaml_text.replace("{noise: level, dB, lower}", '{noise: "level, dB, lower"}')
    rows = "contender,noise\n" + "".join(f"{n},{60 + i / 10}\n" for i, n in enumerate(names))
    told = told_of(tmp_path, yaml_text, rows, {})
    grid = grid_of(told, "stoves/index.html")
    assert grid.many
    assert len({(c.letter, c.shape, c.css_class) for c in grid.contenders}) == 40
    assert len({(c.shape, c.css_class) for c in grid.contenders}) == 40
    assert len(by_address(build_pages(told))) == 47


def _row(page: Element, contender: str) -> Element:
    rows = page.one("table", class_="results").one("tbody").all("tr")
    (row,) = [r for r in rows if contender in r.one("th").text]
    return row


def _follow(page: str, href: str) -> str:
    path, mark, anchor = href.partition("#")
    return (posixpath.normpath(posixpath.join(posixpath.dirname(page), path)) if path else page) + mark + anchor


def test_what_would_settle_a_tie_is_said_with_the_amount_as_the_author_typed_it(told: Told) -> None:
    tie = next(c for c in told.evaluation.comparisons if (c.first, c.second) == ("corvane", "ostler"))
    gas = told.campaign.quantity("gas-burned")
    open_at = replace(tie, resolved=False, settle=Settle(1.0, 5, at="matters"))
    assert settle(open_at, gas) == (
        "About five passes each would show whether a difference of 1\u00a0g that matters is there."
    )
    assert settle(replace(open_at, settle=Settle(1.0, None, finer=True)), gas).startswith("More passes would not")
    assert settle(replace(open_at, resolved=True), gas) == ""
