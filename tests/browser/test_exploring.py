"""A reader explores a chart: by keys and by pointing, from disk and under the page's policy; nothing loads before."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Locator, Page

pytestmark = pytest.mark.browser
GAS = "figure-gas-burned"
TRACE = "figure-trace--canister-temperature--canister"


def page_of(site: Path, figure: str) -> Path:
    return next(p for p in sorted(site.glob("demo-campaign/tests/*.html")) if f'id="{figure}"' in p.read_text("utf-8"))


def opened(page: Page, site: Path, figure: str) -> Locator:
    page.goto(page_of(site, figure).as_uri())
    chart = page.locator(f"#{figure}")
    chart.get_by_role("button", name="Explore this chart").click()
    chart.locator(".exploring").wait_for()
    return chart


def said(chart: Locator) -> str:
    return chart.locator(".met").inner_text().replace("\u00a0", " ")


def test_nothing_is_loaded_before_a_reader_asks(page: Page, demo_site: Path) -> None:
    asked: list[str] = []
    page.on("request", lambda r: asked.append(r.url))
    page.goto(page_of(demo_site, GAS).as_uri())
    assert not [url for url in asked if "/charts/" in url or "/exploring/" in url]
    page.locator(f"#{GAS} button.explore").click()
    page.locator(f"#{GAS} .exploring").wait_for()
    assert len([url for url in asked if url.endswith("/charts/gas-burned.js")]) == 1
    assert not [url for url in asked if re.search(r"/charts/(?!gas-burned)", url)]
    assert all(url.startswith("file:") for url in asked)


def test_without_scripts_nothing_is_offered(browser: Browser, demo_site: Path) -> None:
    quiet = browser.new_context(java_script_enabled=False)
    page = quiet.new_page()
    page.goto(page_of(demo_site, GAS).as_uri())
    assert page.locator(f"#{GAS} svg.drawing").is_visible()
    assert not page.locator(f"#{GAS} button.explore").is_visible()
    quiet.close()


def test_arrows_lead_from_value_to_value_and_from_line_to_line(page: Page, demo_site: Path) -> None:
    chart = opened(page, demo_site, GAS)
    rows = chart.locator("table tbody tr")
    table = [
        [cell.replace("\u00a0", " ") for cell in rows.nth(n).locator("th, td").all_text_contents()[:2]]
        for n in range(4)
    ]
    assert said(chart) == ": ".join(table[0])
    page.keyboard.press("ArrowDown")
    assert said(chart) == ": ".join(table[1])
    page.keyboard.press("ArrowRight")
    assert said(chart).startswith(f"{table[1][0]}, pass 1: ")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("ArrowLeft")
    assert said(chart).startswith(f"{table[0][0]}, pass "), (
        "before the first value of a line is the last of the one above"
    )
    slider = chart.locator("input[type=range]")
    assert slider.get_attribute("aria-valuetext") == table[0][0]
    assert chart.locator(".met").get_attribute("role") == "status"  # WCAG 2.2, 4.1.3


def test_pointing_at_a_mark_says_its_value(page: Page, demo_site: Path) -> None:
    chart = opened(page, demo_site, GAS)
    chart.locator(".d-values > *").nth(2).hover(force=True)
    third = chart.locator("table tbody tr").nth(2).locator("th").text_content()
    assert said(chart).startswith(f"{third}: ")


def test_a_contender_that_is_off_has_no_mark_and_no_value(page: Page, demo_site: Path) -> None:
    chart = opened(page, demo_site, GAS)
    before = chart.locator(".d-passes > *:visible").count()
    chart.get_by_role("checkbox", name="Corvane Sol").uncheck()
    assert chart.locator(".d-passes > *:visible").count() < before
    assert not said(chart).startswith("Corvane Sol")
    for box in chart.get_by_role("checkbox").all():
        box.uncheck()
    assert said(chart) == "Nothing is shown. Choose whom to show."
    assert chart.locator(".d-values > *:visible").count() == 0
    chart.get_by_role("button", name="Stop exploring").click()
    assert chart.locator(".d-passes > *:visible").count() == before, "who stops exploring has the chart as it was"


def test_a_trace_is_seen_from_closer_by_and_its_marks_keep_their_time(page: Page, demo_site: Path) -> None:
    chart = opened(page, demo_site, TRACE)
    page.keyboard.press("PageDown")
    at = said(chart)
    ring = chart.locator(".met-ring")
    assert chart.locator(".own-ticks text").count() == 0
    chart.get_by_role("button", name="Closer").click()
    chart.get_by_role("button", name="Closer").click()
    assert said(chart) == at
    assert chart.locator(".view").inner_text().startswith("On view: 0 to ")
    whole = [float(t) for t in chart.locator(".d-ticks text").all_text_contents()]
    close = [float(t) for t in chart.locator(".own-ticks text").all_text_contents()]
    assert max(close) < max(whole) / 2
    # the ring lies on the line: the time that its words say is where the ticks have it
    minutes = sum(float(n) * {"min": 1, "s": 1 / 60}[unit] for n, unit in re.findall(r"(\d+(?:\.\d+)?) (min|s)\b", at))
    spots = [float(t.get_attribute("transform")[10:].split(",")[0]) for t in chart.locator(".own-ticks text").all()]  # type: ignore[index]  # a slip fails the test
    there = spots[0] + (minutes - close[0]) / (close[1] - close[0]) * (spots[1] - spots[0])
    assert float(ring.get_attribute("cx") or "nan") == pytest.approx(there, abs=1.5)
    chart.get_by_role("button", name="Later").click()
    assert chart.locator(".view").inner_text() != "On view: all of it"
    for _ in range(2):
        chart.get_by_role("button", name="Wider").click()
    assert chart.locator(".view").inner_text() == "On view: all of it"


def test_whoever_explores_finds_no_barrier(page: Page, demo_site: Path) -> None:
    """WCAG 2.2 A and AA by axe; targets of 24 by 24 CSS px: 2.5.8; reflow at 320 px: 1.4.10."""
    from axe_playwright_python.sync_playwright import Axe

    page.set_viewport_size({"width": 320, "height": 800})
    chart = opened(page, demo_site, TRACE)
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    for control in chart.locator(".exploring :is(button, input[type=range], label), button.explore").all():
        box = control.bounding_box()
        assert box
        assert min(box["width"], box["height"]) >= 24
    tags = {"runOnly": {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"]}, "preload": False}
    found = Axe().run(page, context={"include": [[f"#{TRACE}"]]}, options=tags).response["violations"]
    assert [one["id"] for one in found] == []
