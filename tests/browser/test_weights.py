"""A reader points at weights, by mouse and by keys, from disk and under the page's policy; without scripts nothing lacks."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from reportgen.browser.inspect import Fault, inspect_site
from reportgen.pages import build_pages
from tests.pages.weighing import told_weighed, whole

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    told = told_weighed(tmp_path_factory.mktemp("weighed"), whole())
    out = tmp_path_factory.mktemp("site")
    files = {p.address: p.html.encode() for p in build_pages(told)} | dict(told.theme.static)
    for address, content in files.items():
        (out / address).parent.mkdir(parents=True, exist_ok=True)
        (out / address).write_bytes(content)
    return out


@pytest.fixture(scope="module")
def faults(site: Path) -> list[Fault]:
    """What is wrong with the campaign's page on a phone. Of its neighbours only a few are there, so links lead nowhere."""
    found = inspect_site(site, samples_only=True, only_look=True).faults
    return [f for f in found if f.page == "stoves/index.html" and f.sort != "dead link"]


@pytest.fixture(scope="module")
def browser(faults: list[Fault], browser: Browser) -> Browser:  # after the inspection: one browser at a time
    return browser


@pytest.fixture
def page(site: Path, page: Page) -> Page:
    page.goto((site / "stoves/index.html").as_uri())
    return page


def said(page: Page) -> str:
    return page.inner_text(".pointed").replace("\u00a0", " ")


def point(page: Page, x: float, y: float) -> None:
    """Click at (x, y) of the drawing, in the units of its viewBox, 360 wide."""
    drawing = page.locator("svg.drawing.weights")
    box = drawing.bounding_box()
    assert box
    drawing.click(position={"x": x * box["width"] / 360, "y": y * box["width"] / 360})


def test_pointing_into_the_picture_changes_the_sentence(page: Page) -> None:
    assert said(page).startswith("Some ")  # it begins at equal weights, as near as the steps allow
    point(page, 180, 36)
    assert said(page) == "Only thrift: Corvane Sol leads, and firmly."
    point(page, 24, 307)
    assert said(page) == "Only speed: Ostler Mk II leads, and firmly."
    assert page.locator(".slider .percent").all_inner_texts() == ["0\u00a0%", "100\u00a0%", "0\u00a0%"]
    ring = page.locator("svg.drawing.weights .ring")
    assert (ring.get_attribute("cx"), ring.get_attribute("cy")) == ("22", "308")


def test_keys_do_the_same_and_the_others_share_what_is_left(page: Page) -> None:
    first = page.locator(".slider input").first
    first.focus()
    page.keyboard.press("End")
    assert said(page) == "Only thrift: Corvane Sol leads, and firmly."
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("ArrowLeft")
    assert page.locator(".slider .percent").all_inner_texts() == ["90\u00a0%", "5\u00a0%", "5\u00a0%"]
    assert first.get_attribute("aria-valuetext") == "90\u00a0%"
    assert said(page).startswith("Mostly thrift (90 %), a little speed (5 %), a little carrying (5 %):")


def test_a_finger_finds_each_control_and_is_told_politely(page: Page) -> None:
    """Targets of 24 by 24 CSS px: WCAG 2.2, 2.5.8; status messages: 4.1.3."""
    for slider in page.locator(".slider input").all():
        box = slider.bounding_box()
        assert box
        assert box["height"] >= 24
        assert box["width"] >= 24
    assert page.get_attribute(".pointed", "role") == "status"


def test_without_scripts_only_the_pointing_is_missing(site: Path, browser: Browser) -> None:
    quiet = browser.new_context(java_script_enabled=False)
    page = quiet.new_page()
    page.goto((site / "stoves/index.html").as_uri())
    assert not page.locator(".pointing").is_visible()
    for part in ("svg.drawing.weights", ".turns", ".readers", ".duels", ".criteria"):
        assert page.locator(part).is_visible()
    quiet.close()


def test_the_page_has_no_barrier_and_no_error(faults: list[Fault]) -> None:
    assert faults == []
