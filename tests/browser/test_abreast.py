"""A reader chooses two or three contenders: from disk, under the page's policy, kept in the address; nothing moves."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from reportgen.pages import Told, build_pages
from tests.browser.moving import moved_by_scripts
from tests.pages.stoves import told_of

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    told: Told = told_of(tmp_path_factory.mktemp("stoves"))
    out = tmp_path_factory.mktemp("site")
    files = {p.address: p.html.encode() for p in build_pages(told)} | dict(told.theme.static)
    for address, content in files.items():
        (out / address).parent.mkdir(parents=True, exist_ok=True)
        (out / address).write_bytes(content)
    return out / told.campaign.id / "side-by-side" / "index.html"


def heads(page: Page) -> list[str]:
    return page.locator(".chosen table.measured thead .one .name > a").all_inner_texts()


def test_three_chosen_stand_abreast_in_the_campaigns_order_with_each_pairs_decision(page: Page, site: Path) -> None:
    page.goto(site.as_uri())
    assert heads(page) == []
    for n, id in enumerate(("tamsin", "corvane", "brindle")):
        page.locator("select").nth(n).select_option(id)
    assert heads(page) == ["Corvane Sol", "Brindle", "Tamsin <T> & Co"]
    assert page.locator(".chosen .in-full a").count() == 3
    first = page.locator(".chosen tbody").first
    assert first.locator("td.one").count() == 3
    assert first.locator("li").count() == 3
    assert page.locator(".chosen [data-of=ostler]").count() == 0
    assert page.inner_text("[role=status]") == "Three are shown below."


def test_the_choice_is_kept_in_the_address_and_the_way_back_works(page: Page, site: Path) -> None:
    page.goto(f"{site.as_uri()}#ostler,corvane")
    assert heads(page) == ["Corvane Sol", "Ostler Mk II"]
    page.locator("select").nth(2).select_option("tamsin")
    assert page.url.endswith("#corvane,ostler,tamsin")
    page.go_back()
    assert heads(page) == ["Corvane Sol", "Ostler Mk II"]
    assert page.locator("select").nth(2).input_value() == ""


def test_the_same_chosen_twice_or_a_name_that_isnt_there_counts_for_nothing(page: Page, site: Path) -> None:
    page.goto(f"{site.as_uri()}#nobody,%E0%A4%A,corvane")
    assert heads(page) == []
    page.locator("select").nth(0).select_option("corvane")
    page.locator("select").nth(1).select_option("corvane")
    assert heads(page) == []


def test_a_line_that_says_nothing_of_those_chosen_goes(page: Page, site: Path) -> None:
    page.goto(f"{site.as_uri()}#brindle,tamsin")
    assert "Price paid" not in page.inner_text(".chosen")
    page.goto(f"{site.as_uri()}#corvane,tamsin")
    assert "Price paid" in page.inner_text(".chosen")


def test_nothing_moves_when_the_script_comes(page: Page, site: Path) -> None:
    assert moved_by_scripts(page, site.as_uri(), ".chooser.ready") == 0


def test_without_scripts_there_is_no_dead_control(browser: Browser, site: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(site.as_uri())
    assert not page.locator("form.chooser").is_visible()
    assert page.locator(".pairs-of a[href*='-and-']").count() == 12
    context.close()
