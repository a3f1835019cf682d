"""What a browser reports of requests: one that failed is told, one that it gave up by itself isn't."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from reportgen.browser.served import served
from reportgen.browser.watch import FAILED, Watch

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser


@pytest.mark.parametrize(("how", "told"), [("aborted", []), ("connectionreset", [FAILED])])
def test_only_what_failed_is_told(browser: Browser, tmp_path: Path, how: str, told: list[object]) -> None:
    (tmp_path / "index.html").write_text(
        '<!doctype html><title>Pot</title><img src="pot.webp" alt="">', encoding="utf-8"
    )
    with served(tmp_path) as root:
        page = browser.new_page()
        watch = Watch(root)
        watch.follow(page)
        page.route("**/pot.webp", lambda route: route.abort(how))
        page.goto(f"{root}/index.html")
        assert [check for check, _ in watch.taken()] == told
        page.close()
