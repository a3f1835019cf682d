"""What holds of every page of the compiled demonstration, for whoever reads it."""

from __future__ import annotations

import html
import json
import re
from pathlib import Path
from typing import Any

import pytest

from tests.pages.reading import read

UNIT = (
    r"(?:g|kg|mg|g/min|min/g|mg/kg|oz|lb|s|ms|min|h|cm|mm|km|°C|°F|W|kW|kJ|J|kJ/g|dB|ppm|lx|lm|V|A|mA|N|Pa|hPa|kPa"
    r"|bar|ml|L|mL|%|€|EUR|USD|CHF|GBP|Hz|kHz|rpm|mAh|Wh)"
)
SPLIT = re.compile(rf"(?<![\w.])\d(?:[\d.,]*\d)?[ \n]{UNIT}(?![\w/°²³’-])")
TYPED = re.compile(r"<(script|style|pre|code|svg|math|head)\b.*?</\1>", re.DOTALL)


@pytest.fixture(scope="module")
def pages(demo_site: Path) -> dict[str, str]:
    found = {p.relative_to(demo_site).as_posix(): p.read_text(encoding="utf-8") for p in demo_site.rglob("*.html")}
    return {address: text for address, text in found.items() if "/files/" not in address}


def test_no_number_stands_apart_from_its_unit(pages: dict[str, str]) -> None:
    # SI brochure, 9th edition, 5.4.3 and 5.4.7
    found = [
        (address, match[0])
        for address, text in pages.items()
        for words in re.findall(r">([^<]+)<", TYPED.sub("", text))
        for match in SPLIT.finditer(html.unescape(words))
    ]
    assert found == []


def test_figures_and_tables_are_numbered_without_a_gap_and_each_number_leads_to_its_own(pages: dict[str, str]) -> None:
    seen = 0
    for address, text in pages.items():
        ids = set(re.findall(r'\sid="([^"]+)"', text))
        for sort in ("figure", "table"):
            found = re.findall(rf'<a class="number" href="#({sort}-[^"]+)">\w+ (\d+)</a>', text)
            assert [int(n) for _, n in found] == list(range(1, len(found) + 1)), address
            assert {anchor for anchor, _ in found} <= ids, address
            assert len({anchor for anchor, _ in found}) == len(found), address
            seen += len(found)
    assert seen > 100


def test_every_table_whose_title_is_seen_has_a_number(pages: dict[str, str]) -> None:
    """But for what lies behind one number, what a file or an instrument has of its own, and texts."""
    elsewhere = re.compile(r"(^|/)(data|report-items)\.html$|^(instruments|methods|handbook|about)/|^\w+\.html$")
    seen = 0
    for address, text in pages.items():
        if not elsewhere.search(address):
            tables = re.findall(r'<table(?: id="[^"]+")?(?: class="([^"]*)")?[^>]*>\s*<caption>(.*?)</caption>', text)
            found = [title for kind, title in tables if kind not in {"budget", "raw"}]
            assert [title for title in found if 'class="number"' not in title] == [], address
            seen += len(found)
    assert seen > 50


def test_the_contents_of_a_test_name_its_result(pages: dict[str, str]) -> None:
    seen = 0
    for address, text in pages.items():
        if 'data-kind="test"' in text:
            contents = re.search(r'<nav class="here".*?</nav>', text, re.DOTALL)
            places = re.findall(r'<(?:div|section) class="quantity" id="([^"]+)"', text)
            assert contents, address
            assert places, address
            assert all(f'href="#{place}"' in contents[0] or f'href="#of-{place}"' in contents[0] for place in places)
            seen += 1
    assert seen > 20


def test_a_count_has_its_range_and_no_passes(demo_site: Path, demo_told: dict[str, Any]) -> None:
    """The range is that of results.json; a count is one number, however many runs it was counted over."""
    page = read((demo_site / "demo-campaign/tests/relights.html").read_text(encoding="utf-8"))
    rows = page.one(id="table-relights").one("tbody").all("tr")
    held = {r["contender"]: r for r in demo_told["results"] if r["quantity"] == "relights"}
    found = {row.one(class_="who").one("a").attrs["href"].rpartition("/")[2].removesuffix(".html"): row for row in rows}
    assert found.keys() == held.keys()
    for contender, row in found.items():
        assert "words" not in row.one(class_="value").attrs["class"].split()
        low, _, high = row.one(class_="interval").text.partition(" to ")
        assert (float(low), float(high)) == pytest.approx((held[contender]["low"], held[contender]["high"]), abs=0.05)
    assert page.one(id="table-relights").all(class_="passes") == []


def test_every_caveat_leads_back_to_every_place_that_raises_it(pages: dict[str, str]) -> None:
    seen = 0
    for address, text in pages.items():
        raised = re.findall(r'<a href="#(caveat-[^"]+)" id="(to-[^"]+)"', text)
        back = set(re.findall(r'href="#(to-(?:\d+-)?caveat-[^"]+)"', text))
        assert back == {place for _, place in raised}, address
        seen += len(raised)
    assert seen > 100


def test_a_phone_leaves_out_who_beats_whom_only_where_places_say_it(demo_site: Path, demo_told: dict[str, Any]) -> None:
    page = read((demo_site / "demo-campaign/index.html").read_text(encoding="utf-8"))
    rows = {
        row.one("th").all("a")[0].text: row.attrs.get("class", "")
        for row in page.one(class_="grid").one("tbody").all("tr")
    }
    title = {"gas-burned": "Gas burned", "relights": "Relights", "boil-time": "Time to the boil"}
    layout: dict[str, str] = {}
    for quantity in title:
        rank = {r["contender"]: r["rank"] for r in demo_told["results"] if r["quantity"] == quantity}
        pairs = [c for c in demo_told["comparisons"] if c["quantity"] == quantity]
        overlap = [
            rank[c["first"]][0] <= rank[c["second"]][1] and rank[c["second"]][0] <= rank[c["first"]][1] for c in pairs
        ]
        layout[quantity] = "told" if all(c["resolved"] != o for c, o in zip(pairs, overlap, strict=True)) else ""
    assert layout == {q: rows[t] for q, t in title.items()}
    assert layout == {"gas-burned": "told", "relights": "", "boil-time": "told"}
    assert rows["Simmer"] == "undecided"


def test_a_line_of_a_long_raw_file_stands_on_a_leaf_that_its_number_alone_decides(demo_site: Path) -> None:
    folder = demo_site / "headlamps/files/raw"
    leaves = sorted(folder.glob("run-hestrik-1.csv*.html"))
    assert len(leaves) > 2
    for leaf in leaves:
        first = int(leaf.name.split(".")[2]) if leaf.name.count(".") > 2 else 1
        lines = [int(n) for n in re.findall(r'<tr id="L(\d+)"', leaf.read_text(encoding="utf-8"))]
        assert lines
        assert all(first <= n < first + 500 for n in lines)


def test_the_grid_and_the_record_agree_on_the_anchors_of_caveats(
    pages: dict[str, str], demo_told: dict[str, Any]
) -> None:
    everywhere = set(re.findall(r'id="(caveat-[^"]+)"', "".join(pages.values())))
    told = {c["anchor"] for c in demo_told["caveat_list"]}
    assert len(told) == len(demo_told["caveat_list"])
    assert told <= everywhere
    assert json.dumps(sorted(told)).isascii()
