"""A reader searches everything where the site is served; from disk the page says why not, and what there is instead."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from reportgen.browser.served import served
from reportgen.site.searching import available
from tests.site.archives import site_of

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(not available(), reason="the program that makes the index isn't made for this system"),
]


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory, searched: None) -> Path:
    return site_of(tmp_path_factory.mktemp("archive"))


@pytest.fixture(scope="module")
def root(site: Path) -> Iterator[str]:
    with served(site) as at:
        yield at


def search(page: Page, words: str) -> str:
    page.fill("input[name=q]", words)
    page.keyboard.press("Enter")
    page.locator(".fit:not(:empty)").wait_for()
    return page.inner_text(".fit")


def test_what_is_found_is_told_led_to_and_kept_in_the_address(page: Page, root: str) -> None:
    page.goto(f"{root}/search.html")
    assert search(page, "Kessary") in ("On 1 page.", *(f"On {n} pages, the best first." for n in range(2, 20)))
    assert page.url.endswith("search.html?q=Kessary")
    page.locator(".hits h2 a", has_text="Kessary Ring").first.wait_for()
    with page.expect_navigation():
        page.locator(".hits h2 a").first.click()
    assert "Kessary" in page.inner_text("main")


def test_a_word_in_another_form_is_found_as_the_language_has_it(page: Page, root: str) -> None:
    page.goto(f"{root}/search.html?q=boiling")
    page.locator(".hits li").first.wait_for()
    assert "boil" in page.inner_text(".hits").lower()


def test_words_that_stand_nowhere_are_said_to_stand_nowhere(page: Page, root: str) -> None:
    page.goto(f"{root}/search.html")
    assert search(page, "zzyzxqq") == "Nothing here has all of these words."
    assert page.locator(".hits li").count() == 0


def test_from_disk_it_says_what_there_is_instead(page: Page, site: Path) -> None:
    page.goto((site / "search.html").as_uri())
    assert not page.locator("form").is_visible()
    assert "opened from a disk" in page.inner_text(".instead")
    page.get_by_role("link", name="Maker").click()
    assert page.get_by_role("heading", name="Maker").is_visible()


def test_without_scripts_it_says_the_same(browser: Browser, root: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{root}/search.html")
    assert not page.locator("form").is_visible()
    assert page.locator(".instead").is_visible()
    context.close()


def test_an_index_that_is_missing_is_told_instead_of_nothing(browser: Browser, root: str) -> None:
    page = browser.new_page()
    page.route("**/search/**", lambda route: route.abort())
    page.goto(f"{root}/search.html?q=boil")
    page.locator(".instead").wait_for(state="visible")
    assert not page.locator("form").is_visible()
    page.close()
