"""A page on paper: its title above and its address, issue and number below every sheet; folded things unfolded, nothing cut.

Boxes in the margin of a sheet: CSS Paged Media 3, section 4; `counter(pages)`: section 6.1. A4 is 210 mm wide (ISO 216), Letter
8.5 inches (ANSI/ASME Y14.1); a CSS inch is 96 px (CSS Values 4, 6.2).
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from reportgen.browser.chromium import started

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.browser
TEST, SHEET = "demo-campaign/tests/gas-burned.html", "demo-campaign/contenders/brindle.html"


@pytest.fixture(scope="module")
def page(demo_site: Path) -> Iterator[Page]:
    with started() as browser:
        yield browser.new_page()


@cache
def printed(page: Page, address: str, paper: str = "A4") -> list[str]:
    """The text of each sheet."""
    from pypdf import PdfReader

    page.goto(address)
    reader = PdfReader(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=True)))
    return [re.sub(r"\s+", " ", sheet.extract_text()) for sheet in reader.pages]


def running(sheets: list[str]) -> str:
    """Their text as it runs on from sheet to sheet, without head and foot, which come out before the rest."""
    ends = (f"{number} / {len(sheets)}" for number in range(1, len(sheets) + 1))
    return " ".join(sheet.partition(end)[2] for sheet, end in zip(sheets, ends, strict=True))


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_every_sheet_bears_its_number_its_address_and_after_the_first_the_title(
    demo_site: Path, page: Page, paper: str
) -> None:
    sheets = printed(page, (demo_site / TEST).as_uri(), paper)
    assert len(sheets) > 2
    for number, sheet in enumerate(sheets, 1):
        assert f"https://example.org/tests/{TEST}, issue 1" in sheet
        assert re.search(rf"\b{number}\s*/\s*{len(sheets)}\b", sheet)
        assert ("Gas burned to boil one litre – Boil and Tell" in sheet) is (number > 1)


def test_what_is_folded_is_printed_but_for_workings(demo_site: Path, page: Page) -> None:
    text = " ".join(printed(page, (demo_site / TEST).as_uri()))
    assert "Can’t be told apart" in text  # each against each
    assert "Conditions of each pass" in text
    assert "Value of this pass" not in text  # a working


def test_workings_are_printed_where_the_reader_asked_for_them(demo_site: Path, page: Page) -> None:
    text = " ".join(printed(page, (demo_site / TEST).as_uri() + "#unfolded"))
    assert text.count("Value of this pass") > 4


def test_an_outward_link_is_written_out_and_an_inward_one_is_not(demo_site: Path, page: Page) -> None:
    address = (demo_site / "demo-campaign/index.html").as_uri()
    text = running(printed(page, address))
    page.goto(address)
    outward = page.evaluate("[...document.querySelectorAll('main a[href^=http]')].map(a => a.getAttribute('href'))")
    assert outward
    bare = re.sub(r"\s", "", text)
    assert [href for href in outward if f"({href})" not in bare] == []
    assert "(method.html)" not in bare


PAPERS = {"A4": 210 / 25.4 * 96, "Letter": 8.5 * 96}  # px


@pytest.mark.parametrize(
    "name", [TEST, SHEET, "demo-campaign/index.html", "demo-campaign/method.html", "handbook/verdict.html"]
)
def test_nothing_is_wider_than_the_sheet(demo_site: Path, page: Page, name: str) -> None:
    """Laid out as wide as the sheet between its margins of 15 mm; tables inside a region would scroll, and be cut."""
    page.emulate_media(media="print")
    page.goto((demo_site / name).as_uri())
    over = {}
    try:
        for paper, width in PAPERS.items():
            page.set_viewport_size({"width": int(width - 2 * 15 / 25.4 * 96), "height": 900})
            over[paper] = page.evaluate(
                """() => [...document.querySelectorAll('body *')].filter(e => !e.closest('svg, .unseen, .skip'))
                    .filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
                    .map(e => e.tagName + ' ' + e.className + ' ' + e.textContent.trim().slice(0, 40))"""
            )
    finally:
        page.emulate_media(media="null")
    assert over == {paper: [] for paper in PAPERS}
