"""Whatever a reading holds, its working says it in words and leads to where it stood."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from reportgen.campaign.declared import Amendment, Film, Moment, Narrowing, Photo, TwoRecords
from reportgen.intake.reading import Series
from reportgen.pages import Told, build_pages
from tests.pages.reading import Element, read
from tests.pages.stoves import by_address

ROW = "result-packed-weight-ostler-r1"
PAGE = "tests/packed-weight.html"
RAW = "readings.csv"


def told_with(told: Told, **campaign: Any) -> Callable[..., Told]:
    """The stoves with the one reading of Ostler's packed weight (line 3 of the table) changed, and the campaign too."""

    def changed(**reading: Any) -> Told:
        (key,) = [
            k for k in told.readings.readings if (k.test, k.contender, k.pass_) == ("packed-weight", "ostler", "1")
        ]
        readings = {**told.readings.readings, key: replace(told.readings.readings[key], **reading)}
        declared = replace(told.declared, campaign=replace(told.campaign, **campaign))
        return replace(told, declared=declared, readings=replace(told.readings, readings=readings))

    return changed


def pages_of(told: Told) -> dict[str, Element]:
    return {address: read(html) for address, html in by_address(build_pages(told)).items()}


def row(told: Told) -> Element:
    return pages_of(told)[PAGE].one("tr", id=ROW)


def tells(told: Told) -> str:
    """What stands under the reading."""
    working = pages_of(told)[PAGE].one(id="result-packed-weight-ostler")
    return " ".join(t.text for t in working.all("tr", class_="tells"))


def test_a_reading_with_nothing_to_tell_has_no_line_under_it(told: Told) -> None:
    assert tells(told) == ""
    assert row(told).one("td", class_="from").text == "readings.csv, line 3"


@pytest.mark.parametrize(
    ("text", "width", "rough", "says"),
    [
        ("about 380", "10", "about", "Taken as anything from 370 to 390 g."),
        ("388 ±0.5", "0.5", "stated", "Taken as anything from 387.5 to 388.5 g."),
        ("386 to 390", "2", "between", "Taken as anything from 386 to 390 g."),
    ],
)
def test_a_rough_reading_says_between_what_it_was_taken(
    told: Told, text: str, width: str, rough: str, says: str
) -> None:
    value = Decimal("380") if rough == "about" else Decimal("388")
    changed = told_with(told)(text=text, value=value, width=Decimal(width), rough=rough)
    assert tells(changed) == says
    assert row(changed).one("td", class_="text").text == f"{text} g"


def test_some_is_more_than_nothing(told: Told) -> None:
    changed = told_with(told)(text="some", value=Decimal(0), limit="above", unweighed=True)
    assert tells(changed) == "More than nothing; how much, nobody measured."


def test_a_run_that_did_not_finish_is_told_as_an_outcome(told: Told) -> None:
    changed = told_with(told)(text="did not finish", value=None, absent_because="did not finish", unfinished=True)
    assert tells(changed) == "A run that did not finish counts as that, and keeps the others from having a mean."


def test_a_reading_against_another_leads_to_the_row_of_that_one(told: Told) -> None:
    changed = told_with(told)(
        text="corvane + about 70", value=Decimal(70), beside="corvane", width=Decimal(10), rough="about"
    )
    assert tells(changed) == (
        "Taken as a difference of anything from 60 to 80 g. Read as a difference from Corvane Sol."
    )
    page = pages_of(changed)[PAGE]
    (link,) = page.one(id="result-packed-weight-ostler").one("tr", class_="tells").all("a")
    target = page.one("tr", id=link.attrs["href"].removeprefix("#"))
    assert target.one("td", class_="text").text == "412.3 g"


def test_a_reading_for_all_says_so(told: Told) -> None:
    assert tells(told_with(told)(for_all=True)) == "One reading serves every contender, and so does its error."


def test_two_records_are_both_shown_with_the_one_used_and_why(told: Told) -> None:
    two = TwoRecords("two-1", Narrowing(), "packed weight", ("338 g", "388 g"), "388 g", "the film shows the scale")
    said = tells(told_with(told, two_records=(two,))(records="two-1"))
    assert said == "The records disagree: 338 g and 388 g. 388 g is used: the film shows the scale."


def test_when_and_under_what_a_pass_was_read_stands_beside_its_name(told: Told) -> None:
    changed = told_with(told)(session="2", round_="1", time="10:05", conditions=(("wind", "calm"),), note="lid on")
    assert tells(changed) == ""
    heads = pages_of(changed)[PAGE].one(id="result-packed-weight-ostler").all("tr", class_="head")
    assert heads[0].text == "Pass 1 At 10:05; session 2; round 1; wind: calm; lid on."


def test_a_laboratory_value_leads_to_the_page_of_the_report(told: Told) -> None:
    changed = told_with(told)(attachment="attachments/report 7.pdf", page=3)
    ways = row(changed).one("td", class_="from").all("a")
    assert [a.text for a in ways] == ["readings.csv, line 3", "attachments/report 7.pdf, page 3"]
    assert ways[1].attrs["href"] == "../files/attachments/report%207.pdf#page=3"
    (listed,) = pages_of(changed)["data.html"].one("section", aria_labelledby="attachments").all("li")
    assert [a.text for a in listed.all("a")] == ["attachments/report 7.pdf", "page 3", "Packed weight"]


SLIP = Amendment("amend-1", RAW, 3, "packed weight", "388", "338", "digits turned round.", "two of us")


def test_a_slip_is_struck_through_beside_what_was_meant_in_the_working_and_on_the_line(told: Told) -> None:
    changed = told_with(told, amendments=(SLIP,))(text="338", was="388", amendment="amend-1", value=Decimal(338))
    written = row(changed).one("td", class_="text")
    assert (written.one("del").text, written.one("ins").text) == ("388", "338")
    assert tells(changed) == "A slip of the pen, put right. Digits turned round. Seen by two of us."
    listing = pages_of(changed)["files/readings.csv.html"]
    line = listing.one("tr", id="L3").one("code")
    assert (line.one("del").text, line.one("ins").text) == ("388", "338")
    assert line.text == "ostler,1,240.2,225.9,61,yes,388338"
    assert listing.one("p", class_="slip").text == (
        "“388” was a slip of the pen and was read as “338”. Digits turned round. Seen by two of us."
    )
    assert [len(tr.all("del")) for tr in listing.all("tr")].count(0) == len(listing.all("tr")) - 1


def test_an_empty_cell_put_right_shows_that_it_was_empty(told: Told) -> None:
    slip = replace(SLIP, was="")
    changed = told_with(told, amendments=(slip,))(text="338", was="", amendment="amend-1")
    assert row(changed).one("td", class_="text").one("del").text == "left empty"


def test_a_series_names_its_channel_and_leads_to_its_first_and_last_line(told: Told) -> None:
    series = Series(RAW, "", "pull", "t", None, "N", "", 3, 9, 7, 0.0, 3.0)
    changed = told_with(told)(series=series, text="pull", value=None)
    ways = row(changed).one("td", class_="from").all("a")
    assert [(a.text, a.attrs["href"]) for a in ways] == [
        ("readings.csv, line 3", "../files/readings.csv.html#L3"),
        ("to line 9", "../files/readings.csv.html#L9"),
    ]
    assert tells(changed) == "pull: 7 samples over 3 s."
    often = replace(series, interval=0.5, gaps=((1.0, 2.0), (2.2, 2.4)))
    assert tells(told_with(told)(series=often, text="pull", value=None)) == (
        "pull: 7 samples over 3 s, usually one every 0.5 s. None from 1 s to 2 s, 2.2 s to 2.4 s."
    )
    file = pages_of(changed)["data.html"].all("section", class_="file")[-1]
    assert "pull, lines 3 to 9 (7 samples)" in file.text


def test_rows_of_readings_have_addresses_of_their_own(told: Told) -> None:
    for address, page in pages_of(told).items():
        ids = [e.attrs["id"] for e in page.all() if "id" in e.attrs]
        assert len(ids) == len(set(ids)), address


def test_a_reading_of_another_contender_says_whose_it_is(told: Told) -> None:
    """`of(corvane, x)` in a formula brings another's reading into the pass."""
    (own,) = [r for r in told.evaluation.results if (r.quantity, r.contender) == ("packed-weight", "ostler")]
    (other,) = [
        k for k in told.readings.readings if (k.test, k.contender, k.pass_) == ("packed-weight", "corvane", "1")
    ]
    passes = (replace(own.by_pass[0], keys=(*own.by_pass[0].keys, other)),)
    results = tuple(replace(r, by_pass=passes) if r is own else r for r in told.evaluation.results)
    changed = replace(told, evaluation=replace(told.evaluation, results=results))
    working = pages_of(changed)[PAGE].one(id="result-packed-weight-ostler")
    names = [tr.all("th")[0].text for tr in working.all("tr") if "id" in tr.attrs]
    assert names == ["packed weight (Corvane Sol)", "packed weight"]


def test_the_display_stands_beside_its_reading_and_the_moment_leads_into_the_film(told: Told) -> None:
    photo = Photo("display-1", "photos/display.jpg", "The display of the scale shows 388 g", width=1200, height=900)
    film = Film("main", "The main film", "https://example.org/main.mp4")
    moment = Moment("main", Decimal(260), "main 4m20s")
    changed = told_with(told, photos=(photo,), films=(film,))(photos=("display-1",), film=moment)
    under = pages_of(changed)[PAGE].one(id="result-packed-weight-ostler").one("tr", class_="tells")
    assert under.one("img").attrs["alt"] == "The display of the scale shows 388 g"
    (link,) = [a for a in under.all("a") if a.attrs["href"].startswith("https:")]
    assert link.text == "See it in the film at 4 min 20 s"
    assert link.attrs["href"] == "https://example.org/main.mp4#t=260"
