"""An old link, a place on a page among them, ends at what it was made for: from disk, with and without scripts."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tests.site.archives import STOVES, site_of

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser
RENAMED = STOVES.replace("published:", "formerly: cookers\npublished:").replace(
    "boil time: timed, s, lower", "boil time: {kind: timed, unit: s, better: lower, formerly: time to boil}"
)


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return site_of(tmp_path_factory.mktemp("archive"), stoves=RENAMED)


@pytest.mark.parametrize("scripts", [True, False])
def test_an_old_page_leads_to_the_new_one(browser: Browser, site: Path, scripts: bool) -> None:
    context = browser.new_context(java_script_enabled=scripts)
    page = context.new_page()
    page.goto((site / "cookers" / "tests" / "time-to-boil.html").as_uri())
    page.wait_for_url("**/stoves/tests/boil-time.html")
    assert page.get_by_role("heading", name="Boil time").first.is_visible()
    context.close()


def test_where_scripts_run_the_place_on_the_page_is_kept_under_its_new_name(browser: Browser, site: Path) -> None:
    page = browser.new_page()
    page.goto((site / "cookers" / "tests" / "time-to-boil.html").as_uri() + "#result-time-to-boil-corvane")
    page.wait_for_url("**/stoves/tests/boil-time.html#result-boil-time-corvane")
    page.close()


def test_without_scripts_an_old_place_is_a_line_that_leads_on(browser: Browser, site: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((site / "stoves" / "tests" / "boil-time.html").as_uri() + "#result-time-to-boil-corvane")
    assert page.locator(":target").inner_text() == "Corvane Sol"
    page.locator(":target").click()
    assert page.url.endswith("#result-boil-time-corvane")
    context.close()


@pytest.mark.parametrize("scripts", [True, False])
def test_the_list_of_old_places_is_seen_only_where_no_script_leads_on(
    browser: Browser, site: Path, scripts: bool
) -> None:
    context = browser.new_context(java_script_enabled=scripts)
    page = context.new_page()
    page.goto((site / "stoves" / "tests" / "boil-time.html").as_uri())
    assert page.locator("#formerly").is_visible() is not scripts
    context.close()
