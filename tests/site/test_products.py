"""Products across campaigns: one page each, with its sheets, and what was measured of it beside what was measured so."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.addresses import product_id, product_page
from reportgen.build.run import compile_site
from tests.pages.reading import Element, read
from tests.site.archives import site_of
from tests.site.test_across import NEW, OLD, workspace

SAME = ("burners", "2025-05-02", {"corvane": ["14.9", "15.2", "15.1"], "linnet": ["18.0", "18.3", "18.5"]})


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return compile_site(workspace(tmp_path_factory.mktemp("two"), NEW, SAME)).out


def product(site: Path, id: str) -> Element:
    return read((site / "about" / "products" / f"{id}.html").read_text("utf-8"))


def test_a_product_of_two_comparisons_has_one_page_that_leads_to_both_sheets(site: Path) -> None:
    page = product(site, "corvane")
    sheets = [a.attrs["href"] for a in page.one("ul", class_="uses").all("a")]
    assert sheets == ["../../stoves/contenders/corvane.html", "../../burners/contenders/corvane.html"]


def test_its_results_stand_beside_all_that_was_measured_the_same_way(site: Path) -> None:
    table = product(site, "corvane").one("table", class_="across")
    here = [th.one("a").text for th in table.all("th", scope="row") if "this product" in th.text]
    assert here == ["Corvane", "Corvane"]
    everybody = [row.all("th")[0].all("a")[0].text for row in table.all("tr") if row.all("a", class_="figure")]
    assert everybody == ["Corvane", "Ostler", "Corvane", "Linnet"]


def test_what_keeps_comparisons_apart_is_said_there_as_well(site: Path) -> None:
    text = product(site, "linnet").text
    assert "Nothing says how far this method differs from one day to the next" in text
    assert "Nobody is ranked across comparisons" in text


def test_it_leads_to_the_picture_of_all(site: Path) -> None:
    links = [a.attrs["href"] for a in product(site, "ostler").all("a")]
    assert "../../methods/weigh-it.1.html#across-gas-burned" in links


def test_each_sheet_leads_to_its_product_and_the_list_to_all(site: Path) -> None:
    sheet = read((site / "stoves/contenders/ostler.html").read_text("utf-8"))
    assert "../../about/products/ostler.html" in {a.attrs.get("href") for a in sheet.all("a")}
    listed = [a.attrs["href"] for a in product(site, "index").one("dl").all("a")]
    assert sorted(listed) == ["corvane.html", "linnet.html", "ostler.html"]
    archive = read((site / "index.html").read_text("utf-8"))
    assert "about/products/index.html" in {a.attrs.get("href") for a in archive.all("a")}


def test_a_maker_is_one_whatever_its_capitals(tmp_path: Path) -> None:
    makers = [dt.text for dt in product(site_of(tmp_path), "index").one("dl").all("dt")]
    assert makers == ["Corvane", "Hestrik", "Ostler & Daughters", "Maker not noted"]


def test_what_nobody_else_measured_so_is_said_plainly(tmp_path: Path) -> None:
    page = product(compile_site(workspace(tmp_path, NEW)).out, "corvane")
    assert not page.all("table")
    assert "Nothing of it was measured by a version of a method that another comparison used as well" in page.text


@pytest.mark.parametrize(
    ("maker", "title", "contender", "expected"),
    [
        ("Corvane", "Corvane Sol", "sol", "corvane-sol"),
        ("Corvane & Sons", "Sol", "sol", "corvane-sons-sol"),
        ("Corvane", "Corvaneta", "x", "corvane-corvaneta"),
        ("", "Sol", "x", "sol"),
        ("Sol", "Sol", "x", "sol"),
        ("", "محمد", "mohamed", "mohamed"),
        ("Ömer", "محمد", "mohamed", "omer-mohamed"),
    ],
)
def test_a_product_is_its_maker_and_its_title(maker: str, title: str, contender: str, expected: str) -> None:
    assert product_id(maker, title, contender) == expected


def test_a_product_called_index_hides_no_list() -> None:
    assert product_page("index") != "about/products/index.html"


def test_two_makers_things_of_one_name_are_two_products(tmp_path: Path) -> None:
    place = workspace(tmp_path, NEW, OLD)
    for id, maker in (("stoves", "Adler"), ("burners", "Bieber")):
        file = place / f"content/archive/{id}/campaign.yaml"
        names = {"stoves": "corvane: Corvane", "burners": "hobbin: Hobbin"}[id]
        short = names.partition(":")[0]
        text = file.read_text("utf-8").replace(f"  {names}", f"  {short}: {{title: Model 2, maker: {maker}}}")
        file.write_text(text, "utf-8")
    site = compile_site(place).out
    assert {"adler-model-2.html", "bieber-model-2.html"} <= {p.name for p in (site / "about/products").iterdir()}
