"""A site with photographs, opened: nothing dead, no barrier, nothing moves when a picture comes in, on phone and screen."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.browser.chromium import started
from reportgen.browser.inspect import inspect_site
from reportgen.build.run import compile_site
from tests.campaigns import write_campaign
from tests.pages.test_photographs import FLAME, PICTURES, READINGS, TEXT, YAML

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    files: dict[str, str | bytes] = {"readings": READINGS, "flame.csv": FLAME, "conclusions.md": TEXT, **PICTURES}
    return compile_site(write_campaign(tmp_path_factory.mktemp("photographed"), YAML, **files)).out


def test_a_page_of_each_kind_with_photographs_is_sound(site: Path) -> None:
    assert inspect_site(site, samples_only=True, only_look=True).faults == ()


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize(
    "address", ["stoves/index.html", "stoves/tests/gas-burned.html", "stoves/contenders/corvane.html"]
)
def test_a_picture_has_its_place_before_it_comes_and_fits_the_page(site: Path, address: str, width: int) -> None:
    heights = []
    with started() as browser:
        for waiting in (True, False):
            page = browser.new_context(viewport={"width": width, "height": 800}).new_page()
            if waiting:
                page.route("**/photos/*", lambda route: None)  # asked for and not come yet
            page.goto((site / address).as_uri(), wait_until="domcontentloaded")
            page.wait_for_function("[...document.querySelectorAll('link[rel=stylesheet]')].every(l => l.sheet)")
            if not waiting:
                page.evaluate(
                    "async () => { for (const i of document.images) { i.loading = 'eager'; await i.decode() } }"
                )
            there = page.evaluate("[...document.images].map(i => i.naturalWidth > 0)")
            assert there
            assert all(there) != waiting
            heights.append(page.evaluate("[...document.images].map(i => i.getBoundingClientRect().height)"))
            assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert all(abs(before - after) < 2 for before, after in zip(*heights, strict=True)), heights
    assert max(heights[0]) > 50
