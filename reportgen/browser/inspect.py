"""A site opened page by page in headless Chromium, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from reportgen.browser.links import dead_links, html_files, read_page

if TYPE_CHECKING:
    from playwright.sync_api import ConsoleMessage, Page, Request, Response

WIDTH, HEIGHT = 390, 844  # a phone, in CSS pixels
LARGEST_WAIT = 15_000  # ms for one page
Sort = Literal[
    "script error", "failed request", "leaves the site", "dead link", "overflow", "missing alternative", "accessibility"
]


@dataclass(frozen=True, order=True)
class Fault:
    """One thing wrong with a page. `page` from the site's root; `line` in its file, 0 where only the browser saw it."""

    page: str
    line: int
    sort: Sort
    says: str
    do: str = ""


@dataclass(frozen=True)
class Inspected:
    """How many pages were opened, and what was found, by page."""

    pages: int
    faults: tuple[Fault, ...]


def inspect_site(site: Path, tell: Callable[[str, int, int], None] = lambda page, done, of: None) -> Inspected:
    """Open every page under `site` and check it; `tell` hears of each page before it is opened.

    Raises `NoBrowserError` where no browser starts.
    """
    from reportgen.browser.chromium import started
    from reportgen.browser.served import served

    addresses = html_files(site)
    texts = {address: (site / address).read_text(encoding="utf-8", errors="replace") for address in addresses}
    files = [path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()]
    dead = dead_links({address: read_page(text) for address, text in texts.items()}, files)
    faults = [Fault(page, line, "dead link", says) for page, line, says in dead]
    with served(site) as root, started() as browser:
        page = browser.new_page(viewport={"width": WIDTH, "height": HEIGHT})
        page.set_default_timeout(LARGEST_WAIT)
        watch = _Watch(root)
        watch.follow(page)
        scripts = axe_script(), looks_script()
        for done, address in enumerate(addresses):
            tell(address, done, len(addresses))
            faults += _faults_of(page, watch, root, address, scripts)
    return Inspected(len(addresses), tuple(sorted(set(faults))))


def axe_script() -> str:
    """The accessibility checker, axe-core, as the package axe-playwright-python carries it."""
    from importlib.resources import files

    return (files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")


def looks_script() -> str:
    """What is run in each page, as one function."""
    from importlib.resources import files

    return (files("reportgen.browser") / "looks.js").read_text(encoding="utf-8").partition("\n")[2]


class _Watch:
    """Collects what the browser reports between two pages; a class, because events come on their own."""

    def __init__(self, root: str) -> None:
        self.root = root
        self.seen: list[tuple[Sort, str]] = []

    def follow(self, page: Page) -> None:
        page.on("pageerror", lambda error: self.seen.append(("script error", str(error))))
        page.on("console", self._console)
        page.on("requestfailed", lambda request: self._failed(request.url, request.failure or "failed"))
        page.on("response", self._answered)
        page.on("request", self._asked)

    def taken(self) -> list[tuple[Sort, str]]:
        seen, self.seen = self.seen, []
        return seen

    def _ours(self, url: str) -> bool:
        return url.startswith((self.root + "/", "data:", "blob:", "about:"))

    def _console(self, message: ConsoleMessage) -> None:
        # A request that failed is told of once, with its address, by the browser's own event.
        if message.type == "error" and not message.text.startswith("Failed to load resource"):
            self.seen.append(("script error", message.text))

    def _failed(self, url: str, how: str) -> None:
        if self._ours(url) and not url.endswith("/favicon.ico"):
            self.seen.append(("failed request", f"{url.removeprefix(self.root + '/')} {how}"))

    def _answered(self, answer: Response) -> None:
        if answer.status >= 400:
            self._failed(answer.url, f"answers {answer.status}")

    def _asked(self, request: Request) -> None:
        # The browser was started so that it finds no other host: nothing is sent.
        if not self._ours(request.url):
            self.seen.append(("leaves the site", f"asks for {request.url}"))


def _faults_of(page: Page, watch: _Watch, root: str, address: str, scripts: tuple[str, str]) -> list[Fault]:
    from playwright.sync_api import Error

    try:
        page.goto(f"{root}/{address}", wait_until="load")
        page.evaluate(scripts[0])
        seen = page.evaluate(scripts[1])
    except Error as error:
        first = str(error).splitlines()[0]
        return [Fault(address, 0, "script error", f"the page can't be checked: {first}")]
    faults = [Fault(address, 0, sort, says) for sort, says in watch.taken()]
    if seen["overflow"]:
        says = f"wider than {WIDTH} px: {seen['overflow']}"
        faults.append(Fault(address, 0, "overflow", says, "Let it wrap, or scroll in a box of its own."))
    faults += [Fault(address, 0, "missing alternative", f"{what} has no text in its stead") for what in seen["without"]]
    for found in seen["barriers"]:
        says = f"{found['help']} ({found['id']}, {found['impact']}): {', '.join(found['where'])}"
        faults.append(Fault(address, 0, "accessibility", says))
    return faults
