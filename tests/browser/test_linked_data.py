"""Data blocks stand in pages whose policy forbids scripts: a browser keeps them as data and complains of nothing."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from reportgen.browser.chromium import started

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("name", ["index.html", "contenders/corvane.html"])
def test_a_data_block_is_no_script_to_the_policy(demo_site: Path, name: str) -> None:
    """HTML Living Standard, 4.12.1.1, "prepare the script element": a block of another type is left before the policy is asked."""
    said: list[str] = []
    with started() as browser:
        page = browser.new_page()
        page.on("console", lambda m: said.append(m.text))
        page.add_init_script(
            "addEventListener('securitypolicyviolation', e => console.error(e.violatedDirective + e.sourceFile))"
        )
        page.goto((demo_site / "demo-campaign" / name).as_uri())
        told = json.loads(page.locator('script[type="application/ld+json"]').inner_text())
        assert told["@type"] in ("Dataset", "Product")
        assert said == []
        page.add_script_tag(content="document.title = 'run'", type="application/json")
        with pytest.raises(Exception, match=r"Content Security Policy|Executing inline script"):
            page.add_script_tag(content="document.title = 'run'")
        assert page.title() != "run"
        assert said, "the policy forbids scripts that run, and says so: else this test would see nothing"
