"""How far things move on a page when its scripts come late, as they do to a slow telephone."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page, Route

WATCHED = (
    "window.moved = 0; new PerformanceObserver((l) => { for (const e of l.getEntries()) window.moved += e.value; })"
    ".observe({ type: 'layout-shift', buffered: true });"
)
PAINTED = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 50))))"


def moved_by_scripts(page: Page, address: str, ready: str) -> float:
    """The layout shift from a page painted without its scripts to one in which they ran, and `ready` is there.

    The scripts are held back until all the text has come and been painted: a page that comes in pieces moves too, on a
    busy machine, and that is another matter.
    """
    held: list[Route] = []
    page.route("**/*.js", lambda route: held.append(route))
    page.add_init_script(WATCHED)
    page.goto(address, wait_until="commit")
    page.wait_for_function("document.readyState === 'interactive'")
    page.evaluate(PAINTED)
    assert held, "the page has no script to wait for"
    page.evaluate("window.moved = 0")
    for route in held:
        route.continue_()
    page.unroute("**/*.js")
    page.wait_for_selector(ready, state="attached")
    page.evaluate(PAINTED)
    moved: float = page.evaluate("window.moved")
    return moved
