"""Names of 200 letters without a space: of the site, a campaign, products and tests. No page of theirs is wider than its
window, with all that folds opened (WCAG 1.4.10: only tables scroll, in boxes of their own). And the author's paragraphs
in another direction than the page's begin where the page begins."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from reportgen.build.run import compile_site

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.browser

ROWS = "contender,pass,boil time\ncorvane,1,212.4\nostler,1,230.1\nostler,2,226.4\ncorvane,2,214.9\n"
CAMPAIGN = "title: {}\ncontenders: {{corvane: {}, ostler: {}}}\nmeasure:\n  boil time: {{kind: timed, unit: s, better: lower, title: {}}}\nreadings: r.csv\nwho pays: Us alone.\n"


def compiled(place: Path, publication: str, *names: str) -> Path:
    for name, text in {
        "content/publication.yaml": publication,
        "stoves/campaign.yaml": CAMPAIGN.format(*names),
        "stoves/r.csv": ROWS,
    }.items():
        (place / name).parent.mkdir(parents=True, exist_ok=True)
        (place / name).write_text(text, encoding="utf-8")
    return compile_site(place).out


@pytest.mark.parametrize("theme", ["reading-room", "field-book"])
def test_no_name_is_wider_than_the_window(page: Page, theme: str, tmp_path: Path) -> None:
    site = compiled(tmp_path, f"title: {'P' * 200}\ntheme: {theme}\n", "C" * 200, "A" * 190, "O" * 200, "T" * 200)
    wide = []
    for file in sorted(f for f in site.rglob("*.html") if "handbook" not in f.parts):
        page.goto(file.as_uri())
        page.evaluate("for (const fold of document.querySelectorAll('details')) fold.open = true")
        for width in (390, 1100):
            page.set_viewport_size({"width": width, "height": 800})
            if page.evaluate("document.documentElement.scrollWidth") > width:
                wide.append((file.relative_to(site).as_posix(), width))
    assert wide == []


def test_paragraphs_of_the_authors_begin_where_the_page_begins(page: Page, tmp_path: Path) -> None:
    site = compiled(tmp_path, "title: Boil and Tell\nlanguage: ar\n", "T", "C", "O", "B")
    page.goto((site / "stoves" / "index.html").as_uri())
    assert page.get_by_text("Us alone.").evaluate("e => getComputedStyle(e).textAlign") == "right"  # CSS Text 3, 7.1
