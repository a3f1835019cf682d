"""A reader chooses among comparisons: from disk, under the page's policy, kept in the address; nothing moves."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tests.browser.moving import moved_by_scripts
from tests.site.archives import site_of

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def archive(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return site_of(tmp_path_factory.mktemp("archive")) / "index.html"


def shown(page: Page) -> list[str]:
    return [title.split()[1] for title in page.locator("article:visible h2").all_inner_texts()]


def test_what_is_chosen_is_shown_told_and_kept_in_the_address(page: Page, archive: Path) -> None:
    page.goto(archive.as_uri())
    assert shown(page) == ["stove", "burner", "lamp"]
    page.locator("summary").click()
    page.locator("select[name=kind]").select_option(label="Camping stoves (2)")
    assert shown(page) == ["stove", "burner"]
    assert page.inner_text("[role=status]") == "2 comparisons of 3 fit."
    page.locator("select[name=year]").select_option("2025")
    assert shown(page) == ["burner"]
    assert page.url.endswith("#kind=camping+stoves&year=2025")
    page.go_back()
    assert shown(page) == ["stove", "burner"]
    page.locator("button[type=reset]").click()
    page.locator("article").nth(2).wait_for()
    assert shown(page) == ["stove", "burner", "lamp"]
    assert "#" not in page.url
    assert page.inner_text("[role=status]") == "3 comparisons, the newest first."


def test_maker_and_price_together_mean_one_product(page: Page, archive: Path) -> None:
    page.goto(f"{archive.as_uri()}#maker=corvane&to=20&currency=EUR")
    assert shown(page) == ["burner"], "the maker’s stove costs 89 EUR, and the other’s isn’t its"
    page.goto(f"{archive.as_uri()}#from=70&to=75&currency=EUR")
    assert shown(page) == ["stove"], "a price from 62 to 79 reaches into it"
    page.goto(f"{archive.as_uri()}#from=50&to=60&currency=EUR")
    assert shown(page) == []
    assert page.inner_text("[role=status]") == "No comparison fits all of that. Take one choice back."
    page.goto(f"{archive.as_uri()}#from=50&to=60&currency=CHF")
    assert shown(page) == ["lamp"]


def test_an_address_that_names_nothing_known_shows_all_and_a_place_on_the_page_changes_nothing(
    page: Page, archive: Path
) -> None:
    page.goto(f"{archive.as_uri()}#kind=kettles&colour=red")
    assert shown(page) == ["stove", "burner", "lamp"]
    page.goto(f"{archive.as_uri()}#kind=lamps")
    assert shown(page) == ["lamp"]
    page.evaluate("location.hash = '#text'")
    page.wait_for_timeout(50)
    assert shown(page) == ["lamp"]


def test_nothing_moves_when_the_script_comes(page: Page, archive: Path) -> None:
    assert moved_by_scripts(page, archive.as_uri(), ".choosing.ready") == 0


def test_without_scripts_the_lists_remain_and_the_choice_is_away(browser: Browser, archive: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(archive.as_uri())
    assert not page.locator("form").is_visible()
    page.get_by_role("link", name="Maker").click()
    assert page.get_by_role("heading", name="Maker").is_visible()
    context.close()
