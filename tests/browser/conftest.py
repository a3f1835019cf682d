"""What tests in a browser share: one browser a file, and a page on a telephone that mustn't complain."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """No longer than a file: a process has one at a time, and inspecting a site starts its own."""
    from reportgen.browser.chromium import started

    with started() as running:
        yield running


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """An empty page, 390 px wide. Whatever a test opens in it, the browser has nothing to complain of."""
    troubles: list[str] = []
    page = browser.new_page(viewport={"width": 390, "height": 844})
    page.set_default_timeout(15_000)
    page.on("console", lambda m: troubles.append(m.text) if m.type in ("error", "warning") else None)
    page.on("pageerror", lambda e: troubles.append(str(e)))
    yield page
    page.close()
    assert [t for t in troubles if "404" not in t] == []  # of a site that is served it asks for an icon unasked
