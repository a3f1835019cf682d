"""A page that is open follows the files, under the policy that every page of a site carries."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.build.progress import Built
from reportgen.finding import Place, refuse
from reportgen.view import Shown, serving

pytestmark = pytest.mark.browser

PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Stoves</title>
<meta http-equiv="Content-Security-Policy" content="default-src 'self'; img-src 'self' data:; object-src 'none'">
</head><body><main><h1>{}</h1></main></body></html>"""


def test_an_open_page_follows_a_change_and_shows_a_mistake(tmp_path: Path) -> None:
    from reportgen.browser.chromium import started

    shown = Shown()
    shown.show(Built((), 1, 1, tmp_path))
    file = tmp_path / "index.html"
    file.write_text(PAGE.format("212 s"))
    troubles: list[str] = []
    with serving(tmp_path, shown) as address, started() as browser:
        page = browser.new_page()
        page.set_default_timeout(15_000)
        page.on("console", lambda message: troubles.append(message.text) if message.type == "error" else None)
        page.goto(address)
        assert page.inner_text("h1") == "212 s"
        file.write_text(PAGE.format("213 s"))
        shown.show(Built((), 1, 1, tmp_path))
        page.wait_for_selector("h1:text-is('213 s')")
        shown.show(refuse("unknown-key", Place("campaign.yaml", 4, 1), "“contendres” is no key"))
        page.wait_for_selector(".mistakes li")
        assert "campaign.yaml:4:1" in page.inner_text(".mistakes")
        assert page.inner_text("h1") == "213 s"
        assert page.evaluate("getComputedStyle(document.querySelector('.mistakes')).position") == "fixed"
        shown.show(Built((), 1, 1, tmp_path))
        page.wait_for_selector(".mistakes", state="detached")
    assert troubles == []
