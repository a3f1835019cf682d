"""Contenders side by side: each pair has a page that says of the two what the tests' pages say, and needs no script."""

from __future__ import annotations

import gzip
import itertools
from pathlib import Path

import pytest

from reportgen.addresses import side_by_side_page
from reportgen.pages import Told, build_pages
from tests.pages.reading import Element, read
from tests.pages.stoves import by_address, told_of

Pages = dict[str, Element]
TWO = "side-by-side/corvane-and-ostler.html"

MANY = """\
title: Many
contenders:
{names}
measure:
  burned: one reading, g, lower
readings: readings.csv
"""


def many(place: Path, count: int) -> dict[str, str]:
    names = [f"burner-{n:02}" for n in range(count)]
    rows = [f"{name},{pass_},{40 + n}.{pass_}" for n, name in enumerate(names) for pass_ in range(1, 4)]
    readings = "\n".join(["contender,pass,burned", *rows])
    return by_address(
        build_pages(
            told_of(
                place, MANY.format(names="\n".join(f"  {name}: {name.capitalize()}" for name in names)), readings, {}
            )
        )
    )


def test_every_pair_has_a_page_at_its_ids_in_the_order_of_the_alphabet(pages: Pages) -> None:
    ids = ("brindle", "corvane", "ostler", "tamsin")
    expected = {f"side-by-side/{a}-and-{b}.html" for a, b in itertools.combinations(ids, 2)}
    assert {address for address in pages if "-and-" in address} == expected


def test_no_two_pairs_share_an_address() -> None:
    ids = ["a", "b", "c", "a-and-b", "b-and-c", "and", "and-b", "a-and", "a-and-b-and-c", "sand", "a-sand"]
    addresses = [side_by_side_page("x", one, other) for one, other in itertools.combinations(ids, 2)]
    assert len(set(addresses)) == len(addresses)
    assert side_by_side_page("x", "b", "a") == side_by_side_page("x", "a", "b") == "x/side-by-side/a-and-b.html"


def test_both_values_and_the_decision_stand_in_a_row_and_lead_to_their_reasons(pages: Pages) -> None:
    row = pages[TWO].one("tbody", id="on-gas-burned")
    values = [cell.one("a", class_="figure") for cell in row.all("td", class_="one")]
    sheet = [pages[f"contenders/{who}.html"].one("table", class_="sheet-results") for who in ("corvane", "ostler")]
    assert [v.text for v in values] == [s.all("td", class_="value")[0].all("a")[0].text for s in sheet]
    assert values[0].attrs["href"] == "../tests/gas-burned.html#result-gas-burned-corvane"
    reason = row.one("a", class_="decision")
    assert reason.attrs["href"] == "../tests/gas-burned.html#pair-gas-burned-corvane-ostler"
    there = pages["tests/gas-burned.html"].one("tr", id="pair-gas-burned-corvane-ostler")
    assert there.one("span", class_="decision").text == f"{reason.text}."
    assert there.one("td", class_="gap").text in row.one("tr", class_="note").text


def test_what_was_decided_is_listed_before_anything_else_and_each_thing_once(pages: Pages) -> None:
    for address in (a for a in pages if "-and-" in a):
        page = pages[address]
        short = page.one("dl", class_="short")
        links = [a.attrs["href"].removeprefix("#") for a in short.all("a")]
        assert sorted(links) == sorted(
            body.attrs["id"] for body in page.all("tbody") if body.all("tr", class_="note")
        ), address


def test_what_is_neither_better_nor_worse_has_values_and_no_decision(pages: Pages) -> None:
    row = pages[TWO].one("tbody", id="on-packed-weight")
    assert [a.text.replace("\u00a0", " ") for a in row.all("a", class_="figure")] == ["412.3 g", "388 g"]
    assert not row.all("tr", class_="note")


def test_the_caveats_on_either_stand_in_full_and_those_on_others_stay_away(pages: Pages) -> None:
    def said(address: str) -> str:
        return " ".join(box.text for box in pages[address].all("div", class_="caveat"))

    assert "Canister valve left open" in said(TWO)  # corvane's
    assert "Blew out twice" in said(TWO)  # ostler's
    assert "lid off" not in said(TWO)  # tamsin's
    assert "lid off" in said("side-by-side/ostler-and-tamsin.html")
    assert "Canister valve" not in said("side-by-side/ostler-and-tamsin.html")
    assert "room temperature" in said("side-by-side/ostler-and-tamsin.html")  # of all


def test_every_raised_number_has_its_caveat_on_the_page(pages: Pages) -> None:
    for address in (a for a in pages if "-and-" in a):
        page = pages[address]
        boxes = {box.attrs["id"] for box in page.all("div", class_="caveat")}
        raised = {a.attrs["href"].removeprefix("#") for sup in page.all("sup") for a in sup.all("a")}
        assert raised <= boxes, address


def test_identity_prices_and_claims_stand_beside_each_other(pages: Pages) -> None:
    rows = {row.all("th")[0].text: [td.text for td in row.all("td")] for row in pages[TWO].all("tr") if row.all("th")}
    assert rows["Price paid"] == ["89.00 EUR", "124.50 EUR"]
    assert rows["As it came"] == ["Small dent in the pot support.", "not noted"]
    claimed, none = rows["Gas burned"]
    assert "Under 12 g a litre" in claimed
    assert "Under 11 g a litre" in claimed
    assert none == "no claim"


def test_who_misses_a_condition_is_said_first(pages: Pages) -> None:
    assert "Brindle" in pages["side-by-side/brindle-and-ostler.html"].one("p", class_="missed").text
    assert not pages[TWO].all("p", class_="missed")


def test_the_matrix_the_sheets_and_the_first_page_lead_there(pages: Pages) -> None:
    matrix = pages["index.html"].one("details", class_="matrix")
    assert TWO in {a.attrs["href"] for a in matrix.all("a")}
    assert "side-by-side/index.html" in {a.attrs["href"] for a in pages["index.html"].all("a")}
    sheet = pages["contenders/tamsin.html"].one("p", class_="beside-others")
    assert [a.attrs["href"] for a in sheet.all("a")] == [
        f"../side-by-side/{pair}.html" for pair in ("corvane-and-tamsin", "ostler-and-tamsin", "brindle-and-tamsin")
    ]


def test_the_page_to_choose_from_leads_to_every_pair_without_a_script(pages: Pages) -> None:
    links = pages["side-by-side/index.html"].one("dl", class_="pairs-of").all("a")
    pairs = {a.attrs["href"] for a in links if "-and-" in a.attrs["href"]}
    assert pairs == {a.removeprefix("side-by-side/") for a in pages if "-and-" in a}


def test_twelve_contenders_have_66_pages_and_thirteen_have_none(tmp_path: Path) -> None:
    twelve = many(tmp_path / "twelve", 12)
    assert sum(address.startswith("side-by-side/burner") for address in twelve) == 66
    thirteen = many(tmp_path / "thirteen", 13)
    assert not [address for address in thirteen if address.startswith("side-by-side/")]
    assert "side-by-side" not in "".join(thirteen.values())


def test_one_contender_has_nobody_beside_it(tmp_path: Path) -> None:
    assert "side-by-side" not in "".join(many(tmp_path, 1).values())


def test_with_two_there_is_nothing_to_choose_by_script(tmp_path: Path) -> None:
    page = read(many(tmp_path, 2)["side-by-side/index.html"])
    assert not page.all("script")
    assert not page.all("form")


@pytest.mark.parametrize("address", ["corvane-and-ostler", "index"])
def test_the_demonstration_keeps_to_fourteen_kilobytes(demo_site: Path, address: str) -> None:
    """The project's own measure: HTML and style, compressed."""
    page = (demo_site / "demo-campaign" / "side-by-side" / f"{address}.html").read_bytes()
    sheet = read(page.decode()).all("link", rel="stylesheet")[0].attrs["href"]
    style = (demo_site / "demo-campaign" / "side-by-side" / sheet).resolve().read_bytes()
    assert len(gzip.compress(page, 9)) + len(gzip.compress(style, 9)) <= 14_000


def test_the_order_of_contenders_changes_no_address(told: Told, pages: Pages) -> None:
    ids = [c.id for c in told.campaign.contenders]
    assert ids != sorted(ids)
    assert {side_by_side_page(told.campaign.id, b, a) for a, b in itertools.combinations(ids, 2)} == {
        f"{told.campaign.id}/{address}" for address in pages if "-and-" in address
    }
