"""In no drawing does one text lie on another or run out of the picture, whatever the names, on the smallest phone.

Measured in the browser, in the fonts of this system, at 390 CSS px; type stands there at 10.5 px and more (the design's own
measure, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from reportgen.browser.chromium import started
from tests.charts.names_of_all_kinds import NAMES, charts

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.browser
MEASURE = """() => [...document.querySelectorAll("svg.drawing")].map((svg) => {
  const box = ({ left, right, top, bottom }) => [left, top, right, bottom];
  const texts = [...svg.querySelectorAll("text")].map((t) => ({ said: t.textContent, at: box(t.getBoundingClientRect()) }));
  const sizes = [...svg.querySelectorAll("text")].map((t) => parseFloat(getComputedStyle(t).fontSize) * svg.getScreenCTM().a);
  return { label: svg.getAttribute("aria-label"), at: box(svg.getBoundingClientRect()), texts, least: Math.min(...sizes) };
})"""


@pytest.fixture(scope="module")
def page() -> Iterator[Page]:
    with started() as running:
        page = running.new_page(viewport={"width": 390, "height": 844})
        yield page
        page.close()


def faults(drawn: list[Any]) -> list[str]:
    """Texts that lie on one another by more than a hair, or stand out of their picture."""
    found = []
    for one in drawn:
        left, top, right, bottom = one["at"]
        texts = [t for t in one["texts"] if t["at"][2] > t["at"][0]]
        for n, text in enumerate(texts):
            a = text["at"]
            if a[0] < left - 1 or a[2] > right + 1 or a[1] < top - 2 or a[3] > bottom + 2:
                found.append(f"{one['label'][:30]}: out of the picture: {text['said']}")
            for other in texts[n + 1 :]:
                b = other["at"]
                if min(a[2], b[2]) - max(a[0], b[0]) > 1.5 and min(a[3], b[3]) - max(a[1], b[1]) > 4:
                    found.append(f"{one['label'][:30]}: {text['said']} on {other['said']}")
    return found


@pytest.mark.parametrize("kind", list(NAMES))
def test_names_of_all_kinds_keep_clear_of_one_another(page: Page, kind: str) -> None:
    drawings = "".join(figure.svg for figure in charts(NAMES[kind]).values())
    style = "body { margin: 16px; font-family: system-ui, sans-serif } svg { display: block; width: 100%; max-width: 30rem }"
    page.set_content(f"<!doctype html><meta charset=utf-8><style>{style}</style>{drawings}")
    drawn = page.evaluate(MEASURE)
    assert len(drawn) >= 3
    assert sum(len(one["texts"]) for one in drawn) >= 3 * len(NAMES[kind])
    assert faults(drawn) == []


def test_no_text_of_the_demonstration_lies_on_another_and_all_can_be_read(page: Page, demo_site: Path) -> None:
    pages = [p for p in sorted(demo_site.rglob("*.html")) if 'class="drawing' in p.read_text(encoding="utf-8")]
    seen, found, least = 0, [], []
    for address in pages:
        page.goto(address.as_uri())
        page.evaluate("document.querySelectorAll('details').forEach((d) => { d.open = true })")
        drawn = page.evaluate(MEASURE)
        seen += len(drawn)
        found += [f"{address.relative_to(demo_site)}: {fault}" for fault in faults(drawn)]
        least += [one["least"] for one in drawn if not one["label"].startswith("Who leads")]
    assert seen > 60
    assert found == []
    assert min(least) >= 10.5
