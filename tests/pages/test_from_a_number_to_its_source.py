"""From a number in the demonstration to what it rests on: what a reader sees and where it leads.

What is expected stands in the demonstration's own files: constants.yaml (the price of a gram of gas, and the receipt),
raw/bench-log.csv (the pulls, in kgf and lbf), tests/canister-temperature.yaml (which quantity is smoothed), verdict.yaml
(what is weighed), campaign.yaml (which test is still to come).
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tests.pages.reading import Element, read


@pytest.fixture(scope="module")
def demo(demo_site: Path) -> Path:
    return demo_site


def page(site: Path, address: str) -> Element:
    return read((site / address).read_text(encoding="utf-8"))


def test_a_price_of_use_stands_with_the_price_it_is_reckoned_with_and_leads_to_what_was_measured(demo: Path) -> None:
    """14.50 g (the mean of 14.9, 14.3 and 14.3) at 0.026 EUR a gram are 0.377 EUR."""
    shown = page(demo, "demo-campaign/index.html")
    assert shown.one("p", id="use-gas_price").text == "gas price: 0.026 EUR/g (shop receipt, 2026-05-02)"
    assert "0.377 EUR" in shown.one("table", id="table-cost").text
    (use,) = [p for p in shown.all("p") if p.text.startswith("One use:")]
    assert "tests/gas-burned.html#gas-burned" in [a.attrs["href"] for a in use.all("a", class_="reason")]


def test_what_a_use_saves_is_the_gap_within_rounds_and_the_page_says_so(demo: Path) -> None:
    """The Corvane's pass of round 2 is left out. Yates' value for a missing plot (Empire J. Exp. Agric. 1, 1933):
    (4 · 43.5 + 4 · 47.6 - 240.1) / 9 = 13.844 g, so its mean over all rounds is 14.336 g, 3.839 g below the Brindle's
    18.175 g; at 0.026 EUR/g that is 0.0998 EUR, and 51 EUR are paid back after 511 uses, where the table gives 534."""
    shown = page(demo, "demo-campaign/index.html")
    (line,) = [li.text for li in shown.one("ul", class_="break-evens").all("li") if "than Brindle" in li.text[:50]][:1]
    assert line.startswith("Corvane Sol costs more to buy than Brindle Dart (out: carbon monoxide)")
    assert "what it saves, 0.100 EUR (" in line
    assert "after about 511 uses" in line
    assert any(p.text.startswith("What a use saves is the gap as the test has it") for p in shown.all("p"))


def test_an_instrument_names_the_test_whose_rows_name_it_by_their_unit(demo: Path) -> None:
    """The test is declared in newtons; its rows are in kgf and lbf, which campaign.yaml gives to the pull scale."""
    used = page(demo, "instruments/pull-scale.html").one("ul", class_="uses")
    assert "../demo-campaign/tests/pull-to-tip.html" in [a.attrs["href"] for a in used.all("a")]
    log = (Path(__file__).parents[2] / "demo_campaign/raw/bench-log.csv").read_text(encoding="utf-8")
    assert {row.split(",")[5] for row in log.splitlines() if ",pull to tip," in row} == {"kgf", "lbf"}


def test_a_moving_mean_is_said_to_leave_out_the_ends_and_only_where_there_is_one(demo: Path) -> None:
    shown = page(demo, "demo-campaign/tests/canister-temperature.html")
    said = [p.text for p in shown.all("p", class_="constant") if "moving mean reaches" in p.text]
    assert len(said) == 1
    assert "what was there isn’t counted" in said[0]
    assert "moving mean" not in page(demo, "demo-campaign/tests/gas-burned.html").text


def test_the_first_look_gives_the_verdict_in_a_line_that_leads_there_and_on_to_the_money(demo: Path) -> None:
    shown = page(demo, "demo-campaign/index.html")
    line = shown.one("p", class_="onward")
    leader = _overall(demo)["lead"]["leader"]
    assert [name for name, title in _titles(demo).items() if title in line.text] == [leader]
    assert [a.attrs["href"] for a in line.all("a")] == ["#verdict", "#table-money"]
    assert shown.one("h2", id="verdict")
    assert shown.one("table", id="table-money")


def test_a_sheet_says_what_the_verdict_says_of_its_contender_and_leads_there(demo: Path) -> None:
    """The Brindle misses a condition, so it isn’t weighed: its sheet leads there all the same, and says no more."""
    weighed, leader = _overall(demo)["contenders"], _overall(demo)["lead"]["leader"]
    assert sorted({*_titles(demo)} - {*weighed}) == ["brindle"]
    for name in _titles(demo):
        shown = page(demo, f"demo-campaign/contenders/{name}.html")
        (said,) = [p for p in shown.all("p") if any(_to_verdict(a) for a in p.all("a"))]
        named = {other for other, title in _titles(demo).items() if title in said.text}
        (way,) = said.all("a")
        if name in weighed:
            assert {name, leader} <= named
            assert len(named) == 2
        else:
            assert said.text == way.text


def test_where_nothing_is_weighed_no_sheet_leads_to_a_verdict(demo: Path) -> None:
    """The hand pumps have neither weights nor conditions."""
    sheets = sorted((demo / "hand-pumps/contenders").glob("*.html"))
    assert sheets
    assert not [a for sheet in sheets for a in read(sheet.read_text(encoding="utf-8")).all("a") if _to_verdict(a)]


def _overall(site: Path) -> Any:
    """The verdict as results.json has it."""
    return json.loads((site / "demo-campaign/results.json").read_text(encoding="utf-8"))["verdict"]["overall"]


def _titles(site: Path) -> dict[str, str]:
    told = json.loads((site / "demo-campaign/results.json").read_text(encoding="utf-8"))["contenders"]
    return {contender["id"]: contender["title"] for contender in told}


def _to_verdict(link: Element) -> bool:
    return link.attrs.get("href", "").endswith("#verdict")


def test_the_method_in_one_minute_names_the_test_that_is_still_to_come(demo: Path) -> None:
    assert "One more test has no results yet: cold start." in page(demo, "demo-campaign/method.html").text


def test_whoever_finds_a_mistake_is_told_where_to_write(demo: Path) -> None:
    for address in ("demo-campaign/contenders/tamsin.html", "demo-campaign/changes.html", "index.html"):
        assert "Something wrong or missing? Write to letters at example.org." in page(demo, address).text
