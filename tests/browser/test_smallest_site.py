"""The site of the smallest campaign, opened page by page: nothing asked of the network, nothing dead, no barrier."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.browser.inspect import inspect_site
from reportgen.build.run import compile_site
from tests.campaigns import write_campaign

pytestmark = pytest.mark.browser


def test_every_page_of_the_smallest_campaigns_site_is_sound(tmp_path: Path) -> None:
    built = compile_site(write_campaign(tmp_path))
    opened: list[str] = []
    counted: list[tuple[int, int]] = []

    def tell(page: str, done: int, of: int) -> None:
        opened.append(page)
        counted.append((done, of))

    inspected = inspect_site(built.out, tell, only_look=True)
    assert inspected.faults == ()
    assert inspected.pages == built.pages
    assert counted == [(n, len(opened)) for n in range(len(opened))]
    assert len(opened) == inspected.pages
    assert {"index.html", "stoves/index.html", "stoves/tests/gas-burned.html", "stoves/contenders/ostler.html"} <= {
        *opened
    }
