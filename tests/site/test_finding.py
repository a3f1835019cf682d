"""A comparison is found by kind of product, maker, year, method, what was measured and price, with and without scripts."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from reportgen.build.run import compile_site
from reportgen.finding import Refused
from reportgen.site.wide.choosing import choosing_among
from reportgen.site.wide.facets import facets_of
from tests.pages.reading import Element, read
from tests.site.archives import archive, site_of
from tests.site.cards_for_tests import card


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return site_of(tmp_path_factory.mktemp("archive"))


def page(site: Path, address: str) -> Element:
    return read((site / address).read_text(encoding="utf-8"))


def lines(site: Path, anchor: str) -> dict[str, str]:
    """Each line of one list: its term, and the rest of it."""
    section = page(site, "about/lists.html").one("section", aria_labelledby=anchor)
    return {d.one("dt").text: " ".join(dd.text for dd in d.all("dd")) for d in section.all("div")}


def test_kinds_are_one_whatever_their_capitals_and_hold_their_comparisons_newest_first(site: Path) -> None:
    kinds = lines(site, "by-kind")
    assert list(kinds) == ["Camping stoves", "Lamps"]
    assert kinds["Camping stoves"].index("a litre") < kinds["Camping stoves"].index("a cup")


def test_a_maker_has_its_products_in_every_comparison(site: Path) -> None:
    makers = lines(site, "by-maker")
    assert list(makers) == ["Corvane", "Hestrik", "Ostler & Daughters"]
    assert "Corvane Sol" in makers["Corvane"]
    assert "Kessary Ring" in makers["Corvane"]


def test_a_comparison_over_the_turn_of_a_year_is_in_both_years(site: Path) -> None:
    years = lines(site, "by-year")
    assert list(years) == ["2026", "2025", "2024"]
    assert "midnight" in years["2025"]
    assert "midnight" in years["2024"]


def test_prices_go_from_the_lowest_currency_by_currency(site: Path) -> None:
    assert list(lines(site, "by-price")) == ["54.90 CHF", "12.50 EUR", "62 to 79 EUR", "89 EUR"]


def test_what_was_measured_leads_to_its_results(site: Path) -> None:
    assert {"Gas burned", "Boil time", "Run time"} == set(lines(site, "by-measured"))


def test_what_a_line_calls_already_is_not_named_again_below_it(site: Path) -> None:
    section = page(site, "about/lists.html").one("section", aria_labelledby="by-measured")
    (line,) = [d for d in section.all("div") if d.one("dt").text == "Run time"]
    (link,) = line.all("a")
    assert "midnight" in link.text
    assert "/tests/run-time.html" in (link.attrs["href"] or "")
    hrefs = [a.attrs.get("href") for a in page(site, "about/lists.html").all("a")]
    assert "../stoves/tests/gas-burned.html#gas-burned" in hrefs


def test_a_quantity_without_results_is_not_offered() -> None:
    assert not [facet for facet in facets_of([card()]) if facet.name == "measured"]


def test_the_archive_leads_to_each_list(site: Path) -> None:
    hrefs = [a.attrs.get("href") for a in page(site, "index.html").all("a")]
    for name in ("kind", "maker", "year", "measured", "price"):
        assert f"about/lists.html#by-{name}" in hrefs
    assert "about/lists.html#by-method" not in hrefs, "no method is named"


def test_each_entry_says_by_what_it_is_found(site: Path) -> None:
    found: list[dict[str, Any]] = [json.loads(e.attrs["data-found"]) for e in page(site, "index.html").all("article")]
    assert [f["kind"] for f in found] == [["camping stoves"], ["camping stoves"], ["lamps"]]
    assert found[0]["products"][1] == {"maker": "ostler & daughters", "prices": [["EUR", "62", "79"]]}
    assert found[2]["year"] == ["2024", "2025"]


def test_every_number_of_comparisons_has_its_sentence(site: Path) -> None:
    said = json.loads(page(site, "index.html").one("form").attrs["data-said"])
    assert said == [
        "No comparison fits all of that. Take one choice back.",
        "1 comparison of 3 fits.",
        "2 comparisons of 3 fit.",
        "3 comparisons, the newest first.",
    ]


def test_one_comparison_alone_offers_no_choice() -> None:
    assert choosing_among([card()]) is None


def test_a_text_that_would_hide_a_page_of_the_sites_own_is_refused(tmp_path: Path) -> None:
    place = archive(tmp_path)
    (place / "content" / "lists.md").write_text("# Lists of mine\n", encoding="utf-8")
    with pytest.raises(Refused) as refused:
        compile_site(place)
    (told,) = [f for f in refused.value.findings if f.severity == "error"]
    assert (told.rule, told.place.file) == ("hides-a-page", "content/lists.md")
